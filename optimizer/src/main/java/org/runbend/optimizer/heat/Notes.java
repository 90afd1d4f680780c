package org.runbend.optimizer.heat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.optimizer.heat.circuit.CircuitRun;
import org.runbend.optimizer.heat.circuit.FloorSensor;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.limits.HighestSupply;

/** Puts what a person must know into sentences. */
final class Notes {
    private final HeatProblem problem;

    Notes(HeatProblem problem) {
        this.problem = problem;
    }

    List<String> notes(HighestSupply.Answer highest, Optional<CircuitRun> run, FloorState state) {
        List<String> notes = new ArrayList<>();
        notes.add(
                "Height adds nothing to the pump's head in a filled closed circuit; it sets the pressure to fill with, the"
                        + " margin to boiling and where the header tank must sit.");
        if (problem.supply().highest() > highest.celsius()) {
            notes.add(String.format(
                    Locale.ROOT,
                    "A mixing valve or a limit of %.0f degrees C or less is needed before the floor (%s).",
                    Math.floor(highest.celsius()),
                    highest.name()));
        }
        if (problem.circuit().sensor().isPresent() || problem.supply().highest() > highest.celsius()) {
            notes.add("A floor sensor with an on/off valve is control, not a safety limit.");
        }
        problem.circuit().sensor().ifPresent(s -> notes.add(sensor(s)));
        if (!(state.flow() > 0)) {
            notes.add("No coolant flows: the floor gives nothing.");
        }
        if (state.endOfCurve()) {
            notes.add("The pump would push more than its curve shows; the flow of the curve's end is reckoned with.");
        }
        source(notes, run, state);
        return notes;
    }

    /** Which surface is meant, and what the top of the floor then has. */
    private String sensor(FloorSensor sensor) {
        double room = problem.surroundings().room();
        double surface = problem.build().stack().surface();
        double top = room + (sensor.setting() - room) * problem.build().stack().up() / surface;
        return String.format(
                Locale.ROOT,
                "The floor sensor is set to %.0f degrees C at the plate, under the cover; the floor's top then has about %.0f"
                        + " degrees C in a room of %.0f.",
                sensor.setting(),
                top,
                room);
    }

    private void source(List<String> notes, Optional<CircuitRun> run, FloorState state) {
        Optional<HeatSource> source = problem.circuit().source();
        if (source.isPresent() && !source.get().reachesFloor()) {
            notes.add("A mains element in the cylinder warms water alone, not the floor.");
        }
        if (source.isPresent() && source.get() instanceof HeatSource.Heater h) {
            double given = state.upward() + state.downward();
            if (given < h.least()) {
                notes.add(String.format(
                        Locale.ROOT,
                        "The floor takes %.0f W, less than the heater's least power of %.0f W: it will start and stop.",
                        given,
                        h.least()));
            }
            if (given > h.most()) {
                notes.add(String.format(
                        Locale.ROOT,
                        "The floor would take %.0f W, more than the heater's %.0f W: it stays cooler than reckoned.",
                        given,
                        h.most()));
            }
        }
        run.ifPresent(r -> notes.add(String.format(
                Locale.ROOT,
                "In the long run the valve is open to the floor for %.0f %% of the time, the surface swings by %.1f K and the floor"
                        + " takes %.0f %% of the source's heat.",
                100 * r.duty(),
                r.swing(),
                100 * r.floorShare())));
    }

    List<String> assumptions() {
        List<String> list = new ArrayList<>();
        list.add("Contact of pipe and plate: 0 to 0.2 mm of air, 0.1 mm in the figures, none where a limit is held.");
        list.add(String.format(
                Locale.ROOT,
                "Heat transfer of the surface %.1f W/(m2 K), radiation included (EN 1264-2).",
                problem.build().stack().surface()));
        if (problem.supply().source().isEmpty()) {
            list.add("The source's highest temperature is not given: the supply is taken for it.");
        }
        if (problem.supply().flow() instanceof FlowWish.BySpread s) {
            list.add(String.format(
                    Locale.ROOT,
                    "Neither pump nor flow is given: the flow at which each loop drops by %.0f K.",
                    s.kelvin()));
        }
        if (problem.circuit().source().isEmpty()) {
            list.add(String.format(
                    Locale.ROOT,
                    "Warm-up: floor and coolant at %.0f degrees C, coolant straight up to the supply within %d minutes.",
                    problem.surroundings().start(),
                    WarmUpReckoning.RAMP));
        }
        return list;
    }
}
