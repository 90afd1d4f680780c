package org.runbend.export.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.ChildRun;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/** Somebody presses Ctrl-C in the middle of a batch: what is there is whole, nothing is kept, and it goes on from there. */
class BatchStopTest {
    @TempDir
    Path folder;

    @Test
    void goesOnWhereItWasStopped() throws IOException, InterruptedException {
        Path orders = Files.createDirectory(folder.resolve("orders"));
        Files.copy(Path.of("../examples/workshop.yaml"), orders.resolve("workshop.yaml"));
        String closet = Files.readString(Path.of("../examples/closet.yaml"));
        for (int i = 1; i <= 4; i++) {
            Files.writeString(
                    orders.resolve("o" + i + ".yaml"),
                    closet.replace("KC-2035", "HF-" + i).replace("tails: [600", "tails: [" + (600 + 100 * i)));
        }
        String shelf = folder.resolve("shelf.db").toString();
        assertEquals(0, CommandRun.of("stock", "init", "--stock", shelf).code());
        CommandRun.of("stock", "receive", "offcut", "SP-10", "700", "--stock", shelf);
        Path day = folder.resolve("day");
        List<String> words = new ArrayList<>(List.of(
                "batch",
                orders.toString(),
                "--stock",
                shelf,
                "--out",
                day.toString(),
                "--laid",
                folder.resolve("laid").toString()));
        Path said = folder.resolve("said.txt");
        Process batch = ChildRun.start(said, words);
        while (batch.isAlive() && kits(day).isEmpty()) {
            batch.waitFor(20, TimeUnit.MILLISECONDS);
        }
        assertTrue(batch.isAlive(), () -> "ended by itself: " + kits(day));
        new ProcessBuilder("kill", "-INT", Long.toString(batch.pid())).start().waitFor();
        batch.waitFor();
        assertEquals(130, batch.exitValue(), Files.readString(said));
        List<Path> made = kits(day);
        assertTrue(made.size() < 4, made::toString);
        for (Path kit : made) {
            for (JsonIn file : JsonIn.read(kit.resolve("kit.json")).at("files").list()) {
                assertTrue(Files.isRegularFile(kit.resolve(file.text())), kit + " lacks " + file.text());
            }
        }
        assertFalse(Files.exists(day.resolve("day.json")));
        String history =
                CommandRun.of("stock", "history", "--csv", "--stock", shelf).out();
        assertFalse(history.contains(",reserve,"), history);
        words.add("--resume");
        CommandRun again = CommandRun.of(words.toArray(String[]::new));
        assertEquals(0, again.code(), again::err);
        assertTrue(again.out().contains("4 orders, " + (4 - made.size()) + " different floors,"), again::out);
        assertEquals(4, JsonIn.read(day.resolve("day.json")).at("orders").list().size());
        try (Stream<Path> all = Files.list(day.resolve("orders"))) {
            assertEquals(
                    List.of(),
                    all.filter(p -> p.getFileName().toString().startsWith(".")).toList(),
                    "what the stopped run left is cleared up");
        }
    }

    private static List<Path> kits(Path day) {
        Path orders = day.resolve("orders");
        if (!Files.isDirectory(orders)) {
            return List.of();
        }
        try (Stream<Path> all = Files.list(orders)) {
            return all.filter(p ->
                            !p.getFileName().toString().startsWith(".") && Files.isRegularFile(p.resolve("kit.json")))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
