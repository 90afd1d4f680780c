package org.runbend.export.drafting;

import java.util.List;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Draws a plan for a small picture: floor, what lies on it, plates and pipe as lines; of words only the marks that a person
 * recognises the floor by.
 */
public final class MiniatureDrafting {
    /** Marks are as large as on a full drawing by this: capitals of 1.96 mm, 7.6 points. */
    private static final double SMALL = 0.7;

    private static final int LETTERS = 14;

    private MiniatureDrafting() {}

    /**
     * The drawing for a given scale, seen from above.
     *
     * @param unit mm on the floor that make one mm on paper
     */
    public static Sheet draw(KitPlan plan, double unit) {
        Job.FloorPlan floor = plan.job().floor();
        SheetBuilder sheet = new SheetBuilder(plan.job().title());
        FloorShapes shapes = new FloorShapes(sheet, SMALL * unit);
        plan.plates().pieces().forEach(piece -> sheet.add(Layer.PLATE, LoopMarks.body(plan, piece)));
        floor.unheated()
                .forEach(cold -> sheet.add(
                        Layer.UNHEATED, Path.polygon(Places.all(cold.region().corners()))));
        floor.keepOuts().forEach(shapes::keepOut);
        plan.loops()
                .forEach(loop ->
                        sheet.add(Layer.PIPE, LoopMarks.path(loop.breakdown().elements())));
        // long marks would take the room of the floor
        List<Job.FloorMark> known = floor.marks().stream()
                .map(m -> new Job.FloorMark(Wording.brief(m.text(), LETTERS), m.at(), m.edge()))
                .toList();
        Job.FloorPlan bare = new Job.FloorPlan(floor.outline(), known, List.of(), List.of(), floor.port());
        FloorMarks marks = new FloorMarks(sheet, new Labels(sheet), SMALL * unit);
        marks.keepClear(bare);
        marks.draw(bare);
        return sheet.build();
    }
}
