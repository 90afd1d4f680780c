package org.runbend.optimizer.quote;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.runbend.catalog.product.StandardKit;
import org.runbend.optimizer.mip.IntegerSolver;
import org.runbend.optimizer.mip.Model;
import org.runbend.optimizer.mip.ThreadWatch;
import org.runbend.optimizer.mip.Watch;

/**
 * Chooses standard kits, one or more, and what is added to them, at least price.
 *
 * <p>Model: minimise the prices of kits, loose coils, plates and parts, subject to: each loop is cut from one coil (a column for each set
 * of loops that a coil holds, so no cut is joined from two); not more coils of a length than the kits bring; of each plate, at each length
 * needed, at least as many plates of that length or more as are needed of it (lengths are nested, so by Hall's theorem that is enough to
 * give each need its plate); of each part at least its number; at least one kit.
 *
 * <p>Method and bound: an integer program, solved to the end, so the price is its own bound; stopped by its node count, the cheapest
 * kit is the bound. Kits that hold another pipe, or nothing that is needed, are no choice. Work: some hundreds of columns at most, as a job
 * has at most six loops.
 */
public final class KitChoosing {
    /** Nodes of the program: chosen, not measured; ten kits and six loops took none over a hundred. */
    private static final int NODES = 50_000;

    private static final double HUNDREDTHS = 100;

    /** The cheapest choice; empty if no kit suits. */
    public Optional<KitChoice> choose(KitNeed need) {
        List<StandardKit> kits =
                need.kits().stream().filter(k -> suits(need, k)).toList();
        return kits.isEmpty() ? Optional.empty() : new Run(need, kits).solve();
    }

    private static boolean suits(KitNeed need, StandardKit kit) {
        boolean ours = kit.coils().stream().allMatch(c -> c.pipe().equals(need.pipe()));
        boolean useful = !kit.coils().isEmpty()
                || kit.plates().stream().anyMatch(p -> need.plates().stream()
                        .anyMatch(n -> n.product().equals(p.plate())))
                || kit.parts().stream().anyMatch(p -> need.parts().stream()
                        .anyMatch(n -> n.sku().equals(p.sku())));
        return ours && useful;
    }

    private static long hundredths(double mm) {
        return Math.round(mm * HUNDREDTHS);
    }

    /** What a column of the program means. */
    private sealed interface Take permits TakeKit, TakeCoil, TakePlate, TakePart {}

    private record TakeKit(StandardKit kit) implements Take {}

    private record TakeCoil(KitChoice.Source source, long length, List<Integer> loops, long price) implements Take {}

    private record TakePlate(String product, String name, long length, long price, boolean shelf) implements Take {}

    private record TakePart(KitNeed.Part part) implements Take {}

    /** One problem: rows first, then columns. */
    private static final class Run {
        private final KitNeed need;
        private final List<StandardKit> kits;
        private final Model model = new Model();
        private final List<Take> takes = new ArrayList<>();
        private final int oneKit;
        private final int[] loopRows;
        private final int[] openedRows;
        private final Map<Long, Integer> coilRows = new TreeMap<>();
        private final Map<String, Map<Long, Integer>> plateRows = new TreeMap<>();
        private final Map<String, Integer> partRows = new TreeMap<>();

        Run(KitNeed need, List<StandardKit> kits) {
            this.need = need;
            this.kits = kits;
            oneKit = model.row(1, Double.POSITIVE_INFINITY);
            loopRows = need.loops().stream().mapToInt(l -> model.row(1, 1)).toArray();
            openedRows = need.opened().stream().mapToInt(o -> model.row(0, 1)).toArray();
            kits.stream()
                    .flatMap(k -> k.coils().stream())
                    .forEach(c -> coilRows.computeIfAbsent(
                            hundredths(c.length()), l -> model.row(Double.NEGATIVE_INFINITY, 0)));
            for (KitNeed.PlateCut plate : need.plates()) {
                plateRows
                        .computeIfAbsent(plate.product(), p -> new TreeMap<>())
                        .computeIfAbsent(
                                plate.length(),
                                l -> model.row((double) asLong(plate.product(), l), Double.POSITIVE_INFINITY));
            }
            need.parts()
                    .forEach(p -> partRows.put(p.sku(), model.row((double) p.quantity(), Double.POSITIVE_INFINITY)));
        }

