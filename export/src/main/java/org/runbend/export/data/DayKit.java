package org.runbend.export.data;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.KitUse;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.SourceFile;
import org.runbend.optimizer.day.DayCut;

/**
 * What an order's kit asks of the day, read from its folder.
 *
 * @param order its number
 * @param fingerprint of its plan
 * @param title of its job
 * @param boxes how many it travels in
 * @param boxesOf in which of them, from 1, the pieces of a product lie
 * @param cuts what is cut, by product
 * @param whole products whose coils go into the box whole, so that nothing of them is nested with other orders
 * @param goods what is counted
 * @param failed names of the checks that the plan failed
 */
public record DayKit(
        String order,
        String fingerprint,
        String title,
        int boxes,
        Map<String, List<Integer>> boxesOf,
        List<Cut> cuts,
        Set<String> whole,
        List<Goods> goods,
        List<String> failed) {
    /** Copies the lists. */
    public DayKit {
        cuts = List.copyOf(cuts);
        whole = Set.copyOf(whole);
        goods = List.copyOf(goods);
        boxesOf = new TreeMap<>(boxesOf);
        failed = List.copyOf(failed);
    }

    /**
     * A cut.
     *
     * @param pipe whether it is pipe; plate otherwise
     * @param product part number
     * @param cut its order, place and length
     * @param stockLength length of the stock that the kit alone would cut it from, hundredths of mm
     * @param stock number of that stock in the kit
     * @param name what the kit's papers call the piece
     */
    public record Cut(boolean pipe, String product, DayCut cut, long stockLength, String stock, String name) {}

    /**
     * Something that is counted.
     *
     * @param sku part number
     * @param name what a person calls it
     * @param unit what one of it is
     * @param quantity how many
     */
    public record Goods(String sku, String name, String unit, long quantity) {}

    /** Reads a kit's folder, if there is one that is whole and of this fingerprint; any fingerprint if none is given. */
    public static Optional<DayKit> find(Path folder, Optional<String> fingerprint) {
        if (!Files.isRegularFile(folder.resolve("kit.json")) || !Files.isRegularFile(folder.resolve("cuts.csv"))) {
            return Optional.empty();
        }
        try {
            JsonTree kit = JsonTree.read(folder.resolve("kit.json"));
            KitUses uses = KitUses.read(folder, Keeping.USUAL);
            KitUse use = uses.use();
            if (fingerprint.isPresent() && !fingerprint.get().equals(use.fingerprint())) {
                return Optional.empty();
            }
            Set<String> whole = new TreeSet<>();
            kit.at("coils").list().stream()
                    .filter(c -> c.find("restGoesTo")
                            .map(JsonTree::text)
                            .filter("customer"::equals)
                            .isPresent())
                    .forEach(c -> whole.add(c.at("product").text()));
            return Optional.of(new DayKit(
                    use.order(),
                    use.fingerprint(),
                    kit.at("job").text(),
                    kit.at("parcels").list().size(),
                    boxes(kit.at("parcels").list()),
                    cuts(folder.resolve("cuts.csv"), use.order()),
                    whole,
                    goods(kit, use),
                    uses.failed()));
        } catch (IOException | BadInput | IllegalArgumentException | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    private static List<Cut> cuts(Path file, String order) {
        List<Cut> cuts = new ArrayList<>();
        List<CsvRows.Row> rows = CsvRows.of(SourceFile.read(file).text());
        Map<String, Integer> pieces = new HashMap<>();
        rows.subList(1, rows.size()).forEach(r -> pieces.merge(r.cells().get(1), 1, Integer::sum));
        for (CsvRows.Row row : rows.subList(1, rows.size())) {
            List<String> c = row.cells();
            boolean pipe = c.get(0).equals("pipe");
            DayCut cut = new DayCut(order, c.get(6), hundredths(c.get(5)));
            int index = Integer.parseInt(c.get(4)) - 1;
            String name = pipe ? c.get(6) : CutList.pieceName(c.get(1), index, pieces.get(c.get(1)));
            cuts.add(new Cut(pipe, c.get(2), cut, hundredths(c.get(3)), c.get(1), name));
        }
        return cuts;
    }

    private static Map<String, List<Integer>> boxes(List<JsonTree> parcels) {
        Map<String, List<Integer>> boxes = new TreeMap<>();
        for (int i = 0; i < parcels.size(); i++) {
            int number = i + 1;
            for (JsonTree line : parcels.get(i).at("lines").list()) {
                List<Integer> of = boxes.computeIfAbsent(line.at("sku").text(), s -> new ArrayList<>());
                if (!of.contains(number)) {
                    of.add(number);
                }
            }
        }
        return boxes;
    }

    private static List<Goods> goods(JsonTree kit, KitUse use) {
        Map<String, JsonTree> items = new HashMap<>();
        kit.at("items").list().forEach(i -> items.putIfAbsent(i.at("sku").text(), i));
        return use.items().stream()
                .map(i -> new Goods(
                        i.product(),
                        items.get(i.product()).at("name").text(),
                        items.get(i.product()).at("unit").text(),
                        i.quantity()))
                .toList();
    }

    private static long hundredths(String mm) {
        return Math.round(Double.parseDouble(mm) * 100);
    }
}
