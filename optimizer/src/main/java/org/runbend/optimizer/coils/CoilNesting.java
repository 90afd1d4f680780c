package org.runbend.optimizer.coils;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.product.Coil;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockCut;
import org.runbend.optimizer.cutting.patterns.PatternCutting;
import org.runbend.optimizer.job.Unbuildable;

/**
 * Decides which coils are bought or opened and which loop is cut from which: least cost, then least waste.
 *
 * <p>An opened coil on the shelf costs nothing more. Pipe is cut with shears, so a cut takes no length (common practice).
 * A leftover counts as waste whatever its length, so that opened coils are used up first.
 */
public final class CoilNesting {
    private static final double HUNDREDTHS = 100;

    /**
     * The coils.
     *
     * @throws Unbuildable if a cut is longer than any coil
     */
    public CoilPlan nest(CoilProblem problem) {
        List<Stock> stock = new ArrayList<>();
        for (Remnant r : problem.shelf().of(problem.pipe().sku())) {
            stock.add(Stock.single(problem.pipe().sku(), r.id(), (long) Math.floor(r.length() * HUNDREDTHS), 0));
        }
        for (Coil c : problem.pipe().coils()) {
            stock.add(Stock.bought(problem.pipe().sku(), Math.round(c.length() * HUNDREDTHS), c.cost()));
        }
        List<Demand> demands = problem.cuts().stream()
                .map(c -> new Demand(c.loop(), Math.round(c.length() * HUNDREDTHS), 1))
                .toList();
        checkLengths(problem, stock);
        CuttingSolution solution =
                found(new PatternCutting().solve(new CuttingProblem(stock, demands, 0, 0, Stock.ANY * 100L)));
        List<CoilPlan.CoilCut> coils = solution.cuts().stream()
                .map(cut -> coil(problem, stock.get(cut.stock()), cut))
                .toList();
        Bound bound = solution.costBound();
        return new CoilPlan(coils, solution.cost(), bound.value(), bound.proof().words());
    }

    private static void checkLengths(CoilProblem problem, List<Stock> stock) {
        long longest = stock.stream().mapToLong(Stock::length).max().orElse(0);
        for (CoilPlan.LoopCut cut : problem.cuts()) {
            if (cut.length() * HUNDREDTHS > longest) {
                throw new Unbuildable(
                        "pipe.product",
                        String.format(
                                Locale.ROOT,
                                "loop %s needs %.1f m of pipe in one piece, the longest coil of %s is %.1f m; a wider"
                                        + " layout.spacing or a pipe with longer coils would do",
                                cut.loop(),
                                cut.length() / 1000,
                                problem.pipe().sku(),
                                longest / HUNDREDTHS / 1000));
            }
        }
    }

    private static CoilPlan.CoilCut coil(CoilProblem problem, Stock stock, StockCut cut) {
        return new CoilPlan.CoilCut(
                problem.pipe().sku(),
                stock.length() / HUNDREDTHS,
                cut.demands().stream().map(problem.cuts()::get).toList(),
                cut.leftover() / HUNDREDTHS,
                stock.id());
    }

    private static CuttingSolution found(Answer<CuttingSolution> answer) {
        return answer.value()
                .orElseThrow(() -> new Unbuildable("pipe.product", "the coils do not do: " + answer.reason()));
    }
}
