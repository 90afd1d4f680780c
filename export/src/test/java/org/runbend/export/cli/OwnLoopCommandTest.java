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

/** A designer's own loop on the command line: as it is, beside one of ours, and with its faults. */
class OwnLoopCommandTest {
    private static final Path EXAMPLE = Path.of("..", "examples", "ways-in", "own-loop.yaml");

    @TempDir
    Path folder;

    @Test
    void oursIsLaidBesideIt() throws IOException {
        Path kit = folder.resolve("kit");
        CommandRun run = CommandRun.of("plan", EXAMPLE.toString(), "--out", kit.toString(), "--improve");
        assertEquals(0, run.code(), run.err());
        String own = Files.readString(kit.resolve("kit.json"));
        String ours = Files.readString(folder.resolve("kit-improved").resolve("kit.json"));
        assertFalse(
                own.contains("\"lattice\"") || own.contains("turnBound"), "a drawn loop has no lattice and no bound");
        assertTrue(ours.contains("\"lattice\"") && ours.contains("objectiveBound"));
        assertTrue(run.out().contains("Loop A, as drawn: "), run.out());
        assertTrue(run.out().contains("  pipe to cut: yours "), run.out());
    }

    @Test
    void improveNeedsALoop() {
        CommandRun run = CommandRun.of(
                "plan",
                Path.of("..", "examples", "closet.yaml").toString(),
                "--out",
                folder.resolve("kit").toString(),
                "--improve");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("layout.loop: is missing"), run.err());
        assertFalse(Files.exists(folder.resolve("kit")));
    }

    /** The way round the mast step is left out, so pipe runs over it: 60 mm through it and 40 mm clearance. */
    @Test
    void aFaultIsOneLineWithItsSegment() throws IOException {
        Files.copy(EXAMPLE.resolveSibling("..").resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
        String text = Files.readString(EXAMPLE)
                .replace("../workshop.yaml", "workshop.yaml")
                .replace("    - [850, 550]\n    - [1150, 550]\n", "");
        Path job = Files.writeString(folder.resolve("job.yaml"), text);
        CommandRun run = CommandRun.of("check", job.toString());
        assertEquals(2, run.code());
        assertTrue(
                run.err()
                        .lines()
                        .anyMatch(l -> l.contains("layout.loop: segment ")
                                && l.contains("of keep-out 'mast step', 40.00 mm asked, at (")),
                run.err());
    }
}
