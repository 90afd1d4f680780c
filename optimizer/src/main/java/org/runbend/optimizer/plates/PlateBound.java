package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.cover.LeastStock;

/**
 * A lower bound on the cost of plates that also holds for products that were named but not used.
 *
 * @param value minor units
 * @param proof the argument, in words
 */
record PlateBound(long value, String proof) {
    private static final double HUNDREDTHS = 100;

    /**
     * The cutting bound where all products named are known to it. Otherwise what the covered length costs at least, each
     * stock plate worth its length for each groove: pieces and gaps together reach the target, and each gap follows a piece
     * of at least {@code minPiece}, so pieces make at least target x minPiece / (minPiece + gap); offcuts cost nothing.
     */
    static PlateBound of(Bound cutting, CoverProblem cover, PlateProblem problem, List<SpreaderPlate> known) {
        List<SpreaderPlate> named = problem.request().products();
        if (known.containsAll(named)) {
            return new PlateBound(cutting.value(), cutting.proof().words());
        }
        double pieces = (double) cover.target() * cover.minPiece() / (cover.minPiece() + cover.gap());
        List<Stock> worth = new ArrayList<>();
        for (SpreaderPlate plate : named) {
            for (PlateStock stock : plate.stock()) {
                worth.add(Stock.bought(
                        plate.sku(), Math.round(stock.length() * HUNDREDTHS) * plate.grooves(), stock.cost()));
            }
            for (Remnant r : problem.shelf().of(plate.sku())) {
                worth.add(Stock.single(
                        plate.sku(), r.id(), (long) Math.ceil(r.length() * HUNDREDTHS) * plate.grooves(), 0));
            }
        }
        long material = LeastStock.cost((long) Math.floor(pieces * (1 - 1e-12)), worth);
        return new PlateBound(Math.min(cutting.value(), material), "material of the products named");
    }
}