        /** How many plates of a product are needed that are at least so long. */
        private long asLong(String product, long length) {
            return need.plates().stream()
                    .filter(p -> p.product().equals(product) && p.length() >= length)
                    .count();
        }

        Optional<KitChoice> solve() {
            kits.forEach(this::kit);
            for (int set = 1; set < 1 << need.loops().size(); set++) {
                coils(set);
            }
            need.stock().forEach(s -> plate(new TakePlate(s.product(), s.name(), s.length(), s.price(), false)));
            need.plates().stream()
                    .filter(KitNeed.PlateCut::isFromShelf)
                    .forEach(p ->
                            plate(new TakePlate(p.product(), nameOf(p.product()), p.length(), p.shelfPrice(), true)));
            need.parts()
                    .forEach(p -> column(
                            new TakePart(p), p.price(), p.quantity(), List.of(new Entry(partRows.get(p.sku()), 1))));
            IntegerSolver.Answer answer = new IntegerSolver(NODES, new ThreadWatch(Watch.NONE)).solve(model);
            return answer.hasValues() ? Optional.of(choice(answer)) : Optional.empty();
        }

        private String nameOf(String product) {
            return need.stock().stream()
                    .filter(s -> s.product().equals(product))
                    .map(KitNeed.LoosePlate::name)
                    .findFirst()
                    .orElse(product);
        }

        /** An entry of a column. */
        private record Entry(int row, double value) {}

        private void column(Take take, long price, long most, List<Entry> entries) {
            takes.add(take);
            model.column(
                    (double) price,
                    (double) most,
                    entries.stream().mapToInt(Entry::row).toArray(),
                    entries.stream().mapToDouble(Entry::value).toArray());
        }

        private void kit(StandardKit kit) {
            Map<Integer, Double> entries = new TreeMap<>(Map.of(oneKit, 1.0));
            kit.coils()
                    .forEach(c -> entries.merge(coilRows.get(hundredths(c.length())), -1.0 * c.count(), Double::sum));
            for (StandardKit.Plates plates : kit.plates()) {
                reached(plates.plate(), hundredths(plates.length()))
                        .forEach(row -> entries.merge(row, (double) plates.count(), Double::sum));
            }
            for (StandardKit.Parts part : kit.parts()) {
                if (partRows.containsKey(part.sku())) {
                    entries.merge(partRows.get(part.sku()), (double) part.count(), Double::sum);
                }
            }
            column(
                    new TakeKit(kit),
                    kit.price(),
                    most(kit),
                    entries.entrySet().stream()
                            .map(e -> new Entry(e.getKey(), e.getValue()))
                            .toList());
        }

        /** More kits than cover the need by any one thing in them are never worth anything. */
        private long most(StandardKit kit) {
            long most = 1;
            for (StandardKit.Coils c : kit.coils()) {
                most = Math.max(most, times(need.loops().size(), c.count()));
            }
            for (StandardKit.Plates p : kit.plates()) {
                most = Math.max(most, times(asLong(p.plate(), 0), p.count()));
            }
            for (StandardKit.Parts p : kit.parts()) {
                long wanted = need.parts().stream()
                        .filter(n -> n.sku().equals(p.sku()))
                        .mapToLong(KitNeed.Part::quantity)
                        .sum();
                most = Math.max(most, times(wanted, p.count()));
            }
            return most;
        }

        private static long times(long wanted, int each) {
            return -Math.floorDiv(-wanted, (long) each);
        }

        /** The rows of a plate's lengths that a plate of a length serves. */
        private List<Integer> reached(String product, long length) {
            return plateRows.getOrDefault(product, Map.of()).entrySet().stream()
                    .filter(e -> e.getKey() <= length)
                    .map(Map.Entry::getValue)
                    .toList();
        }

        private void plate(TakePlate plate) {
            List<Integer> rows = reached(plate.product(), plate.length());
            if (!rows.isEmpty()) {
                column(
                        plate,
                        plate.price(),
                        plate.shelf() ? 1 : asLong(plate.product(), 0),
                        rows.stream().map(r -> new Entry(r, 1)).toList());
            }
        }

