package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The board that the groove is cut into stands wherever its depth does: 10 mm of pipe and 0.5 mm of plate leave 10.5 of 21. */
class BoardCommandTest {
    @TempDir
    Path folder;

    @Test
    void theDepthIsSaidInWhat() throws IOException {
        Files.copy(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG), folder.resolve(PlannedKits.CATALOG));
        Path job = folder.resolve("job.yaml");
        Files.writeString(
                job,
                Files.readString(PlannedKits.EXAMPLES.resolve("closet.yaml"))
                        .replace("build: {", "build: {board: {material: birch-ply, thickness: 21}, "));
        Path kit = folder.resolve("kit");
        CommandRun run = CommandRun.of("plan", job.toString(), "--out", kit.toString());
        assertEquals(0, run.code(), run.err());
        String words = Files.readString(kit.resolve("floor.svg"))
                .replaceAll("<[^>]*>", " ")
                .replaceAll("\\s+", " ");
        assertTrue(words.contains("board: Birch plywood, 21 mm; groove 10.5 deep from its top, 10.5 left"), words);
        JsonIn board = JsonIn.read(kit.resolve("kit.json")).at("channel").at("board");
        assertEquals("birch-ply", board.at("material").text());
        assertEquals(21, board.at("thickness").number());
        assertEquals(10.5, board.at("rest").number(), 1e-9);
        assertTrue(run.out().contains("board for the groove (Birch plywood, 21 mm"), run.out());
    }
}
