package org.runbend.export.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.runbend.catalog.source.Unit;
import org.runbend.export.data.Day;
import org.runbend.export.folder.Disk;
import org.runbend.export.folder.OutputRefused;
import org.runbend.export.papers.BuyList;
import org.runbend.export.papers.DaySheet;
import org.runbend.export.pdf.Paper;

/** The folder of a day: the kits in {@code orders}, and the day's own files, which are there all of them or none. */
public final class DayFolder {
    private static final String MARK = "batch.txt";

    private final Path folder;
    private final String version;
    private final Paper paper;
    private final Optional<Unit> unit;

    /** A folder that need not exist; the version of the program is kept in it, and how papers are wanted. */
    public DayFolder(Path folder, String version, Paper paper, Optional<Unit> unit) {
        this.folder = folder;
        this.version = version;
        this.paper = paper;
        this.unit = unit;
    }

    /** Where the kits go, a folder each. */
    public Path orders() {
        return folder.resolve("orders");
    }

    /** Kits in it that an earlier run made for orders that are no longer among these. */
    public List<String> ofNoOrder(List<OrderBook.Order> orders) {
        Set<String> known = orders.stream().map(OrderBook.Order::folder).collect(Collectors.toSet());
        try {
            return Disk.names(orders()).stream()
                    .filter(n -> !known.contains(n)
                            && !n.startsWith(".")
                            && Files.isRegularFile(orders().resolve(n).resolve("kit.json")))
                    .toList();
        } catch (IOException e) {
            throw new OutputRefused(folder + ": the output folder cannot be read");
        }
    }

    /**
     * Makes the folder, or takes one that an earlier batch made.
     *
     * @return whether it is of this version and its papers are as wanted, so that kits in it can be taken as they are
     * @throws OutputRefused if it holds files of others, or cannot be written
     */
    public boolean prepare(String day) {
        String mark = "A day's batch of Runbend " + version + "\nDay: " + day + "\nPapers: " + word(paper)
                + unit.map(u -> ", " + word(u)).orElse("") + "\n";
        try {
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw new OutputRefused(folder + ": the output folder is a file; name a folder");
            }
            Path file = folder.resolve(MARK);
            boolean ours = Files.isRegularFile(file);
            if (!ours && Files.exists(folder)) {
                try (Stream<Path> files = Files.list(folder)) {
                    if (files.findAny().isPresent()) {
                        throw new OutputRefused(
                                folder
                                        + ": the output folder holds files but no batch of ours; name a new or an empty folder");
                    }
                }
            }
            boolean same = ours && Files.readString(file).equals(mark);
            Files.createDirectories(orders());
            if (!same) {
                Disk.replace(file, mark.getBytes(StandardCharsets.UTF_8));
            }
            return same;
        } catch (IOException e) {
            throw new OutputRefused(folder + ": the output folder cannot be written");
        }
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }

    /** Whether the kit of an order is there, made of the same files. */
    public boolean holds(OrderBook.Order order) {
        return order.kitIn(orders()).isPresent();
    }

    /** Writes the files of the day; lengths on its papers in the unit wanted, else in that of its first order. */
    public void write(Day day, Unit ofFirst) {
        Unit told = unit.orElse(ofFirst);
        Map<Path, byte[]> files = new LinkedHashMap<>();
        files.put(folder.resolve("day-sheet.pdf"), DaySheet.bytes(day, paper, told));
        files.put(folder.resolve("buy-list.pdf"), BuyList.bytes(day, paper, told));
        files.put(folder.resolve("cuts.csv"), day.cutsCsv());
        files.put(folder.resolve("buy-list.csv"), day.buyCsv());
        files.put(folder.resolve("day.json"), day.json(version));
        try {
            Disk.replace(files);
        } catch (IOException e) {
            throw new OutputRefused(folder + ": the output folder cannot be written, or the disk is full");
        }
    }
}
