package org.runbend.optimizer.verify;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;

/** The rules of the stock: every piece is one cut, cuts and kerfs fit, lengths exist, costs add up. */
final class PlateStockRules {
    private static final double FORGIVEN = 0.05;

    private final List<SpreaderPlate> products;
    private final Shelf shelf;
    private final Findings findings;

    PlateStockRules(List<SpreaderPlate> products, Shelf shelf, Findings findings) {
        this.products = products;
        this.shelf = shelf;
        this.findings = findings;
    }

    void check(PlatePlan plan) {
        checkCuts(plan);
        Set<String> ids = new HashSet<>();
        long cost = 0;
        for (int i = 0; i < plan.stock().size(); i++) {
            PlateCut stock = plan.stock().get(i);
            String name = "stock plate " + i + " of " + stock.product();
            checkFit(name, stock, plan.kerf());
            cost += stock.id().isPresent() ? onShelf(name, stock, ids) : bought(name, stock, plan.kerf());
        }
        findings.unless(
                cost == plan.bought(), "plates: bought %d is claimed, the stock plates cost %d", plan.bought(), cost);
        findings.unless(
                plan.bound() <= plan.bought(),
                "plates: the bound %d is over the bought %d",
                plan.bound(),
                plan.bought());
        findings.unless(
                plan.bought() <= plan.runByRun(),
                "plates: bought %d is over the run-by-run cost %d",
                plan.bought(),
                plan.runByRun());
    }

    private void checkCuts(PlatePlan plan) {
        List<String> skus = Stream.concat(
                        plan.pieces().stream().map(PlatePiece::product),
                        plan.stock().stream().map(PlateCut::product))
                .distinct()
                .sorted()
                .toList();
        for (String sku : skus) {
            double[] pieces = plan.pieces().stream()
                    .filter(p -> p.product().equals(sku))
                    .mapToDouble(PlatePiece::length)
                    .sorted()
                    .toArray();
            double[] cuts = plan.stock().stream()
                    .filter(s -> s.product().equals(sku))
                    .flatMap(s -> s.cuts().stream())
                    .mapToDouble(Double::doubleValue)
                    .sorted()
                    .toArray();
            findings.unless(
                    pieces.length == cuts.length,
                    "product %s: %d pieces, %d cuts from stock plates",
                    sku,
                    pieces.length,
                    cuts.length);
            for (int i = 0; i < Math.min(pieces.length, cuts.length); i++) {
                if (Math.abs(pieces[i] - cuts[i]) > FORGIVEN) {
                    findings.unless(
                            false,
                            "product %s: piece and cut differ, a piece of %.2f mm faces a cut of %.2f mm",
                            sku,
                            pieces[i],
                            cuts[i]);
                    break;
                }
            }
        }
    }

    private void checkFit(String name, PlateCut stock, double kerf) {
        double cuts = 0;
        for (double c : stock.cuts()) {
            cuts += c;
        }
        findings.unless(!stock.cuts().isEmpty(), "%s: has %d cuts, 1 or more asked", name, 0);
        // the last piece may end where the plate ends, so it needs no cut of its own
        double used = cuts + kerf * Math.max(0, stock.cuts().size() - 1);
        findings.unless(
                used <= stock.length() + FORGIVEN,
                "%s: cuts and kerfs of %.2f mm do not fit its %.2f mm",
                name,
                used,
                stock.length());
        double rest = Math.max(
                0, stock.length() - trim(stock) - cuts - kerf * stock.cuts().size());
        findings.unless(
                Math.abs(stock.offcut() - rest) <= FORGIVEN,
                "%s: an offcut of %.2f mm is claimed, %.2f mm are left",
                name,
                stock.offcut(),
                rest);
    }

    /** What is cut off the end of a plate that is bought. */
    private double trim(PlateCut stock) {
        for (SpreaderPlate p : products) {
            if (p.sku().equals(stock.product()) && stock.id().isEmpty()) {
                return p.trim();
            }
        }
        return 0;
    }

    private long bought(String name, PlateCut stock, double kerf) {
        Optional<SpreaderPlate> product =
                products.stream().filter(p -> p.sku().equals(stock.product())).findFirst();
        if (product.isEmpty()) {
            findings.unless(false, "%s: none of the %d products of the job", name, products.size());
            return 0;
        }
        findings.unless(
                kerf >= product.get().kerf() - FORGIVEN,
                "%s: the plan's kerf is %.2f mm, the product's %.2f mm",
                name,
                kerf,
                product.get().kerf());
        for (PlateStock s : product.get().stock()) {
            if (Math.abs(s.length() - stock.length()) <= FORGIVEN) {
                return s.cost();
            }
        }
        findings.unless(
                false,
                "%s: a length of %.2f mm is not sold, none of its %d lengths is",
                name,
                stock.length(),
                product.get().stock().size());
        return 0;
    }

    /** An offcut from the shelf costs nothing: it has been paid for. */
    private long onShelf(String name, PlateCut stock, Set<String> ids) {
        String id = stock.id().orElseThrow();
        Optional<Remnant> remnant = shelf.remnants().stream()
                .filter(r -> r.id().equals(id) && r.product().equals(stock.product()))
                .findFirst();
        findings.unless(remnant.isPresent(), "%s: %s does not lie on the shelf (0 found, 1 asked)", name, id);
        double length = remnant.map(Remnant::length).orElse(stock.length());
        findings.unless(
                Math.abs(length - stock.length()) <= FORGIVEN,
                "%s: %s on the shelf is %.2f mm long, the plan says %.2f mm",
                name,
                id,
                length,
                stock.length());
        findings.unless(ids.add(id), "%s: %s from the shelf is used twice, 1 use asked", name, id);
        return 0;
    }
}
