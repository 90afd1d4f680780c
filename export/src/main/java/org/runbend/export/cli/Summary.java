package org.runbend.export.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.catalog.product.Money;
import org.runbend.export.data.TapeText;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.choice.Alternative;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitChange;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.PlateOptions;
import org.runbend.optimizer.planning.LoopComparison;

/** What a person reads on the terminal after a plan. */
final class Summary {
    private final PrintWriter out;
    private final TapeText tape;

    /** Lines to a terminal, lengths in the unit of a job too. */
    Summary(PrintWriter out, Job job) {
        this.out = out;
        this.tape = new TapeText(job);
    }

    void print(KitPlan plan, Path folder) {
        for (KitPlan.LoopPlan loop : plan.loops()) {
            if (!plan.isOnLattice()) {
                line(
                        "Loop %s, as drawn: %.2f m on the floor, %.2f m to cut, %s",
                        loop.name(),
                        loop.floorLength() / 1000,
                        loop.cutLength() / 1000.0,
                        BendCount.of(loop.breakdown().elements()).words());
                continue;
            }
            line(
                    "Loop %s: %.2f m on the floor, %.2f m to cut, %s%s, %d%s %s of %s left out",
                    loop.name(),
                    loop.floorLength() / 1000,
                    loop.cutLength() / 1000.0,
                    BendCount.of(loop.breakdown().elements()).words(),
                    bound(loop),
                    loop.leftOut(),
                    plan.loops().size() == 1 ? " of " + plan.lattice().reachable() : "",
                    plan.loops().size() > 1 && loop.leftOut() == 1 ? "place" : "places",
                    place(plan));
        }
        line(
                "Plates: %s from %s, cost %s (proved: not under %s; run by run %s)",
                count(plan.plates().pieces().size(), "piece"),
                count(plan.plates().stock().size(), "plate"),
                money(plan, plan.plates().bought()),
                money(plan, plan.plates().bound()),
                money(plan, plan.plates().runByRun()));
        fewer(plan).ifPresent(text -> line("%s", text));
        line("Box: %s, %.1f kg, %s", count(plan.items().size(), "line"), plan.weight(), money(plan, plan.total()));
        plan.heat().map(h -> heat(h.solution())).ifPresent(text -> line("%s", text));
        if (!plan.notSupplied().isEmpty()) {
            line("Not in the box: %s", String.join("; ", plan.notSupplied()));
        }
        for (PlanCheck check : plan.checks()) {
            if (check.verdict() != PlanCheck.Verdict.OK) {
                printCheck(check);
            }
        }
        plan.remarkWords().forEach(r -> line("Note: %s", r));
        bare("Written to " + folder);
    }

    private static String heat(HeatSolution heat) {
        String need = heat.need()
                .map(n -> String.format(Locale.ROOT, ", %.0f %% of what is needed", 100 * n.share()))
                .orElse("");
        return String.format(
                Locale.ROOT,
                "Heat: %.0f W into the room (%.0f to %.0f)%s, surface %.1f degrees C, %.2f l/min at %.1f kPa%s",
                heat.output().upward(),
                heat.output().upwardLeast(),
                heat.output().upwardMost(),
                heat.held().isPresent() ? "" : need,
                heat.output().surfaceMean(),
                heat.flow().volume(),
                heat.flow().pressureDrop(),
                heat.held()
                        .map(h -> String.format(
                                Locale.ROOT,
                                "; %.0f W at %.0f degrees C, the highest flow that keeps every limit%s",
                                h.upward(),
                                h.supply(),
                                need))
                        .orElse(""));
    }

    /** What fewer lengths of plate would cost, where they were compared. */
    private static Optional<String> fewer(KitPlan plan) {
        if (plan.sawWork().lengths() < 2) {
            return Optional.empty();
        }
        List<String> costs = plan.plateOptions().map(PlateOptions::lengths).orElse(List.of()).stream()
                .filter(o -> o.limit().isPresent())
                .map(o -> o.limit().getAsInt() + ": " + money(plan, o.plates().bought()))
                .toList();
        return costs.isEmpty()
                ? Optional.empty()
                : Optional.of("Plates are cut to " + plan.sawWork().lengths() + " lengths; with plates.maxLengths "
                        + String.join(", ", costs));
    }

    void printChecks(KitPlan plan) {
        plan.checks().forEach(this::printCheck);
        plan.remarkWords().forEach(r -> line("note  %s", r));
    }

    void printComparison(LoopComparison comparison, Path folder) {
        line("Beside your loop, one of ours. %s", comparison.verdict());
        comparison.lines().forEach(l -> line("  %s", l));
        bare("Ours is written to " + folder);
    }

    void printChange(KitChange change) {
        change.sentences().forEach(s -> line("%s", s));
    }

    void printChoice(Choice choice) {
        line("Alternatives (plan --take N goes on with one):");
        for (Alternative a : choice.alternatives()) {
            line(
                    "  %d  %s: %s%d min of work, %s, %s, heat %.1f %% uneven, %.2f m to cut, %.1f %% of the floor served",
                    a.number(),
                    a.name(),
                    a.figures().watts().isPresent() ? a.figures().watts().getAsLong() + " W, " : "",
                    a.figures().minutes(),
                    BendCount.ofAll(a.plan().loops().stream()
                                    .map(KitPlan.LoopPlan::breakdown)
                                    .toList())
                            .words(),
                    money(a.plan(), a.figures().price()),
                    a.figures().uneven() / 10.0,
                    a.figures().pipe() / 100.0,
                    a.figures().served() / 10.0);
        }
        if (!choice.hasHeat()) {
            line(
                    "No plan is named warmest: the job does not give all of build and heating that heat is reckoned from.");
        }
    }

    private void printCheck(PlanCheck c) {
        line(
                "%-5s %s: %s, limit %s (%s)",
                c.verdict().name().toLowerCase(Locale.ROOT),
                c.name(),
                measure(c.value(), c.unit()),
                measure(c.limit(), c.unit()),
                c.source());
    }

    /** What a place is: a square of the spacing. */
    private static String place(KitPlan plan) {
        String side =
                String.format(Locale.ROOT, "%.1f", plan.lattice().spacing()).replaceFirst("\\.0$", "");
        return side + " x " + side + " mm";
    }

    private static String bound(KitPlan.LoopPlan loop) {
        if (loop.turnBound().isEmpty()) {
            return loop.objectiveBound().orElse(-1) == loop.objective()
                    ? " (proved: no loop is better at what a bend and a place are worth here)"
                    : "";
        }
        int bound = loop.turnBound().getAsInt();
        int over = loop.turns() - bound;
        return over == 0 ? " (proved fewest)" : " (at most " + over + " quarter bends over the fewest)";
    }

    private String measure(double value, String unit) {
        return number(value) + " " + unit + (unit.equals("mm") ? tape.also(value) : "");
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.replaceFirst("\\.?0+$", "");
    }

    private static Money money(KitPlan plan, long minor) {
        return plan.job().catalog().money(minor);
    }

    private void line(String text, Object... values) {
        bare(tape.note(String.format(Locale.ROOT, text, values)));
    }

    private void bare(String text) {
        out.println(Terminal.plain(text));
    }

    private static String count(int number, String one) {
        return number + " " + one + (number == 1 ? "" : "s");
    }
}
