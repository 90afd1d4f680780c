package org.runbend.export.batch;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.export.data.Day;
import org.runbend.export.data.DayKit;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.day.DayCut;
import org.runbend.optimizer.day.DayMaterial;
import org.runbend.optimizer.day.DayNesting;
import org.runbend.optimizer.day.DayPlan;
import org.runbend.optimizer.day.DayUse;
import org.runbend.optimizer.work.Work;

/** Nests all pipe and all plates of a day together, product by product, side by side. */
public final class DayPlanning {
    private final Catalog catalog;
    private final Keeping keeping;
    private final Work work;

    /** A day of one workshop. */
    public DayPlanning(Catalog catalog, Keeping keeping, Work work) {
        this.catalog = catalog;
        this.keeping = keeping;
        this.work = work;
    }

    /**
     * The day.
     *
     * @throws IllegalArgumentException with a line for people if something cannot be cut from anything
     */
    public Day plan(String name, List<DayKit> kits, List<String> faults, Shop shop) {
        List<DayMaterial> materials = materials(kits, shop);
        List<Nested> nested = work.each(materials, DayPlanning::nest);
        List<Day.Use> uses = new ArrayList<>();
        List<Day.Cost> costs = new ArrayList<>();
        Numbers numbers = new Numbers(name, keeping, shop);
        boolean pipe = true;
        for (Nested n : nested) {
            DayPlan plan = n.plan();
            if (pipe && catalog.findPipe(plan.product()).isEmpty()) {
                pipe = false;
                wholeCoils(kits).forEach(w -> uses.add(numbers.whole(w, catalog)));
            }
            alike(plan.uses()).forEach(u -> uses.add(numbers.use(u, n.material(), catalog)));
            costs.add(new Day.Cost(
                    plan.product(),
                    plan.cost(),
                    plan.bound().value(),
                    plan.bound().proof().words(),
                    n.alone()));
        }
        if (pipe) {
            wholeCoils(kits).forEach(w -> uses.add(numbers.whole(w, catalog)));
        }
        Map<String, Day.Order> orders = new TreeMap<>();
        kits.forEach(k -> orders.put(k.order(), order(k)));
        long kerf = materials.stream().mapToLong(DayMaterial::kerf).max().orElse(0);
        return new Day(
                name,
                catalog.workshop(),
                orders,
                faults,
                uses,
                goods(kits, shop),
                costs,
                catalog.currency(),
                keeping,
                kerf);
    }

    private static Day.Order order(DayKit kit) {
        Map<String, String> names = new TreeMap<>();
        kit.cuts().forEach(c -> names.put(c.cut().goesTo(), c.name()));
        Map<String, Long> goods = new TreeMap<>();
        kit.goods().forEach(g -> goods.merge(g.sku(), g.quantity(), Long::sum));
        return new Day.Order(kit.title(), kit.fingerprint(), kit.boxes(), kit.boxesOf(), names, goods);
    }

    private static List<Day.Goods> goods(List<DayKit> kits, Shop shop) {
        Map<String, Day.Goods> all = new TreeMap<>();
        for (DayKit kit : kits) {
            for (DayKit.Goods g : kit.goods()) {
                Long there = shop.items().get(g.sku());
                OptionalLong onHand = there == null ? OptionalLong.empty() : OptionalLong.of(there);
                all.merge(
                        g.sku(),
                        new Day.Goods(g.sku(), g.name(), g.unit(), g.quantity(), onHand),
                        (a, b) -> new Day.Goods(a.sku(), a.name(), a.unit(), a.quantity() + b.quantity(), onHand));
            }
        }
        return List.copyOf(all.values());
    }

    /** What is cut alike stands together, so that the saw's stop moves less. */
    private static List<DayUse> alike(List<DayUse> uses) {
        Map<List<Object>, List<DayUse>> alike = new LinkedHashMap<>();
        for (DayUse u : uses) {
            List<Object> key = new ArrayList<>(List.of(u.stock()));
            u.cuts().forEach(c -> key.add(c.length()));
            alike.computeIfAbsent(key, k -> new ArrayList<>()).add(u);
        }
        return alike.values().stream().flatMap(List::stream).toList();
    }

    private record Nested(DayMaterial material, DayPlan plan, long alone) {}

    private static Nested nest(DayMaterial material) {
        DayNesting nesting = new DayNesting();
        Answer<DayPlan> answer = nesting.nest(material);
        DayPlan plan = answer.value()
                .orElseThrow(() -> new IllegalArgumentException(material.product() + ": " + answer.reason()));
        return new Nested(material, plan, nesting.costOrderByOrder(material));
    }

