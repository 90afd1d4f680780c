package org.runbend.optimizer.day;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.optimizer.cutting.Stock;

/** A day's cuts together: against trying everything where that can be done, and a day so large that lengths go on a grid. */
class DayNestingTest {
    private static final long M = 100_000;

    private static DayMaterial day(List<Stock> stock, long kerf, List<DayCut> cuts) {
        return new DayMaterial("PX-16", stock, cuts, kerf, 0, 3 * M);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void noOtherPlanOfAFewCutsIsCheaper(int seed) {
        Random dice = new Random(seed);
        List<Stock> stock = new ArrayList<>(List.of(
                Stock.single("PX-16", "C1", (5 + dice.nextInt(30)) * M, 0),
                Stock.single("PX-16", "C2", (5 + dice.nextInt(30)) * M, 0),
                Stock.bought("PX-16", 25 * M, 2125),
                Stock.bought("PX-16", 50 * M, 4000)));
        List<DayCut> cuts = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            cuts.add(new DayCut("HF-" + i / 2, "loop " + i, 4 * M + dice.nextInt(2_000_000)));
        }
        DayPlan plan = new DayNesting().nest(day(stock, 0, cuts)).value().orElseThrow();
        assertEquals(leastCost(stock, cuts, 0, new ArrayList<>()), plan.cost());
        assertEquals(plan.cost(), plan.bound().value());
        assertTrue(new DayNesting().costOrderByOrder(day(stock, 0, cuts)) >= plan.cost());
    }

    /** Every way to give cut after cut to a stock piece in use or a new one. */
    private static long leastCost(List<Stock> stock, List<DayCut> cuts, int at, List<long[]> open) {
        if (at == cuts.size()) {
            return 0;
        }
        long least = Long.MAX_VALUE / 2;
        long length = cuts.get(at).length();
        for (int i = 0; i < open.size(); i++) {
            long[] o = open.get(i);
            if (o[1] >= length) {
                o[1] -= length;
                least = Math.min(least, leastCost(stock, cuts, at + 1, open));
                o[1] += length;
            }
        }
        for (int s = 0; s < stock.size(); s++) {
            int kind = s;
            long used = open.stream().filter(o -> o[0] == kind).count();
            if (stock.get(s).length() >= length && used < stock.get(s).available()) {
                open.add(new long[] {s, stock.get(s).length() - length});
                least = Math.min(least, stock.get(s).cost() + leastCost(stock, cuts, at + 1, open));
                open.remove(open.size() - 1);
            }
        }
        return least;
    }

    /** Over the sizes of an exact plan: cut once each, within every stock, the bound under 2 % away, the same twice. */
    @Test
    void largeDayGoesOnAGrid() {
        Random dice = new Random(3);
        List<Stock> stock = new ArrayList<>(List.of(
                Stock.bought("PX-16", 50 * M, 4000),
                Stock.bought("PX-16", 120 * M, 8880),
                Stock.bought("PX-16", 240 * M, 16800)));
        for (int i = 0; i < 6; i++) {
            stock.add(Stock.single("PX-16", "C" + i, 3 * M + dice.nextInt(4_000_000), 0));
        }
        List<DayCut> cuts = new ArrayList<>();
        for (int i = 0; i < 45; i++) {
            cuts.add(new DayCut("HF-" + i, "loop A", 10 * M + dice.nextInt(150) * 34_567L % 5_000_000));
        }
        DayMaterial day = day(stock, 0, cuts);
        DayPlan plan = new DayNesting(20).nest(day).value().orElseThrow();
        Set<String> made = new HashSet<>();
        Set<String> shelf = new HashSet<>();
        for (DayUse use : plan.uses()) {
            long sum = 0;
            for (DayCut cut : use.cuts()) {
                assertTrue(made.add(cut.order()), cut.order() + " is cut twice");
                sum += cut.length();
            }
            assertEquals(use.stock().length(), sum + use.leftover());
            use.stock().id().ifPresent(id -> assertTrue(shelf.add(id), id + " is cut twice"));
        }
        assertEquals(cuts.size(), made.size());
        assertTrue(plan.bound().value() >= plan.cost() * 0.98, plan.cost() + ", bound " + plan.bound());
        assertEquals(plan, new DayNesting(20).nest(day).value().orElseThrow());
    }
}
