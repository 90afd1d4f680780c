package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.product.Operation;
import org.runbend.catalog.source.Plain;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.guide.GuidePlate;
import org.runbend.optimizer.job.Job;

/** Draws a guide for hand routing in full size: outline, slots, hand holes, marks and letters. */
public final class GuideDrafting {
    private static final double NOTE = 7;

    private GuideDrafting() {}

    /** The plate alone, with its lower left corner at 0, 0. */
    public static Sheet plate(Job job, GuidePlate plate) {
        return body(job, plate).build();
    }

    /** The plate with its note beside it, for a machine. */
    public static Sheet forMachine(Job job, GuidePlate plate) {
        SheetBuilder sheet = body(job, plate);
        sheet.add(Layer.NOTE, new Paragraph(new Point(0, -15), NOTE, notes(job, plate)));
        return sheet.build();
    }

    /** The layers of the file: all is cut through with the thinner of cutters at hand that suits, or by hand. */
    public static MachineLayers layers(Job job, GuidePlate plate) {
        double tool = plate.cutter();
        double depth = plate.problem().thickness();
        return new MachineLayers(job.catalog().layers())
                .with(Layer.TITLE, Operation.LABEL, 0, 0)
                .with(Layer.HOLE, Operation.HOLE, tool, depth)
                .with(Layer.FLOOR, Operation.CUT, tool, depth)
                .with(Layer.NOTE, Operation.NOTE, 0, 0);
    }

    private static SheetBuilder body(Job job, GuidePlate plate) {
        SheetBuilder sheet = new SheetBuilder("Router guide " + job.order());
        sheet.add(Layer.FLOOR, Path.rectangle(new Extent(0, 0, plate.width(), plate.height())));
        plate.slots().forEach(s -> sheet.add(Layer.HOLE, closed(s.contour())));
        plate.handHoles().forEach(h -> sheet.add(Layer.HOLE, closed(h)));
        for (GuidePlate.Mark mark : plate.marks()) {
            sheet.add(Layer.TITLE, new Segment(point(mark.from()), point(mark.to())));
        }
        for (GuidePlate.Letters l : plate.letters()) {
            StrokeLetters.of(point(l.at()), l.height(), l.words()).forEach(p -> sheet.add(Layer.TITLE, p));
        }
        return sheet;
    }

    /** What the note of the drawing says. */
    public static List<String> notes(Job job, GuidePlate plate) {
        double thickness = plate.problem().thickness();
        List<String> lines = new ArrayList<>();
        lines.add("Router guide, order " + job.order()
                + job.revision().map(r -> ", revision " + r).orElse("") + ", seen from above, 1:1, mm");
        lines.add("Plate " + mm(plate.width()) + " x " + mm(plate.height()) + ", " + mm(thickness)
                + " thick (plywood or plastic, flat), 1 piece");
        lines.add(
                "Slots and holes: through, tool inside. Outline: through, tool outside, last. Marks and letters: engraved.");
        lines.add("Guide bush " + mm(plate.bush().outer()) + " outside, cutter " + mm(plate.cutter()) + ": groove "
                + mm(plate.problem().groove().width()) + " on straights, "
                + mm(plate.problem().groove().bendWidth()) + " at bends, "
                + mm(plate.problem().groove().depth())
                + " deep; the cutter reaches " + mm(plate.reach()) + " below the base of the router.");
        lines.add("fingerprint " + job.fingerprint().substring(0, 12));
        return lines;
    }

    private static Path closed(List<Corner> corners) {
        return new Path(
                corners.stream()
                        .map(c -> new Vertex(c.at().x(), c.at().y(), c.bulge()))
                        .toList(),
                true);
    }

    private static Point point(org.runbend.optimizer.job.Point p) {
        return new Point(p.x(), p.y());
    }

    private static String mm(double size) {
        return Plain.number(size);
    }
}
