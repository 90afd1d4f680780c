package org.runbend.optimizer.boards.nesting;

import java.util.List;

/**
 * Rectangles to be cut from equal boards. Sizes in mm.
 *
 * @param length of a board, along x
 * @param width of a board, along y
 * @param kerf what lies between two pieces: the saw's cut, or the way of a cutter
 * @param trim what is cut off each edge of a board
 * @param guillotine whether each cut must go from edge to edge, as a track saw cuts
 * @param items the rectangles
 */
public record NestingProblem(
        double length, double width, double kerf, double trim, boolean guillotine, List<Item> items) {
    /** What sizes may differ by and still be equal: a hundredth of any tolerance of a saw, mm. */
    static final double SAME = 1e-6;

    /**
     * A rectangle.
     *
     * @param length along x
     * @param width along y
     * @param turnable whether it may lie turned by a quarter; never mirrored
     */
    public record Item(double length, double width, boolean turnable) {
        /** Checks the size. */
        public Item {
            if (!(length > 0 && width > 0)) {
                throw new IllegalArgumentException("an item of " + length + " x " + width + " mm has no size");
            }
        }
    }

    /** Checks that each item goes onto a board. */
    public NestingProblem {
        items = List.copyOf(items);
        double x = length - 2 * trim;
        double y = width - 2 * trim;
        for (Item i : items) {
            boolean lies = i.length() <= x + SAME && i.width() <= y + SAME;
            boolean turned = i.turnable() && i.width() <= x + SAME && i.length() <= y + SAME;
            if (!lies && !turned) {
                throw new IllegalArgumentException(
                        "an item of " + i.length() + " x " + i.width() + " mm is larger than a board");
            }
        }
    }

    /** Length within the trim, with one kerf more, as each item is reckoned with a kerf of its own. */
    double room() {
        return length - 2 * trim + kerf;
    }

    /** Width within the trim, with one kerf more. */
    double height() {
        return width - 2 * trim + kerf;
    }
}
