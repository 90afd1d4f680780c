package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.export.CommandRun;
import org.runbend.export.dxf.read.DamagedDrawings;
import org.runbend.optimizer.job.read.JobReader;

/** Spoiled drawings through the whole of {@code runbend outline}; a fifth of {@code -Dfuzz.drawings=N}. */
class DamagedOutlinesTest {
    private static final int DAMAGED = Integer.getInteger("fuzz.drawings", 1000) / 5;

    @TempDir
    Path folder;

    /** Whatever the drawing, the answer is 0 or 2, a refusal one line, and a draft a job once it is filled in. */
    @Test
    void damagedDrawingsAreRefusedOrDrafted() throws IOException {
        DamagedDrawings drawings = new DamagedDrawings();
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        int drafts = 0;
        for (int n = 0; n < DAMAGED; n++) {
            Path file = Files.write(folder.resolve("spoiled.dxf"), drawings.spoiled(n));
            CommandRun run = CommandRun.of("outline", file.toString(), "--drawing-units", "mm", "--replace");
            assertTrue(run.code() == 0 || run.code() == 2, "case " + n + ": " + run.err());
            assertEquals(run.code() == 0 ? 0 : 1, run.err().lines().count(), "case " + n);
            if (run.code() == 0) {
                drafts++;
                Path draft = folder.resolve("spoiled.yaml");
                Files.writeString(draft, OutlineCommandTest.filled(Files.readString(draft)));
                assertEquals("", faultOfOutline(draft), "case " + n);
            }
        }
        assertTrue(drafts > DAMAGED / 20, drafts + " drafts");
    }

    /** Whatever becomes of a drawn loop, the answer is a plan or bad input, told in lines that name the job file. */
    @Test
    void damagedLoopsAreRefusedOrPlanned() throws IOException {
        Path ways = Path.of("..", "examples", "ways-in");
        byte[] drawing = Files.readAllBytes(ways.resolve("drawn-loop.dxf"));
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        String text = Files.readString(ways.resolve("drawn-loop.yaml")).replace("../workshop.yaml", "workshop.yaml");
        Path job = Files.writeString(folder.resolve("job.yaml"), text);
        int refused = 0;
        for (int n = 0; n < DAMAGED / 2; n++) {
            Files.write(folder.resolve("drawn-loop.dxf"), DamagedDrawings.spoiled(drawing, n));
            CommandRun run = CommandRun.of("check", job.toString());
            int number = n;
            assertTrue(run.code() >= 0 && run.code() <= 2, () -> "case " + number + ": " + run.err());
            if (run.code() == 2) {
                refused++;
                run.err().lines().forEach(l -> assertTrue(l.startsWith(job + ":"), () -> "case " + number + ": " + l));
            }
        }
        assertTrue(refused > DAMAGED / 20 && refused < DAMAGED / 2, refused + " refused");
    }

    /** What the reader of jobs says about the outline; a port may lie too far from a spoiled floor. */
    private static String faultOfOutline(Path draft) {
        try {
            JobReader.read(draft, Optional.empty());
            return "";
        } catch (BadInput e) {
            return e.faults().stream()
                    .map(Fault::text)
                    .filter(t -> !t.contains("floor.port"))
                    .findFirst()
                    .orElse("");
        }
    }
}
