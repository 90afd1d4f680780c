package org.runbend.export.pdf;

import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;

/**
 * Where a drawing lies on a page: page mm = drawing mm x scale + (dx, dy). A scale of 0.05 is 1:20.
 */
public record Placement(double scale, double dx, double dy) {
    /** Checks the scale. */
    public Placement {
        if (!(scale > 0) || !Double.isFinite(scale)) {
            throw new IllegalArgumentException("scale (" + scale + ") must be over 0");
        }
    }

    /** As large as fits into the box, in the middle. */
    public static Placement fit(Extent extent, Box box) {
        double wide = box.width() / Math.max(extent.width(), 1e-6);
        double high = box.height() / Math.max(extent.height(), 1e-6);
        return scaled(extent, box, Math.min(wide, high));
    }

    /** The least round figure (1, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 8 times a power of ten) that is not under the value. */
    public static double roundFigure(double value) {
        double power = StrictMath.pow(10, Math.floor(StrictMath.log10(value)));
        for (double step : new double[] {1, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 8}) {
            if (step * power >= value * (1 - 1e-9)) {
                return step * power;
            }
        }
        return 10 * power;
    }

    /** In the middle of the box at a given scale, whether it fits or not. */
    public static Placement scaled(Extent extent, Box box, double scale) {
        Point middle = extent.centre();
        return new Placement(
                scale, box.x() + box.width() / 2 - middle.x() * scale, box.y() + box.height() / 2 - middle.y() * scale);
    }

    /** Where a point of the drawing comes to lie on the page, mm. */
    public Point toPage(Point p) {
        return new Point(p.x() * scale + dx, p.y() * scale + dy);
    }
}
