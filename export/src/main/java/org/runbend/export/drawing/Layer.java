package org.runbend.export.drawing;

import java.util.OptionalInt;

/**
 * What a mark is there for: one operation or one kind of information a layer. The constants stand in the order of
 * painting, the first one lies at the bottom.
 */
public enum Layer {
    /** Outline of the floor. */
    FLOOR(0x1A1A1A, 7, -1, LineStyle.CONTINUOUS, 0.50),
    /** Boards the floor is made of. */
    BOARD(0x994C00, 34, -1, LineStyle.DASHED, 0.25),
    /** Floor that needs no heat. */
    UNHEATED(0x808080, 8, 0xF1F1EF, LineStyle.DASHED, 0.18),
    /** Spreader plates. */
    PLATE(0x2F6FB0, 152, 0xE4EEF8, LineStyle.CONTINUOUS, 0.18),
    /** What no pipe may touch; over the plates, so that bolts beside them are seen whole. */
    KEEP_OUT(0xA8123E, 242, 0xF8E4EA, LineStyle.DASH_DOT, 0.25),
    /** Finished edge of the groove. */
    CHANNEL(0x008181, 134, -1, LineStyle.CONTINUOUS, 0.18),
    /** Where the groove is deepened for the turn into a hole, if the job gives the hole. */
    SLOT(0x6B4E00, 44, -1, LineStyle.CONTINUOUS, 0.25),
    /** Holes through the boards at places that the job gives. */
    HOLE(0x000000, 1, -1, LineStyle.CONTINUOUS, 0.35),
    /** Centreline of the pipe and nothing else. */
    PIPE(0xD94800, 20, -1, LineStyle.CONTINUOUS, 0.70),
    /** Sensor and its conduit. */
    SENSOR(0x157F1F, 94, -1, LineStyle.CONTINUOUS, 0.35),
    /** Places for screws. */
    SCREW(0x5B2A9D, 194, -1, LineStyle.CONTINUOUS, 0.18),
    /** Measures. */
    DIMENSION(0x505050, 253, -1, LineStyle.CONTINUOUS, 0.13),
    /** Covers pipe and measures under the name of a narrow plate, on paper and screen; drawings for machines have none of it. */
    BLANK(0xE4EEF8, 9, 0xE4EEF8, LineStyle.CONTINUOUS, 0.13),
    /** Words that explain. */
    NOTE(0x1F3A66, 160, -1, LineStyle.CONTINUOUS, 0.18),
    /** Title, frame. */
    TITLE(0x000000, 7, -1, LineStyle.CONTINUOUS, 0.35);

    private final int colour;
    private final int colourIndex;
    private final int fill;
    private final LineStyle style;
    private final double pen;

    Layer(int colour, int colourIndex, int fill, LineStyle style, double pen) {
        this.colour = colour;
        this.colourIndex = colourIndex;
        this.fill = fill;
        this.style = style;
        this.pen = pen;
    }

    /** Colour as 0xRRGGBB, for white paper. */
    public int colour() {
        return colour;
    }

    /** Index of the like colour among the 255 of CAD programs. */
    public int colourIndex() {
        return colourIndex;
    }

    /** What closed shapes are filled with on paper and screen (0xRRGGBB), if at all. CAD files have no fill. */
    public OptionalInt fill() {
        return fill < 0 ? OptionalInt.empty() : OptionalInt.of(fill);
    }

    /** How lines are dashed. */
    public LineStyle style() {
        return style;
    }

    /** Pen width, mm on paper; one of the widths CAD programs know. */
    public double pen() {
        return pen;
    }
}
