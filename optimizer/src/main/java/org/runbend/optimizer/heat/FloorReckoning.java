package org.runbend.optimizer.heat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.runbend.optimizer.heat.coolant.CoolantFilling;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.coolant.Melinder2010;
import org.runbend.optimizer.heat.flow.DarcyWeisbach;
import org.runbend.optimizer.heat.flow.Gnielinski1976;
import org.runbend.optimizer.heat.flow.LoopLosses;
import org.runbend.optimizer.heat.flow.LoopPath;
import org.runbend.optimizer.heat.flow.OperatingPoint;
import org.runbend.optimizer.heat.flow.ParallelFlow;
import org.runbend.optimizer.heat.flow.PumpProblem;
import org.runbend.optimizer.heat.flow.PumpSolution;
import org.runbend.optimizer.heat.output.AreaWeighting;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.FloorOutput;
import org.runbend.optimizer.heat.output.FloorProblem;
import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.output.StripOutput;

/**
 * Finds flow and temperatures that fit each other: the flow follows from viscosity, the film and the drop from the flow. The coolant of a
 * loop falls from the supply towards the temperature at which it would give nothing, by exp(-NTU); its mean is the logarithmic one.
 */
final class FloorReckoning {
    private static final int PASSES = 30;
    private static final double SETTLED = 1e-7;
    private static final LoopPath NOTHING = new LoopPath(200, 0, 0, List.of(), 0, LoopPath.NO_VALVE);

    private final HeatProblem problem;
    private final StripMethods methods;
    private final double gap;
    /** Film of each loop, as the pass before had it. */
    private List<Double> films = List.of();

    /** With air between pipe and plate, mm. */
    FloorReckoning(HeatProblem problem, double gap) {
        this.problem = problem;
        this.gap = gap;
        methods = new StripMethods(problem.build());
    }

    FloorState solve() {
        int n = problem.loops().size();
        List<Double> means =
                new ArrayList<>(Collections.nCopies(n, problem.supply().temperature()));
        films = new ArrayList<>(Collections.nCopies(n, Double.POSITIVE_INFINITY));
        FloorState state = null;
        for (int pass = 0; pass < PASSES; pass++) {
            state = pass(means);
            double moved = 0;
            for (int i = 0; i < n; i++) {
                double mean = state.loops().get(i).mean();
                moved = Math.max(moved, Math.abs(mean - means.get(i)));
                means.set(i, mean);
                films.set(i, state.loops().get(i).film());
            }
            if (moved < SETTLED) {
                break;
            }
        }
        return state;
    }

    private FloorState pass(List<Double> means) {
        double mean = means.stream().mapToDouble(m -> m).average().orElseThrow();
        CoolantProperties coolant = new Melinder2010().at(problem.supply().mixture(), mean);
        Flows flows = flows(coolant, means);
        List<LoopHeat> loops = new ArrayList<>();
        List<FloorOutput.ZoneOutput> zones = new ArrayList<>();
        double edge = 0;
        double warm = 0;
        double weighted = 0;
        for (int i = 0; i < problem.loops().size(); i++) {
            HeatedLoop loop = problem.loops().get(i);
            List<FloorZone> own = zones(loop, film(flows.losses().get(i), coolant));
            LoopHeat heat = heat(loop, own, flows.losses().get(i), coolant);
            loops.add(heat);
            zones.addAll(heat.zones());
            for (FloorZone z : own) {
                edge += z.area() * z.output().plane() * z.output().least();
                warm += z.area();
                weighted += z.area() * heat.mean();
            }
        }
        double beside = warm > 0 ? weighted / warm : mean;
        zones.addAll(output(bare(warm > 0 ? Math.min(1, edge / warm) : 0), beside));
        return new FloorState(loops, zones, coolant, flows.sum(), flows.head(), flows.endOfCurve());
    }

    private record Flows(List<LoopLosses> losses, double head, boolean endOfCurve) {
        double sum() {
            return losses.stream().mapToDouble(LoopLosses::flow).sum();
        }
    }

