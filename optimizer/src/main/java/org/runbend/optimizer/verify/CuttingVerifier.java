package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockCut;

/** Checks a cutting plan from problem and plan alone; shares no line with any solver. */
public final class CuttingVerifier {
    private CuttingVerifier() {}

    /** What is wrong with the plan, one sentence each; empty when nothing is. */
    public static List<Finding> verify(CuttingProblem problem, CuttingSolution solution) {
        Findings wrong = new Findings();
        int[] made = new int[problem.demands().size()];
        int[] used = new int[problem.stock().size()];
        long cost = 0;
        long scrap = 0;
        for (int c = 0; c < solution.cuts().size(); c++) {
            StockCut cut = solution.cuts().get(c);
            if (cut.stock() < 0 || cut.stock() >= used.length) {
                wrong.unless(false, "stock piece %d: no stock has index %d", c, cut.stock());
                continue;
            }
            used[cut.stock()]++;
            cost += problem.stock().get(cut.stock()).cost();
            scrap += cut.leftover() < problem.keepFrom() ? cut.leftover() : 0;
            checkOne(problem, c, cut, made, wrong);
        }
        for (int d = 0; d < made.length; d++) {
            int count = problem.demands().get(d).count();
            wrong.unless(made[d] == count, "demand %d: %d cuts instead of %d", d, made[d], count);
        }
        for (int s = 0; s < used.length; s++) {
            int available = problem.stock().get(s).available();
            wrong.unless(used[s] <= available, "stock %d: %d used of %d", s, used[s], available);
        }
        wrong.unless(cost == solution.cost(), "the stock costs %d, not %d", cost, solution.cost());
        wrong.unless(scrap == solution.scrap(), "the scrap is %d, not %d", scrap, solution.scrap());
        checkCounts(problem, solution, wrong);
        return wrong.all();
    }

    private static void checkCounts(CuttingProblem problem, CuttingSolution solution, Findings wrong) {
        Set<List<Long>> ways = new HashSet<>();
        int opened = 0;
        for (StockCut cut : solution.cuts()) {
            boolean known = cut.stock() >= 0 && cut.stock() < problem.stock().size();
            if (!known
                    || cut.demands().stream()
                            .anyMatch(d -> d < 0 || d >= problem.demands().size())) {
                continue;
            }
            Stock stock = problem.stock().get(cut.stock());
            opened += stock.id().isEmpty() ? 1 : 0;
            List<Long> way = new ArrayList<>();
            cut.demands().forEach(d -> way.add(problem.demands().get(d).length()));
            Collections.sort(way);
            way.addAll(List.of(
                    stock.length(),
                    stock.cost(),
                    stock.unlimited() ? 1L : 0L,
                    stock.id().isEmpty() ? 1L : 0L));
            ways.add(way);
        }
        wrong.unless(opened == solution.opened(), "%d stock pieces are new, not %d", opened, solution.opened());
        int patterns = ways.size();
        wrong.unless(patterns == solution.patterns(), "there are %d patterns, not %d", patterns, solution.patterns());
    }

    private static void checkOne(CuttingProblem problem, int c, StockCut cut, int[] made, Findings wrong) {
        long room = problem.stock().get(cut.stock()).length() - problem.endTrim();
        long lengths = 0;
        for (int d : cut.demands()) {
            if (d < 0 || d >= made.length) {
                wrong.unless(false, "stock piece %d: no demand has index %d", c, d);
                return;
            }
            made[d]++;
            lengths += problem.demands().get(d).length();
        }
        int n = cut.demands().size();
        wrong.unless(n != 0, "stock piece %d: nothing is cut from it", c);
        wrong.unless(lengths + (n - 1) * problem.kerf() <= room, "stock piece %d: %d cuts do not fit", c, n);
        long left = Math.max(0, room - lengths - n * problem.kerf());
        wrong.unless(left == cut.leftover(), "stock piece %d: leaves %d, not %d", c, left, cut.leftover());
    }
}
