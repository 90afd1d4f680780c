package org.runbend.export.drawing;

import java.io.IOException;
import java.util.List;
import java.util.Objects;

/**
 * One line of letters: the height of a capital in mm, the angle of the baseline in degrees. Any string is fine: each
 * backend makes control characters and the escapes of its format harmless.
 */
public record Text(Point at, double height, double angle, Anchor anchor, String string) implements Shape {
    /** Width of an average letter by its height: between the stroke fonts of CAD and a plain sans serif (measured on DejaVu Sans: 0.82). */
    private static final double WIDTH_BY_HEIGHT = 0.85;

    /** Checks the height. */
    public Text {
        if (!(height > 0) || !Double.isFinite(angle)) {
            throw new IllegalArgumentException("text height (" + height + " mm) must be over 0");
        }
        Objects.requireNonNull(string, "string");
    }

    /** A level line of letters. */
    public static Text level(Point at, double height, Anchor anchor, String string) {
        return new Text(at, height, 0, anchor, string);
    }

    /** About how long a line of letters gets, mm. */
    public static double roughWidth(String string, double height) {
        return string.codePointCount(0, string.length()) * height * WIDTH_BY_HEIGHT;
    }

    /** Start of the baseline of a line {@code width} mm long. */
    public Point baselineStart(double width) {
        return at.polar(-width * anchor.column() / 2, angle).polar(-height * anchor.row() / 2, angle + 90);
    }

    @Override
    public Extent extent() {
        double width = roughWidth(string, height);
        Point start = baselineStart(width);
        Point end = start.polar(width, angle);
        return Extent.around(List.of(start, end, start.polar(height, angle + 90), end.polar(height, angle + 90)));
    }

    @Override
    public void drawOn(Backend backend, Layer layer) throws IOException {
        backend.text(layer, this);
    }
}
