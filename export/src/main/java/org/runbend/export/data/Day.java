package org.runbend.export.data;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.KitUse;
import org.runbend.optimizer.day.DayCut;

/**
 * A day's batch as it leaves: what is cut from what, for which order, what is bought, and what that saves.
 *
 * @param name of the day; the ledger keeps stock under it
 * @param orders what is in it, by number, with the fingerprints of their plans
 * @param faults orders that were left out, a line each
 * @param uses what is cut, shelf first, in the order of cutting
 * @param items what is counted, by part number
 * @param costs what whole ones cost, by product
 * @param currency of the costs, ISO 4217
 * @param keeping from which length on rests are kept
 * @param kerf what the saw takes from a plate, hundredths of mm
 */
public record Day(
        String name,
        Map<String, String> orders,
        List<String> faults,
        List<Use> uses,
        Map<String, Long> items,
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
        items = new TreeMap<>(items);
        costs = List.copyOf(costs);
    }

    /**
     * A coil or plate that is cut.
     *
     * @param number what lists call it: the id on a piece of the shelf, W1, W2, ... for whole ones
     * @param id of a piece of the shelf
     * @param isBought whether it must be bought
     * @param kind COIL or PLATE
     * @param product part number
     * @param length hundredths of mm
     * @param cost of a whole one, minor units
     * @param cuts in the order of cutting
     * @param left what is left, hundredths of mm
     * @param restStays whether the rest stays with the workshop
     */
    public record Use(
            String number,
            Optional<String> id,
            boolean isBought,
            Kind kind,
            String product,
            long length,
            long cost,
            List<DayCut> cuts,
            long left,
            boolean restStays) {
        /** Copies the list. */
        public Use {
            cuts = List.copyOf(cuts);
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

    /** SHA-256 of everything that is cut and counted, hexadecimal. */
    public String fingerprint() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            String text = name + orders + uses + items + keeping;
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
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
                                .map(c -> new KitUse.Piece(c.length(), place(c.order(), c.goesTo())))
                                .toList(),
                        u.length() - u.left(),
                        u.restStays()))
                .toList();
        List<KitUse.ItemUse> counted = new ArrayList<>();
        if (withBought) {
            items.forEach((sku, n) -> counted.add(new KitUse.ItemUse(Kind.ITEM, sku, n)));
        }
        return new KitUse(name, withBought ? fingerprint() : fingerprint() + "/shelf", stock, counted, keeping);
    }

    /** Where a cut goes, as the ledger keeps it. */
    static String place(String order, String goesTo) {
        String text = order + ", " + goesTo;
        return text.length() <= 200 ? text : text.substring(0, 200).strip();
    }

    /** {@code day.json}. */
    public byte[] json(String version) {
        try {
            JsonOut out = new JsonOut().open();
            out.whole("contract", KitJson.CONTRACT).text("day", name).text("version", version);
            out.list("orders", List.copyOf(orders.entrySet()), o -> out.text("order", o.getKey())
                    .text("fingerprint", o.getValue()));
            out.texts("leftOut", faults);
            out.list("stock", uses, u -> use(out, u));
            out.list("items", List.copyOf(items.entrySet()), i -> out.text("sku", i.getKey())
                    .whole("quantity", i.getValue()));
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

    private static void use(JsonOut out, Use u) throws IOException {
        out.text("number", u.number())
                .text("id", u.id())
                .flag("buy", u.isBought())
                .text("kind", u.kind().word())
                .text("product", u.product())
                .number("length", u.length() / HUNDREDTHS)
                .whole("cost", u.cost())
                .list("cuts", u.cuts(), c -> out.text("order", c.order())
                        .text("goesTo", c.goesTo())
                        .number("length", c.length() / HUNDREDTHS))
                .number("left", u.left() / HUNDREDTHS)
                .text("restGoesTo", u.restStays() ? "shelf" : "customer");
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
                        u.left() / HUNDREDTHS));
            }
        }
        return csv("cuts", "kind,stockId,product,stockLength,cutNo,length,order,goesTo,leftover", rows);
    }

    /** {@code buy-list.csv}: one row a kind of whole coil or plate, with how many of them lie on the shelf. */
    public byte[] buyCsv() {
        Map<List<Object>, long[]> counts = new TreeMap<>((a, b) -> a.toString().compareTo(b.toString()));
        for (Use u : uses) {
            if (u.id().isEmpty()) {
                long[] n = counts.computeIfAbsent(
                        List.of(u.kind().word(), u.product(), u.length() / HUNDREDTHS), k -> new long[3]);
                n[0]++;
                n[1] += u.isBought() ? 1 : 0;
                n[2] += u.isBought() ? u.cost() : 0;
            }
        }
        List<List<Object>> rows = new ArrayList<>();
        counts.forEach((what, n) -> {
            List<Object> row = new ArrayList<>(what);
            row.addAll(List.of(n[0], n[0] - n[1], n[1], n[2], currency));
            rows.add(row);
        });
        return csv("buy", "kind,product,length,needed,onHand,buy,cost,currency", rows);
    }

    private static byte[] csv(String name, String head, List<List<Object>> rows) {
        List<Listing.Column> columns =
                List.of(head.split(",", -1)).stream().map(Listing.Column::of).toList();
        return new Listing(name, columns, rows).csv().getBytes(StandardCharsets.UTF_8);
    }
}
