package org.runbend.optimizer.plates;

import java.util.List;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverProblem;

/**
 * A lower bound on the cost of plates that also holds for products that were named but not used.
 *
 * @param value minor units
 * @param proof the argument, in words
 */
record PlateBound(long value, String proof) {
    /**
     * The cutting bound where all products named were used. Otherwise what the covered length costs at the cheapest
     * product's price for a millimetre and groove: pieces and gaps together reach the target, and each gap follows a
     * piece of at least {@code minPiece}, so pieces make at least target x minPiece / (minPiece + gap).
     */
    static PlateBound of(Bound cutting, CoverProblem cover, List<SpreaderPlate> named, List<SpreaderPlate> used) {
        if (used.containsAll(named)) {
            return new PlateBound(cutting.value(), cutting.proof().words());
        }
        double pieces = (double) cover.target() * cover.minPiece() / (cover.minPiece() + cover.gap());
        double cheapest = Double.POSITIVE_INFINITY;
        for (SpreaderPlate plate : named) {
            for (PlateStock stock : plate.stock()) {
                cheapest = Math.min(cheapest, stock.cost() / (stock.length() * 100 * plate.grooves()));
            }
        }
        boolean offcuts = cover.stock().stream().anyMatch(s -> s.id().isPresent());
        long material = offcuts ? 0 : (long) Math.floor(pieces * cheapest * (1 - 1e-9));
        return new PlateBound(Math.min(cutting.value(), material), "material of the cheapest product named");
    }
}
