package org.runbend.optimizer.quote;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.Remark;

/** What a quotation takes for granted: the floor, coverage, pipe and heat it was reckoned with, and what the order left to us. */
final class Granted {
    private static final double M2 = 1e6;
    private static final double METRE = 1000;

    private Granted() {}

    static List<String> of(KitPlan plan) {
        List<String> sentences = new ArrayList<>();
        Job job = plan.job();
        sentences.add(text(
                "The floor is as the order gives it, %.2f m2; the pipe serves %.1f %% of what is to be heated.",
                FloorShapes.polygon(job.floor().outline()).getArea() / M2, plan.served()));
        sentences.add(plates(plan));
        double pipe =
                plan.loops().stream().mapToLong(KitPlan.LoopPlan::cutLength).sum();
        sentences.add(text(
                "%.2f m of pipe are cut: tails of %s mm and %s mm from the port to the valves and %s %% more are in it.",
                pipe / METRE,
                Plain.number(job.pipe().flowTail()),
                Plain.number(job.pipe().returnTail()),
                Plain.number(100 * job.pipe().allowance())));
        plan.remarks().stream()
                .filter(Remark.ThickerInsulation.class::isInstance)
                .map(Remark::words)
                .forEach(sentences::add);
        heat(plan, sentences);
        sentences.addAll(job.written().assumptions());
        return sentences;
    }

    private static String plates(KitPlan plan) {
        String all = text(
                "Spreader plates cover %.1f %% of the straight pipe",
                100 * plan.plates().coverage());
        if (plan.job().plates().byHeat()) {
            return all + ": what the heat wanted needs.";
        }
        String asked = Plain.number(100 * plan.job().plates().coverage()) + " % was asked";
        return plan.checks().stream()
                .filter(c -> c.name().equals(PlanCheck.PLATED))
                .findFirst()
                .map(c -> text("%s, and %.1f %% of what can take plates, of which %s.", all, c.value(), asked))
                .orElse(all + ".");
    }

    private static void heat(KitPlan plan, List<String> sentences) {
        if (plan.job().heating().isEmpty()) {
            sentences.add("No temperatures were given, so no heat is promised.");
            return;
        }
        Job.Heating h = plan.job().heating().get();
        sentences.add(
                "Temperatures asked: flow " + Plain.number(h.flow()) + ", room " + Plain.number(h.room()) + ", outside "
                        + Plain.number(h.outside()) + " degrees C"
                        + (h.request().wanted().isPresent()
                                ? "; " + Plain.number(h.request().wanted().getAsDouble()) + " W are wanted."
                                : "."));
        plan.heat().ifPresent(k -> sentences.add(promise(k.solution(), h)));
    }

    /** Heat is promised at no flow that the plan itself forbids. */
    private static String promise(HeatSolution heat, Job.Heating asked) {
        HeatSolution.Output o = heat.output();
        if (!heat.isTooHot()) {
            return text(
                            "Reckoned, not measured: %.0f to %.0f W into the room at these temperatures.",
                            o.upwardLeast(), o.upwardMost())
                    + wanted(asked, o.upward());
        }
        String flow = Plain.number(asked.flow());
        String limit = heat.highestSupply().name();
        return heat.held()
                .map(h -> text(
                                "The flow may have %s degrees C at most, not the %s asked: more breaks a limit (%s). Reckoned, not"
                                        + " measured: %.0f to %.0f W into the room at %1$s degrees C.",
                                Plain.number(h.supply()), flow, limit, h.upwardLeast(), h.upwardMost())
                        + wanted(asked, h.upward()))
                .orElseGet(() -> text(
                        "No heat is promised: a flow of %s degrees C as asked breaks a limit (%s), and none that is warmer than the"
                                + " room keeps it.",
                        flow, limit));
    }

    private static String wanted(Job.Heating asked, double upward) {
        double wanted = asked.request().wanted().orElse(0);
        return upward < wanted
                ? " That is less than the " + Plain.number(wanted) + " W wanted: the rest must come from elsewhere."
                : "";
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
