package org.runbend.export.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Jobs, catalogs and shelves, good, odd and absurd, through the command line: never a trace, a hang, a folder half
 * written, nor a plan that breaks a rule.
 *
 * <p>{@code -Dfuzz.cases=N} says how many, {@code -Dfuzz.from=N} which is the first, {@code -Dfuzz.seed=N} runs that one
 * alone and keeps its files. The profile {@code fuzz} runs 100,000. Figures go to {@code target/fuzz/report.txt}.
 */
class FuzzTest {
    private static final Path EXAMPLES = Path.of("..", "examples");
    private static final Path TARGET = Path.of("target", "fuzz");
    private static final int CASES = Integer.getInteger("fuzz.cases", 200);
    private static final long FROM = Long.getLong("fuzz.from", 0);
    private static final int MOST_FAULTS = 300;

    @TempDir
    static Path work;

    @BeforeAll
    static void copyExamples() throws IOException {
        Files.createDirectories(TARGET);
        try (Stream<Path> files = Files.list(EXAMPLES)) {
            for (Path f : files.filter(f -> f.toString().endsWith(".yaml")).toList()) {
                Files.copy(f, work.resolve(f.getFileName()));
            }
        }
    }

    @Test
    void nothingBreaksIt() throws IOException {
        CaseMaker maker = new CaseMaker(EXAMPLES);
        FuzzReport report = new FuzzReport();
        Long only = Long.getLong("fuzz.seed");
        long first = only != null ? only : FROM;
        int count = only != null ? 1 : CASES;
        try (CaseRunner runner = new CaseRunner(work)) {
            for (long n = first; n < first + count && report.faulty().size() < MOST_FAULTS; n++) {
                FuzzCase c = maker.make(n);
                CaseResult result = runner.run(c);
                report.add(result);
                if (only != null || !result.faults().isEmpty()) {
                    keep(c);
                }
                if (report.cases() % 1000 == 0 || !result.faults().isEmpty()) {
                    Files.writeString(TARGET.resolve("report.txt"), report.text());
                }
            }
        }
        Files.writeString(TARGET.resolve("report.txt"), report.text());
        assertEquals(List.of(), report.faulty(), report::text);
        assertTrue(
                only != null || count < 100 || (report.count(0) > count / 100 && report.count(2) > count / 2),
                () -> "too few kinds of answers to mean anything: " + report.text());
    }

    /** Same number, same case: a failure can be looked at again. */
    @Test
    void aNumberGivesTheSameCase() throws IOException {
        for (long n = 0; n < 200; n++) {
            FuzzCase a = new CaseMaker(EXAMPLES).make(n);
            FuzzCase b = new CaseMaker(EXAMPLES).make(n);
            assertEquals(a.command(), b.command());
            assertEquals(texts(a), texts(b));
        }
    }

    private static List<String> texts(FuzzCase c) {
        return c.files().entrySet().stream()
                .map((Map.Entry<String, byte[]> e) -> e.getKey() + Arrays.toString(e.getValue()))
                .toList();
    }

    private static void keep(FuzzCase c) throws IOException {
        Path folder = Files.createDirectories(TARGET.resolve("case-" + c.number()));
        for (Map.Entry<String, byte[]> file : c.files().entrySet()) {
            Files.write(folder.resolve(file.getKey()), file.getValue());
        }
    }
}
