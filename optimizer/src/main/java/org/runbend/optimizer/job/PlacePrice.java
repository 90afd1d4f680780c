package org.runbend.optimizer.job;

/**
 * What laying is decided by: what a place left out costs, and a place passed straight in a piece between two bends that is too
 * short for any plate, against a quarter bend.
 *
 * @param turn cost of a quarter bend, the unit of the others: 1, or 100 where these have decimals
 * @param leftOut cost of a place left out
 * @param shortPlace cost of a straight place in a short piece; 0 where such pieces are not told from others
 * @param mostShort straight places that a piece has at most which is too short for a plate
 */
public record PlacePrice(int turn, int leftOut, int shortPlace, int mostShort) {
    /** Parts of a quarter bend where prices have decimals. */
    public static final int PARTS = 100;

    /** Checks ranges. */
    public PlacePrice {
        if (!(turn == 1 || turn == PARTS) || leftOut < 0 || shortPlace < 0 || mostShort < 0 || mostShort > 7) {
            throw new IllegalArgumentException("turn (" + turn + ") must be 1 or " + PARTS + ", leftOut (" + leftOut
                    + ") and shortPlace (" + shortPlace + ") at least 0, mostShort (" + mostShort + ") 0 to 7");
        }
    }

    /** So many whole quarter bends a place left out; all straight pieces alike. */
    public static PlacePrice turns(int turns) {
        return new PlacePrice(1, turns, 0, 0);
    }

    /** A place left out at so many quarter bends, to two decimals; all straight pieces alike. */
    public static PlacePrice of(double turns) {
        int parts = (int) Math.round(turns * PARTS);
        return parts % PARTS == 0 ? turns(parts / PARTS) : new PlacePrice(PARTS, parts, 0, 0);
    }

    /** What a place left out costs, in quarter bends. */
    public double inTurns() {
        return (double) leftOut / turn;
    }

    /** A sum of costs in quarter bends. */
    public double inTurns(long costs) {
        return (double) costs / turn;
    }

    /** The same with another price of a place left out, in quarter bends. */
    public PlacePrice withLeftOut(double turns) {
        if (turn == 1) {
            return of(turns);
        }
        return new PlacePrice(turn, (int) Math.round(turns * turn), shortPlace, mostShort);
    }
}
