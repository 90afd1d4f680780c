package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;
import org.runbend.export.dxf.DxfDocument;
import org.runbend.export.dxf.DxfLayer;
import org.runbend.export.dxf.DxfVertex;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;

/** {@code runbend outline} from a drawing to a job that can be planned. */
class OutlineCommandTest {
    private static final Path WORKSHOP = Path.of("..", "examples", "workshop.yaml");

    @TempDir
    Path folder;

    private Path drawing;
    private Path job;

    @BeforeEach
    void draw() throws IOException {
        DxfDocument document = new DxfDocument();
        document.layer(new DxfLayer("WALL", 7, "Continuous", 25));
        document.layer(new DxfLayer("HOLE", 1, "Continuous", 25));
        document.model()
                .polyline(
                        "WALL",
                        List.of(
                                new DxfVertex(0, 0, 0),
                                new DxfVertex(2000, 0, Math.tan(Math.PI / 8)),
                                new DxfVertex(2500, 500, 0),
                                new DxfVertex(2500, 1500, 0),
                                new DxfVertex(0, 1500, 0)),
                        true);
        document.model().circle("HOLE", 700, 700, 40);
        document.model().text("HOLE", 760, 690, 30, 0, 0, 0, "Sink \"drain\": #1 {x}");
        document.model().text("HOLE", -20, 700, 40, 90, 1, 0, "rear");
        drawing = Files.write(folder.resolve("Cabin 2.dxf"), document.toBytes());
        job = folder.resolve("Cabin 2.yaml");
        Files.copy(WORKSHOP, folder.resolve("workshop.yaml"));
    }

    @Test
    void draftTellsWhatIsMissingAndIsAJobOnceFilledIn() throws IOException {
        CommandRun run = CommandRun.of("outline", drawing.toString());
        assertEquals(0, run.code(), run::err);
        assertTrue(run.out().contains("guess: the outline is the largest closed line, layer WALL"), run::out);
        assertTrue(Files.readString(folder.resolve("Cabin 2.svg")).contains("<svg"));
        CommandRun unfilled = CommandRun.of("check", job.toString());
        assertEquals(2, unfilled.code());
        assertTrue(unfilled.err().contains("order"), unfilled::err);
        Files.writeString(job, filled(Files.readString(job)));
        CommandRun check = CommandRun.of("check", job.toString());
        assertEquals(0, check.code(), check::err);
        Job.FloorPlan floor = JobReader.read(job, Optional.empty()).floor();
        assertTrue(floor.outline().size() > 10, "the arc has become chords");
        assertEquals("Sink \"drain\": #1 {x}", floor.keepOuts().get(0).name());
        assertEquals("rear", floor.marks().get(0).text());
        // The side x = 0 leads from (0, 1500) to (0, 0), so its middle is (0, 750).
        assertEquals(750, floor.marks().get(0).at().y(), 1e-9);
    }

    @Test
    void sameDrawingSameBytes() throws IOException {
        CommandRun.of("outline", drawing.toString());
        byte[] first = Files.readAllBytes(job);
        assertEquals(0, CommandRun.of("outline", drawing.toString()).code());
        assertArrayEquals(first, Files.readAllBytes(job));
    }

    @Test
    void whatAPersonChangedIsNotOverwritten() throws IOException {
        CommandRun.of("outline", drawing.toString());
        Files.writeString(job, filled(Files.readString(job)));
        String kept = Files.readString(job);
        CommandRun run = CommandRun.of("outline", drawing.toString());
        assertEquals(2, run.code());
        assertEquals(1, run.err().lines().count());
        assertTrue(run.err().contains("is not as Runbend wrote it"), run::err);
        assertEquals(kept, Files.readString(job));
        assertEquals(
                0, CommandRun.of("outline", drawing.toString(), "--replace").code());
        assertFalse(Files.readString(job).equals(kept));
    }

    @Test
    void filesOfOthersAreNotOverwritten() throws IOException {
        Path picture = Files.writeString(folder.resolve("Cabin 2.svg"), "<svg/>");
        CommandRun run = CommandRun.of("outline", drawing.toString());
        assertEquals(2, run.code());
        assertFalse(Files.exists(job));
        assertEquals("<svg/>", Files.readString(picture));
    }

    /** A disk that takes the job file and not its picture takes neither: here a folder lies where the picture is made. */
    @Test
    void bothFilesOrNone() throws IOException {
        Path picture = folder.resolve("Cabin 2.svg");
        Path inTheWay = folder.resolve(".runbend-" + ProcessHandle.current().pid() + "-"
                + picture.getFileName().hashCode() + ".tmp");
        Files.createDirectories(inTheWay.resolve("deep"));
        CommandRun run = CommandRun.of("outline", drawing.toString());
        assertEquals(2, run.code());
        assertEquals(job + ": cannot be written", run.err().strip());
        assertFalse(Files.exists(job));
        assertFalse(Files.exists(picture));
        Path jobInTheWay = folder.resolve(".runbend-" + ProcessHandle.current().pid() + "-"
                + job.getFileName().hashCode() + ".tmp");
        Files.move(inTheWay, jobInTheWay);
        assertEquals(2, CommandRun.of("outline", drawing.toString()).code());
        assertFalse(Files.exists(job));
        assertFalse(Files.exists(picture));
    }

    /** A named pipe never ends. */
    @Test
    void pipesAreNotRead() throws Exception {
        Path pipe = folder.resolve("pipe.dxf");
        assumeTrue(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0, "this system has no mkfifo");
        refused("pipe.dxf: this is no regular file; name a drawing", pipe.toString());
    }

    @Test
    void badInputIsOneLine() throws IOException {
        Path empty = Files.createFile(folder.resolve("empty.dxf"));
        refused("empty.dxf: the file is empty", empty.toString());
        refused("there is no such file", folder.resolve("none.dxf").toString());
        refused("this is a folder", folder.toString());
        if (Files.exists(Path.of("/dev/zero"))) {
            refused("/dev/zero: this is no regular file; name a drawing", "/dev/zero");
        }
        refused("--drawing-units is one of mm, cm", drawing.toString(), "--drawing-units", "parsec");
        refused("--tolerance is a gap from 0 to 100 mm", drawing.toString(), "--tolerance", "-1");
        refused("nothing visible is on layer Nix; there are HOLE, WALL", drawing.toString(), "--layer", "Nix");
        refused(
                "a job file ends with .yaml",
                drawing.toString(),
                "--out",
                folder.resolve("x.txt").toString());
        refused("cannot be written", drawing.toString(), "--out", empty + "/x.yaml");
    }

    private static void refused(String words, String... arguments) {
        String[] all = new String[arguments.length + 1];
        all[0] = "outline";
        System.arraycopy(arguments, 0, all, 1, arguments.length);
        CommandRun run = CommandRun.of(all);
        assertEquals(2, run.code(), run::out);
        assertEquals(1, run.err().lines().count(), run::err);
        assertTrue(run.err().contains(words), run::err);
        assertEquals("", run.out());
    }

    /** What a person fills in. */
    static String filled(String draft) {
        int port = draft.lastIndexOf("  port:\n");
        String end = draft.substring(port)
                .replaceFirst("    at:.*", "    at: [0, 700]")
                .replaceFirst("pipe:\n  product:.*", "pipe:\n  product: PX-16")
                .replaceFirst("plates:\n  product:.*", "plates:\n  product: SP-1");
        return draft.substring(0, port)
                        .replaceFirst("order:.*", "order: KC-1")
                        .replaceFirst("catalog:.*", "catalog: workshop.yaml")
                + end;
    }
}
