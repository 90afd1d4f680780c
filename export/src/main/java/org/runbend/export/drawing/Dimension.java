package org.runbend.export.drawing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * The distance from a to b, written on a line beside them. {@code offset} is how far that line lies to the left of the
 * way from a to b (negative: to the right), {@code height} that of a digit, mm. The parts are worked out here, once, so it
 * looks alike in every file.
 */
public record Dimension(Point a, Point b, double offset, double height, String text) implements Shape {
    private static final double ARROW = 1.2;
    private static final double GAP = 0.5;
    private static final double OVERSHOOT = 0.8;

    /** Checks that there is something to measure. */
    public Dimension {
        if (a.distance(b) < 1e-6 || !(height > 0) || !Double.isFinite(offset)) {
            throw new IllegalArgumentException(
                    "dimension from " + a + " to " + b + " with digits of " + height + " mm has nothing to show");
        }
    }

    /** A dimension that shows its own length in mm, with at most one decimal. */
    public static Dimension measured(Point a, Point b, double offset, double height) {
        return new Dimension(a, b, offset, height, Decimals.of(a.distance(b), 1));
    }

    /** What is measured, mm. */
    public double length() {
        return a.distance(b);
    }

    /** Direction from a to b, degrees. */
    public double angle() {
        return a.angleTo(b);
    }

    /** The end of the dimension line that belongs to a. */
    public Point lineStart() {
        return a.polar(offset, angle() + 90);
    }

    /** The end of the dimension line that belongs to b. */
    public Point lineEnd() {
        return b.polar(offset, angle() + 90);
    }

    /** The text where it stands: over the line, or beyond b where it has no room; read from below or from the right. */
    public Text label() {
        double readable = angle();
        boolean turned = readable > 90 + 1e-9 || readable <= -90 + 1e-9;
        if (turned) {
            readable += readable > 0 ? -180 : 180;
        }
        Point middle = textFits()
                ? lineStart().polar(length() / 2, angle())
                : lineEnd().polar(textWidth() / 2 + 2.5 * ARROW * height, angle());
        return new Text(middle.polar(0.4 * height, readable + 90), height, readable, Anchor.BOTTOM_CENTRE, text);
    }

    /** Whether the text stands beyond b instead of over the line. */
    public boolean textMoved() {
        return !textFits();
    }

    /** Lines, arrow heads and text. */
    public List<Shape> parts() {
        List<Shape> parts = new ArrayList<>();
        extension(parts, a, lineStart());
        extension(parts, b, lineEnd());
        double before = arrowsFit() ? 0 : 2.5 * ARROW * height;
        double after = textFits() ? before : 3 * ARROW * height + textWidth();
        parts.add(new Segment(lineStart().polar(-before, angle()), lineEnd().polar(after, angle())));
        double outwards = arrowsFit() ? 0 : 180;
        parts.add(new Arrow(lineStart(), angle() + 180 + outwards, ARROW * height));
        parts.add(new Arrow(lineEnd(), angle() + outwards, ARROW * height));
        if (!text.isBlank()) {
            parts.add(label());
        }
        return parts;
    }

    @Override
    public Extent extent() {
        return parts().stream().map(Shape::extent).reduce(Extent::union).orElseThrow();
    }

    @Override
    public void drawOn(Backend backend, Layer layer) throws IOException {
        backend.dimension(layer, this);
    }

    private boolean arrowsFit() {
        return length() >= 3 * ARROW * height;
    }

    private boolean textFits() {
        return length() >= textWidth() + height;
    }

    private double textWidth() {
        return Text.roughWidth(text, height);
    }

    private void extension(List<Shape> parts, Point from, Point to) {
        double sign = Math.signum(offset);
        double gap = Math.min(GAP * height, Math.abs(offset));
        if (Math.abs(offset) > 1e-9) {
            double normal = angle() + 90;
            parts.add(new Segment(from.polar(sign * gap, normal), to.polar(sign * OVERSHOOT * height, normal)));
        }
    }
}
