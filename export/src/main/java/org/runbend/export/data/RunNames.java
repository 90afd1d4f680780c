package org.runbend.export.data;

import java.util.List;
import java.util.stream.Collectors;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plates.PlatePiece;

/** What people call a run: the loop's name and the number of the run along the flow, from 1. */
public final class RunNames {
    private static final double NOTHING = 0.05;

    private RunNames() {}

    /** Number of a run among the runs of its loop, from 1; bends are not counted. */
    public static int number(List<Element> elements, int element) {
        return (int) elements.subList(0, element + 1).stream()
                .filter(Element.Run.class::isInstance)
                .count();
    }

    /** Where a piece of plate goes, such as {@code A run 3 at 120 mm}. */
    public static String of(KitPlan plan, PlatePiece piece) {
        StringBuilder name = new StringBuilder();
        for (PlatePiece.Place place : piece.places()) {
            KitPlan.LoopPlan loop = plan.loops().get(place.loop());
            name.append(name.length() == 0 ? "" : " + ")
                    .append(loop.name())
                    .append(" run ")
                    .append(number(loop.breakdown().elements(), place.element()))
                    .append(" at ")
                    .append(Math.round(place.from()))
                    .append(" mm");
        }
        return name.toString();
    }

    /** The same for a fitter, such as {@code run A3 at 120}, with inches where the job is in inches. */
    public static String words(KitPlan plan, PlatePiece piece, TapeText tape) {
        return piece.places().stream()
                .map(place -> {
                    KitPlan.LoopPlan loop = plan.loops().get(place.loop());
                    int run = number(loop.breakdown().elements(), place.element());
                    double from = Math.abs(place.from()) < NOTHING ? 0 : place.from();
                    return "run " + loop.name() + run + " at " + tape.beside(from);
                })
                .collect(Collectors.joining(" and "));
    }
}
