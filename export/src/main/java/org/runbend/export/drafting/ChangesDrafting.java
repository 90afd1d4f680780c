package org.runbend.export.drafting;

import java.util.List;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** Draws the floor of a plan for the picture of what changes: outline, things, cold floor and marks, no pipe and no plates. */
public final class ChangesDrafting {
    private ChangesDrafting() {}

    /**
     * The drawing for a given scale, seen from above.
     *
     * @param unit mm on the floor that make one mm on paper
     */
    public static Sheet draw(KitPlan plan, double unit) {
        Job.FloorPlan floor = plan.job().floor();
        SheetBuilder sheet = new SheetBuilder(plan.job().title());
        FloorShapes shapes = new FloorShapes(sheet, unit);
        floor.unheated()
                .forEach(cold -> sheet.add(
                        Layer.UNHEATED, Path.polygon(Places.all(cold.region().corners()))));
        floor.keepOuts().forEach(shapes::keepOut);
        shapes.port(Places.at(floor.port().at()));
        Job.FloorPlan bare = new Job.FloorPlan(floor.outline(), floor.marks(), List.of(), List.of(), floor.port());
        FloorMarks marks = new FloorMarks(sheet, new Labels(sheet), unit);
        marks.keepClear(bare);
        marks.draw(bare);
        return sheet.build();
    }
}