    private List<DayMaterial> materials(List<DayKit> kits, Shop shop) {
        Map<String, List<DayKit.Cut>> byProduct = new LinkedHashMap<>();
        for (DayKit kit : kits) {
            for (DayKit.Cut c : kit.cuts()) {
                if (!kit.whole().contains(c.product())) {
                    byProduct
                            .computeIfAbsent(c.product(), p -> new ArrayList<>())
                            .add(c);
                }
            }
        }
        List<DayMaterial> materials = new ArrayList<>();
        byProduct.forEach((product, cuts) -> {
            boolean pipe = cuts.get(0).pipe();
            Optional<SpreaderPlate> plate = catalog.findPlate(product);
            materials.add(new DayMaterial(
                    product,
                    shop.stock(product, catalog),
                    cuts.stream().map(DayKit.Cut::cut).toList(),
                    pipe ? 0 : Math.round(plate.map(SpreaderPlate::kerf).orElse(0.0) * 100),
                    pipe ? 0 : Math.round(plate.map(SpreaderPlate::trim).orElse(0.0) * 100),
                    pipe ? keeping.coil() : keeping.plate()));
        });
        materials.sort(Comparator.comparing(m -> catalog.findPipe(m.product()).isEmpty())); // pipe first
        return materials;
    }

    /** Coils that go into a box whole, as the kit has them. */
    private static List<WholeCoil> wholeCoils(List<DayKit> kits) {
        List<WholeCoil> all = new ArrayList<>();
        for (DayKit kit : kits) {
            Map<String, List<DayKit.Cut>> coils = kit.cuts().stream()
                    .filter(c -> kit.whole().contains(c.product()))
                    .collect(Collectors.groupingBy(DayKit.Cut::stock, LinkedHashMap::new, Collectors.toList()));
            coils.values()
                    .forEach(cuts -> all.add(new WholeCoil(
                            cuts.get(0).product(),
                            cuts.get(0).stockLength(),
                            cuts.stream().map(DayKit.Cut::cut).toList())));
        }
        return all;
    }

    private record WholeCoil(String product, long length, List<DayCut> cuts) {}

    /** Gives whole ones their numbers, and takes those on hand first. */
    private static final class Numbers {
        private final String day;
        private final Keeping keeping;
        private final Shop shop;
        private final Set<String> taken = new HashSet<>();
        private final Map<String, Long> used = new HashMap<>();
        private int last;

        Numbers(String day, Keeping keeping, Shop shop) {
            this.day = day;
            this.keeping = keeping;
            this.shop = shop;
            shop.pieces().forEach(p -> taken.add(p.id()));
        }

        private String next() {
            String number;
            do {
                number = "W" + ++last;
            } while (taken.contains(number));
            return number;
        }

        private boolean isBought(String product, long length) {
            return used.merge(product + "|" + length, 1L, Long::sum) > shop.onHand(product, length);
        }

        /** What is written on the rest of a whole one. */
        private Optional<String> restOf(String number, Kind kind, long left) {
            return keeping.keepsRest(kind, left) ? Optional.of(day + "-" + number) : Optional.empty();
        }

        private Shop.Piece piece(String id) {
            return shop.pieces().stream()
                    .filter(p -> p.id().equals(id))
                    .findFirst()
                    .orElseThrow();
        }

        Day.Use use(DayUse u, DayMaterial material, Catalog catalog) {
            String product = material.product();
            Day.Saw saw = new Day.Saw(material.kerf(), material.trim());
            Kind kind = catalog.findPipe(product).isPresent() ? Kind.COIL : Kind.PLATE;
            Stock stock = u.stock();
            if (stock.id().isPresent()) {
                Shop.Piece piece = piece(stock.id().get());
                boolean stays = piece.kept() || keeping.keeps(kind.rest(), u.leftover());
                return new Day.Use(
                        piece.id(),
                        stock.id(),
                        false,
                        kind,
                        product,
                        stock.length(),
                        piece.there(),
                        stock.cost(),
                        u.cuts(),
                        saw,
                        u.leftover(),
                        true,
                        stock.id().filter(i -> stays));
            }
            String number = next();
            return new Day.Use(
                    number,
                    Optional.empty(),
                    isBought(product, stock.length()),
                    kind,
                    product,
                    stock.length(),
                    stock.length(),
                    stock.cost(),
                    u.cuts(),
                    saw,
                    u.leftover(),
                    true,
                    restOf(number, kind, u.leftover()));
        }

        Day.Use whole(WholeCoil coil, Catalog catalog) {
            long sum = coil.cuts().stream().mapToLong(DayCut::length).sum();
            long cost = catalog.findPipe(coil.product()).stream()
                    .flatMap(p -> p.coils().stream())
                    .filter(c -> Math.round(c.length() * 100) == coil.length())
                    .mapToLong(c -> c.cost())
                    .findFirst()
                    .orElse(0);
            return new Day.Use(
                    next(),
                    Optional.empty(),
                    isBought(coil.product(), coil.length()),
                    Kind.COIL,
                    coil.product(),
                    coil.length(),
                    coil.length(),
                    cost,
                    coil.cuts(),
                    new Day.Saw(0, 0),
                    coil.length() - sum,
                    false,
                    Optional.empty());
        }
    }
}
