package org.runbend.export.data;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.KitUse;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;

/**
 * What a kit, or a day's batch, takes from the shelf, read from its folder.
 *
 * @param use what it takes
 * @param kerf what the saw takes from a plate, hundredths of mm
 * @param failed names of the checks that the plan failed
 */
public record KitUses(KitUse use, long kerf, List<String> failed) {
    /** Copies the list. */
    public KitUses {
        failed = List.copyOf(failed);
    }

    /**
     * Reads {@code kit.json} of a folder, or the file itself.
     *
     * @throws BadInput if there is none, or it is none of ours
     */
    public static KitUses read(Path folder, Keeping keeping) {
        Path file = file(folder);
        if (!Files.isRegularFile(file)) {
            throw new BadInput(
                    Fault.ofFile(file.toString(), "no such file; the folder that 'runbend plan' wrote is wanted"));
        }
        try {
            JsonTree kit = JsonTree.read(file);
            int contract = (int) kit.at("contract").whole();
            if (contract != KitJson.CONTRACT) {
                throw new BadInput(Fault.ofFile(
                        file.toString(),
                        "is by contract " + contract + ", this Runbend works by contract " + KitJson.CONTRACT
                                + "; plan its job anew"));
            }
            return kit.find("day").isPresent() ? ofDay(kit) : of(kit, keeping);
        } catch (IOException | IllegalArgumentException | LedgerRefused e) {
            throw new BadInput(Fault.ofFile(file.toString(), "is no kit.json that Runbend wrote"));
        }
    }

    private static Path file(Path folder) {
        if (!Files.isDirectory(folder)) {
            return folder;
        }
        Path day = folder.resolve("day.json");
        return Files.exists(day) ? day : folder.resolve("kit.json");
    }

    /** A day's batch; from which length on its rests are kept was settled when it was nested. */
    private static KitUses ofDay(JsonTree day) {
        List<KitUse.StockUse> stock = new ArrayList<>();
        for (JsonTree u : day.at("stock").list()) {
            List<KitUse.Piece> cuts = u.at("cuts").list().stream()
                    .map(c -> new KitUse.Piece(
                            c.at("length").hundredths(),
                            Day.place(
                                    c.at("order").text(),
                                    c.at("piece").text(),
                                    c.at("goesTo").text()),
                            c.at("order").text()))
                    .toList();
            Kind kind = Kind.of(u.at("kind").text()).orElseThrow(() -> new IllegalArgumentException("no kind"));
            stock.add(use(
                    u,
                    kind,
                    cuts,
                    u.at("left").hundredths(),
                    u.at("restGoesTo").text().equals("shelf")));
        }
        List<KitUse.ItemUse> items = new ArrayList<>();
        SortedMap<String, String> orders = new TreeMap<>();
        for (JsonTree o : day.at("orders").list()) {
            String order = o.at("order").text();
            orders.put(order, o.at("fingerprint").text());
            o.at("items")
                    .list()
                    .forEach(i -> items.add(new KitUse.ItemUse(
                            Kind.ITEM, i.at("sku").text(), i.at("quantity").whole(), order)));
        }
        Keeping keeping =
                new Keeping(day.at("keepPipe").hundredths(), day.at("keepPlate").hundredths());
        KitUse use = new KitUse(day.at("day").text(), day.at("fingerprint").text(), stock, items, keeping, orders);
        return new KitUses(use, day.at("kerf").hundredths(), List.of());
    }

    private static KitUses of(JsonTree kit, Keeping keeping) {
        List<KitUse.StockUse> stock = new ArrayList<>();
        Set<String> cut = new TreeSet<>();
        for (JsonTree coil : kit.at("coils").list()) {
            List<KitUse.Piece> cuts = coil.at("cuts").list().stream()
                    .map(c -> new KitUse.Piece(
                            c.at("length").hundredths(), "loop " + c.at("loop").text()))
                    .toList();
            boolean stays = coil.find("restGoesTo")
                    .map(JsonTree::text)
                    .filter("customer"::equals)
                    .isEmpty();
            stock.add(use(coil, Kind.COIL, cuts, coil.at("left").hundredths(), stays));
            cut.add(coil.at("product").text());
        }
        JsonTree plates = kit.at("plates");
        for (JsonTree plate : plates.at("stock").list()) {
            List<KitUse.Piece> cuts = plate.at("cuts").list().stream()
                    .map(c -> new KitUse.Piece(c.hundredths(), "plate"))
                    .toList();
            stock.add(use(plate, Kind.PLATE, cuts, plate.at("offcut").hundredths(), true));
            cut.add(plate.at("product").text());
        }
        List<KitUse.ItemUse> items = kit.at("items").list().stream()
                .filter(i ->
                        !cut.contains(i.at("sku").text()) && i.at("quantity").whole() > 0)
                .map(i -> new KitUse.ItemUse(
                        Kind.ITEM, i.at("sku").text(), i.at("quantity").whole()))
                .toList();
        List<String> failed = kit.at("checks").list().stream()
                .filter(c -> c.at("verdict").text().equals("fail"))
                .map(c -> c.at("name").text())
                .toList();
        KitUse use =
                new KitUse(kit.at("order").text().strip(), kit.at("fingerprint").text(), stock, items, keeping);
        return new KitUses(use, plates.at("kerf").hundredths(), failed);
    }

    private static KitUse.StockUse use(JsonTree stock, Kind kind, List<KitUse.Piece> cuts, long left, boolean stays) {
        long length = stock.at("length").hundredths();
        Optional<String> id = stock.find("id").map(JsonTree::text).filter(i -> !Remnant.isUnopened(i));
        Optional<String> rest = stock.find("restName").map(JsonTree::text).filter(r -> id.isEmpty());
        return new KitUse.StockUse(id, kind, stock.at("product").text(), length, cuts, length - left, stays, rest);
    }
}
