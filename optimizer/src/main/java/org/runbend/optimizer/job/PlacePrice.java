package org.runbend.optimizer.job;

import java.util.List;

/**
 * What laying is decided by: what a place left out costs, and a straight piece between two bends, against a quarter bend.
 *
 * @param turn cost of a quarter bend, the unit of the others: 1, or 100 where these have decimals
 * @param leftOut cost of a place left out
 * @param pieceEnd cost of each end of a straight piece
 * @param pieceExtra what a straight piece costs more, by how many places it passes, from one on
 */
public record PlacePrice(int turn, int leftOut, int pieceEnd, List<Integer> pieceExtra) {
    /** Parts of a quarter bend where prices have decimals. */
    public static final int PARTS = 100;

    /** Checks ranges and copies the list. */
    public PlacePrice {
        pieceExtra = List.copyOf(pieceExtra);
        if (!(turn == 1 || turn == PARTS) || leftOut < 0 || pieceEnd < 0) {
            throw new IllegalArgumentException("turn (" + turn + ") must be 1 or " + PARTS + ", leftOut (" + leftOut
                    + ") and pieceEnd (" + pieceEnd + ") at least 0");
        }
    }

    /** So many whole quarter bends a place left out; straight pieces cost nothing. */
    public static PlacePrice turns(int turns) {
        return new PlacePrice(1, turns, 0, List.of());
    }

    /** A place left out at so many quarter bends, to two decimals; straight pieces cost nothing. */
    public static PlacePrice of(double turns) {
        int parts = (int) Math.round(turns * PARTS);
        return parts % PARTS == 0 ? turns(parts / PARTS) : new PlacePrice(PARTS, parts, 0, List.of());
    }

    /** What a place left out costs, in quarter bends. */
    public double inTurns() {
        return (double) leftOut / turn;
    }

    /** A sum of costs in quarter bends. */
    public double inTurns(long costs) {
        return (double) costs / turn;
    }

    /** Whether straight pieces have a price too. */
    public boolean pricesPieces() {
        return pieceEnd > 0 || !pieceExtra.isEmpty();
    }

    /** The same with another price of a place left out, in quarter bends. */
    public PlacePrice withLeftOut(double turns) {
        return turn == 1 ? of(turns) : new PlacePrice(turn, (int) Math.round(turns * turn), pieceEnd, pieceExtra);
    }
}
