package org.runbend.export.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;
import org.runbend.export.OutsideReader;

/** A day of four orders of two floors, one of them bad, from a ledger to the last cut. */
class BatchCommandTest {
    @TempDir
    Path folder;

    private String shelf;

    private CommandRun run(String... words) {
        List<String> all = new ArrayList<>(List.of(words));
        if (words[0].equals("batch")) {
            all.addAll(List.of("--laid", folder.resolve("laid").toString()));
        }
        return CommandRun.of(all.toArray(String[]::new));
    }

    private String done(String... words) {
        CommandRun run = run(words);
        assertEquals(0, run.code(), run::err);
        return run.out();
    }

    private Path orders() throws IOException {
        Path orders = Files.createDirectory(folder.resolve("orders"));
        String catalog = Files.readString(Path.of("../examples/workshop.yaml"));
        Files.writeString(orders.resolve("workshop.yaml"), catalog.replace("supply: whole", "supply: cut"));
        String closet = Files.readString(Path.of("../examples/closet.yaml"));
        for (int i = 1; i <= 3; i++) {
            Files.writeString(orders.resolve("o" + i + ".yaml"), closet.replace("KC-2035", "HF-" + i));
        }
        Files.writeString(
                orders.resolve("o4.yaml"), closet.replace("KC-2035", "HF-4").replace("tails: [600", "tails: [500"));
        Files.writeString(orders.resolve("o5.yaml"), closet.replace("spacing: 100", "spacing: wide"));
        return orders;
    }

    @Test
    void aDay() throws IOException {
        shelf = folder.resolve("shelf.db").toString();
        done("stock", "init", "--stock", shelf);
        done("stock", "receive", "opened", "PX-10", "22m", "--id", "C7", "--stock", shelf);
        done("stock", "receive", "offcut", "SP-10", "700", "--id", "O1", "--stock", shelf);
        done("stock", "receive", "plate", "SP-10", "1000", "2", "--stock", shelf);
        Path orders = orders();
        String day = folder.resolve("monday").toString();
        CommandRun batch = run("batch", orders.toString(), "--stock", shelf, "--out", day);
        assertEquals(1, batch.code(), batch::err);
        assertEquals(
                orders.resolve("o5.yaml") + ":14:19: layout.spacing: found 'wide', a length in mm is wanted",
                batch.err().strip());
        // floors that differ in tails alone have one loop, which both lay where they are at it at the same time
        assertTrue(
                batch.out().matches("(?s).*4 orders, 2 different floors, [12] of them laid anew, 1 left out.*"),
                batch::out);
        JsonIn told = JsonIn.read(Path.of(day, "day.json"));
        checkCuts(told, Path.of(day));
        long bought = told.at("costs").list().stream()
                .mapToLong(c -> c.at("bought").whole())
                .sum();
        long alone = told.at("costs").list().stream()
                .mapToLong(c -> c.at("orderByOrder").whole())
                .sum();
        long bound = told.at("costs").list().stream()
                .mapToLong(c -> c.at("bound").whole())
                .sum();
        assertTrue(bound <= bought && bought <= alone, bound + " " + bought + " " + alone);
        String sheet = Files.readString(Path.of(day, "batch.txt"));
        assertTrue(sheet.endsWith("Day: monday\nPapers: a4\n"), sheet);
        String solo = OutsideReader.run(
                "pdftotext", Path.of(day, "orders", "HF-1", "cut-sheet.pdf").toString(), "-");
        assertTrue(solo.replaceAll("\\s+", " ").contains("Cut as on the day sheet of monday: it says"), solo);
        for (String paper : List.of("day-sheet.pdf", "buy-list.pdf")) {
            assertTrue(Files.size(Path.of(day, paper)) > 10_000, paper);
        }
        // again: what is kept for the day is the day's to use, and kits are taken as they are
        String before = Files.readString(Path.of(day, "day.json"));
        CommandRun again = run("batch", orders.toString(), "--stock", shelf, "--out", day, "--resume");
        assertEquals(1, again.code());
        assertTrue(again.out().contains("4 orders, 0 different floors, 0 of them laid anew"), again::out);
        assertEquals(before, Files.readString(Path.of(day, "day.json")));
        told = cancelled(orders, day);
        // the rest comes, and the day is cut
        buy(Path.of(day, "buy-list.csv"));
        done("stock", "reserve", day, "--stock", shelf);
        String cut = done("stock", "confirm", day, "--stock", shelf);
        assertTrue(cut.contains("confirm monday"), cut);
        List<String> written = Pattern.compile("write (\\S+) on it")
                .matcher(cut)
                .results()
                .map(m -> m.group(1))
                .sorted()
                .toList();
        List<String> promised = told.at("stock").list().stream()
                .filter(s -> s.has("restName") && !s.has("id"))
                .map(s -> s.at("restName").text())
                .sorted()
                .toList();
        assertEquals(promised, written, "rests are called as the day sheet says");
        assertTrue(promised.size() > 1, promised::toString);
        assertTrue(done("stock", "audit", "--stock", shelf).startsWith("All "));
        eachGoesItsWay(day);
        CommandRun late = run("batch", orders.toString(), "--stock", shelf, "--out", day);
        assertEquals(2, late.code());
        assertEquals(
                "a day monday is in the ledger and cut: give this one another name with --day",
                late.err().strip());
    }

