package org.runbend.export.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.Stretch;

/** Seeded cases of an invented workshop; lengths in hundredths of mm, prices in minor units. */
final class CuttingCases {
    private static final long METRE = 100_000;

    private CuttingCases() {}

    /**
     * Loops of one to three cuts an order, 20 to 120 m in steps of 0.1 m, from coils of 50 to 200 m and 10 to 20 opened
     * ones that cost nothing; 0.5 m trim.
     */
    static CuttingProblem coils(int orders, int seed) {
        Random random = new Random(seed);
        long[] metres = {50, 80, 100, 120, 200};
        long[] prices = {6500, 9900, 12100, 14300, 22900};
        List<Stock> stock = new ArrayList<>();
        for (int i = 0; i < metres.length; i++) {
            stock.add(Stock.bought("coil " + metres[i], metres[i] * METRE, prices[i]));
        }
        int opened = 10 + random.nextInt(11);
        for (int i = 0; i < opened; i++) {
            stock.add(Stock.single("opened", "C" + i, (100 + random.nextInt(900)) * METRE / 10, 0));
        }
        List<Demand> cuts = new ArrayList<>();
        for (int o = 0; o < orders; o++) {
            int loops = 1 + (random.nextInt(100) < 60 ? 1 : 0) + (random.nextInt(100) < 35 ? 1 : 0);
            for (int i = 0; i < loops; i++) {
                cuts.add(new Demand("order " + o, (200 + random.nextInt(1001)) * METRE / 10, 1));
            }
        }
        return new CuttingProblem(stock, cuts, 0, METRE / 2, 0);
    }

    /** Pieces of a day: 45 % full ones, the rest 150 to 1200 mm by 10 mm; kerf 3 mm; one stock length of 1200 mm. */
    static CuttingProblem day(int orders, int seed) {
        return new CuttingProblem(
                List.of(Stock.bought("plate", 120_000, 600)), pieces(orders, new Random(seed)), 300, 0, 0);
    }

    /** The same pieces from plates of 1000, 1200 and 2000 mm and 50 offcuts of 150 to 1050 mm that cost nothing. */
    static CuttingProblem dayOfThree(int orders, int seed) {
        Random random = new Random(seed);
        List<Demand> pieces = pieces(orders, random);
        List<Stock> stock = new ArrayList<>(List.of(
                Stock.bought("1000", 100_000, 525),
                Stock.bought("1200", 120_000, 600),
                Stock.bought("2000", 200_000, 985)));
        for (int i = 0; i < 50; i++) {
            stock.add(Stock.single("offcut", "O" + i, (150 + random.nextInt(900)) * 100L, 0));
        }
        return new CuttingProblem(stock, pieces, 300, 0, 0);
    }

    private static List<Demand> pieces(int orders, Random random) {
        int[] counts = new int[121];
        for (int i = 0; i < orders * 114; i++) {
            counts[random.nextInt(100) < 45 ? 120 : 15 + random.nextInt(106)]++;
        }
        List<Demand> pieces = new ArrayList<>();
        for (int u = 15; u <= 120; u++) {
            pieces.add(new Demand(u * 10 + " mm", u * 1000L, counts[u]));
        }
        return pieces;
    }

    /** Runs of 300 to 2900 mm by 10 mm, pieces of at least 150 mm, gap 5 mm, kerf 3 mm; one or three stock lengths. */
    static CoverProblem cover(int runs, int percent, boolean several, int seed) {
        Random random = new Random(seed);
        List<Stretch> stretches = new ArrayList<>();
        long total = 0;
        for (int i = 0; i < runs; i++) {
            long length = (30 + random.nextInt(261)) * 1000L;
            stretches.add(new Stretch(length));
            total += length;
        }
        List<Stock> stock = several
                ? List.of(
                        Stock.bought("1000", 100_000, 525),
                        Stock.bought("1200", 120_000, 600),
                        Stock.bought("2000", 200_000, 985))
                : List.of(Stock.bought("1200", 120_000, 600));
        return new CoverProblem(stretches, stock, 500, 15_000, Long.MAX_VALUE, 1000, 300, total * percent / 100);
    }
}
