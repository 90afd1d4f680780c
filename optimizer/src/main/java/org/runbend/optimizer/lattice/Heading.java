package org.runbend.optimizer.lattice;

/** The four directions of lattice links, anticlockwise from the positive column axis; rows grow to the north. */
public enum Heading {
    /** One column up. */
    EAST(0, 1, 0),
    /** One row up. */
    NORTH(1, 0, 1),
    /** One column down. */
    WEST(2, -1, 0),
    /** One row down. */
    SOUTH(3, 0, -1);

    private static final Heading[] ALL = values();

    private final int index;
    private final int dx;
    private final int dy;

    Heading(int index, int dx, int dy) {
        this.index = index;
        this.dx = dx;
        this.dy = dy;
    }

    /** Quarter turns from east, 0 to 3. */
    public int index() {
        return index;
    }

    /** Change of column of one step: -1, 0 or 1. */
    public int dx() {
        return dx;
    }

    /** Change of row of one step: -1, 0 or 1. */
    public int dy() {
        return dy;
    }

    /** The heading back. */
    public Heading opposite() {
        return ALL[(index + 2) % 4];
    }

    /** The heading after a turn to the left (anticlockwise). */
    public Heading left() {
        return ALL[(index + 1) % 4];
    }

    /** The heading after a turn to the right (clockwise). */
    public Heading right() {
        return ALL[(index + 3) % 4];
    }

    /** The heading so many quarter turns from east; 0 to 3. */
    public static Heading ofIndex(int index) {
        return ALL[index];
    }

    /** Heading of the step that changes column and row by the given amounts; anything but one lattice step is refused. */
    public static Heading ofStep(int dColumn, int dRow) {
        for (Heading heading : ALL) {
            if (heading.dx == dColumn && heading.dy == dRow) {
                return heading;
            }
        }
        throw new IllegalArgumentException("step (" + dColumn + ", " + dRow + ") does not lead to a lattice neighbour");
    }
}
