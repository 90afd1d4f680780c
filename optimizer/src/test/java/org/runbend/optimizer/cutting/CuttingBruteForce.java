package org.runbend.optimizer.cutting;

import java.util.ArrayList;
import java.util.List;

/** Puts every cut into every stock piece in turn; for up to seven or eight cuts. */
final class CuttingBruteForce {
    private final CuttingProblem problem;
    private final List<Long> cuts = new ArrayList<>();
    private final int[] used;
    private long[] best = {};

    CuttingBruteForce(CuttingProblem problem) {
        this.problem = problem;
        used = new int[problem.stock().size()];
        for (Demand d : problem.demands()) {
            for (int n = 0; n < d.count(); n++) {
                cuts.add(d.length());
            }
        }
    }

    /** Least cost and least scrap at that cost; empty when there is no plan. */
    long[] best() {
        place(0, new ArrayList<>());
        return best;
    }

    /** Each opened piece is {stock, sum of cuts, number of cuts}. */
    private void place(int cut, List<long[]> open) {
        if (cut == cuts.size()) {
            keep(open);
            return;
        }
        for (long[] piece : open) {
            put(cut, piece, open);
        }
        for (int s = 0; s < used.length; s++) {
            if (used[s] < problem.stock().get(s).available()) {
                used[s]++;
                long[] piece = {s, 0, 0};
                open.add(piece);
                put(cut, piece, open);
                open.remove(open.size() - 1);
                used[s]--;
            }
        }
    }

    private void put(int cut, long[] piece, List<long[]> open) {
        long length = cuts.get(cut);
        long room = problem.stock().get((int) piece[0]).length() - problem.endTrim();
        if (piece[1] + length + piece[2] * problem.kerf() <= room) {
            piece[1] += length;
            piece[2]++;
            place(cut + 1, new ArrayList<>(open));
            piece[1] -= length;
            piece[2]--;
        }
    }

    private void keep(List<long[]> open) {
        long cost = 0;
        long scrap = 0;
        for (long[] piece : open) {
            Stock stock = problem.stock().get((int) piece[0]);
            long left = Math.max(0, stock.length() - problem.endTrim() - piece[1] - piece[2] * problem.kerf());
            cost += stock.cost();
            scrap += left < problem.keepFrom() ? left : 0;
        }
        if (best.length == 0 || cost < best[0] || (cost == best[0] && scrap < best[1])) {
            best = new long[] {cost, scrap};
        }
    }
}
