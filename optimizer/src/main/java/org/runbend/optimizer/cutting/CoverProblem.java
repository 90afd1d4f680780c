package org.runbend.optimizer.cutting;

import java.util.List;

/**
 * Stretches to be covered by pieces of free length, lengths and cutting decided together.
 *
 * <p>A piece is a multiple of {@code step}, at least {@code minPiece} and at most {@code maxPiece}. n pieces p lie on a
 * stretch when sum(p) + (n - 1) gap is at most its length; that sum is what is covered of it. Pieces are cut from a
 * stock when sum(p) + (n - 1) kerf is at most its length.
 *
 * <p>Gaps count as covered, so where the gap is wider than the kerf every needless cut would gain cover, and a plan of
 * dozens of shortest pieces could save a stock piece. Nobody lays such a floor: a stretch takes at most {@link
 * #mostPieces} pieces.
 *
 * @param stretches what to cover
 * @param stock kinds of stock
 * @param gap between neighbouring pieces of a stretch, 0 or more
 * @param minPiece least length of a piece, positive
 * @param maxPiece greatest length of a piece, at least minPiece; Long.MAX_VALUE when any will do
 * @param step of the lengths, positive
 * @param kerf lost by every cut, 0 or more
 * @param target least sum of what is covered, 0 or more
 * @param extraPieces how many pieces more than needed a stretch may be cut into, 0 or more
 */
public record CoverProblem(
        List<Stretch> stretches,
        List<Stock> stock,
        long gap,
        long minPiece,
        long maxPiece,
        long step,
        long kerf,
        long target,
        int extraPieces) {
    /** Copies the lists and refuses numbers outside their range. */
    public CoverProblem {
        stretches = List.copyOf(stretches);
        stock = List.copyOf(stock);
        Require.that(gap >= 0 && gap <= Stock.GREATEST, "gap (%d) must be 0 to %d", gap, Stock.GREATEST);
        Require.that(kerf >= 0 && kerf <= Stock.GREATEST, "kerf (%d) must be 0 to %d", kerf, Stock.GREATEST);
        Require.that(
                minPiece > 0 && minPiece <= Stock.GREATEST, "minPiece (%d) must be 1 to %d", minPiece, Stock.GREATEST);
        Require.that(maxPiece >= minPiece, "maxPiece (%d) must be at least minPiece (%d)", maxPiece, minPiece);
        Require.that(step > 0 && step <= Stock.GREATEST, "step (%d) must be 1 to %d", step, Stock.GREATEST);
        Require.that(target >= 0, "target (%d) must not be negative", target);
        Require.that(extraPieces >= 0, "extraPieces (%d) must not be negative", extraPieces);
    }

    /** A problem in which a stretch may be cut into one piece more than needed: a rest first, whole lengths, a rest last. */
    public CoverProblem(
            List<Stretch> stretches,
            List<Stock> stock,
            long gap,
            long minPiece,
            long maxPiece,
            long step,
            long kerf,
            long target) {
        this(stretches, stock, gap, minPiece, maxPiece, step, kerf, target, 1);
    }

    /**
     * Most pieces on a stretch of a length: as many as it takes in longest pieces of the shortest stock that gives a piece
     * (of what can be bought in any number, if there is any), and {@code extraPieces} more.
     */
    public long mostPieces(long stretch) {
        return mostPieces(stretch, wholePiece());
    }

    /** The same where the longest piece of the shortest stock is known. */
    public long mostPieces(long stretch, long whole) {
        return whole == 0 ? 0 : -Math.floorDiv(-(stretch + gap), whole + gap) + extraPieces;
    }

    /** Longest piece of the shortest stock that gives one, as in {@link #mostPieces}; 0 where none does. */
    public long wholePiece() {
        long whole = wholePiece(true);
        return whole > 0 ? whole : wholePiece(false);
    }

    private long wholePiece(boolean unlimited) {
        return stock.stream()
                .filter(s -> unlimited ? s.unlimited() : s.available() > 0)
                .mapToLong(s -> Math.min(maxPiece, s.length()) / step * step)
                .filter(p -> p >= minPiece)
                .min()
                .orElse(0);
    }
}
