package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockUse;

/** Checks a cover plan from problem and plan alone; shares no line with any solver. */
public final class CoverVerifier {
    private CoverVerifier() {}

    /** What is wrong with the plan, one sentence each; empty when nothing is. */
    public static List<Finding> verify(CoverProblem problem, CoverSolution plan) {
        Findings wrong = new Findings();
        List<Long> laid = new ArrayList<>();
        List<Long> cut = new ArrayList<>();
        long covered = checkStretches(problem, plan, laid, wrong);
        long cost = checkStock(problem, plan, cut, wrong);
        Collections.sort(laid);
        Collections.sort(cut);
        wrong.unless(laid.equals(cut), "pieces laid %s are not the pieces cut %s", laid, cut);
        wrong.unless(covered == plan.covered(), "covered is %d, not %d", covered, plan.covered());
        wrong.unless(covered >= problem.target(), "covered %d misses the target %d", covered, problem.target());
        wrong.unless(cost == plan.cost(), "the stock costs %d, not %d", cost, plan.cost());
        return wrong.all();
    }

    private static long checkStretches(CoverProblem problem, CoverSolution plan, List<Long> laid, Findings wrong) {
        if (plan.pieces().size() != problem.stretches().size()) {
            wrong.unless(false, "the plan has another number of stretches than the problem");
            return 0;
        }
        long covered = 0;
        for (int r = 0; r < plan.pieces().size(); r++) {
            long end = 0;
            for (long piece : plan.pieces().get(r)) {
                end += (end == 0 ? 0 : problem.gap()) + piece;
                checkPiece(problem, piece, wrong);
                laid.add(piece);
            }
            long length = problem.stretches().get(r).length();
            long most = mostPieces(problem, length);
            int count = plan.pieces().get(r).size();
            wrong.unless(count <= most, "stretch %d: %d pieces where %d are allowed", r, count, most);
            long least = problem.stretches().get(r).least();
            wrong.unless(end >= least, "stretch %d: %d covered of %d asked", r, end, least);
            wrong.unless(end <= length, "stretch %d: %d laid on %d", r, end, length);
            covered += end;
        }
        return covered;
    }

    private static long mostPieces(CoverProblem problem, long length) {
        boolean any = false;
        long shortest = Long.MAX_VALUE;
        for (Stock s : problem.stock()) {
            long piece = Math.min(problem.maxPiece(), s.length());
            piece -= piece % problem.step();
            if (s.available() == 0 || piece < problem.minPiece() || (any && !s.unlimited())) {
                continue;
            }
            shortest = s.unlimited() && !any ? piece : Math.min(shortest, piece);
            any |= s.unlimited();
        }
        long needed = 0;
        for (long reach = -problem.gap(); reach < length && shortest < Long.MAX_VALUE; needed++) {
            reach += shortest + problem.gap();
        }
        return needed + problem.extraPieces();
    }

    private static void checkPiece(CoverProblem problem, long piece, Findings wrong) {
        wrong.unless(piece % problem.step() == 0, "a piece of %d is not in steps of %d", piece, problem.step());
        wrong.unless(piece >= problem.minPiece(), "a piece of %d is shorter than %d", piece, problem.minPiece());
        wrong.unless(piece <= problem.maxPiece(), "a piece of %d is longer than %d", piece, problem.maxPiece());
    }

    private static long checkStock(CoverProblem problem, CoverSolution plan, List<Long> cut, Findings wrong) {
        int[] used = new int[problem.stock().size()];
        long cost = 0;
        for (StockUse use : plan.stock()) {
            if (use.stock() < 0 || use.stock() >= used.length) {
                wrong.unless(false, "no stock has index %d", use.stock());
                continue;
            }
            Stock stock = problem.stock().get(use.stock());
            cost += stock.cost();
            wrong.unless(++used[use.stock()] <= stock.available(), "stock %s is used too often", stock.name());
            wrong.unless(!use.pieces().isEmpty(), "nothing is cut from a %s", stock.name());
            long rest = stock.length();
            for (long piece : use.pieces()) {
                wrong.unless(rest >= piece, "a %s is too short for its pieces %s", stock.name(), use.pieces());
                rest -= piece + problem.kerf();
                cut.add(piece);
            }
            wrong.unless(
                    Math.max(0, rest) == use.leftover(), "a %s leaves %d, not %d", stock.name(), rest, use.leftover());
        }
        return cost;
    }
}
