package org.runbend.optimizer.heat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.heat.circuit.CircuitRun;
import org.runbend.optimizer.heat.circuit.WarmUp;
import org.runbend.optimizer.heat.coolant.CoolantFilling;
import org.runbend.optimizer.heat.coolant.ExpansionProblem;
import org.runbend.optimizer.heat.coolant.ExpansionSolution;
import org.runbend.optimizer.heat.coolant.ThermalExpansion;
import org.runbend.optimizer.heat.flow.AirCarrying;
import org.runbend.optimizer.heat.flow.BalanceProblem;
import org.runbend.optimizer.heat.flow.BalanceSolution;
import org.runbend.optimizer.heat.flow.LoopBalance;
import org.runbend.optimizer.heat.flow.LoopLosses;
import org.runbend.optimizer.heat.flow.LoopPath;
import org.runbend.optimizer.heat.flow.ParallelFlow;
import org.runbend.optimizer.heat.flow.PumpCurve;
import org.runbend.optimizer.heat.flow.StandingPressure;
import org.runbend.optimizer.heat.flow.StandingProblem;
import org.runbend.optimizer.heat.flow.StandingSolution;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.heat.limits.HighestSupply;
import org.runbend.optimizer.heat.need.DampProblem;
import org.runbend.optimizer.heat.need.DampSolution;
import org.runbend.optimizer.heat.need.HeatNeed;
import org.runbend.optimizer.heat.need.Iso13788;
import org.runbend.optimizer.heat.need.NeedProblem;
import org.runbend.optimizer.heat.need.NeedSolution;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.En1264TypeB;
import org.runbend.optimizer.heat.output.TypeBProblem;
import org.runbend.optimizer.heat.output.TypeBSolution;

/**
 * Reckons a floor: heat by the fin method over the real plan, flow by Darcy and Weisbach, need, limits and warm-up. Contact between pipe
 * and plate is taken in the middle of 0 to 0.2 mm of air; both ends are told beside. What warms a bare place from its
 * neighbour is in the heat, not in the drop of the coolant.
 */
public final class HeatReckoning {
    /** Air between pipe and plate that is reckoned with, mm. */
    public static final double USUAL_GAP = Contact.POOR / 2;

    private static final int CURVE_PARTS = 40;
    /** How far beyond the operating point the curve of the pipes is told. */
    private static final double BEYOND = 1.3;

    /** The solution. */
    public HeatSolution solve(HeatProblem problem) {
        FloorState state = new FloorReckoning(problem, USUAL_GAP).solve();
        LimitReckoning limits = new LimitReckoning(problem);
        CoolantFilling filling = filling(problem);
        StandingSolution standing = standing(problem);
        double film = state.loops().get(0).film();
        HighestSupply.Answer highest = limits.highestSupply();
        Optional<HeatProblem> held = held(problem, highest);
        FloorState used =
                held.map(p -> new FloorReckoning(p, USUAL_GAP).solve()).orElse(state);
        WarmUpReckoning overTime = new WarmUpReckoning(held.orElse(problem));
        Optional<CircuitRun> circuit = overTime.circuit(film, USUAL_GAP, state.flow(), filling.litres(), false);
        Optional<CircuitRun> stuck = circuit.isPresent() && overTime.isHeldBack()
                ? overTime.circuit(film, USUAL_GAP, state.flow(), filling.litres(), true)
                : Optional.empty();
        Optional<HeatSolution.Sensor> sensor = limits.sensorSetting();
        Optional<DampSolution> damp = damp(problem, used);
        Notes notes = new Notes(problem);
        List<Finding> findings = limits.judge(state, standing);
        return new HeatSolution(
                output(problem, state, limits.hottest().celsius()),
                state.loops(),
                flow(problem, state),
                balance(problem, state),
                filling,
                expansion(problem, filling),
                standing,
                need(problem, used),
                damp,
                overTime.mass(film, USUAL_GAP),
                circuit.map(HeatReckoning::firstHour).orElseGet(() -> overTime.warmUp(film, USUAL_GAP)),
                limits.hottest(),
                circuit,
                stuck,
                sensor,
                findings,
                highest,
                held.map(p -> held(p, used)),
                notes.notes(highest, sensor, circuit, damp, used),
                notes.assumptions(held.map(p -> p.supply().temperature())));
    }

    /** The floor with its supply held down to where every limit is kept, if that asked for is over it and a warm one is not. */
    private static Optional<HeatProblem> held(HeatProblem problem, HighestSupply.Answer highest) {
        return problem.supply().temperature() > highest.celsius()
                        && highest.setting() > problem.surroundings().room()
                ? Optional.of(problem.mixedTo(highest.setting()))
                : Optional.empty();
    }

    private static HeatSolution.Held held(HeatProblem problem, FloorState state) {
        double supply = problem.supply().temperature();
        return new HeatSolution.Held(
                supply,
                state.upward(),
                new FloorReckoning(problem, Contact.POOR).solve().upward(),
                new FloorReckoning(problem, 0).solve().upward(),
                state.surfaceMean(),
                new SupplyLimits(problem).surface(supply));
    }

    private static WarmUp firstHour(CircuitRun run) {
        return new WarmUp(run.points().stream()
                .limit(WarmUpReckoning.WATCHED + 1L)
                .map(p -> new WarmUp.Point(p.minute(), p.surface(), p.sensor(), p.coolant()))
                .toList());
    }

