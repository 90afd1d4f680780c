package org.runbend.export.bench;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.day.DayCut;
import org.runbend.optimizer.day.DayMaterial;
import org.runbend.optimizer.day.DayNesting;
import org.runbend.optimizer.day.DayPlan;
import org.runbend.optimizer.work.Work;

/**
 * How long a day's cuts take together, how far from the proved bound they end, and what they save over order by order.
 *
 * <p>Usage: {@code java -Xmx2g -cp export/target/runbend.jar org.runbend.export.bench.DayBench [ORDERS]}. Orders (1000) of 200 seeded
 * floors, from 300 opened coils and 2,000 offcuts: loops of 8 to 68 m in whole mm, 15 to 44 pieces of plate an order. Prints CSV
 * {@code product,cuts,cost,bound,gapPercent,seconds,orderByOrder,savedPercent} and the seconds of both side by side.
 */
public final class DayBench {
    private static final int FLOORS = 200;
    private static final int COILS = 300;
    private static final int OFFCUTS = 2000;
    private static final long METRE = 100_000;

    private DayBench() {}

    /** Runs the bench. */
    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        int orders = args.length == 0 ? 1000 : Integer.parseInt(args[0]);
        List<DayMaterial> day = List.of(pipe(orders), plates(orders));
        long start = System.nanoTime();
        List<Nested> nested = Work.silent().each(day, DayBench::nest);
        double together = seconds(start);
        out.println("product,cuts,cost,bound,gapPercent,seconds,orderByOrder,savedPercent");
        for (int i = 0; i < day.size(); i++) {
            DayPlan plan = nested.get(i).plan();
            long alone = new DayNesting().costOrderByOrder(day.get(i));
            out.printf(
                    Locale.ROOT,
                    "%s,%d,%d,%d,%.3f,%.1f,%d,%.1f%n",
                    plan.product(),
                    day.get(i).cuts().size(),
                    plan.cost(),
                    plan.bound().value(),
                    100.0 * (plan.cost() - plan.bound().value()) / plan.cost(),
                    nested.get(i).seconds(),
                    alone,
                    100.0 * (alone - plan.cost()) / alone);
        }
        out.printf(Locale.ROOT, "both side by side: %.1f s%n", together);
    }

    private record Nested(DayPlan plan, double seconds) {}

    private static Nested nest(DayMaterial material) {
        long start = System.nanoTime();
        Answer<DayPlan> answer = new DayNesting().nest(material);
        return new Nested(answer.value().orElseThrow(), seconds(start));
    }

    private static double seconds(long start) {
        return (System.nanoTime() - start) / 1e9;
    }

    private static DayMaterial pipe(int orders) {
        Random dice = new Random(1);
        long[] metres = {25, 50, 80, 120, 240};
        long[] costs = {2125, 4000, 6160, 8880, 16800};
        List<Stock> stock = new ArrayList<>();
        for (int i = 0; i < COILS; i++) {
            stock.add(Stock.single("PX-16", "C" + i, 3 * METRE + dice.nextInt(9000) * 1000L, 0));
        }
        for (int i = 0; i < metres.length; i++) {
            stock.add(Stock.bought("PX-16", metres[i] * METRE, costs[i]));
        }
        List<List<Long>> floors = new ArrayList<>();
        for (int f = 0; f < FLOORS; f++) {
            List<Long> loops = new ArrayList<>();
            for (int l = 1 + dice.nextInt(2); l > 0; l--) {
                loops.add((8000 + dice.nextInt(60_000)) * 100L);
            }
            floors.add(loops);
        }
        return new DayMaterial("PX-16", stock, cuts(orders, floors, dice), 0, 0, 3 * METRE);
    }

    private static DayMaterial plates(int orders) {
        Random dice = new Random(2);
        List<Stock> stock = new ArrayList<>();
        for (int i = 0; i < OFFCUTS; i++) {
            stock.add(Stock.single("SP-1", "O" + i, (150 + dice.nextInt(900)) * 100L, 0));
        }
        stock.add(Stock.bought("SP-1", 120_000, 310));
        List<List<Long>> floors = new ArrayList<>();
        for (int f = 0; f < FLOORS; f++) {
            List<Long> pieces = new ArrayList<>();
            for (int p = 15 + dice.nextInt(30); p > 0; p--) {
                pieces.add(dice.nextInt(100) < 45 ? 120_000L : (15 + dice.nextInt(106)) * 1000L);
            }
            floors.add(pieces);
        }
        return new DayMaterial("SP-1", stock, cuts(orders, floors, dice), 300, 0, 15_000);
    }

    private static List<DayCut> cuts(int orders, List<List<Long>> floors, Random dice) {
        List<DayCut> cuts = new ArrayList<>();
        for (int o = 0; o < orders; o++) {
            List<Long> floor = floors.get(dice.nextInt(floors.size()));
            for (int c = 0; c < floor.size(); c++) {
                cuts.add(new DayCut("order " + o, "cut " + c, floor.get(c)));
            }
        }
        return cuts;
    }
}
