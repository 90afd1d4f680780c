package org.runbend.export.drawing;

import java.util.List;

/** A box with its sides along the axes, mm. It may be flat, never empty. */
public record Extent(double minX, double minY, double maxX, double maxY) {
    /** Printable part of an A4 page on its side, mm: 297 x 210 less 10 mm a side (common practice). */
    private static final double PAGE_LONG = 277;

    private static final double PAGE_SHORT = 190;

    /** Refuses a box that is turned inside out. */
    public Extent {
        if (!(minX <= maxX) || !(minY <= maxY)) {
            throw new IllegalArgumentException(
                    "extent " + minX + ".." + maxX + " x " + minY + ".." + maxY + " is turned inside out");
        }
    }

    /** The smallest box around the points, at least one. */
    public static Extent around(List<Point> points) {
        Extent box = at(points.get(0));
        for (Point p : points) {
            box = box.union(at(p));
        }
        return box;
    }

    /** The flat box of one point. */
    public static Extent at(Point p) {
        return new Extent(p.x(), p.y(), p.x(), p.y());
    }

    /** The smallest box around both. */
    public Extent union(Extent other) {
        return new Extent(
                Math.min(minX, other.minX),
                Math.min(minY, other.minY),
                Math.max(maxX, other.maxX),
                Math.max(maxY, other.maxY));
    }

    /** The box with {@code margin} mm more on every side. */
    public Extent grow(double margin) {
        return new Extent(minX - margin, minY - margin, maxX + margin, maxY + margin);
    }

    /** Size along x, mm. */
    public double width() {
        return maxX - minX;
    }

    /** Size along y, mm. */
    public double height() {
        return maxY - minY;
    }

    /** The middle. */
    public Point centre() {
        return new Point((minX + maxX) / 2, (minY + maxY) / 2);
    }

    /**
     * How many mm of the drawing make one mm on an A4 page it is fitted to, either way up. Multiply by it to get letters
     * and pens of a known size on paper: {@code 2.5 * extent.mmPerPaperMm()} is a letter height of 2.5 mm.
     */
    public double mmPerPaperMm() {
        double longer = Math.max(width(), height());
        double shorter = Math.min(width(), height());
        double factor = Math.max(longer / PAGE_LONG, shorter / PAGE_SHORT);
        return factor > 0 ? factor : 1;
    }
}