    /** An order is taken out of the day before it is cut: its stock is free again and nothing of it is on the sheet. */
    private JsonIn cancelled(Path orders, String day) throws IOException {
        assertTrue(done("stock", "orders", "--csv", "--stock", shelf).contains("HF-2,confirmed,"));
        Files.delete(orders.resolve("o2.yaml"));
        CommandRun batch = run("batch", orders.toString(), "--stock", shelf, "--out", day, "--resume");
        assertTrue(batch.out().contains("3 orders, 0 different floors, 0 of them laid anew"), batch::out);
        assertTrue(
                batch.err()
                        .contains(
                                Path.of(day, "orders", "HF-2") + ": is a kit of no order of this day; do not pack it"),
                batch::err);
        String states = done("stock", "orders", "--csv", "--stock", shelf);
        assertTrue(states.contains("HF-2,quoted,") && states.contains("HF-1,confirmed,"), states);
        assertEquals(
                "order HF-1 is cut with day monday: confirm that, or take its file out of the day's folder and do the batch"
                        + " again",
                run("stock", "confirm", Path.of(day, "orders", "HF-1").toString(), "--stock", shelf)
                        .err()
                        .strip());
        return JsonIn.read(Path.of(day, "day.json"));
    }

    /** Once cut, an order of the day is spoiled, packed, sent and returned by itself. */
    private void eachGoesItsWay(String day) {
        String cuts = done("stock", "orders", "monday", "--csv", "--stock", shelf);
        String of3 = cuts.lines()
                .filter(l -> l.matches(".*HF-3, P\\w+: A run 1 at.*"))
                .findFirst()
                .orElseThrow();
        String of1 = cuts.lines()
                .filter(l -> l.matches(".*HF-1, P\\w+: A run 1 at.*"))
                .findFirst()
                .orElseThrow();
        String name3 = of3.substring(0, of3.indexOf(','));
        String name1 = of1.substring(0, of1.indexOf(','));
        done("stock", "receive", "plate", "SP-10", "1000", "1", "--stock", shelf);
        assertEquals(
                "these cuts are for orders HF-1 and HF-3: spoil them order by order",
                run("stock", "spoil", day, name1, name3, "--stock", shelf).err().strip());
        String spoiled = done("stock", "spoil", day, name3, "--stock", shelf);
        assertTrue(spoiled.contains("spoil HF-3"), spoiled);
        assertTrue(spoiled.matches("(?s).*cut 480 mm for HF-3, P\\w+: A run 1 at.*"), spoiled);
        assertEquals(
                "monday is a day: name one of its orders: HF-1, HF-3, HF-4",
                run("stock", "return", "monday", "--stock", shelf).err().strip());
        done("stock", "pack", "HF-3", "--stock", shelf);
        done("stock", "send", "HF-3", "--stock", shelf);
        String back = done("stock", "return", "HF-4", "--stock", shelf);
        assertTrue(back.contains("on the shelf: opened coil"), back);
        assertTrue(done("stock", "confirm", day, "--stock", shelf).contains("nothing was changed"));
        String states = done("stock", "orders", "--csv", "--stock", shelf);
        for (String line : List.of("monday,cut,", "HF-1,cut,", "HF-2,quoted,", "HF-3,sent,", "HF-4,returned,")) {
            assertTrue(states.contains(line), () -> line + " is not in " + states);
        }
        assertTrue(done("stock", "audit", "--stock", shelf).startsWith("All "));
    }

