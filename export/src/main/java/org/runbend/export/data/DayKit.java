package org.runbend.export.data;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
 * @param cuts what is cut, by product
 * @param whole products whose coils go into the box whole, so that nothing of them is nested with other orders
 * @param items what is counted
 * @param failed names of the checks that the plan failed
 */
public record DayKit(
        String order,
        String fingerprint,
        List<Cut> cuts,
        Set<String> whole,
        List<KitUse.ItemUse> items,
        List<String> failed) {
    /** Copies the lists. */
    public DayKit {
        cuts = List.copyOf(cuts);
        whole = Set.copyOf(whole);
        items = List.copyOf(items);
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
     */
    public record Cut(boolean pipe, String product, DayCut cut, long stockLength, String stock) {}

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
                    cuts(folder.resolve("cuts.csv"), use.order()),
                    whole,
                    use.items(),
                    uses.failed()));
        } catch (IOException | BadInput | IllegalArgumentException | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    private static List<Cut> cuts(Path file, String order) {
        List<Cut> cuts = new ArrayList<>();
        List<CsvRows.Row> rows = CsvRows.of(SourceFile.read(file).text());
        for (CsvRows.Row row : rows.subList(1, rows.size())) {
            List<String> c = row.cells();
            DayCut cut = new DayCut(order, c.get(6), hundredths(c.get(5)));
            cuts.add(new Cut(c.get(0).equals("pipe"), c.get(2), cut, hundredths(c.get(3)), c.get(1)));
        }
        return cuts;
    }

    private static long hundredths(String mm) {
        return Math.round(Double.parseDouble(mm) * 100);
    }
}
