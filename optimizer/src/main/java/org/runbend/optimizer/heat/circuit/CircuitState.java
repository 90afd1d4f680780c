package org.runbend.optimizer.heat.circuit;

import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.coolant.Melinder2010;

/** What a circuit remembers from one step to the next. */
final class CircuitState {
    private static final double BLOWERS_FROM = 40;
    private static final double WATER = 4186;
    /** In about this time what holds a temperature makes up what is missing, s. */
    private static final double MINUTE = 60;
    /** A valve sends the coolant to the floor only while that is warmer than the floor; a kelvin more, lest it flutters. */
    private static final double WARMER = 1;

    private final CircuitProblem problem;
    private final FloorColumn floor;
    private final double coolantHeat;
    private final double drawn;
    private final double waterHeat;
    private double coolant;
    private double cylinder;
    private boolean toFloor;
    private boolean burning;
    private Sums sums = new Sums(0, 0, 0, 0, 0, 0, 0);

    /** What has come together since the start, J and s. */
    record Sums(double given, double floor, double cylinder, double blowers, double open, int starts, int openings) {
        Sums less(Sums o) {
            return new Sums(
                    given - o.given,
                    floor - o.floor,
                    cylinder - o.cylinder,
                    blowers - o.blowers,
                    open - o.open,
                    starts - o.starts,
                    openings - o.openings);
        }
    }

    CircuitState(CircuitProblem problem) {
        this.problem = problem;
        coolant = problem.start();
        cylinder = problem.cylinder().map(Cylinder::start).orElse(coolant);
        CoolantProperties p = new Melinder2010().at(problem.mixture(), 50);
        // An exchanger with one fluid: (1 - exp(-NTU)) of what the flow carries, for each square metre.
        double carried = problem.flow() * p.carried() / problem.area();
        double coupling =
                carried == 0 ? 0 : carried * -Math.expm1(-1 / (problem.mass().toPlane() * carried));
        floor = new FloorColumn(problem.mass(), coupling, problem.start());
        double coil = problem.cylinder().map(Cylinder::transfer).orElse(0.0);
        double engine = problem.source() instanceof HeatSource.EngineExchanger e ? e.transfer() : 0;
        drawn = coupling * problem.area() + coil + engine;
        coolantHeat = Math.max(p.density() * p.heatCapacity() * problem.litres() / 1000, 2 * FloorColumn.QUICK * drawn);
        waterHeat =
                Math.max(problem.cylinder().map(Cylinder::litres).orElse(1.0) * WATER, 2 * FloorColumn.QUICK * coil);
        setValve();
    }

    /** Longest stable step, s. */
    double longestStep() {
        return Math.min(floor.longestStep(), 0.5 * coolantHeat / (drawn + 1e-9));
    }

    void step(double seconds) {
        boolean was = toFloor;
        boolean burnt = burning;
        setValve();
        double toCylinder = toFloor || problem.cylinder().isEmpty()
                ? 0
                : problem.cylinder().get().transfer() * (coolant - cylinder);
        double perArea = floor.step(seconds, sent(), toFloor, problem.room(), problem.outside());
        double blown = coolant > BLOWERS_FROM ? problem.blowers() : 0;
        double taken = perArea * problem.area() + toCylinder + blown;
        double power = power(taken, seconds);
        coolant += seconds / coolantHeat * (power - taken);
        double element =
                problem.source() instanceof HeatSource.MainsElement m && cylinder < m.setting() ? m.power() : 0;
        problem.cylinder().ifPresent(c -> cylinder += seconds / waterHeat * (toCylinder + element));
        sums = new Sums(
                sums.given + seconds * power,
                sums.floor + seconds * perArea * problem.area(),
                sums.cylinder + seconds * toCylinder,
                sums.blowers + seconds * blown,
                sums.open + (toFloor ? seconds : 0),
                sums.starts + (burning && !burnt ? 1 : 0),
                sums.openings + (toFloor && !was ? 1 : 0));
    }

    /** What goes to the floor: mixed down, but for a valve that is stuck open. */
    private double sent() {
        return problem.stuckOpen() ? coolant : Math.min(coolant, problem.mixed());
    }

    private void setValve() {
        if (problem.stuckOpen() || problem.sensor().isEmpty()) {
            toFloor = true;
            return;
        }
        FloorSensor s = problem.sensor().get();
        if (sent() < floor.plate() + (toFloor ? 0 : WARMER) || floor.plate() > s.setting() + s.hysteresis() / 2) {
            toFloor = false;
        } else if (floor.plate() < s.setting() - s.hysteresis() / 2) {
            toFloor = true;
        }
    }

    private double power(double taken, double seconds) {
        if (problem.source() instanceof HeatSource.EngineExchanger e) {
            double most = e.transfer() * (e.engine() - coolant);
            double held = taken + (e.limit() - coolant) * coolantHeat / Math.max(MINUTE, seconds);
            return Math.max(0, Math.min(most, held));
        }
        if (!(problem.source() instanceof HeatSource.Heater h)) {
            return 0;
        }
        double wanted = taken + (h.setting() - coolant) * coolantHeat / Math.max(MINUTE, seconds);
        if (burning && wanted < h.least() && coolant >= h.setting()) {
            burning = false;
        } else if (!burning && coolant <= h.setting() - h.band()) {
            burning = true;
        }
        return burning ? Math.max(h.least(), Math.min(h.most(), wanted)) : 0;
    }

    CircuitRun.Point point(int minute) {
        return new CircuitRun.Point(
                minute,
                floor.surface(problem.room()),
                floor.plate(),
                coolant,
                problem.cylinder().isPresent() ? cylinder : coolant,
                toFloor);
    }

    Sums sums() {
        return sums;
    }
}
