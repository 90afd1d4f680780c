package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.runbend.catalog.product.Catalog;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Two plans of one floor side by side: the designer's and the one that we lay.
 *
 * @param own the plan of the designer's loop
 * @param ours the plan of ours
 */
public record LoopComparison(KitPlan own, KitPlan ours) {
    /** One line for each figure: the designer's, ours, and what ours saves. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(line(
                "pipe to cut", "m", 2, sum(own, l -> l.cutLength() / 1000.0), sum(ours, l -> l.cutLength() / 1000.0)));
        lines.add(line("return bends", "", 0, count(own).returns(), count(ours).returns()));
        lines.add(
                line("quarter bends", "", 0, count(own).quarters(), count(ours).quarters()));
        lines.add(line(
                "plates",
                "pieces",
                0,
                own.plates().pieces().size(),
                ours.plates().pieces().size()));
        lines.add(money("plates, cost", own.plates().bought(), ours.plates().bought()));
        lines.add(line(
                "straight pipe that has plates",
                "%",
                1,
                100 * own.plates().coverage(),
                100 * ours.plates().coverage()));
        lines.add(line("heated floor served", "%", 1, own.served(), ours.served()));
        lines.add(money("box, price", own.total(), ours.total()));
        return lines;
    }

    /** What ours is better at, in one sentence. */
    public String verdict() {
        double more = ours.served() - own.served();
        List<String> saved = new ArrayList<>();
        if (bends(ours) < bends(own)) {
            saved.add(
                    String.format(Locale.ROOT, "%.0f quarter bends (a return bend is two)", bends(own) - bends(ours)));
        }
        if (ours.total() < own.total()) {
            saved.add(own.job().catalog().money(own.total() - ours.total()).toString());
        }
        String serves = Math.abs(more) < 0.5
                ? "serves as much of the floor"
                : String.format(
                        Locale.ROOT, "serves %.1f %% %s of the floor", Math.abs(more), more > 0 ? "more" : "less");
        return "Ours " + serves + " and saves "
                + (saved.isEmpty() ? "neither bends nor money" : String.join(" and ", saved)) + ".";
    }

    private String money(String what, long own, long ours) {
        Catalog prices = this.own.job().catalog();
        String change =
                own == ours ? "the same" : prices.money(Math.abs(own - ours)).bare() + (own > ours ? " less" : " more");
        return what + ": yours " + prices.money(own).bare() + ", ours " + prices.money(ours) + " (" + change + ")";
    }

    private static BendCount count(KitPlan plan) {
        return BendCount.ofAll(
                plan.loops().stream().map(KitPlan.LoopPlan::breakdown).toList());
    }

    private static double bends(KitPlan plan) {
        return sum(plan, l -> l.breakdown().quarterBends());
    }

    private static double sum(KitPlan plan, ToDoubleFunction<KitPlan.LoopPlan> of) {
        return plan.loops().stream().mapToDouble(of).sum();
    }

    /** The change is that of the figures as printed, so that they add up on paper. */
    private static String line(String what, String unit, int digits, double own, double ours) {
        String number = "%." + digits + "f";
        String format = "%s: yours " + number + ", ours " + number + "%s (%s)";
        double scale = Math.pow(10, digits);
        double saved = (Math.rint(own * scale) - Math.rint(ours * scale)) / scale;
        String change = Math.abs(saved) < 0.5 * Math.pow(10, -digits)
                ? "the same"
                : String.format(Locale.ROOT, number + " %s", Math.abs(saved), saved > 0 ? "less" : "more");
        return String.format(Locale.ROOT, format, what, own, ours, unit.isEmpty() ? "" : " " + unit, change);
    }
}
