package org.runbend.optimizer.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Puts every cut into every stock piece in turn; for up to seven or eight cuts. */
public final class CuttingBruteForce {
    private final CuttingProblem problem;
    private final List<Long> cuts = new ArrayList<>();
    private final int[] used;
    private final List<Integer> where = new ArrayList<>();
    private long[] best = {};

    public CuttingBruteForce(CuttingProblem problem) {
        this.problem = problem;
        used = new int[problem.stock().size()];
        for (Demand d : problem.demands()) {
            for (int n = 0; n < d.count(); n++) {
                cuts.add(d.length());
            }
        }
    }

    /** Least cost, then scrap, new stock pieces and different ways of cutting; empty when there is no plan. */
    public long[] best() {
        place(0, new ArrayList<>());
        return best;
    }

    /** Each opened piece is {stock, sum of cuts, number of cuts}. */
    private void place(int cut, List<long[]> open) {
        if (cut == cuts.size()) {
            keep(open);
            return;
        }
        for (int piece = 0; piece < open.size(); piece++) {
            where.add(piece);
            put(cut, open.get(piece), open);
            where.remove(where.size() - 1);
        }
        for (int s = 0; s < used.length; s++) {
            if (used[s] < problem.stock().get(s).available()) {
                used[s]++;
                long[] piece = {s, 0, 0};
                open.add(piece);
                where.add(open.size() - 1);
                put(cut, piece, open);
                where.remove(where.size() - 1);
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

    /** Stock that is alike in length, price and kind, cut into the same lengths, counts once. */
    private long ways(List<long[]> open) {
        Set<String> ways = new HashSet<>();
        for (int piece = 0; piece < open.size(); piece++) {
            List<Long> lengths = new ArrayList<>();
            for (int cut = 0; cut < where.size(); cut++) {
                if (where.get(cut) == piece) {
                    lengths.add(cuts.get(cut));
                }
            }
            Collections.sort(lengths);
            Stock s = problem.stock().get((int) open.get(piece)[0]);
            ways.add(s.length() + " " + s.cost() + " " + s.unlimited() + " " + s.id().isEmpty() + lengths);
        }
        return ways.size();
    }

    private void keep(List<long[]> open) {
        long cost = 0;
        long scrap = 0;
        long fresh = 0;
        for (long[] piece : open) {
            Stock stock = problem.stock().get((int) piece[0]);
            long left = Math.max(0, stock.length() - problem.endTrim() - piece[1] - piece[2] * problem.kerf());
            cost += stock.cost();
            scrap += left < problem.keepFrom() ? left : 0;
            fresh += stock.id().isEmpty() ? 1 : 0;
        }
        long[] now = {cost, scrap, fresh, ways(open)};
        if (best.length == 0 || Arrays.compare(now, best) < 0) {
            best = now;
        }
    }
}
