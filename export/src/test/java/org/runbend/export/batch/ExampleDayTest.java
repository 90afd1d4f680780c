package org.runbend.export.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;
import org.runbend.export.OutsideReader;

/** The day among the examples, by the commands that are told beside it. */
class ExampleDayTest {
    private static final Path DAY = Path.of("..", "examples", "day");

    @TempDir
    Path folder;

    @Test
    void aNewcomersDay() throws IOException {
        String shelf = folder.resolve("shelf.db").toString();
        CommandRun init = CommandRun.of(
                "stock",
                "init",
                "--stock",
                shelf,
                "--note",
                DAY.resolve("delivery.csv").toString());
        assertEquals(0, init.code(), init::err);
        assertTrue(init.out().contains("receive, 8 lines"), init::out);
        Path monday = folder.resolve("monday");
        CommandRun batch = CommandRun.of(
                "batch",
                DAY.resolve("orders").toString(),
                "--stock",
                shelf,
                "--out",
                monday.toString(),
                "--laid",
                folder.resolve("laid").toString(),
                "--paper",
                "letter",
                "--units",
                "imperial");
        assertEquals(0, batch.code(), batch::err);
        JsonIn day = JsonIn.read(monday.resolve("day.json"));
        assertEquals(5, day.at("orders").list().size());
        assertTrue(
                day.at("stock").list().stream()
                        .anyMatch(s -> s.has("id") && s.at("kind").text().equals("coil")),
                "the opened coil is used");
        String sheet = OutsideReader.run(
                "pdftotext", "-layout", monday.resolve("day-sheet.pdf").toString(), "-");
        for (JsonIn s : day.at("stock").list()) {
            assertTrue(sheet.contains(s.at("number").text()), s.at("number").text());
        }
        assertTrue(sheet.contains("1200 (47 1/4\")"), sheet);
        Path cut = monday.resolve("orders").resolve("KW-131").resolve("cut-sheet.pdf");
        for (Path paper : new Path[] {monday.resolve("day-sheet.pdf"), monday.resolve("buy-list.pdf"), cut}) {
            assertTrue(OutsideReader.run("pdfinfo", paper.toString()).contains("(letter)"), paper::toString);
        }
    }

    @Test
    void aBadNoteMakesNoLedger() throws IOException {
        Path note = Files.writeString(folder.resolve("note.csv"), "kind,product,quantity\ncoil,PX-16,1\n");
        Path shelf = folder.resolve("shelf.db");
        CommandRun init = CommandRun.of("stock", "init", "--stock", shelf.toString(), "--note", note.toString());
        assertEquals(2, init.code());
        assertTrue(init.err().startsWith(note + ":2:1: length "), init::err);
        assertFalse(Files.exists(shelf));
    }
}
