package org.runbend.optimizer.cutting.cover;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.Stretch;

/** A cover problem counted in steps: least and greatest piece, what fits on a length, what a stretch can take at most. */
final class CoverGrid {
    private final CoverProblem problem;
    private final int least;
    private final int most;
    private final int[] sizes;
    private final boolean limited;
    private final long wholePiece;
    private final List<Stretch> inOrder;

    CoverGrid(CoverProblem problem) {
        this.problem = problem;
        inOrder = problem.stretches().stream()
                .sorted(Comparator.comparingInt((Stretch s) -> s.least() > 0 ? 0 : 1)
                        .thenComparing(Comparator.comparingLong(Stretch::length).reversed()))
                .toList();
        wholePiece = problem.wholePiece();
        least = Math.toIntExact(-Math.floorDiv(-problem.minPiece(), problem.step()));
        long longest = problem.stock().stream()
                .filter(s -> s.available() > 0)
                .mapToLong(Stock::length)
                .max()
                .orElse(0);
        most = Math.toIntExact(Math.min(problem.maxPiece(), longest) / problem.step());
        sizes = IntStream.rangeClosed(least, most).toArray();
        limited = false;
    }

    /** The same problem with pieces of these sizes alone, in steps, rising; each must be a size of the whole grid. */
    CoverGrid(CoverGrid whole, int... sizes) {
        this.problem = whole.problem;
        wholePiece = whole.wholePiece;
        inOrder = whole.inOrder;
        this.sizes = sizes.clone();
        least = sizes[0];
        most = sizes[sizes.length - 1];
        limited = true;
    }

    CoverProblem problem() {
        return problem;
    }

    /** Shortest piece in steps. */
    int least() {
        return least;
    }

    /** Longest piece in steps; below {@link #least()} when no stock gives a piece. */
    int most() {
        return most;
    }

    /** Sizes that pieces may have, in steps, rising. */
    int[] sizes() {
        return sizes.clone();
    }

    /** True when only some sizes are allowed. */
    boolean isLimited() {
        return limited;
    }

    /** The greatest size allowed of at most so many steps, or 0. */
    int sizeWithin(long steps) {
        if (!limited) {
            return steps < least ? 0 : (int) Math.min(steps, most);
        }
        int size = 0;
        for (int u : sizes) {
            size = u <= steps ? u : size;
        }
        return size;
    }

    /** Hundredths of mm of so many steps. */
    long length(long steps) {
        return steps * problem.step();
    }

    /** At least the greatest total, in steps, of n pieces with so much lost between two of them; -1 when n pieces do not fit. */
    long total(long length, long n, long between) {
        long room = length - (n - 1) * between;
        long total = Math.min(n * most, Math.floorDiv(room, problem.step()));
        return total < n * least ? -1 : total;
    }

    /** Greatest number of pieces on a length. */
    int pieces(long length, long between) {
        return Math.toIntExact((length + between) / (length(least) + between));
    }

    /** Greatest number of pieces on a stretch. */
    int piecesOn(long stretch) {
        return (int) Math.min(pieces(stretch, problem.gap()), problem.mostPieces(stretch, wholePiece));
    }

    /** The most that can be covered of a stretch. */
    long reach(long stretch) {
        long reach = 0;
        for (int n = 1; n <= piecesOn(stretch); n++) {
            long total = total(stretch, n, problem.gap());
            if (total >= 0) {
                reach = Math.max(reach, length(total) + (n - 1) * problem.gap());
            }
        }
        return reach;
    }

    /** Length and gaps that a stock piece can give, one gap counted with each piece. */
    long gain(Stock stock) {
        long gain = 0;
        for (int n = 1; n <= pieces(stock.length(), problem.kerf()); n++) {
            long total = total(stock.length(), n, problem.kerf());
            if (total >= 0) {
                gain = Math.max(gain, length(total) + n * problem.gap());
            }
        }
        return gain;
    }

    /** The stretches, those that must be covered first, then the longest first. */
    List<Stretch> inOrder() {
        return inOrder;
    }

    /** The lengths of the stretches. */
    List<Long> stretchLengths() {
        return problem.stretches().stream().map(Stretch::length).toList();
    }
}
