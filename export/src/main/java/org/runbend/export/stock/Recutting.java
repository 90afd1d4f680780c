package org.runbend.export.stock;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.runbend.catalog.ledger.Cut;
import org.runbend.catalog.ledger.Held;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.KitUse;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockCut;
import org.runbend.optimizer.cutting.patterns.PatternCutting;

/**
 * Nests a few pieces again from what is free on the shelf: rests before whole coils and plates, then least scrap. A whole one
 * counts with its length, so that the shortest that will do is opened.
 */
final class Recutting {
    private final long kerf;
    private final Keeping keeping;

    Recutting(long kerf, Keeping keeping) {
        this.kerf = kerf;
        this.keeping = keeping;
    }

    List<KitUse.StockUse> recut(List<Cut> cuts, List<Holding> shelf) {
        Map<String, List<Cut>> byProduct = new LinkedHashMap<>();
        cuts.forEach(c -> byProduct
                .computeIfAbsent(c.kind() + " " + c.product(), p -> new ArrayList<>())
                .add(c));
        List<KitUse.StockUse> uses = new ArrayList<>();
        byProduct.values().forEach(c -> uses.addAll(product(c, shelf)));
        return uses;
    }

    private List<KitUse.StockUse> product(List<Cut> cuts, List<Holding> shelf) {
        Kind rest = cuts.get(0).kind();
        Kind whole = rest == Kind.OPENED ? Kind.COIL : Kind.PLATE;
        String product = cuts.get(0).product();
        List<Stock> stock = new ArrayList<>();
        for (Holding h : shelf) {
            boolean fits = h.product().equals(product) && h.free() > 0;
            if (fits && h.kind() == rest) {
                stock.add(Stock.single(product, h.id(), h.free(), 0));
            } else if (fits && h.kind() == whole) {
                long length = h.spec().length();
                stock.add(new Stock(product, length, length, (int) h.free(), Optional.empty()));
            }
        }
        long saw = rest == Kind.OPENED ? 0 : kerf; // pipe is cut with shears
        long keep = rest == Kind.OPENED ? keeping.coil() : keeping.plate();
        List<Demand> demands =
                cuts.stream().map(c -> new Demand(c.name(), c.length(), 1)).toList();
        CuttingSolution solution = new PatternCutting()
                .solve(new CuttingProblem(stock, demands, saw, 0, keep))
                .value()
                .orElseThrow(() -> new LedgerRefused("what is free of " + product + " does not suffice to cut "
                        + String.join(
                                " and ",
                                cuts.stream().map(c -> Held.length(c.length())).toList())
                        + " again: receive some first"));
        return solution.cuts().stream()
                .map(c -> use(whole, product, stock.get(c.stock()), c, cuts))
                .toList();
    }

    private static KitUse.StockUse use(Kind whole, String product, Stock stock, StockCut cut, List<Cut> cuts) {
        List<KitUse.Piece> pieces = cut.demands().stream()
                .map(d -> new KitUse.Piece(cuts.get(d).length(), cuts.get(d).goesTo()))
                .toList();
        return new KitUse.StockUse(
                stock.id(), whole, product, stock.length(), pieces, stock.length() - cut.leftover(), true);
    }
}
