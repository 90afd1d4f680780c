package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.runbend.catalog.product.Coil;
import org.runbend.optimizer.coils.CoilPlan.CoilCut;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockCut;
import org.runbend.optimizer.plan.KitPlan;

/**
 * The coils of a finished plan as a cutting problem and its answer, to hundredths of a millimetre, so that
 * {@link CuttingVerifier} holds every plan that leaves. It is made from the plan, the catalog and the shelf, not taken from
 * whoever planned the coils. Only for plans that {@link CoilsVerifier} finds sound: each coil is sold or lies on the shelf.
 */
final class CoilCutting {
    private static final double HUNDREDTHS = 100;

    private final KitPlan plan;
    private final List<Stock> stock = new ArrayList<>();
    private final List<String> loops;

    private CoilCutting(KitPlan plan) {
        this.plan = plan;
        this.loops = plan.loops().stream().map(KitPlan.LoopPlan::name).toList();
    }

    static List<Finding> verify(KitPlan plan) {
        return new CoilCutting(plan).verify();
    }

    private List<Finding> verify() {
        List<StockCut> cuts = plan.coils().coils().stream().map(this::cut).toList();
        List<Demand> demands = plan.loops().stream()
                .map(l -> new Demand(l.name(), Math.round(l.cutLength() * HUNDREDTHS), 1))
                .toList();
        CuttingProblem problem = new CuttingProblem(stock, demands, 0, 0, 0);
        Bound none = new Bound(0, Bound.Proof.MATERIAL);
        CuttingSolution solution = new CuttingSolution(
                cuts,
                plan.coils().cost(),
                0,
                (int) plan.coils().coils().stream()
                        .filter(c -> c.id().isEmpty())
                        .count(),
                patterns(),
                new Bound(plan.coils().bound(), Bound.Proof.MATERIAL),
                none,
                none,
                none);
        return CuttingVerifier.verify(problem, solution).stream()
                .map(f -> new Finding("coils: " + f.rule(), f.about()))
                .toList();
    }

    private StockCut cut(CoilCut coil) {
        return new StockCut(
                stockOf(coil),
                coil.cuts().stream().map(c -> loops.indexOf(c.loop())).sorted().toList(),
                Math.round(coil.left() * HUNDREDTHS));
    }

    private int stockOf(CoilCut coil) {
        String sku = plan.job().pipe().product().sku();
        Stock wanted = coil.id().isPresent()
                ? Stock.single(sku, coil.id().get(), onShelf(coil.id().get()), 0)
                : bought(sku, coil.length());
        if (!stock.contains(wanted)) {
            stock.add(wanted);
        }
        return stock.indexOf(wanted);
    }

    private long onShelf(String id) {
        return plan.job().shelf().remnants().stream()
                .filter(r -> r.id().equals(id))
                .mapToLong(r -> (long) Math.floor(r.length() * HUNDREDTHS))
                .findFirst()
                .orElseThrow();
    }

    private Stock bought(String sku, double length) {
        Coil nearest = plan.job().pipe().product().coils().stream()
                .min((a, b) -> Double.compare(Math.abs(a.length() - length), Math.abs(b.length() - length)))
                .orElseThrow();
        return Stock.bought(sku, Math.round(nearest.length() * HUNDREDTHS), nearest.cost());
    }

    /** Different ways of cutting a coil, equal coils and equal lengths not told apart. */
    private int patterns() {
        Set<List<Long>> ways = new HashSet<>();
        for (CoilCut coil : plan.coils().coils()) {
            List<Long> way = new ArrayList<>();
            for (var c : coil.cuts()) {
                way.add(Math.round(c.length() * HUNDREDTHS));
            }
            Collections.sort(way);
            way.add(stock.get(stockOf(coil)).length());
            way.add(coil.id().isPresent() ? 1L : 0L);
            ways.add(way);
        }
        return ways.size();
    }
}
