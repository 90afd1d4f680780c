package org.runbend.optimizer.cutting;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Tries every set of pieces on every stretch and packs each set by brute force; for a handful of pieces. */
public final class CoverBruteForce {
    private static final long NONE = Long.MAX_VALUE;

    private final CoverProblem problem;
    private final Map<String, Long> packed = new TreeMap<>();

    private final int lengths;
    private long leastCost = NONE;
    private long fewest = NONE;
    private long mostCover;

    public CoverBruteForce(CoverProblem problem) {
        this(problem, Integer.MAX_VALUE);
    }

    /** Pieces of at most so many different lengths. */
    public CoverBruteForce(CoverProblem problem, int lengths) {
        this.problem = problem;
        this.lengths = lengths;
    }

    /** Least cost with which the target is reached, or Long.MAX_VALUE. */
    public long best() {
        return overStretches(0, new ArrayList<>(), 0);
    }

    /** Fewest pieces of all plans of the least cost; to be asked for after {@link #best}. */
    public long fewestPieces() {
        return fewest;
    }

    /** Most cover of all plans of the least cost with the fewest pieces; likewise. */
    public long mostCover() {
        return mostCover;
    }

    private long overStretches(int stretch, List<Long> pieces, long covered) {
        if (stretch == problem.stretches().size()) {
            return covered >= problem.target() ? levels(pack(pieces), pieces.size(), covered) : NONE;
        }
        return fill(stretch, pieces, covered, 0, Long.MAX_VALUE, mostPieces(stretch));
    }

    private long levels(long cost, long pieces, long covered) {
        boolean better = cost < leastCost || (cost == leastCost && cost < NONE && pieces < fewest);
        if (better) {
            leastCost = cost;
            fewest = pieces;
            mostCover = covered;
        } else if (cost == leastCost && pieces == fewest) {
            mostCover = Math.max(mostCover, covered);
        }
        return cost;
    }

    /** Adds pieces to one stretch in falling order, or goes on to the next. */
    private long fill(int stretch, List<Long> pieces, long covered, long used, long longest, long more) {
        boolean enough = used >= problem.stretches().get(stretch).least();
        long best = enough ? overStretches(stretch + 1, pieces, covered + used) : NONE;
        for (long p = problem.step(); p <= Math.min(longest, problem.maxPiece()); p += problem.step()) {
            long end = used + p + (used > 0 ? problem.gap() : 0);
            if (end > problem.stretches().get(stretch).length()) {
                break;
            }
            if (p >= problem.minPiece() && more > 0 && isAllowed(pieces, p)) {
                pieces.add(p);
                best = Math.min(best, fill(stretch, pieces, covered, end, p, more - 1));
                pieces.remove(pieces.size() - 1);
            }
        }
        return best;
    }

    private boolean isAllowed(List<Long> pieces, long p) {
        return pieces.contains(p) || pieces.stream().distinct().count() < lengths;
    }

    /** Laid end to end in whole lengths of the shortest usual stock, and the extra ones. */
    private long mostPieces(int stretch) {
        boolean isSold = problem.stock().stream().anyMatch(s -> s.unlimited() && whole(s) >= problem.minPiece());
        long shortest = problem.stock().stream()
                .filter(s -> s.unlimited() || !isSold)
                .mapToLong(this::whole)
                .filter(w -> w >= problem.minPiece())
                .min()
                .orElse(Long.MAX_VALUE / 4);
        long length = problem.stretches().get(stretch).length();
        long count = 0;
        while (count * shortest + (count - 1) * problem.gap() < length) {
            count++;
        }
        return count + problem.extraPieces();
    }

    private long whole(Stock s) {
        return Math.min(s.length(), problem.maxPiece()) / problem.step() * problem.step();
    }

    private long pack(List<Long> pieces) {
        List<Long> sorted = new ArrayList<>(pieces);
        Collections.sort(sorted);
        return packed.computeIfAbsent(sorted.toString(), k -> packNew(sorted));
    }

    private long packNew(List<Long> pieces) {
        List<Demand> demands = pieces.stream().map(p -> new Demand("p", p, 1)).toList();
        long[] best = new CuttingBruteForce(new CuttingProblem(problem.stock(), demands, problem.kerf(), 0, 0)).best();
        return best.length == 0 ? NONE : best[0];
    }
}