    private void buy(Path list) throws IOException {
        List<String> lines = Files.readAllLines(list);
        assertEquals("kind,product,length,needed,onHand,buy,cost,currency", lines.get(0));
        for (String line : lines.subList(1, lines.size())) {
            String[] c = line.split(",", -1);
            if (!c[5].equals("0") && !c[5].isEmpty()) { // what no ledger counts is empty
                done("stock", "receive", c[0], c[1], c[2], c[5], "--stock", shelf);
            }
        }
    }

    /** Every cut of every kit stands in the day once, none other does, and each stock piece holds its cuts. */
    private static void checkCuts(JsonIn day, Path folder) throws IOException {
        Map<String, Integer> wanted = new HashMap<>();
        Set<String> folders = new TreeSet<>();
        for (JsonIn order : day.at("orders").list()) {
            String number = order.at("order").text();
            folders.add(number);
            JsonIn kit = JsonIn.read(folder.resolve("orders").resolve(number).resolve("kit.json"));
            assertEquals(number, kit.at("order").text());
            assertEquals(order.at("fingerprint").text(), kit.at("fingerprint").text());
            kit.at("coils").list().forEach(s -> s.at("cuts")
                    .list()
                    .forEach(c -> wanted.merge(
                            number + " " + s.at("product").text() + " "
                                    + c.at("length").number(),
                            1,
                            Integer::sum)));
            kit.at("plates").at("stock").list().forEach(s -> s.at("cuts")
                    .list()
                    .forEach(c ->
                            wanted.merge(number + " " + s.at("product").text() + " " + c.number(), 1, Integer::sum)));
        }
        assertEquals(Set.of("HF-1", "HF-2", "HF-3", "HF-4"), folders);
        for (JsonIn s : day.at("stock").list()) {
            double kerf = s.at("kind").text().equals("plate") ? 3 : 0;
            double sum = 0;
            for (JsonIn c : s.at("cuts").list()) {
                sum += c.at("length").number() + kerf;
                wanted.merge(
                        c.at("order").text() + " " + s.at("product").text() + " "
                                + c.at("length").number(),
                        -1,
                        Integer::sum);
            }
            double left = s.at("left").number();
            assertEquals(s.at("length").number(), sum + left, left == 0 ? kerf : 0.001);
        }
        wanted.values().removeIf(n -> n == 0);
        assertEquals(Map.of(), wanted);
    }

    @Test
    void badFoldersAreOneLine() throws IOException {
        CommandRun none = run("batch", folder.resolve("none").toString());
        assertEquals(folder.resolve("none") + ": no such folder", none.err().strip());
        assertEquals(2, none.code());
        Path empty = Files.createDirectory(folder.resolve("empty"));
        assertEquals(
                empty + ": holds no job file: one order is one file *.yaml",
                run("batch", empty.toString()).err().strip());
        Path orders = orders();
        Path mine = Files.createDirectory(folder.resolve("mine"));
        Files.writeString(mine.resolve("letter.txt"), "mine");
        CommandRun foreign = run("batch", orders.toString(), "--out", mine.toString());
        assertEquals(
                mine + ": the output folder holds files but no batch of ours; name a new or an empty folder",
                foreign.err().strip());
        assertEquals(2, foreign.code());
    }
}
