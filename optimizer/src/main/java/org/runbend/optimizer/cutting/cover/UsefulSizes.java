package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.Stretch;

/** Sizes worth trying where a grid has too many: those that fill stretches or stock in equal parts, and those of a plan. */
final class UsefulSizes {
    /** Equal parts of a length that may be useful: chosen, not measured. */
    private static final int PARTS = 6;

    private final CoverGrid grid;
    private final TreeMap<Integer, Integer> votes = new TreeMap<>();

    UsefulSizes(CoverGrid grid, CoverSolution plan) {
        this.grid = grid;
        CoverProblem p = grid.problem();
        plan.pieces().forEach(list -> list.forEach(l -> vote(l / p.step(), 4)));
        for (Stretch s : p.stretches()) {
            parts(s.length(), p.gap());
            for (Stock stock : p.stock()) {
                for (long rest = s.length(); rest > 0; rest -= stock.length() + p.gap()) {
                    vote(rest / p.step(), 1);
                }
            }
        }
        p.stock().forEach(s -> parts(s.length(), p.kerf()));
    }

    private void parts(long length, long between) {
        for (int n = 1; n <= PARTS; n++) {
            vote(Math.floorDiv(length - (n - 1) * between, n * grid.problem().step()), 2);
        }
    }

    private void vote(long steps, int weight) {
        if (steps >= grid.least() && steps <= grid.most()) {
            votes.merge(Math.toIntExact(steps), weight, Integer::sum);
        }
    }

    /** At most so many sizes, rising; those of most use. */
    int[] sizes(int most) {
        List<Integer> all = new ArrayList<>(votes.keySet());
        all.sort(Comparator.comparingInt(u -> -votes.get(u)));
        return all.stream().limit(most).mapToInt(Integer::intValue).sorted().toArray();
    }
}
