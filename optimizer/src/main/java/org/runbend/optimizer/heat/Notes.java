package org.runbend.optimizer.heat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.optimizer.heat.circuit.CircuitRun;
import org.runbend.optimizer.heat.circuit.FloorSensor;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.limits.HighestSupply;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.need.DampSolution;
import org.runbend.optimizer.heat.need.SpaceLoss;

/** Puts what a person must know into sentences. */
final class Notes {
    private final HeatProblem problem;

    Notes(HeatProblem problem) {
        this.problem = problem;
    }

    List<String> notes(
            HighestSupply.Answer highest,
            Optional<HeatSolution.Sensor> sensor,
            Optional<CircuitRun> run,
            Optional<DampSolution> damp,
            FloorState state) {
        List<String> notes = new ArrayList<>();
        notes.add(
                "Height adds nothing to the pump's head in a filled closed circuit; it sets the pressure to fill with, the"
                        + " margin to boiling and where the header tank must sit.");
        if (problem.supply().highest() > highest.celsius()) {
            notes.add(String.format(
                    Locale.ROOT,
                    "A mixing valve or a limit of %.0f degrees C or less is needed before the floor (%s).",
                    highest.setting(),
                    highest.name()));
        }
        if (problem.circuit().sensor().isPresent() || problem.supply().highest() > highest.celsius()) {
            notes.add("A floor sensor with an on/off valve is control, not a safety limit.");
        }
        sensor.ifPresent(s -> notes.add(sensor(s)));
        if (!(state.flow() > 0)) {
            notes.add("No coolant flows: the floor gives nothing.");
        }
        if (state.endOfCurve()) {
            notes.add("The pump would push more than its curve shows; the flow of the curve's end is reckoned with.");
        }
        source(notes, run, state);
        bridges(notes);
        damp(notes, damp);
        return notes;
    }

    /** Which surface is meant, and what the top of the floor then has. */
    private String sensor(HeatSolution.Sensor sensor) {
        Optional<FloorSensor> given = problem.circuit().sensor();
        double room = problem.surroundings().room();
        if (given.isPresent()) {
            return String.format(
                    Locale.ROOT,
                    "The floor sensor is set to %.0f degrees C at the plate, under the cover; the floor's top then has about"
                            + " %.0f degrees C in a room of %.0f.",
                    given.get().setting(),
                    sensor.top(),
                    room);
        }
        return String.format(
                Locale.ROOT,
                "A floor sensor under a plate may be set to %.0f degrees C at most (between on and off %.1f K): the floor's top"
                        + " over the plates then has about %.0f degrees C in a room of %.0f.",
                Math.floor(sensor.highest()),
                sensor.hysteresis(),
                sensor.top(),
                room);
    }

    private void bridges(List<String> notes) {
        problem.surroundings().space().ifPresent(space -> space.surfaces().stream()
                .filter(SpaceLoss.Surface::bridged)
                .forEach(s -> notes.add("Metal goes through the insulation of '" + s.name()
                        + "': EN ISO 6946 does not hold there and says too little; give its transmittance by EN ISO"
                        + " 10211.")));
    }

    private void damp(List<String> notes, Optional<DampSolution> damp) {
        damp.filter(DampSolution::wet)
                .ifPresent(d -> notes.add(String.format(
                        Locale.ROOT,
                        "Metal under the floor has %.0f degrees C, the room's air of %.0f %% humidity wets what is colder than %.0f:"
                                + " where that gets, it gets wet. Close the joints of the insulation towards the room (after EN ISO"
                                + " 13788; how much vapour gets through it does not say).",
                        d.metal(),
                        100 * problem.surroundings().humidity(),
                        d.dewPoint())));
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
        run.filter(r -> r.duty() == 1 && problem.circuit().sensor().isPresent())
                .ifPresent(r -> notes.add(String.format(
                        Locale.ROOT,
                        "The floor sensor never closes the valve: with what is sent to the floor the plates come to %.0f degrees C"
                                + " only%s.",
                        r.hottestPlates(),
                        problem.circuit().cylinder().isPresent() ? ", and the cylinder gets nothing" : "")));
        run.ifPresent(r -> notes.add(String.format(
                Locale.ROOT,
                "In the long run the valve is open to the floor for %.0f %% of the time, the surface swings by %.1f K and the floor"
                        + " takes %.0f %% of the source's heat.",
                100 * r.duty(),
                r.swing(),
                100 * r.floorShare())));
    }

    /** What was assumed; warm-up and circuit are reckoned at {@code held} degrees C where the supply asked is too hot. */
    List<String> assumptions(Optional<Double> held) {
        List<String> list = new ArrayList<>();
        list.add("Contact of pipe and plate: 0 to 0.2 mm of air, 0.1 mm in the figures, none where a limit is held.");
        list.add(
                "Each kind of floor gives as if it went on for ever; reckoned place by place, with the edges of the plates, a floor"
                        + " comes to up to 12 % less.");
        list.add(String.format(
                Locale.ROOT,
                "Heat transfer of the surface %.1f W/(m2 K), radiation included (EN 1264-2).",
                problem.build().stack().surface()));
        if (problem.supply().source().isEmpty()) {
            list.add("The source's highest temperature is not given: the supply is taken for it.");
        }
        if (problem.supply().flow() instanceof FlowRequest.BySpread s) {
            list.add(String.format(
                    Locale.ROOT,
                    "Neither pump nor flow is given: the flow at which each loop drops by %.0f K.",
                    s.kelvin()));
        }
        if (problem.circuit().source().filter(HeatSource::reachesFloor).isEmpty()) {
            list.add(String.format(
                    Locale.ROOT,
                    "Warm-up: floor, coolant and the room's air at %.0f degrees C, coolant straight up to the supply within %d"
                            + " minutes, air as cold all along.",
                    Math.min(
                            problem.surroundings().start(),
                            problem.surroundings().room()),
                    WarmUpReckoning.RAMP));
        } else {
            list.add(String.format(
                    Locale.ROOT,
                    "Circuit: floor and coolant at %.0f degrees C at first, the room at %.0f all along (its air is heated too, so the"
                            + " very surface is nearer to it from the first minute); pipes and heater hold no heat of their own.",
                    problem.surroundings().start(),
                    problem.surroundings().room()));
        }
        held.ifPresent(h -> list.add(String.format(
                Locale.ROOT,
                "Warm-up and circuit are reckoned with %.0f degrees C into the floor, the highest that keeps every limit, not with"
                        + " the %.0f asked for.",
                h,
                problem.supply().temperature())));
        if (problem.surroundings().sleeping() == Sleeping.UNSAID) {
            list.add(
                    "Nobody said whether somebody sleeps on the floor (heating.sleeping): what he would feel bounds no supply.");
        }
        return list;
    }
}
