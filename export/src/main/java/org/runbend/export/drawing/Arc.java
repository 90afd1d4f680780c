package org.runbend.export.drawing;

import java.io.IOException;

/**
 * A circular arc. It starts at {@code startAngle} and goes on by {@code sweep} degrees, anticlockwise when positive;
 * radius over 0, 0 &lt; |sweep| &lt;= 360.
 */
public record Arc(Point centre, double radius, double startAngle, double sweep) implements Shape {
    /** Checks radius and sweep. */
    public Arc {
        if (!(radius > 0) || !Double.isFinite(radius)) {
            throw new IllegalArgumentException("arc radius (" + radius + " mm) must be over 0");
        }
        if (!(Math.abs(sweep) > 0 && Math.abs(sweep) <= 360) || !Double.isFinite(startAngle)) {
            throw new IllegalArgumentException("arc from " + startAngle + " by " + sweep + " degrees: sweep must be"
                    + " over 0 and at most 360, either way");
        }
    }

    /**
     * The arc from a to b with a bulge, the tangent of a quarter of its sweep (positive anticlockwise, not 0). Centre =
     * middle of the chord + left normal x chord/2 x (1 - bulge^2) / (2 bulge), from cot(2t) = (1 - tan^2 t) / (2 tan t).
     */
    public static Arc between(Point a, Point b, double bulge) {
        double k = (1 - bulge * bulge) / (4 * bulge);
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        Point centre = new Point((a.x() + b.x()) / 2 - dy * k, (a.y() + b.y()) / 2 + dx * k);
        double radius = a.distance(b) * (1 + bulge * bulge) / (4 * Math.abs(bulge));
        return new Arc(centre, radius, centre.angleTo(a), Math.toDegrees(4 * StrictMath.atan(bulge)));
    }

    /** Where it starts. */
    public Point start() {
        return centre.polar(radius, startAngle);
    }

    /** Where it ends. */
    public Point end() {
        return centre.polar(radius, startAngle + sweep);
    }

    /** Length along the arc, mm. */
    public double length() {
        return radius * Math.toRadians(Math.abs(sweep));
    }

    @Override
    public Extent extent() {
        Extent box = Extent.at(start()).union(Extent.at(end()));
        double from = Math.min(startAngle, startAngle + sweep);
        double to = Math.max(startAngle, startAngle + sweep);
        for (double quarter = Math.ceil(from / 90) * 90; quarter <= to; quarter += 90) {
            box = box.union(Extent.at(centre.polar(radius, quarter)));
        }
        return box;
    }

    @Override
    public void drawOn(Backend backend, Layer layer) throws IOException {
        backend.arc(layer, this);
    }
}
