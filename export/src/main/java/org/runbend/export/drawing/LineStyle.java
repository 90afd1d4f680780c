package org.runbend.export.drawing;

import java.util.List;

/** How a line is dashed. Lengths are mm on paper. */
public enum LineStyle {
    /** One stroke. */
    CONTINUOUS(0, 0, false),
    /** Strokes and gaps. */
    DASHED(3, 1.5, false),
    /** Long strokes with a dot between. */
    DASH_DOT(6, 1.2, true);

    private final double stroke;
    private final double gap;
    private final boolean dotted;

    LineStyle(double stroke, double gap, boolean dotted) {
        this.stroke = stroke;
        this.gap = gap;
        this.dotted = dotted;
    }

    /** Lengths of stroke, gap, stroke, gap ..., mm on paper; a dot is a stroke of 0.3 mm; empty when continuous. */
    public List<Double> dashes() {
        if (stroke == 0) {
            return List.of();
        }
        return dotted ? List.of(stroke, gap, 0.3, gap) : List.of(stroke, gap);
    }
}
