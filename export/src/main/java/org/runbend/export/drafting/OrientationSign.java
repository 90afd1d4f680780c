package org.runbend.export.drafting;

import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Arrow;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;

/**
 * A sign that looks unlike its mirror image and unlike itself turned: a staff in a ring whose flag flies to the right, with the
 * axes. Sizes in mm on paper.
 */
public final class OrientationSign {
    private OrientationSign() {}

    /** The sign with its words to the right. */
    public static Sheet sheet() {
        SheetBuilder sheet = new SheetBuilder("seen from above");
        sheet.add(Layer.TITLE, new Circle(new Point(7, 7), 6));
        sheet.add(Layer.TITLE, new Segment(new Point(5, 2.5), new Point(5, 11.5)));
        sheet.add(Layer.TITLE, new Arrow(new Point(12, 9.6), 0, 7));
        sheet.add(Layer.TITLE, new Segment(new Point(5, 6.2), new Point(8, 6.2)));
        sheet.add(Layer.TITLE, Text.level(new Point(16, 13), 3.6, Anchor.TOP_LEFT, "SEEN FROM ABOVE"));
        String[] lines = {
            "flag to the right: you see the floor from above", "flag to the left: a mirror image, do not build"
        };
        for (int i = 0; i < lines.length; i++) {
            sheet.add(Layer.NOTE, Text.level(new Point(16, 6.6 - 3 * i), 1.7, Anchor.TOP_LEFT, lines[i]));
        }
        return sheet.build();
    }
}
