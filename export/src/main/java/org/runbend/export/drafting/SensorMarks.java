package org.runbend.export.drafting;

import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.channel.SensorProblem;
import org.runbend.optimizer.plan.KitPlan;

/** The floor's sensor, a disc at the end of the middle line of its conduit. */
final class SensorMarks {
    private SensorMarks() {}

    /** Draws both; texts and leaders keep off them. */
    static void draw(SheetBuilder sheet, Labels labels, KitPlan plan) {
        plan.sensor().filter(s -> s.at().isPresent()).ifPresent(s -> {
            Path conduit = new Path(
                    Places.all(s.conduit()).stream().map(Vertex::straight).toList(), false);
            Circle disc = new Circle(Places.at(s.at().get()), SensorProblem.CONDUIT / 2);
            sheet.add(Layer.SENSOR, conduit);
            sheet.add(Layer.SENSOR, disc);
            conduit.parts().forEach(labels::shun);
            conduit.parts().forEach(labels::fence);
            labels.shun(disc.extent());
        });
    }

    /** The word beside the disc. */
    static void name(Labels labels, double unit, KitPlan plan) {
        plan.sensor().flatMap(SensorPlan::at).ifPresent(at -> {
            Circle disc = new Circle(Places.at(at), SensorProblem.CONDUIT / 2);
            labels.put(
                    Labels.around(disc.extent(), 0.8 * unit, 2.2 * unit, "sensor")
                            .subList(1, 5),
                    disc.centre());
        });
    }
}
