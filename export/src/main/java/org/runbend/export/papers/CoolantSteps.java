package org.runbend.export.papers;

import static org.runbend.export.papers.HeatFigures.one;
import static org.runbend.export.papers.HeatFigures.two;
import static org.runbend.export.papers.HeatFigures.whole;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Coolant;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.LoopHeat;
import org.runbend.optimizer.heat.flow.BalanceSolution;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** The last parts of a fitting sheet: coolant goes in, and the floor gets warm for the first time. */
final class CoolantSteps {
    private static final double FREEZES = 0;
    /** Where nobody said how cold it gets it may freeze. */
    private static final double BELOW = -1;

    private final KitPlan plan;
    private final Job job;
    private final Optional<Coolant> coolant;

    CoolantSteps(KitPlan plan) {
        this.plan = plan;
        this.job = plan.job();
        coolant = job.heating().flatMap(h -> job.catalog().findCoolant(h.coolant()));
    }

    /** Whether it is water alone: no poison, and no frost protection. */
    private boolean isWater() {
        return coolant.map(c -> c.base() == Coolant.Base.WATER).orElse(false);
    }

    void filling(Steps steps) {
        steps.part("Fill, bleed and flush");
        steps.caution(
                isWater()
                        ? "Open nothing that is hot or under pressure."
                        : "Coolant with glycol may be poisonous to people and animals: no food, no open vessels; it goes to the"
                                + " collecting point, not down the drain. Open nothing that is hot or under pressure.");
        if (plan.heat().isEmpty()) {
            steps.step(
                    "Fill slowly from the lowest point until coolant comes without bubbles; the job gives no build-up or heating, so no"
                            + " amounts were worked out.");
            return;
        }
        HeatSolution heat = plan.heat().get().solution();
        HeatProblem problem = plan.heat().get().problem();
        if (!isWater()) {
            steps.step("Drain and blow out the water of the test.");
        }
        steps.step(goesIn(problem, heat));
        steps.step("Flush each loop " + (plan.loops().size() > 1 ? "alone, the others shut, " : "") + "with "
                + one(heat.flow().flushing()) + " l/min or more until no bubbles come: that flow carries air along.");
        steps.step(
                problem.circuit().closed()
                        ? "Fill cold to " + whole(heat.standing().fill())
                                + " kPa at the lowest point; the vessel must take "
                                + two(heat.expansion().room()) + " l."
                        : "Fill the header tank to its cold mark; over it " + room(heat)
                                + " l must stay free for the coolant to grow.");
        steps.step("Run the pump cold for half an hour, top up, bleed again; look at every joint.");
    }

    /** Never none: rounded up. */
    private static String room(HeatSolution heat) {
        return two(Math.ceil(100 * heat.expansion().room() - 1e-6) / 100);
    }

    private String goesIn(HeatProblem problem, HeatSolution heat) {
        String litres = two(heat.filling().litres()) + " l for loops, tails and what else the job tells of the circuit";
        if (isWater()) {
            return "Fill with water, " + litres + ".";
        }
        if (coolant.flatMap(Coolant::litre).isPresent()) {
            return "Fill with " + problem.supply().mixture().words() + " as it comes, " + litres
                    + ". It is ready mixed: no water is added, also when it is topped up.";
        }
        return "Mix " + problem.supply().mixture().words() + ", " + litres + " ("
                + two(heat.filling().glycol())
                + " l of glycol in it). Mix it before it goes in; glycol poured into standing water does not mix.";
    }

    void running(Steps steps) {
        steps.part("First heating");
        steps.caution(
                "Surfaces, valves and tails get hot. A floor that people lie on must not burn them: set the mixing valve before"
                        + " the heater is lit.");
        if (plan.heat().isEmpty()) {
            steps.step("Begin with the lowest setting and look at every joint once it is warm.");
            return;
        }
        HeatSolution heat = plan.heat().get().solution();
        Job.Heating heating = job.heating().orElseThrow();
        String limit = one(heat.highestSupply().celsius()) + " degrees C a limit is broken: "
                + heat.highestSupply().name() + ".";
        String asked = whole(heating.flow());
        if (heat.isTooHot()) {
            steps.step("Set the mixing valve to " + whole(heat.highestSupply().setting())
                    + " degrees C and no higher, though the job asks for " + asked + ": over " + limit);
            heat.held().ifPresent(h -> steps.step(gives(h.upward(), h.surfaceMean(), h.surfacePeak())));
        } else {
            steps.step("Set the mixing valve to " + asked + " degrees C; over " + limit);
            HeatSolution.Output o = heat.output();
            steps.step(gives(o.upward(), o.surfaceMean(), o.surfacePeak()));
        }
        balance(steps, heat);
        sensor(steps);
        frost(steps, heating);
    }

    private static String gives(double watts, double mean, double peak) {
        return "The floor then gives about " + whole(watts) + " W, with a surface of " + one(mean)
                + " degrees C in the mean and " + one(peak) + " at its hottest place.";
    }

    /** How the valves of several loops are set against each other. */
    private static void balance(Steps steps, HeatSolution heat) {
        heat.balance().ifPresent(b -> {
            List<String> loops = new ArrayList<>();
            for (int i = 0; i < heat.loops().size(); i++) {
                BalanceSolution.Setting setting = b.settings().get(i);
                LoopHeat loop = heat.loops().get(i);
                loops.add(loop.name() + " " + two(loop.losses().flow()) + " l/min, "
                        + (setting.throttled() > 0
                                ? "throttled by " + one(setting.throttled()) + " kPa (Kv " + two(setting.kv())
                                        + " m3/h)"
                                : "open"));
            }
            steps.step("Balance the loops at their valves with the pump running: " + String.join("; ", loops) + ".");
        });
    }

    /** What the controller is set to, never over what keeps the floor's limits. */
    private void sensor(Steps steps) {
        plan.heat().get().problem().circuit().sensor().ifPresent(s -> {
            double most = plan.heat()
                    .get()
                    .solution()
                    .sensor()
                    .map(HeatSolution.Sensor::highest)
                    .orElse(s.setting());
            steps.step("Set the controller of the floor sensor to " + one(Math.min(s.setting(), Math.floor(most)))
                    + " degrees C.");
        });
    }

    private void frost(Steps steps, Job.Heating heating) {
        if (isWater()) {
            if (Math.min(heating.coldest().orElse(BELOW), heating.outside()) < FREEZES) {
                steps.step(
                        "Frost: water freezes at 0 degrees C and bursts pipe and pump. Keep the floor above that, or drain it and"
                                + " blow it out before the frost.");
            }
            return;
        }
        heating.coldest()
                .ifPresent(c -> steps.step(
                        "Frost: a refractometer must show protection down to " + whole(c) + " degrees C or lower."));
    }
}
