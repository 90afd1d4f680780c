package org.runbend.export.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/**
 * Kits fed back: their loops as parts already routed, as own loops and out of their drawings, as the plan before, as the
 * alternative taken, beside catalogs that were spoilt. Every answer is a plan or one line.
 *
 * <p>{@code -Dfuzz.feedback=N} says how many jobs are begun with, {@code -Dfuzz.feedback.from=N} which is the first; the
 * profile {@code fuzz} runs many. The files of a case that breaks a rule stay in {@code target/fuzz/feedback-N}.
 */
class FeedbackTest {
    private static final Path CATALOG = Path.of("..", "examples", "workshop.yaml");
    private static final int CASES = Integer.getInteger("fuzz.feedback", 8);
    private static final int FROM = Integer.getInteger("fuzz.feedback.from", 0);

    @TempDir
    Path work;

    private final List<String> broken = new ArrayList<>();
    private int planned;

    @Test
    void kitsFedBack() throws IOException {
        String catalog = Files.readString(CATALOG);
        for (int n = FROM; n < FROM + CASES; n++) {
            Path folder = Files.createDirectory(work.resolve("case-" + n));
            Files.writeString(folder.resolve("workshop.yaml"), catalog);
            int before = broken.size();
            feed(new FeedbackMaker(new Dice(900_000 + n)), n, folder, catalog);
            if (broken.size() > before) {
                keep(folder, Path.of("target", "fuzz", "feedback-" + n));
            }
            CaseRunner.remove(folder);
        }
        assertEquals(List.of(), broken);
        assertTrue(planned > CASES, "plans that came out: " + planned);
    }

    private void feed(FeedbackMaker maker, int n, Path folder, String catalog) throws IOException {
        String kit = folder.resolve("kit").toString();
        String job = write(folder, "job", maker.job());
        if (run(n, "plan", job, "--out", kit) > 1) {
            return;
        }
        JsonIn loop = JsonIn.read(folder.resolve("kit").resolve("kit.json"))
                .at("loops")
                .list()
                .get(0);
        run(n, "check", write(folder, "kept", maker.kept(loop)));
        run(
                n,
                "plan",
                write(folder, "own", maker.own(loop)),
                "--out",
                folder.resolve("own").toString());
        run(n, "check", write(folder, "drawn", maker.drawn("kit/drawing.dxf")));
        run(
                n,
                "plan",
                job,
                "--out",
                kit,
                "--was",
                folder.resolve("kit").resolve("kit.json").toString());
        if (n % 4 == 0) {
            run(n, "plan", job, "--out", kit, "--take", "2");
        }
        Files.writeString(folder.resolve("workshop.yaml"), maker.catalog(catalog));
        run(n, "check", job);
    }

    private static String write(Path folder, String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name + ".yaml"), text).toString();
    }

    /** Runs a command and notes what must not be. */
    private int run(int n, String... args) {
        CommandRun run = CommandRun.of(args);
        boolean refused = run.code() == 2 && !run.err().isBlank();
        boolean oneLine = args[0].equals("check") || run.err().lines().count() == 1;
        boolean done = (run.code() == 0 || run.code() == 1) && run.err().isEmpty();
        if (!done && !(refused && oneLine)) {
            broken.add("feedback " + n + " " + Arrays.toString(args) + ": code " + run.code() + ": " + run.err());
        }
        planned += done ? 1 : 0;
        return run.code();
    }

    private static void keep(Path from, Path to) throws IOException {
        Files.createDirectories(to);
        try (var files = Files.list(from)) {
            for (Path f : files.filter(Files::isRegularFile).toList()) {
                Files.write(to.resolve(f.getFileName()), Files.readAllBytes(f));
            }
        }
    }
}
