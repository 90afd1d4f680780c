package org.runbend.optimizer.cutting.cover;

import java.util.Arrays;
import org.runbend.optimizer.cutting.CoverKnapsack;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.Stretch;

/**
 * What a set of piece lengths can do at best, at a glance. All pieces together take a gap each, less one for each stretch
 * used, and reach the target; a stock piece gives at most its best pattern of the set. So stock whose best patterns reach
 * target and gaps is a bound, with one length and no least cover an exact one. Sums of n pieces are bits of a whole number.
 */
final class LengthSet {
    private final CoverGrid grid;
    private final CoverProblem problem;
    private final int[] sizes;
    private final SizeSums sums;
    private final long bound;
    private final double value;
    private final long reach;

    /** A set of sizes in steps, rising. */
    LengthSet(CoverGrid whole, int... sizes) {
        this.sizes = sizes.clone();
        sums = new SizeSums(this.sizes);
        problem = whole.problem();
        grid = new CoverGrid(whole, this.sizes);
        long covered = 0;
        long all = 0;
        long used = 0;
        boolean possible = true;
        long[] free = new long[problem.stretches().size()];
        int count = 0;
        long length = -1;
        long own = 0;
        for (Stretch s : grid.inOrder()) {
            own = s.length() == length ? own : reachOf(s.length());
            length = s.length();
            all += own;
            possible &= own >= s.least();
            if (s.least() > 0) {
                covered += own;
                used++;
            } else {
                free[count++] = own;
            }
        }
        Arrays.sort(free, 0, count);
        for (int f = count - 1; f >= 0 && covered < problem.target(); f--) {
            covered += free[f];
            used++;
        }
        reach = all;
        possible &= covered >= problem.target();
        long need = problem.target() + used * problem.gap();
        bound = possible ? stockFor(need) : Long.MAX_VALUE;
        value = possible ? rate() * need : Double.POSITIVE_INFINITY;
    }

    int[] sizes() {
        return sizes.clone();
    }

    /** The same problem with these sizes alone. */
    CoverGrid grid() {
        return grid;
    }

    /** No plan of these lengths costs less; Long.MAX_VALUE when there is none. */
    long bound() {
        return bound;
    }

    /** A floating-point estimate of the cost, to put sets in order. */
    double value() {
        return value;
    }

    /** The most that can be covered of all stretches. */
    long reach() {
        return reach;
    }

    private long reachOf(long length) {
        long best = 0;
        for (int n = 1; n <= grid.piecesOn(length); n++) {
            long between = (n - 1) * problem.gap();
            long total = sums.greatest(n, Math.floorDiv(length - between, problem.step()));
            best = total < 0 ? best : Math.max(best, grid.length(total) + between);
        }
        return best;
    }

    private long gain(Stock stock) {
        long best = 0;
        for (int n = 1; n <= grid.pieces(stock.length(), problem.kerf()); n++) {
            long total = sums.greatest(n, Math.floorDiv(stock.length() - (n - 1) * problem.kerf(), problem.step()));
            best = total < 0 ? best : Math.max(best, grid.length(total) + n * problem.gap());
        }
        return best;
    }

    private long stockFor(long need) {
        CoverKnapsack knapsack = new CoverKnapsack(need);
        problem.stock().forEach(s -> knapsack.add(gain(s), s.cost(), s.available()));
        return knapsack.bound().orElse(Long.MAX_VALUE);
    }

    private double rate() {
        return problem.stock().stream()
                .filter(s -> s.unlimited() && gain(s) > 0)
                .mapToDouble(s -> (double) s.cost() / gain(s))
                .min()
                .orElse(1);
    }

    @Override
    public String toString() {
        return Arrays.toString(sizes);
    }
}
