package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.catalog.source.Nearest;

/** What of a shelf cannot be as it is written: nothing sold under that number, longer than what is sold, too short for a coil. */
final class ShelfCheck {
    /** mm: nobody keeps less pipe than this as a coil (common practice). */
    private static final double LEAST_COIL = 1000;

    private ShelfCheck() {}

    /** One sentence for each entry in doubt. */
    static List<String> words(Shelf shelf, Catalog catalog) {
        List<String> words = new ArrayList<>();
        for (Remnant r : shelf.remnants()) {
            Optional<Pipe> pipe = catalog.findPipe(r.product());
            Optional<SpreaderPlate> plate = catalog.findPlate(r.product());
            if (pipe.isEmpty() && plate.isEmpty()) {
                words.add(unknown(r, catalog));
            }
            pipe.filter(p -> r.length() < LEAST_COIL)
                    .ifPresent(p -> words.add(start(r) + " of pipe: is that " + mm(r) + " m?"));
            pipe.filter(p -> r.length() > p.longestCoil())
                    .ifPresent(p ->
                            words.add(start(r) + ", but the longest coil sold is " + mm(p.longestCoil()) + " mm."));
            plate.filter(p -> r.length() > longest(p))
                    .ifPresent(p -> words.add(start(r) + ", but the longest plate sold is " + mm(longest(p)) + " mm."));
        }
        return words;
    }

    private static String unknown(Remnant r, Catalog catalog) {
        List<String> sold = Stream.concat(
                        catalog.pipes().stream().map(Pipe::sku),
                        catalog.plates().stream().map(SpreaderPlate::sku))
                .toList();
        return "Shelf: " + r.id() + " is of product " + r.product()
                + ", which the catalog does not have, so it is not used"
                + Nearest.of(r.product(), sold)
                        .map(n -> "; the nearest one is " + n)
                        .orElse("") + ".";
    }

    private static double longest(SpreaderPlate plate) {
        return plate.stock().stream().mapToDouble(PlateStock::length).max().orElse(0);
    }

    private static String start(Remnant r) {
        return "Shelf: " + r.id() + " is " + mm(r) + " mm";
    }

    private static String mm(Remnant r) {
        return mm(r.length());
    }

    private static String mm(double size) {
        return String.format(Locale.ROOT, "%.1f", size).replaceFirst("\\.0$", "");
    }
}