        /** The coils that a set of loops may be cut from; of those added the cheapest alone. */
        private void coils(int set) {
            List<Integer> loops = IntStream.range(0, need.loops().size())
                    .filter(i -> (set >> i & 1) == 1)
                    .boxed()
                    .toList();
            long used =
                    loops.stream().mapToLong(i -> need.loops().get(i).length()).sum();
            coilRows.forEach((length, row) -> {
                if (used <= length) {
                    coil(new TakeCoil(KitChoice.Source.KIT, length, loops, 0), row);
                }
            });
            added(loops, used).ifPresent(c -> coil(c, -1));
            for (int i = 0; i < openedRows.length; i++) {
                if (used <= need.opened().get(i)) {
                    coil(new TakeCoil(KitChoice.Source.OPENED, used, loops, need.priceOfCut(used)), openedRows[i]);
                }
            }
        }

        private Optional<TakeCoil> added(List<Integer> loops, long used) {
            return need.coils().stream()
                    .filter(c -> c.length() >= used)
                    .map(c -> need.shared()
                            ? new TakeCoil(KitChoice.Source.ADDED, used, loops, need.priceOfCut(used))
                            : new TakeCoil(KitChoice.Source.ADDED, c.length(), loops, c.price()))
                    .reduce((a, b) -> b.price() < a.price() ? b : a);
        }

        private void coil(TakeCoil coil, int stockRow) {
            List<Entry> entries = new ArrayList<>();
            coil.loops().forEach(i -> entries.add(new Entry(loopRows[i], 1)));
            if (stockRow >= 0) {
                entries.add(new Entry(stockRow, 1));
            }
            column(coil, coil.price(), 1, entries);
        }

        private KitChoice choice(IntegerSolver.Answer answer) {
            List<KitChoice.Chosen> chosen = new ArrayList<>();
            List<KitChoice.CoilUse> uses = new ArrayList<>();
            List<KitChoice.Added> added = new ArrayList<>();
            for (int c = 0; c < takes.size(); c++) {
                int times = (int) answer.values()[c];
                if (times > 0) {
                    tell(takes.get(c), times, chosen, uses, added);
                }
            }
            long price = Math.addExact(
                    chosen.stream()
                            .mapToLong(k -> Math.multiplyExact(k.kit().price(), k.count()))
                            .sum(),
                    added.stream().mapToLong(KitChoice.Added::amount).sum());
            boolean solved = answer.status() == IntegerSolver.Status.OPTIMAL;
            long bound = solved
                    ? price
                    : kits.stream().mapToLong(StandardKit::price).min().orElse(0);
            return new KitChoice(
                    chosen,
                    uses,
                    added,
                    new Spares(need, chosen, uses, added).list(),
                    price,
                    Math.min(bound, price),
                    solved ? "integer program" : "cheapest kit",
                    need.madeToMeasure(),
                    Optional.empty());
        }

        private void tell(
                Take take,
                int times,
                List<KitChoice.Chosen> chosen,
                List<KitChoice.CoilUse> uses,
                List<KitChoice.Added> added) {
            if (take instanceof TakeKit kit) {
                chosen.add(new KitChoice.Chosen(kit.kit(), times));
            } else if (take instanceof TakeCoil coil) {
                uses.add(new KitChoice.CoilUse(
                        coil.source(),
                        coil.length(),
                        coil.loops().stream()
                                .map(i -> need.loops().get(i).loop())
                                .toList()));
                if (coil.source() != KitChoice.Source.KIT) {
                    boolean cut = need.shared() || coil.source() == KitChoice.Source.OPENED;
                    added.add(new KitChoice.Added(
                            need.pipe(), need.pipeName(), coil.length(), 1, cut ? "cut" : "coil", coil.price()));
                }
            } else if (take instanceof TakePlate plate) {
                added.add(new KitChoice.Added(
                        plate.product(),
                        plate.name(),
                        plate.length(),
                        times,
                        plate.shelf() ? "offcut" : "plate",
                        plate.price()));
            } else if (take instanceof TakePart part) {
                added.add(new KitChoice.Added(
                        part.part().sku(),
                        part.part().name(),
                        0,
                        times,
                        part.part().unit(),
                        part.part().price()));
            }
        }
    }
}
