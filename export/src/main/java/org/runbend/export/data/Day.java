package org.runbend.export.data;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.KitUse;
import org.runbend.catalog.source.Sha256;
import org.runbend.optimizer.day.DayCut;

/**
 * A day's batch as it leaves: what is cut from what, for which order, what is bought, and what that saves.
 *
 * @param name of the day; the ledger keeps stock under it
 * @param workshop whose day it is
 * @param orders what is in it, by number
 * @param faults orders that were left out, a line each
 * @param uses what is cut in the order of cutting: product by product, shelf first, what is cut alike together
 * @param goods what is counted, by part number
 * @param costs what whole ones cost, by product
 * @param currency of the costs, ISO 4217
 * @param keeping from which length on rests are kept
 * @param kerf what the saw takes from a plate at most, hundredths of mm
 */
public record Day(
        String name,
        String workshop,
        Map<String, Order> orders,
        List<String> faults,
        List<Use> uses,
        List<Goods> goods,
        List<Cost> costs,
        String currency,
        Keeping keeping,
        long kerf) {
    private static final double HUNDREDTHS = 100;

    /** Copies what it is made of. */
    public Day {
        orders = new TreeMap<>(orders);
        faults = List.copyOf(faults);
        uses = List.copyOf(uses);
        goods = List.copyOf(goods);
        costs = List.copyOf(costs);
    }

    /**
     * An order of the day.
     *
     * @param title of its job
     * @param fingerprint of its plan
     * @param boxes how many it travels in
     * @param boxesOf in which of them, from 1, the pieces of a product lie
     * @param names what its papers call the piece that goes to a place
     * @param goods how many of each thing that is counted
     */
    public record Order(
            String title,
            String fingerprint,
            int boxes,
            Map<String, List<Integer>> boxesOf,
            Map<String, String> names,
            Map<String, Long> goods) {
        /** Copies the maps. */
        public Order {
            boxesOf = new TreeMap<>(boxesOf);
            names = new TreeMap<>(names);
            goods = new TreeMap<>(goods);
        }
    }

    /**
     * A coil or plate that is cut.
     *
     * @param number what lists call it: the id on a piece of the shelf, W1, W2, ... for whole ones
     * @param id of a piece of the shelf
     * @param isBought whether it must be bought
     * @param kind COIL or PLATE
     * @param product part number
     * @param length that may be cut, hundredths of mm
     * @param there how long it is, what is kept for others or in doubt included
     * @param cost of a whole one, minor units
     * @param cuts in the order of cutting
     * @param saw what is lost before the first cut and at each
     * @param left what is left of {@code length}, hundredths of mm
     * @param restStays whether the rest stays with the workshop
     * @param restName what is written on what is left, if it is kept
     */
    public record Use(
            String number,
            Optional<String> id,
            boolean isBought,
            Kind kind,
            String product,
            long length,
            long there,
            long cost,
            List<DayCut> cuts,
            Saw saw,
            long left,
            boolean restStays,
            Optional<String> restName) {
        /** Copies the list. */
        public Use {
            cuts = List.copyOf(cuts);
        }

        /** Where a cut begins: what a tape shows from the end that is cut first, hundredths of mm. */
        public long from(int cut) {
            long at = saw.trim();
            for (DayCut c : cuts.subList(0, cut)) {
                at += c.length() + saw.kerf();
            }
            return at;
        }

        /** What is left of all that is there, hundredths of mm. */
        public long rest() {
            return there - (length - left);
        }
    }

    /**
     * What sawing costs.
     *
     * @param kerf lost by every cut, hundredths of mm
     * @param trim lost once at the end of a stock plate
     */
    public record Saw(long kerf, long trim) {}

    /**
     * Something that is counted.
     *
     * @param sku part number
     * @param name what a person calls it
     * @param unit what one of it is
     * @param quantity how many the orders need
     * @param onHand how many of them lie there free; empty where no ledger says it
     */
    public record Goods(String sku, String name, String unit, long quantity, OptionalLong onHand) {
        /** How many must be bought, where that is known. */
        public OptionalLong toBuy() {
            return onHand.isEmpty()
                    ? OptionalLong.empty()
                    : OptionalLong.of(Math.max(0, quantity - onHand.getAsLong()));
        }
    }

    /**
     * What a product's whole coils or plates cost, minor units.
     *
     * @param product part number
     * @param together all orders nested together
     * @param bound not under this
     * @param proof why not
     * @param alone order by order in turn
     */
    public record Cost(String product, long together, long bound, String proof, long alone) {}

    /**
     * Equal whole coils or plates.
     *
     * @param kind COIL or PLATE
     * @param product part number
     * @param length hundredths of mm
     * @param needed how many are cut
     * @param toBuy how many of them do not lie there
     * @param cost of those to buy, minor units
     */
    public record Wanted(Kind kind, String product, long length, long needed, long toBuy, long cost) {}

    /** What a cut's piece is called on the papers of its order. */
    public String piece(DayCut cut) {
        return orders.get(cut.order()).names().getOrDefault(cut.goesTo(), cut.goesTo());
    }

    /** The box that a piece goes into, as a person says it: the order, and which of its boxes where it has several. */
    public String box(DayCut cut, String product) {
        Order order = orders.get(cut.order());
        if (order.boxes() < 2) {
            return cut.order();
        }
        List<String> boxes = order.boxesOf().getOrDefault(product, List.of()).stream()
                .map(n -> Integer.toString(n))
                .toList();
        return cut.order() + (boxes.isEmpty() ? "" : " box " + String.join(" or ", boxes) + " of " + order.boxes());
    }

    /** Whole coils and plates by product and length. */
    public List<Wanted> wanted() {
        Map<String, Wanted> all = new TreeMap<>();
        for (Use u : uses) {
            if (u.id().isEmpty()) {
                Wanted one = new Wanted(
                        u.kind(), u.product(), u.length(), 1, u.isBought() ? 1 : 0, u.isBought() ? u.cost() : 0);
                all.merge(
                        u.kind().word() + " " + u.product() + " " + String.format("%010d", u.length()),
                        one,
                        (a, b) -> new Wanted(
                                a.kind, a.product, a.length, a.needed + b.needed, a.toBuy + b.toBuy, a.cost + b.cost));
            }
        }
        return List.copyOf(all.values());
    }

    /** What is cut, in groups: whole ones of one length that are cut alike together, pieces of the shelf one by one. */
    public List<List<Use>> groups() {
        Map<List<Object>, List<Use>> groups = new LinkedHashMap<>();
        for (Use u : uses) {
            List<Object> key = new ArrayList<>(List.of(u.id(), u.product(), u.length(), u.restStays()));
            u.cuts().forEach(c -> key.add(c.length()));
            groups.computeIfAbsent(key, k -> new ArrayList<>()).add(u);
        }
        return List.copyOf(groups.values());
    }

    /** SHA-256 of everything that is cut and counted, hexadecimal. */
    public String fingerprint() {
        return Sha256.of(name + orders + uses + counts() + keeping);
    }

    private Map<String, Long> counts() {
        Map<String, Long> counts = new TreeMap<>();
        goods.forEach(g -> counts.put(g.sku(), g.quantity()));
        return counts;
    }

    /** What it takes from the shelf: all of it, or what need not be bought first. */
    public KitUse use(boolean withBought) {
        List<KitUse.StockUse> stock = uses.stream()
                .filter(u -> withBought || !u.isBought())
                .map(u -> new KitUse.StockUse(
                        u.id(),
                        u.kind(),
                        u.product(),
                        u.length(),
                        u.cuts().stream()
                                .map(c ->
                                        new KitUse.Piece(c.length(), place(c.order(), piece(c), c.goesTo()), c.order()))
                                .toList(),
                        u.length() - u.left(),
                        u.restStays(),
                        u.restName().filter(r -> u.id().isEmpty())))
                .toList();
        List<KitUse.ItemUse> counted = new ArrayList<>();
        if (withBought) {
            orders.forEach((order, o) ->
                    o.goods().forEach((sku, n) -> counted.add(new KitUse.ItemUse(Kind.ITEM, sku, n, order))));
        }
        SortedMap<String, String> plans = new TreeMap<>();
        orders.forEach((order, o) -> plans.put(order, o.fingerprint()));
        String plan = withBought ? fingerprint() : fingerprint() + "/shelf";
        return new KitUse(name, plan, stock, counted, keeping, plans);
    }

    /** Where a cut goes, as the ledger keeps it. */
    static String place(String order, String piece, String goesTo) {
        String text = order + ", " + (piece.equals(goesTo) ? "" : piece + ": ") + goesTo;
        return text.length() <= 200 ? text : text.substring(0, 200).strip();
    }

    /** {@code day.json}. */
    public byte[] json(String version) {
        try {
            JsonOut out = new JsonOut().open();
            out.whole("contract", KitJson.CONTRACT).text("day", name).text("version", version);
            out.text("workshop", workshop);
            out.list("orders", List.copyOf(orders.entrySet()), o -> out.text("order", o.getKey())
                    .text("fingerprint", o.getValue().fingerprint())
                    .text("job", o.getValue().title())
                    .whole("boxes", o.getValue().boxes())
                    .list("items", List.copyOf(o.getValue().goods().entrySet()), g -> out.text("sku", g.getKey())
                            .whole("quantity", g.getValue())));
            out.texts("leftOut", faults);
            out.list("stock", uses, u -> use(out, u));
            out.list("items", goods, g -> {
                out.text("sku", g.sku())
                        .text("name", g.name())
                        .text("unit", g.unit())
                        .whole("quantity", g.quantity());
                if (g.onHand().isPresent()) {
                    out.whole("onHand", g.onHand().getAsLong());
                }
            });
            out.list("costs", costs, c -> out.text("product", c.product())
                    .whole("bought", c.together())
                    .whole("bound", c.bound())
                    .text("proof", c.proof())
                    .whole("orderByOrder", c.alone()));
            out.text("currency", currency);
            out.number("keepPipe", keeping.coil() / HUNDREDTHS).number("keepPlate", keeping.plate() / HUNDREDTHS);
            out.number("kerf", kerf / HUNDREDTHS).text("fingerprint", fingerprint());
            return out.close().finish();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void use(JsonOut out, Use u) throws IOException {
        List<Integer> cuts = new ArrayList<>();
        for (int i = 0; i < u.cuts().size(); i++) {
            cuts.add(i);
        }
        out.text("number", u.number())
                .text("id", u.id())
                .flag("buy", u.isBought())
                .text("kind", u.kind().word())
                .text("product", u.product())
                .number("length", u.length() / HUNDREDTHS)
                .number("there", u.there() / HUNDREDTHS)
                .whole("cost", u.cost())
                .list("cuts", cuts, i -> {
                    DayCut c = u.cuts().get(i);
                    out.text("order", c.order())
                            .text("goesTo", c.goesTo())
                            .text("piece", piece(c))
                            .text("box", box(c, u.product()))
                            .number("length", c.length() / HUNDREDTHS)
                            .number("from", u.from(i) / HUNDREDTHS);
                })
                .number("left", u.left() / HUNDREDTHS)
                .text("restGoesTo", u.restStays() ? "shelf" : "customer")
                .text("restName", u.restName());
    }

    /** {@code cuts.csv}: one row a cut, in the order of cutting. */
    public byte[] cutsCsv() {
        List<List<Object>> rows = new ArrayList<>();
        for (Use u : uses) {
            for (int i = 0; i < u.cuts().size(); i++) {
                DayCut c = u.cuts().get(i);
                rows.add(List.of(
                        u.kind() == Kind.COIL ? "pipe" : "plate",
                        u.number(),
                        u.product(),
                        u.length() / HUNDREDTHS,
                        (long) i + 1,
                        c.length() / HUNDREDTHS,
                        c.order(),
                        c.goesTo(),
                        u.left() / HUNDREDTHS,
                        piece(c),
                        u.restName().orElse("")));
            }
        }
        return csv("cuts", "kind,stockId,product,stockLength,cutNo,length,order,goesTo,leftover,piece,restName", rows);
    }

    /**
     * {@code buy-list.csv}: one row a kind of whole coil or plate, with how many of them lie on the shelf, and one for each thing
     * that is counted; without a ledger that knows it nobody can say how many there are, and those cells are empty.
     */
    public byte[] buyCsv() {
        List<List<Object>> rows = new ArrayList<>();
        for (Wanted w : wanted()) {
            rows.add(List.of(
                    w.kind().word(),
                    w.product(),
                    w.length() / HUNDREDTHS,
                    w.needed(),
                    w.needed() - w.toBuy(),
                    w.toBuy(),
                    w.cost(),
                    currency));
        }
        for (Goods g : goods) {
            boolean known = g.onHand().isPresent();
            rows.add(List.of(
                    Kind.ITEM.word(),
                    g.sku(),
                    "",
                    g.quantity(),
                    known ? (Object) g.onHand().getAsLong() : "",
                    known ? (Object) g.toBuy().getAsLong() : "",
                    "",
                    ""));
        }
        return csv("buy", "kind,product,length,needed,onHand,buy,cost,currency", rows);
    }

    private static byte[] csv(String name, String head, List<List<Object>> rows) {
        List<Listing.Column> columns =
                List.of(head.split(",", -1)).stream().map(Listing.Column::of).toList();
        return new Listing(name, columns, rows).csv().getBytes(StandardCharsets.UTF_8);
    }
}
