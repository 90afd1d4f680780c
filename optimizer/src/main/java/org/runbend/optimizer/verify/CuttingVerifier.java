package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockCut;

/** Checks a cutting plan from problem and plan alone; shares no line with any solver. */
public final class CuttingVerifier {
    private CuttingVerifier() {}

    /** What is wrong with the plan, one sentence each; empty when nothing is. */
    public static List<String> verify(CuttingProblem problem, CuttingSolution solution) {
        List<String> wrong = new ArrayList<>();
        int[] made = new int[problem.demands().size()];
        int[] used = new int[problem.stock().size()];
        long cost = 0;
        long scrap = 0;
        for (int c = 0; c < solution.cuts().size(); c++) {
            StockCut cut = solution.cuts().get(c);
            if (cut.stock() < 0 || cut.stock() >= used.length) {
                wrong.add(say("stock piece %d: no stock has index %d", c, cut.stock()));
                continue;
            }
            used[cut.stock()]++;
            cost += problem.stock().get(cut.stock()).cost();
            scrap += cut.leftover() < problem.keepFrom() ? cut.leftover() : 0;
            checkOne(problem, c, cut, made, wrong);
        }
        for (int d = 0; d < made.length; d++) {
            int count = problem.demands().get(d).count();
            report(made[d] != count, wrong, "demand %d: %d cuts instead of %d", d, made[d], count);
        }
        for (int s = 0; s < used.length; s++) {
            int available = problem.stock().get(s).available();
            report(used[s] > available, wrong, "stock %d: %d used of %d", s, used[s], available);
        }
        report(cost != solution.cost(), wrong, "the stock costs %d, not %d", cost, solution.cost());
        report(scrap != solution.scrap(), wrong, "the scrap is %d, not %d", scrap, solution.scrap());
        checkCounts(problem, solution, wrong);
        return wrong;
    }

    private static void checkCounts(CuttingProblem problem, CuttingSolution solution, List<String> wrong) {
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
        report(opened != solution.opened(), wrong, "%d stock pieces are new, not %d", opened, solution.opened());
        int patterns = ways.size();
        report(patterns != solution.patterns(), wrong, "there are %d patterns, not %d", patterns, solution.patterns());
    }

    private static void checkOne(CuttingProblem problem, int c, StockCut cut, int[] made, List<String> wrong) {
        long room = problem.stock().get(cut.stock()).length() - problem.endTrim();
        long lengths = 0;
        for (int d : cut.demands()) {
            if (d < 0 || d >= made.length) {
                wrong.add(say("stock piece %d: no demand has index %d", c, d));
                return;
            }
            made[d]++;
            lengths += problem.demands().get(d).length();
        }
        int n = cut.demands().size();
        report(n == 0, wrong, "stock piece %d: nothing is cut from it", c);
        report(lengths + (n - 1) * problem.kerf() > room, wrong, "stock piece %d: %d cuts do not fit", c, n);
        long left = Math.max(0, room - lengths - n * problem.kerf());
        report(left != cut.leftover(), wrong, "stock piece %d: leaves %d, not %d", c, left, cut.leftover());
    }

    private static void report(boolean isWrong, List<String> wrong, String sentence, Object... values) {
        if (isWrong) {
            wrong.add(say(sentence, values));
        }
    }

    private static String say(String sentence, Object... values) {
        return String.format(Locale.ROOT, sentence, values);
    }
}
