package org.runbend.optimizer.heat;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.heat.circuit.CircuitProblem;
import org.runbend.optimizer.heat.circuit.CircuitRun;
import org.runbend.optimizer.heat.circuit.CircuitSimulation;
import org.runbend.optimizer.heat.circuit.ExplicitWarmUp;
import org.runbend.optimizer.heat.circuit.FloorMass;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.circuit.WarmUp;
import org.runbend.optimizer.heat.circuit.WarmUpProblem;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.StripOutput;

/** The floor over time: over the plates that take most of the floor. */
final class WarmUpReckoning {
    /** Coolant that takes this long to its temperature (common practice: 35 to 65 degrees C in 20 minutes), minutes. */
    static final int RAMP = 20;

    /** Minutes that are told. */
    static final int WATCHED = 60;

    private static final int LONG = 480;
    /** Without a plate nothing but the pipe's crown stores heat at the plane, J/(m2 K). */
    private static final double NO_PLATE = 200;

    private final HeatProblem problem;

    WarmUpReckoning(HeatProblem problem) {
        this.problem = problem;
    }

    /** Coolant straight up to the supply within 20 minutes; the room's air stays as cold as all else was, which is the safe side. */
    WarmUp warmUp(double film, double gap) {
        Surroundings s = problem.surroundings();
        return new ExplicitWarmUp()
                .solve(new WarmUpProblem(
                        mass(film, gap),
                        s.start(),
                        Math.min(s.start(), s.room()),
                        s.outside(),
                        List.of(
                                new WarmUpProblem.Point(0, s.start()),
                                new WarmUpProblem.Point(RAMP, problem.supply().temperature())),
                        WATCHED));
    }

    /** Whether a sensor or a mixing valve holds the floor back from what the source can send. */
    boolean isHeldBack() {
        return problem.circuit().sensor().isPresent()
                || problem.supply().highest() > problem.supply().temperature();
    }

    /** The circuit over eight hours, where its source is known and reaches the floor; the room is warm, as its air is heated too. */
    Optional<CircuitRun> circuit(double film, double gap, double flow, double litres, boolean stuck) {
        CircuitParts parts = problem.circuit();
        Optional<HeatSource> source = parts.source().filter(HeatSource::reachesFloor);
        if (source.isEmpty()) {
            return Optional.empty();
        }
        Surroundings s = problem.surroundings();
        return Optional.of(new CircuitSimulation()
                .solve(new CircuitProblem(
                        mass(film, gap),
                        Math.max(0.01, alike(film, gap)),
                        problem.supply().mixture(),
                        Math.max(0.1, litres),
                        Math.min(1000, flow),
                        problem.supply().temperature(),
                        problem.supply().source().map(source.get()::heldTo).orElse(source.get()),
                        parts.cylinder(),
                        parts.blowers(),
                        parts.sensor(),
                        stuck,
                        s.start(),
                        s.room(),
                        s.outside(),
                        LONG)));
    }

    /** Floor like the strip that takes most of it which would take as much heat as all strips do, m2. */
    private double alike(double film, double gap) {
        StripMethods methods = new StripMethods(problem.build());
        Contact contact = new Contact(gap, film);
        double all = problem.loops().stream()
                .flatMap(l -> l.strips().stream())
                .mapToDouble(s -> s.area() * methods.output(s, contact).total())
                .sum();
        return all / methods.output(most(), contact).total();
    }

    /** Plates before all else: there the sensor lies, and there a person stands. */
    private PipeStrip most() {
        return problem.loops().stream()
                .flatMap(l -> l.strips().stream())
                .max(Comparator.comparing((PipeStrip s) -> s.plate().isPresent() && s.length() > 0)
                        .thenComparingDouble(PipeStrip::area))
                .orElseThrow();
    }

    /** What stores heat, at a film and a gap. */
    FloorMass mass(double film, double gap) {
        PipeStrip most = most();
        StripOutput output = new StripMethods(problem.build()).output(most, new Contact(gap, film));
        double plate = most.plate().map(p -> held(p, most)).orElse(NO_PLATE);
        return new FloorMass(
                problem.build().stack(),
                problem.build().pipe().outer(),
                Math.max(1e-4, Math.min(1e3, output.toPlane())),
                Math.max(1, plate),
                problem.build().coverHeat(),
                FloorMass.FOAM);
    }

    /** Heat that the plates hold, spread over the floor that belongs to them, J/(m2 K). */
    private static double held(Plate plate, PipeStrip strip) {
        double share = (strip.left().plate() + strip.right().plate()) / strip.pitch();
        return plate.thickness() / 1000 * FloorMass.ALUMINIUM * share;
    }
}
