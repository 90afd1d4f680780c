package org.runbend.export.drafting;

import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.channel.SensorProblem;
import org.runbend.optimizer.plan.KitPlan;

/** The floor's sensor, a disc at the end of the middle line of its conduit. */
final class SensorMarks {
    private SensorMarks() {}

    static void draw(SheetBuilder sheet, KitPlan plan) {
        plan.sensor().filter(s -> s.at().isPresent()).ifPresent(s -> {
            sheet.add(
                    Layer.SENSOR,
                    new Path(
                            Places.all(s.conduit()).stream()
                                    .map(Vertex::straight)
                                    .toList(),
                            false));
            sheet.add(Layer.SENSOR, new Circle(Places.at(s.at().get()), SensorProblem.CONDUIT / 2));
        });
    }
}