    private static HeatSolution.Output output(HeatProblem problem, FloorState state, double peak) {
        return new HeatSolution.Output(
                state.area(),
                state.upward(),
                new FloorReckoning(problem, Contact.POOR).solve().upward(),
                new FloorReckoning(problem, 0).solve().upward(),
                state.downward(),
                state.surfaceMean(),
                peak,
                state.zones(),
                standard(problem));
    }

    private static Optional<TypeBSolution> standard(HeatProblem problem) {
        return problem.loops().stream()
                .flatMap(l -> l.strips().stream())
                .filter(s -> s.plate().isPresent() && s.length() > 0)
                .max(Comparator.comparingDouble(PipeStrip::length))
                .map(s -> new En1264TypeB()
                        .solve(new TypeBProblem(
                                Math.max(0.01, Math.min(2, s.pitch() / 1000)),
                                problem.build().pipe(),
                                s.plate().orElseThrow(),
                                problem.build().stack().cover() / 1000,
                                problem.build().stack().coverConductivity(),
                                problem.build().stack().finish(),
                                1)));
    }

    private static HeatSolution.Flow flow(HeatProblem problem, FloorState state) {
        double supply = problem.supply().temperature();
        return new HeatSolution.Flow(
                state.flow(),
                supply,
                state.back(supply),
                state.loops().stream()
                        .mapToDouble(l -> l.losses().velocity())
                        .max()
                        .orElseThrow(),
                state.loops().stream()
                        .mapToDouble(l -> l.losses().total())
                        .max()
                        .orElseThrow(),
                state.pumpHead(),
                new AirCarrying().flushing(problem.build().pipe().bore()),
                state.coolant(),
                pipes(problem, state));
    }

    private static List<PumpCurve.Point> pipes(HeatProblem problem, FloorState state) {
        List<PumpCurve.Point> points = new ArrayList<>();
        if (problem.supply().flow() instanceof FlowRequest.ByPump pump) {
            List<LoopPath> paths =
                    problem.loops().stream().map(HeatedLoop::path).toList();
            PumpCurve curve = pump.curve();
            for (int i = 0; i <= CURVE_PARTS; i++) {
                double flow = Math.min(curve.greatest(), BEYOND * state.flow()) * i / CURVE_PARTS;
                double head = new ParallelFlow()
                        .solve(paths, state.coolant(), flow).stream()
                                .mapToDouble(LoopLosses::total)
                                .max()
                                .orElseThrow();
                if (head > curve.head(0)) {
                    break;
                }
                points.add(new PumpCurve.Point(flow, head));
            }
        }
        return points;
    }

    /** Valves for flows in proportion to what each loop gives, so that all come back equally warm. */
    private static Optional<BalanceSolution> balance(HeatProblem problem, FloorState state) {
        double heat = state.loops().stream().mapToDouble(HeatReckoning::given).sum();
        boolean all = state.loops().stream().allMatch(l -> given(l) > 0);
        if (problem.loops().size() < 2 || !all || state.flow() <= 0) {
            return Optional.empty();
        }
        List<LoopPath> paths = problem.loops().stream().map(HeatedLoop::path).toList();
        List<Double> flows = state.loops().stream()
                .map(l -> Math.max(1e-6, state.flow() * given(l) / heat))
                .toList();
        return Optional.of(new LoopBalance().solve(new BalanceProblem(paths, flows, state.coolant())));
    }

    private static double given(LoopHeat loop) {
        return loop.upward() + loop.downward();
    }

    private static CoolantFilling filling(HeatProblem problem) {
        double bore = problem.build().pipe().bore();
        double tails = problem.loops().stream().mapToDouble(HeatedLoop::tails).sum();
        double pipe =
                problem.loops().stream().mapToDouble(l -> l.path().length()).sum();
        return new CoolantFilling(
                CoolantFilling.inPipe(bore, Math.max(0, pipe - tails)),
                CoolantFilling.inPipe(bore, tails),
                problem.circuit().litres(),
                problem.supply().mixture());
    }

    private static double coldest(HeatProblem problem) {
        return problem.supply().coldest().orElse(problem.surroundings().outside());
    }

    private static ExpansionSolution expansion(HeatProblem problem, CoolantFilling filling) {
        double cold = Math.min(coldest(problem), problem.supply().highest());
        CircuitParts parts = problem.circuit();
        return new ThermalExpansion()
                .solve(new ExpansionProblem(
                        problem.supply().mixture(),
                        filling.litres(),
                        cold,
                        problem.supply().highest(),
                        parts.closed(),
                        parts.closed() ? Math.min(standing(problem).fill(), parts.relief() - 10) : 0,
                        parts.relief()));
    }

    private static StandingSolution standing(HeatProblem problem) {
        CircuitParts parts = problem.circuit();
        return new StandingPressure()
                .solve(new StandingProblem(
                        problem.supply().mixture(),
                        coldest(problem),
                        problem.supply().highest(),
                        parts.head(),
                        parts.rise(),
                        parts.closed()));
    }

    private static Optional<NeedSolution> need(HeatProblem problem, FloorState state) {
        Surroundings s = problem.surroundings();
        return s.space()
                .map(loss -> new HeatNeed().solve(new NeedProblem(loss, s.room(), s.outside(), state.upward())));
    }

    private static Optional<DampSolution> damp(HeatProblem problem, FloorState state) {
        Surroundings s = problem.surroundings();
        if (!s.metalUnder()) {
            return Optional.empty();
        }
        return Optional.of(new Iso13788()
                .solve(new DampProblem(
                        s.room(),
                        s.humidity(),
                        s.outside(),
                        state.downward() / state.area(),
                        problem.build().stack().outer())));
    }
}
