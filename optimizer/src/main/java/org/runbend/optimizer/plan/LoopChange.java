package org.runbend.optimizer.plan;

import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.SamePipe;

/**
 * What becomes of the pipe of an earlier plan. Lengths on the floor, mm.
 *
 * @param stays pipe that lies where it lay
 * @param goes pipe of the earlier plan that is no more
 * @param added pipe that was not there before
 * @param goneBends bends of the earlier plan that are no more, or not whole
 * @param newBends bends that were not there before, or not whole
 */
public record LoopChange(double stays, double goes, double added, BendCount goneBends, BendCount newBends) {
    private static final double WHOLE = 0.5;

    /** Compares all elements of an earlier plan with those of a new one. */
    public static LoopChange of(List<Element> before, KitPlan plan) {
        return of(before, plan.loops());
    }

    /** Compares all elements of an earlier plan with those of other loops. */
    public static LoopChange of(List<Element> before, List<KitPlan.LoopPlan> loops) {
        List<Element> now =
                loops.stream().flatMap(l -> l.breakdown().elements().stream()).toList();
        double stays = SamePipe.common(before, now);
        return new LoopChange(
                stays,
                Math.max(0, length(before) - stays),
                Math.max(0, length(now) - stays),
                missing(before, now),
                missing(now, before));
    }

    private static double length(List<Element> elements) {
        return elements.stream().mapToDouble(Element::length).sum();
    }

    private static BendCount missing(List<Element> bends, List<Element> among) {
        return BendCount.of(bends.stream()
                .filter(Element.Bend.class::isInstance)
                .filter(b -> SamePipe.common(b, among) < b.length() - WHOLE)
                .toList());
    }

    /** The change in one sentence. */
    public String sentence() {
        return String.format(
                Locale.ROOT,
                "Of the loop before, %.2f m stay and %.2f m with %s go; %.2f m with %s are new.",
                stays / 1000,
                goes / 1000,
                goneBends.words(),
                added / 1000,
                newBends.words());
    }
}
