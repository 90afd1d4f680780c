package org.runbend.export.batch;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.export.data.DayKit;
import org.runbend.export.data.UnopenedCoils;
import org.runbend.optimizer.day.DayCut;

/**
 * Finds coils that lie on the shelf for orders which would get whole coils bought: opened ones, and unopened ones in lengths that the
 * catalog does not list. They are cut by the metre. Orders that need most pipe choose first, each the shortest that is enough; an
 * order gets either all of its pipe from the shelf or none.
 */
final class ShelfCoils {
    private static final double HUNDREDTHS = 100;

    private final Map<String, List<Lying>> coils = new LinkedHashMap<>();
    private final Shop shop;
    private final Catalog catalog;

    ShelfCoils(Shop shop, Catalog catalog) {
        this.shop = shop;
        this.catalog = catalog;
    }

    /** A coil and what is still free of it, hundredths of mm. */
    private static final class Lying {
        private final String id;
        private long left;

        Lying(String id, long left) {
            this.id = id;
            this.left = left;
        }
    }

    /** The coils for those orders that find some, by number of the order. */
    Map<String, Shelf> allot(List<DayKit> kits) {
        kits.forEach(this::takeAllotted);
        Map<String, Shelf> allotted = new LinkedHashMap<>();
        kits.stream()
                .filter(k -> !k.whole().isEmpty())
                .sorted(Comparator.comparingLong((DayKit k) -> pipe(k).stream()
                                .mapToLong(c -> c.cut().length())
                                .sum())
                        .reversed())
                .forEach(k -> coilsFor(k).ifPresent(s -> allotted.put(k.order(), s)));
        return allotted;
    }

    /** What an earlier run found for an order is that order's. */
    private void takeAllotted(DayKit kit) {
        for (DayKit.Cut c : kit.cuts()) {
            boolean byTheMetre = !kit.whole().contains(c.product())
                    && catalog.findPipe(c.product())
                            .filter(p -> p.supply() == Pipe.Supply.WHOLE)
                            .isPresent();
            if (byTheMetre) {
                lying(c.product()).stream()
                        .filter(l -> l.id.equals(c.stock()))
                        .forEach(l -> l.left -= c.cut().length());
            }
        }
    }

    private static List<DayKit.Cut> pipe(DayKit kit) {
        return kit.cuts().stream()
                .filter(c -> kit.whole().contains(c.product()))
                .sorted(Comparator.comparingLong((DayKit.Cut c) -> c.cut().length())
                        .reversed())
                .toList();
    }

    private Optional<Shelf> coilsFor(DayKit kit) {
        Map<Lying, Long> taken = new LinkedHashMap<>();
        List<Remnant> remnants = new ArrayList<>();
        for (DayKit.Cut c : pipe(kit)) {
            DayCut cut = c.cut();
            Optional<Lying> coil = lying(c.product()).stream()
                    .filter(l -> l.left - taken.getOrDefault(l, 0L) >= cut.length())
                    .min(Comparator.comparingLong(l -> l.left - taken.getOrDefault(l, 0L)));
            if (coil.isEmpty()) {
                return Optional.empty();
            }
            if (!taken.containsKey(coil.get())) {
                remnants.add(new Remnant(coil.get().id, c.product(), coil.get().left / HUNDREDTHS));
            }
            taken.merge(coil.get(), cut.length(), Long::sum);
        }
        taken.forEach((lying, length) -> lying.left -= length);
        return Optional.of(new Shelf(remnants));
    }

    private List<Lying> lying(String product) {
        return coils.computeIfAbsent(product, p -> {
            List<Lying> all = new ArrayList<>();
            shop.pieces().stream()
                    .filter(piece -> piece.product().equals(p))
                    .forEach(piece -> all.add(new Lying(piece.id(), piece.length())));
            catalog.findPipe(p).ifPresent(pipe -> all.addAll(unopened(pipe)));
            return all;
        });
    }

    private List<Lying> unopened(Pipe pipe) {
        List<Lying> all = new ArrayList<>();
        Map<Long, Integer> numbers = new LinkedHashMap<>();
        for (Shop.Whole w : shop.whole()) {
            boolean isOther = w.product().equals(pipe.sku()) && !UnopenedCoils.isListed(pipe, w.length());
            for (long n = isOther ? w.free() : 0; n > 0; n--) {
                int number = numbers.merge(w.length(), 1, Integer::sum);
                all.add(new Lying(
                        Remnant.unopened(pipe.sku(), w.length() / HUNDREDTHS, number)
                                .id(),
                        w.length()));
            }
        }
        return all;
    }
}
