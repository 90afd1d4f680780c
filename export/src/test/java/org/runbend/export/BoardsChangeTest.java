package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A hut in boards whose floor changes after they were cut: what kit.json, paper and terminal say of each part. */
@ExtendWith(PlannedKits.Supply.class)
class BoardsChangeTest {
    private static final Path JOB = PlannedKits.EXAMPLES.resolve("ways-in/boards-hut.yaml");

    @TempDir
    Path folder;

    private final PlannedKits kits;

    BoardsChangeTest(PlannedKits kits) {
        this.kits = kits;
    }

    @BeforeEach
    void lay() throws IOException {
        Files.copy(PlannedKits.EXAMPLES.resolve(PlannedKits.CATALOG), folder.resolve(PlannedKits.CATALOG));
    }

    /** A bolt in a corner off the pipe: in each layer the part that it stands in is cut again, found here by its rectangle. */
    @Test
    void aBoltInACorner() throws IOException {
        Path job = job("  port:", "    - {name: hook, kind: bolt, point: [1860, 40]}\n  port:");
        Path out = folder.resolve("after");
        CommandRun run = CommandRun.of("plan", job.toString(), "--out", out.toString(), "--was", before().toString());
        assertTrue(run.code() <= 1, run::err);
        JsonIn kit = JsonIn.read(out.resolve("kit.json"));
        JsonIn boards = kit.at("changes").at("boards");
        int parts = 0;
        for (JsonIn layer : kit.at("boards").at("layers").list()) {
            for (JsonIn part : layer.at("parts").list()) {
                boolean met = isIn(part, 1860, 40);
                JsonIn fate = boards.at("parts").list().get(parts++);
                assertEquals(part.at("label").text(), fate.at("label").text());
                assertEquals(layer.at("role").text(), fate.at("role").text());
                assertEquals(
                        met ? "cut-again" : "stays",
                        fate.at("use").text(),
                        part.at("label").text());
            }
        }
        assertEquals(parts, boards.at("parts").list().size());
        assertEquals(3, boards.at("gone").list().size(), "one of each layer");
        double thrown = boards.at("gone").list().stream()
                .mapToDouble(g -> g.at("area").number())
                .sum();
        assertEquals(thrown, boards.at("thrownAway").number(), 1e-3);
        assertTrue(
                run.out().contains("Boards: of " + parts + " parts " + (parts - 3) + " stay, 3 are cut again"),
                run::out);
        assertTrue(run.out().contains("counted as for a new kit"), run::out);
        String paper = OutsideReader.run(
                "pdftotext", "-layout", out.resolve("changes.pdf").toString(), "-");
        assertEquals(parts - 3, count(paper, " stays\n"), paper);
        assertEquals(3, count(paper, " cut again\n"), paper);
        assertEquals(3, count(paper, "cut before, thrown away\n"), paper);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "\"role\": \"routed\" | \"role\": \"grooved\"",
                "\"label\": \"R1\" | \"label\": \"first\"",
                "\"rounds\": [ | \"rounds\": [{},",
                "\"joints\": [ | \"joints\": [{\"from\": [1, 2]},",
                "\"pockets\": [ | \"pockets\": [{\"edge\": [[0, 0], [1, 1]]},",
            })
    void aSpoiltKitIsOneLine(String written, String instead) throws IOException {
        String text = Files.readString(before());
        assertTrue(text.contains(written), written);
        Path was = Files.writeString(folder.resolve("was.json"), text.replace(written, instead));
        Path job = job("order: KC-2066", "order: KC-2067");
        Path out = folder.resolve("after");
        CommandRun run = CommandRun.of("plan", job.toString(), "--out", out.toString(), "--was", was.toString());
        assertEquals(2, run.code());
        assertEquals(was + ": is no kit.json that Runbend wrote", run.err().strip());
        assertFalse(Files.exists(out));
    }

    private Path before() {
        return kits.folder(JOB).resolve("kit.json");
    }

    private Path job(String written, String instead) throws IOException {
        String text = Files.readString(JOB);
        assertTrue(text.contains(written), written);
        return Files.writeString(
                folder.resolve("job.yaml"),
                text.replace("../" + PlannedKits.CATALOG, PlannedKits.CATALOG).replace(written, instead));
    }

    private static boolean isIn(JsonIn part, double x, double y) {
        List<JsonIn> edge = part.at("edge").list();
        return within(edge, 0, x) && within(edge, 1, y);
    }

    private static boolean within(List<JsonIn> edge, int axis, double value) {
        return edge.stream().anyMatch(p -> p.list().get(axis).number() < value)
                && edge.stream().anyMatch(p -> p.list().get(axis).number() > value);
    }

    private static int count(String text, String part) {
        return text.split(part, -1).length - 1;
    }
}
