package org.runbend.export.papers;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.runbend.catalog.product.Item;
import org.runbend.export.data.TapeText;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.channel.SensorProblem;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.setout.SetOut;

/** The part of a fitting sheet that lays sensor and pipe, and what of the box is used for it. */
final class PipeSteps {
    private final KitPlan plan;
    private final Job job;
    private final SetOut marks;
    private final MarkingOut out;
    private final TapeText tape;

    PipeSteps(KitPlan plan, SetOut marks, MarkingOut out) {
        this.plan = plan;
        this.job = plan.job();
        this.marks = marks;
        this.out = out;
        tape = new TapeText(job);
    }

    /** What the box holds for a part of the work, by what its number follows: "From the box: ..."; nothing if there is none. */
    static void fromBox(KitPlan plan, Steps steps, Set<Item.Per> rules) {
        Set<String> skus = plan.job().catalog().items().stream()
                .filter(i -> rules.contains(i.per()))
                .map(Item::sku)
                .collect(Collectors.toSet());
        String things = plan.items().stream()
                .filter(i -> skus.contains(i.sku()))
                .map(i -> i.quantity() + " x " + i.name())
                .collect(Collectors.joining("; "));
        if (!things.isEmpty()) {
            steps.words("From the box: " + things + ".");
        }
    }

    /** Before the plates: one of them lies over it. */
    void sensor(Steps steps, SensorPlan sensor) {
        steps.part("Floor sensor");
        if (sensor.at().isEmpty()) {
            steps.words(
                    "No place under a plate can be reached from the port without crossing pipe: ask before you lay one.");
            return;
        }
        fromBox(plan, steps, EnumSet.of(Item.Per.SENSOR));
        Point at = marks.datum().frame().from(sensor.at().get());
        steps.step(
                "The sensor lies under its plate at " + out.place(at) + " (along / across), its cable in a conduit "
                        + tape.beside(sensor.length())
                        + " long that begins between the holes and turns at the places of the table. The conduit is not in the box.");
        PdfTable corners =
                new PdfTable(Column.left("conduit", 3), Column.right("along / across", 8), Column.right("to here", 4));
        for (int i = 0; i < sensor.conduit().size(); i++) {
            String what = i == 0 ? "begins" : i < sensor.conduit().size() - 1 ? "corner " + i : "sensor";
            corners.row(
                    what,
                    out.place(marks.datum().frame().from(sensor.conduit().get(i))),
                    tape.beside(sensor.marks().get(i)));
        }
        steps.flow().table(corners);
        double has = sensor.problem().size().cable();
        double more = sensor.conduit().get(0).distance(job.floor().port().at());
        steps.step(
                (Double.isInfinite(has) ? "See that the cable of the sensor is longer than that, " : cable(sensor, has))
                        + "with " + tape.beside(more) + " more to the port and what it needs from there.");
        steps.step(
                "Rout the conduit's channel as wide and as deep as the conduit, at most "
                        + tape.beside(SensorProblem.CONDUIT) + ", so that it stays flush, and round its corners so"
                        + " that the sensor can be pulled out and changed. Lay it, and pull the sensor in before its plate is laid.");
    }

    private String cable(SensorPlan sensor, double has) {
        return sensor.isCableShort()
                ? "The cable of " + tape.beside(has) + " is too short: get one that is longer than that, "
                : "Measure the cable, " + tape.beside(has) + " by the catalog: it must be longer than that, ";
    }

    void pipe(Steps steps) {
        steps.part("Lay the pipe");
        PdfTable table = new PdfTable(
                Column.left("loop", 2),
                Column.left("valve outlet", 3),
                Column.right("on the floor", 4),
                Column.right("return bends", 3),
                Column.right("quarter bends", 3),
                Column.right("cut to", 4));
        for (KitPlan.LoopPlan loop : plan.loops()) {
            BendCount count = BendCount.of(loop.breakdown().elements());
            table.row(
                    loop.name(),
                    Integer.toString(loop.outlet()),
                    tape.metres(loop.floorLength()),
                    Integer.toString(count.returns()),
                    Integer.toString(count.quarters()),
                    tape.metres((double) loop.cutLength()));
        }
        steps.flow().table(table);
        fromBox(
                plan,
                steps,
                EnumSet.of(Item.Per.PORT, Item.Per.BEND, Item.Per.METRE_OF_PIPE, Item.Per.JOINT, Item.Per.LOOP));
        steps.step(
                "Stand the coil on edge, or on a turning frame, beside the flow hole, and turn it as the pipe is drawn off: pipe pulled"
                        + " sideways off a lying coil comes twisted and springs out of the groove.");
        steps.step("Push " + ends(l -> CutLength.flowEnd(job, l.breakdown()))
                + " through the flow hole: the way to the port and a tail of "
                + tape.beside(job.pipe().flowTail())
                + ". Read the metre mark at the hole: all readings of part 6 count from it.");
        steps.step("Lay run by run in the order of flow, fixing each bend before the next run. " + bendWords()
                + " Warm pipe bends easier; never heat it with a flame.");
        steps.step("At the return hole the pipe reads "
                + plan.loops().stream()
                        .map(l -> MarkingOut.metres(l.floorLength()) + " m (loop " + l.name() + ")")
                        .collect(Collectors.joining(", "))
                + "; " + ends(l -> CutLength.returnEnd(job, l.breakdown()))
                + " or more must be left for the way to the port and a tail of "
                + tape.beside(job.pipe().returnTail())
                + ". What is over is the allowance: cut it off only when the tail has reached its valve.");
        steps.step("Join both tails to the valves with their adaptors, flow to flow, and write the loop on them.");
        hotTails(steps);
    }

    /** A length of each loop, or one where all have it. */
    private String ends(ToDoubleFunction<KitPlan.LoopPlan> length) {
        List<String> all = plan.loops().stream()
                .map(l -> tape.beside(length.applyAsDouble(l)))
                .toList();
        if (all.stream().distinct().count() == 1) {
            return all.get(0);
        }
        return plan.loops().stream()
                .map(l -> tape.beside(length.applyAsDouble(l)) + " (loop " + l.name() + ")")
                .collect(Collectors.joining(", "));
    }

    private void hotTails(Steps steps) {
        plan.checks().stream()
                .filter(c -> c.name().equals(Finding.BARE_TAILS) && c.verdict() != PlanCheck.Verdict.OK)
                .findFirst()
                .ifPresent(c -> steps.step("Lag or cover tails and fittings that anybody can touch: they may get "
                        + HeatFigures.whole(c.value()) + " degrees C."));
    }

    private String bendWords() {
        double by = job.pipe().product().handRadius();
        String least = "No bend tighter than "
                + tape.beside(job.pipe().product().fittedRadius()) + " to the middle of the pipe";
        return plan.bendRadius() < by - 1e-6
                ? least + ", and bends under " + tape.beside(by) + " only with the bending aid."
                : least + ".";
    }
}