    private Flows flows(CoolantProperties coolant, List<Double> means) {
        List<LoopPath> paths = problem.loops().stream().map(HeatedLoop::path).toList();
        FlowRequest request = problem.supply().flow();
        if (request instanceof FlowRequest.ByPump pump) {
            PumpSolution s = new OperatingPoint().solve(new PumpProblem(pump.curve(), NOTHING, paths, coolant));
            return new Flows(s.loops(), s.head(), s.endOfCurve());
        }
        List<LoopLosses> losses = new ArrayList<>();
        if (request instanceof FlowRequest.ByVolume volume) {
            losses.addAll(new ParallelFlow().solve(paths, coolant, volume.flow()));
        } else {
            double spread = ((FlowRequest.BySpread) request).kelvin();
            for (int i = 0; i < paths.size(); i++) {
                losses.add(new DarcyWeisbach()
                        .losses(
                                paths.get(i),
                                coolant,
                                flowFor(
                                        problem.loops().get(i),
                                        films.get(i),
                                        means.get(i),
                                        spread * coolant.carried())));
            }
        }
        return new Flows(
                losses, losses.stream().mapToDouble(LoopLosses::total).max().orElseThrow(), false);
    }

    /** Flow at which a loop drops by the spread, l/min, for what a litre a minute carries then; a loop that gives nothing gets none. */
    private double flowFor(HeatedLoop loop, double film, double mean, double carried) {
        double given = output(zones(loop, film), mean).stream()
                .mapToDouble(z -> (z.upward() + z.downward()) * z.zone().area())
                .sum();
        return Math.max(0, Math.min(1000, given / carried));
    }

    private double film(LoopLosses losses, CoolantProperties coolant) {
        return new Gnielinski1976()
                .film(losses.reynolds(), coolant, problem.build().pipe().bore());
    }

    private List<FloorZone> zones(HeatedLoop loop, double film) {
        Contact contact = new Contact(gap, film);
        return loop.strips().stream()
                .filter(s -> s.length() > 0)
                .map(s -> new FloorZone(s.kind(), s.area(), methods.output(s, contact), s.name()))
                .toList();
    }

    private List<FloorZone> bare(double edge) {
        return problem.bare().stream()
                .filter(b -> b.area() > 0)
                .map(b -> new FloorZone(b.kind(), b.area(), methods.spill(b, edge)))
                .toList();
    }

    private List<FloorOutput.ZoneOutput> output(List<FloorZone> zones, double coolant) {
        if (zones.isEmpty()) {
            return List.of();
        }
        return new AreaWeighting()
                .solve(new FloorProblem(
                        zones,
                        problem.build().stack().surface(),
                        coolant,
                        problem.surroundings().room(),
                        problem.surroundings().outside()))
                .zones();
    }

    private LoopHeat heat(HeatedLoop loop, List<FloorZone> zones, LoopLosses losses, CoolantProperties coolant) {
        double toRoom =
                zones.stream().mapToDouble(z -> z.area() * z.output().up()).sum();
        double toOutside =
                zones.stream().mapToDouble(z -> z.area() * z.output().down()).sum();
        double sink = (toRoom * problem.surroundings().room()
                        + toOutside * problem.surroundings().outside())
                / (toRoom + toOutside);
        double supply = problem.supply().temperature();
        double carried = losses.flow() * coolant.carried();
        double units = carried <= 0 ? Double.POSITIVE_INFINITY : (toRoom + toOutside) / carried;
        double back = sink + (supply - sink) * Math.exp(-units);
        double mean = sink + (supply - sink) * logarithmic(units);
        List<FloorOutput.ZoneOutput> given = output(zones, mean);
        return new LoopHeat(
                loop.name(),
                given.stream().mapToDouble(z -> z.upward() * z.zone().area()).sum(),
                given.stream().mapToDouble(z -> z.downward() * z.zone().area()).sum(),
                supply,
                back,
                mean,
                film(losses, coolant),
                losses,
                CoolantFilling.inPipe(loop.path().bore(), loop.path().length() - loop.tails()),
                given);
    }

    /** Mean of exp(-x) from 0 to a number of transfer units. */
    private static double logarithmic(double units) {
        if (Double.isInfinite(units)) {
            return 0;
        }
        return units < 1e-9 ? 1 : -Math.expm1(-units) / units;
    }

    /** Hottest strip of a kind at one temperature of the coolant, without film or gap. */
    List<StripOutput> hottest() {
        return problem.loops().stream()
                .flatMap(l -> zones(l, Double.POSITIVE_INFINITY).stream())
                .map(FloorZone::output)
                .toList();
    }
}
