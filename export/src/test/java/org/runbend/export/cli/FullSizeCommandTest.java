package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;

/** A floor in actual size on more pages than anybody glues is refused, a large one before it is planned. */
class FullSizeCommandTest {
    @TempDir
    Path folder;

    /** A page of A4 shows at most 190 x 277 mm (ISO 216, margins of 10): 25 m2 take at least 475, less what the head takes. */
    @Test
    void largeFloorIsRefusedBeforeItIsPlanned() throws IOException {
        CommandRun run = plan("5000", "5000", "a4");
        assertEquals(2, run.code());
        int told = Integer.parseInt(run.err().replaceAll("(?s).*that takes at least (\\d+) pages.*", "$1"));
        assertTrue(told >= 475 && told <= 520, run.err());
        assertTrue(run.err().contains("more than 60; --full-size plotter makes one page of it"), run.err());
        assertFalse(run.err().contains("laying"), run.err());
        assertFalse(Files.exists(folder.resolve("kit")), "nothing is written");
    }

    /** 1.5 by 1.9 m are 2.85 m2, which 55 full pages would show; but rows and columns are whole, and pages overlap. */
    @Test
    void floorThatLooksSmallEnoughIsRefusedOnceItsPagesAreCounted() throws IOException {
        CommandRun run = plan("1500", "1900", "a4");
        assertEquals(2, run.code());
        assertTrue(run.err().matches("(?s).*--full-size a4: that takes \\d+ pages, more than 60;.*"), run.err());
        assertFalse(Files.exists(folder.resolve("kit")), "nothing is written");
    }

    private CommandRun plan(String length, String width, String page) throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        Path job = Files.writeString(
                folder.resolve("job.yaml"), """
                job: Hall
                order: H-1
                catalog: workshop.yaml
                floor: {outline: [[0, 0], [L, 0], [L, W], [0, W]], port: {at: [0, 150]}}
                layout: {spacing: 300, edge: 150}
                pipe: {product: PX-16}
                plates: {product: [SP-1]}
                """.replace("L", length).replace("W", width));
        return CommandRun.of(
                "plan", job.toString(), "--out", folder.resolve("kit").toString(), "--full-size", page);
    }
}
