package org.runbend.optimizer.quote;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.runbend.catalog.product.StandardKit;

/** What stays over of chosen kits. */
final class Spares {
    private static final double HUNDREDTHS = 100;

    private final KitNeed need;
    private final List<KitChoice.Chosen> chosen;
    private final List<KitChoice.CoilUse> uses;
    private final List<KitChoice.Added> added;

    Spares(KitNeed need, List<KitChoice.Chosen> chosen, List<KitChoice.CoilUse> uses, List<KitChoice.Added> added) {
        this.need = need;
        this.chosen = chosen;
        this.uses = uses;
        this.added = added;
    }

    List<KitChoice.Spare> list() {
        List<KitChoice.Spare> spare = new ArrayList<>();
        coils().forEach((length, count) -> spare.add(new KitChoice.Spare(need.pipe(), length, count)));
        TreeMap<String, List<Long>> plates = new TreeMap<>();
        for (KitChoice.Chosen c : chosen) {
            for (StandardKit.Plates p : c.kit().plates()) {
                for (int i = 0; i < p.count() * c.count(); i++) {
                    plates.computeIfAbsent(p.plate(), k -> new ArrayList<>()).add(hundredths(p.length()));
                }
            }
        }
        plates.forEach((product, lengths) -> plates(product, lengths, spare));
        parts().forEach((sku, count) -> spare.add(new KitChoice.Spare(sku, 0, count)));
        return spare.stream().filter(s -> s.quantity() > 0).toList();
    }

    private Map<Long, Long> coils() {
        Map<Long, Long> coils = new TreeMap<>();
        for (KitChoice.Chosen c : chosen) {
            c.kit().coils().forEach(k -> coils.merge(hundredths(k.length()), (long) k.count() * c.count(), Long::sum));
        }
        uses.stream()
                .filter(u -> u.source() == KitChoice.Source.KIT)
                .forEach(u -> coils.merge(u.length(), -1L, Long::sum));
        return coils;
    }

    /** Each need takes the shortest plate that is long enough, the longest need first; plates that were added go first. */
    private void plates(String product, List<Long> lengths, List<KitChoice.Spare> spare) {
        List<Long> ofKits = new ArrayList<>(lengths);
        List<Long> bought = new ArrayList<>();
        added.stream().filter(a -> a.sku().equals(product)).forEach(a -> {
            for (long i = 0; i < a.quantity(); i++) {
                bought.add(a.length());
            }
        });
        need.plates().stream()
                .filter(n -> n.product().equals(product))
                .map(KitNeed.PlateCut::length)
                .sorted((a, b) -> Long.compare(b, a))
                .forEach(n -> {
                    if (!takeShortest(bought, n)) {
                        takeShortest(ofKits, n);
                    }
                });
        Map<Long, Long> left = new TreeMap<>();
        ofKits.forEach(l -> left.merge(l, 1L, Long::sum));
        left.forEach((length, count) -> spare.add(new KitChoice.Spare(product, length, count)));
    }

    private static boolean takeShortest(List<Long> lengths, long least) {
        return lengths.stream()
                .filter(l -> l >= least)
                .min(Long::compare)
                .map(lengths::remove)
                .orElse(false);
    }

    private Map<String, Long> parts() {
        Map<String, Long> parts = new TreeMap<>();
        for (KitChoice.Chosen c : chosen) {
            c.kit().parts().forEach(p -> parts.merge(p.sku(), (long) p.count() * c.count(), Long::sum));
        }
        need.parts().forEach(n -> parts.merge(n.sku(), -n.quantity(), Long::sum));
        return parts;
    }

    private static long hundredths(double mm) {
        return Math.round(mm * HUNDREDTHS);
    }
}
