package org.runbend.optimizer.cutting.cover;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import org.runbend.optimizer.cutting.Costs;
import org.runbend.optimizer.cutting.Stock;

/**
 * The bound of the material alone. What is covered is sum(p + gap) over all pieces less one gap for each stretch used, and
 * a stock piece gives at most its gain of p + gap: so the gains must reach the target and a gap for each of the fewest
 * stretches that can hold it. Least cost of such stock is a knapsack in whole numbers.
 */
final class CoverMaterial {
    /** Cells of the table: chosen for memory; a coarser unit keeps the bound, not its sharpness. */
    private static final int TABLE = 1_000_000;

    private static final long NONE = Long.MAX_VALUE;

    private final CoverGrid grid;

    CoverMaterial(CoverGrid grid) {
        this.grid = grid;
    }

    /** No plan costs less; empty when all stock together does not reach the target. */
    OptionalLong bound() {
        long need = need();
        List<Stock> useful = grid.problem().stock().stream()
                .filter(s -> s.available() > 0 && grid.gain(s) > 0)
                .toList();
        if (need <= 0) {
            return OptionalLong.of(0);
        }
        long unit = Costs.gcd(grid.problem().step(), grid.problem().gap());
        unit = Math.max(unit, need / TABLE + 1);
        int size = Math.toIntExact(-Math.floorDiv(-need, unit));
        long[] least = new long[size + 1];
        Arrays.fill(least, NONE);
        least[0] = 0;
        for (Stock s : useful) {
            add(least, -Math.floorDiv(-grid.gain(s), unit), s);
        }
        return least[size] == NONE ? OptionalLong.empty() : OptionalLong.of(least[size]);
    }

    private long need() {
        long target = grid.problem().target();
        List<Long> reaches = grid.stretchLengths().stream()
                .map(grid::reach)
                .sorted(Comparator.reverseOrder())
                .toList();
        long covered = 0;
        int used = 0;
        while (covered < target && used < reaches.size()) {
            covered += reaches.get(used++);
        }
        return target + used * grid.problem().gap();
    }

    private static void add(long[] least, long amount, Stock stock) {
        if (stock.unlimited()) {
            for (int a = 0; a < least.length; a++) {
                extend(least, a, amount, stock.cost());
            }
            return;
        }
        long left = Math.min(stock.available(), -Math.floorDiv(-(long) least.length, amount));
        for (long pack = 1; left > 0; pack *= 2) {
            long taken = Math.min(pack, left);
            left -= taken;
            for (int a = least.length - 1; a >= 0; a--) {
                extend(least, a, taken * amount, taken * stock.cost());
            }
        }
    }

    private static void extend(long[] least, int from, long amount, long cost) {
        if (least[from] != NONE) {
            int to = (int) Math.min(least.length - 1L, from + amount);
            least[to] = Math.min(least[to], least[from] + cost);
        }
    }
}
