package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.runbend.optimizer.cutting.CoverKnapsack;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.Stretch;

/**
 * A lower bound for a cover problem from integer prices: pi of a piece by its length, tau of a covered hundredth of mm.
 * Whatever the prices, what is covered earns at most the prices of its pieces and, for each stretch, what its best cover
 * earns above them; a stock piece gives at most the prices of its best pattern. So the stock bought must be worth tau target
 * less the gains of the stretches, and the least cost of such stock, in whole pieces, is the bound. Both best patterns are
 * found exactly by tables over number and total of the pieces.
 */
final class CoverDuals {
    /** Prices are whole numbers up to this: derived, sums of 2^14 of them stay within a long. */
    private static final long ROOM = 1L << 48;
    /** No value: derived, two of them added stay within a long. */
    private static final long NONE = Long.MIN_VALUE / 4;

    /** Cells of all tables for which generation is worth its time: chosen, not measured. */
    private static final double TABLE_WORK = 3e7;

    private final CoverGrid grid;
    private final long scale;
    private final long[] pi;
    private final long tau;
    private final Table cutting;
    private final Table covering;

    /** True when the tables are small enough to be worth making. */
    static boolean isWorthwhile(CoverGrid grid) {
        CoverProblem p = grid.problem();
        long stock = p.stock().stream().mapToLong(Stock::length).max().orElse(0);
        long stretch = p.stretches().stream().mapToLong(Stretch::length).max().orElse(0);
        double cells = (double) stock / p.step() * grid.pieces(stock, p.kerf())
                + (double) stretch / p.step() * grid.piecesOn(stretch);
        return cells * (grid.most() - grid.least() + 1) < TABLE_WORK;
    }

    /** Prices as proposed by a floating-point program, in cost units; {@code pi} by steps. */
    CoverDuals(CoverGrid grid, double[] pi, double tau) {
        this.grid = grid;
        long dearest =
                grid.problem().stock().stream().mapToLong(Stock::cost).max().orElse(0);
        scale = dearest == 0 ? 1 : Long.highestOneBit(ROOM / dearest);
        this.pi = new long[pi.length];
        for (int u = 0; u < pi.length; u++) {
            this.pi[u] = integer(pi[u]);
        }
        CoverProblem p = grid.problem();
        this.tau = Math.min(integer(tau), greatest(p));
        long stock = p.stock().stream().mapToLong(Stock::length).max().orElse(0);
        long stretch = p.stretches().stream().mapToLong(Stretch::length).max().orElse(0);
        cutting = new Table(grid, this.pi, 1, grid.pieces(stock, p.kerf()), Math.toIntExact(stock / p.step()));
        covering = new Table(grid, this.pi, -1, grid.piecesOn(stretch), Math.toIntExact(stretch / p.step()));
    }

    /** The greatest price of cover whose sums stay in a long; a lower price is a price too, the bound stays one. */
    private static long greatest(CoverProblem p) {
        long all = p.stretches().stream().mapToLong(Stretch::length).sum();
        return Long.MAX_VALUE / 8 / Math.max(1, Math.max(all, p.target()));
    }

    private long integer(double price) {
        return (long) Math.max(0, Math.min((double) ROOM, Math.floor(price * scale)));
    }

    /** No plan that reaches the target costs less. */
    long bound() {
        long need = Math.multiplyExact(tau, grid.problem().target());
        for (Stretch r : grid.problem().stretches()) {
            need = Math.subtractExact(need, cover(r).value());
        }
        if (need <= 0) {
            return 0;
        }
        CoverKnapsack knapsack = new CoverKnapsack(need);
        for (Stock s : grid.problem().stock()) {
            knapsack.add(cut(s).value(), s.cost(), s.available());
        }
        return knapsack.bound().orElse(0);
    }

    /** A pattern: piece lengths in steps, and what it is worth (scaled). */
    record Pattern(List<Integer> pieces, long value) {}

    /** The most valuable pattern of a stock piece. */
    Pattern cut(Stock stock) {
        return cutting.best(stock.length(), Integer.MAX_VALUE, grid.problem().kerf(), 0, 0);
    }

    /** The cover of a stretch that earns most of those that cover enough; the empty one counts where that is nothing. */
    Pattern cover(Stretch stretch) {
        int most = grid.piecesOn(stretch.length());
        return covering.best(stretch.length(), most, grid.problem().gap(), tau, stretch.least());
    }

    /** Best value of n pieces of a given total, values signed: +1 for patterns that earn pi, -1 for covers that pay it. */
    private static final class Table {
        private final CoverGrid grid;
        private final int[] sizes;
        private final long[][] value;
        private final int[][] last;

        Table(CoverGrid grid, long[] pi, int sign, int pieces, int steps) {
            this.grid = grid;
            sizes = grid.sizes();
            value = new long[pieces + 1][steps + 1];
            last = new int[pieces + 1][steps + 1];
            for (long[] row : value) {
                Arrays.fill(row, NONE);
            }
            value[0][0] = 0;
            for (int n = 1; n <= pieces; n++) {
                for (int t = n * grid.least(); t <= Math.min((long) steps, (long) n * grid.most()); t++) {
                    fill(pi, sign, n, t);
                }
            }
        }

        private void fill(long[] pi, int sign, int n, int t) {
            for (int u : sizes) {
                if (u > t) {
                    break;
                }
                long v = value[n - 1][t - u] + sign * pi[u];
                if (v > value[n][t]) {
                    value[n][t] = v;
                    last[n][t] = u;
                }
            }
        }

        Pattern best(long length, int most, long between, long tau, long least) {
            long best = least > 0 ? NONE / 2 : 0;
            int bestN = 0;
            int bestT = 0;
            for (int n = 1; n <= Math.min(most, value.length - 1); n++) {
                long total = grid.total(length, n, between);
                for (int t = n * grid.least(); t <= total; t++) {
                    long covered = grid.length(t) + (n - 1) * between;
                    long earned = value[n][t] + tau * covered;
                    if (value[n][t] > NONE / 2 && earned > best && covered >= least) {
                        best = earned;
                        bestN = n;
                        bestT = t;
                    }
                }
            }
            return new Pattern(pieces(bestN, bestT), best);
        }

        private List<Integer> pieces(int n, int t) {
            List<Integer> pieces = new ArrayList<>();
            int left = t;
            for (int k = n; k > 0; k--) {
                pieces.add(last[k][left]);
                left -= last[k][left];
            }
            return pieces;
        }
    }
}
