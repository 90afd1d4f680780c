package org.runbend.export.drawing;

import java.util.List;

/**
 * A floor shaded by a quantity: boxes in steps of it, lines where a step ends, a legend. Coordinates in mm, y up. The shades get darker
 * step by step, so they read in grey too.
 *
 * @param title of the file
 * @param captions what a reader has to know, a line each
 * @param extent of the floor
 * @param steps from the lowest up
 * @param boxes what is shaded
 * @param lines where one step passes into the next
 * @param outline of the floor and of what lies in it
 */
public record ShadedFloor(
        String title,
        List<String> captions,
        Extent extent,
        List<Step> steps,
        List<ShadedBox> boxes,
        List<LevelLine> lines,
        List<Path> outline) {
    /**
     * A step of the legend.
     *
     * @param words what it means
     * @param colour 0xRRGGBB
     */
    public record Step(String words, int colour) {}

    /**
     * A shaded box.
     *
     * @param box where it lies
     * @param step index of its step
     */
    public record ShadedBox(Extent box, int step) {}

    /**
     * A line of one level.
     *
     * @param words the level
     * @param lines the places that have it, closed ones as polygons
     * @param labels where the level is written
     */
    public record LevelLine(String words, List<Path> lines, List<Point> labels) {
        /** Copies the lists. */
        public LevelLine {
            lines = List.copyOf(lines);
            labels = List.copyOf(labels);
        }
    }

    /** Copies the lists. */
    public ShadedFloor {
        captions = List.copyOf(captions);
        steps = List.copyOf(steps);
        boxes = List.copyOf(boxes);
        lines = List.copyOf(lines);
        outline = List.copyOf(outline);
    }
}
