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

/** The floor over time: over the strip of pipe that takes most of the floor. */
final class WarmUpReckoning {
    /** Coolant that takes this long to its temperature (common practice: 35 to 65 degrees C in 20 minutes), minutes. */
    static final int RAMP = 20;

    private static final int WATCHED = 60;
    private static final int LONG = 480;
    /** Without a plate nothing but the pipe's crown stores heat at the plane, J/(m2 K). */
    private static final double NO_PLATE = 200;

    private final HeatProblem problem;

    WarmUpReckoning(HeatProblem problem) {
        this.problem = problem;
    }

    /** Coolant straight up to the supply within 20 minutes. */
    WarmUp warmUp(double film, double gap) {
        Surroundings s = problem.surroundings();
        return new ExplicitWarmUp()
                .solve(new WarmUpProblem(
                        mass(film, gap),
                        s.start(),
                        s.room(),
                        s.outside(),
                        List.of(
                                new WarmUpProblem.Point(0, s.start()),
                                new WarmUpProblem.Point(RAMP, problem.supply().temperature())),
                        WATCHED));
    }

    /** The circuit over eight hours, where its source is known and reaches the floor. */
    Optional<CircuitRun> circuit(double film, double gap, double flow, double litres) {
        CircuitParts parts = problem.circuit();
        Optional<HeatSource> source = parts.source().filter(HeatSource::reachesFloor);
        if (source.isEmpty()) {
            return Optional.empty();
        }
        Surroundings s = problem.surroundings();
        return Optional.of(new CircuitSimulation()
                .solve(new CircuitProblem(
                        mass(film, gap),
                        Math.max(
                                0.01,
                                problem.loops().stream()
                                        .flatMap(l -> l.strips().stream())
                                        .mapToDouble(PipeStrip::area)
                                        .sum()),
                        problem.supply().mixture(),
                        Math.max(0.1, litres),
                        Math.min(1000, flow),
                        source.get(),
                        parts.cylinder(),
                        parts.blowers(),
                        parts.sensor(),
                        false,
                        s.start(),
                        s.room(),
                        s.outside(),
                        LONG)));
    }

    private FloorMass mass(double film, double gap) {
        PipeStrip most = problem.loops().stream()
                .flatMap(l -> l.strips().stream())
                .max(Comparator.comparingDouble(PipeStrip::area))
                .orElseThrow();
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
