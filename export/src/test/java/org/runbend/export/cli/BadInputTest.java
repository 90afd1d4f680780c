package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.export.CommandRun;

/** Each kind of bad input gets one line on the error stream and code 2, and nothing is written. */
class BadInputTest {
    private static final String GOOD = """
            job: Trial floor
            order: T-1
            catalog: workshop.yaml
            floor:
              outline: [[0, 0], [1200, 0], [1200, 900], [0, 900]]
              keepOut: [{name: post, circle: {centre: [1200, 900], radius: 20}, clearance: 10}]
              port: {at: [0, 75]}
            layout: {spacing: 150, edge: 75}
            pipe: {product: PX-16, tails: [900, 1100]}
            plates: {product: [SP-1], coverage: 85%}
            """;

    @TempDir
    Path folder;

    private Path job;

    @BeforeEach
    void lay() throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        job = Files.writeString(folder.resolve("job.yaml"), GOOD);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.map(p -> folder.relativize(p).toString()).sorted().toList();
        }
    }

    /** Runs both commands on the job: each says the same one line; the line comes back without the folder's name. */
    private String lineOfBoth() throws IOException {
        String plan =
                line("plan", job.toString(), "--out", folder.resolve("kit").toString());
        assertEquals(plan, line("plan", job.toString()), "with the default folder");
        assertEquals(plan, line("check", job.toString()));
        return plan;
    }

    private String line(String... args) throws IOException {
        List<String> before = names();
        CommandRun run = CommandRun.of(args);
        assertEquals(2, run.code(), run::err);
        assertEquals("", run.out());
        assertEquals(1, run.err().lines().count(), run::err);
        assertTrue(run.err().endsWith(System.lineSeparator()));
        assertFalse(run.err().contains("Exception"), run::err);
        assertFalse(run.err().contains("\tat "), run::err);
        assertEquals(before, names(), "nothing is written");
        return run.err().strip().replace(folder + File.separator, "");
    }

    /** Guard: the job that the cases spoil is good. */
    @Test
    void goodJobPasses() throws IOException {
        CommandRun check = CommandRun.of("check", job.toString());
        assertEquals(0, check.code(), check::err);
        assertEquals(List.of("", "job.yaml", "workshop.yaml"), names(), "check writes nothing");
        CommandRun plan = CommandRun.of("plan", job.toString());
        assertEquals(0, plan.code(), plan::err);
        assertTrue(names().contains("job" + File.separator + "kit.json"), "beside the job, named after it");
        CommandRun quiet = CommandRun.of("plan", job.toString(), "--quiet");
        assertEquals(new CommandRun(0, "", ""), quiet);
    }

    @Test
    void noFile() throws IOException {
        job = folder.resolve("none.yaml");
        assertEquals("none.yaml: no such file", lineOfBoth());
    }

    @Test
    void folderForAFile() throws IOException {
        job = Files.createDirectory(folder.resolve("jobs"));
        assertTrue(lineOfBoth().contains("jobs: "));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n\n", "# only a word\n", "---\n"})
    void emptyFile(String text) throws IOException {
        Files.writeString(job, text);
        String line = lineOfBoth();
        assertTrue(line.startsWith("job.yaml") && line.matches(".*(is empty|found nothing).*"), line);
    }

    @ParameterizedTest
    @ValueSource(strings = {"job: [1, 2\n", "job: \"a\n", "\t- x\n", "job: a: b\n", "just words\n", "- a\n- b\n"})
    void notYamlOrNoMapping(String text) throws IOException {
        Files.writeString(job, text);
        String line = lineOfBoth();
        assertTrue(line.matches("job\\.yaml:[0-9]+:[0-9]+: .+"), line);
    }

    @Test
    void notText() throws IOException {
        Files.write(job, new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1, (byte) 0x80, 10, 10});
        String line = lineOfBoth();
        assertTrue(line.startsWith("job.yaml"), line);
    }

    /** What is replaced in the good job, by what, and what the line says; places are counted in the text above. */
    @ParameterizedTest(name = "{index} {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            spacing: 150         | spacing: 150, spacing: 200 | 8:24: layout.spacing: key stands twice
            layout: {spacing     | layuot: {spacing       | 8:1: layuot: unknown key, the nearest known key is 'layout'
            spacing: 150         | spaceing: 150          | 8:10: layout.spaceing: unknown key, the nearest known key is 'spacing'
            radius: 20           | radius: 2 leagues      | found '2 leagues', a length in mm is wanted
            coverage: 85%        | coverage: 0.85         | plates.coverage: found '0.85', a share with %
            coverage: 85%        | coverage: 101%         | plates.coverage: found '101%', a share from 0 to 100% is wanted
            coverage: 85%        | coverage: -5%          | plates.coverage: found '-5%', a share from 0 to 100% is wanted
            [1200, 0], [1200, 900] | [1200, 900], [1200, 0] | 5:12: floor.outline: the outline crosses or touches itself
            , [1200, 900], [0, 900] | ``                   | 5:12: floor.outline: the outline has 2 points, at least 3 are wanted
            centre: [1200, 900]  | centre: [1500, 1300]   | keep-out 'post' lies
            at: [0, 75]          | at: [0, -400]          | 7:14: floor.port.at: the port lies 400 mm outside the floor
            spacing: 150         | spacing: 100           | plates.product[0]: plate SP-1 is 120 mm wide and would overlap its neighbour, there are 100 mm
            [[0, 0], [1200, 0], [1200, 900], [0, 900]] | [[0, 0], [1200, 0], [1200, 290], [0, 290]] | the floor is too small for any loop
            product: PX-16       | product: PX-17         | 9:17: pipe.product: the catalog has no pipe 'PX-17', the nearest one is PX-16
            [SP-1]               | [SP-7]                 | the catalog has no plate 'SP-7'
            catalog: workshop    | catalog: warehouse     | 3:10: catalog: warehouse.yaml: no such file
            tails: [900, 1100]   | tails: [90000, 90000], allowance: 50% | longest coil
            tails: [900, 1100]   | loopLimit: 100         | 100 mm
            """)
    void spoiltJob(String what, String with, String said) throws IOException {
        assertTrue(GOOD.contains(what), what);
        String text = GOOD.replace(what, with);
        Files.writeString(job, said.contains("too small") ? text.replaceAll("  keepOut.*\n", "") : text);
        String line = lineOfBoth();
        assertTrue(line.startsWith("job.yaml:"), line);
        assertTrue(line.contains(said), line);
    }

    /** A line break or other control letters in a name do not break the line. */
    @Test
    void namesCannotBreakTheLine() throws IOException {
        Files.writeString(job, GOOD.replace("product: PX-16", "product: \"PX\\n17\\e[31m\\u0085x\\u2028y\""));
        String line = lineOfBoth();
        assertTrue(line.chars().noneMatch(c -> Character.isISOControl(c) || c == 0x2028), line);
    }

    @Test
    void shelfThatIsNotThere() throws IOException {
        String shelf = folder.resolve("shelf.yaml").toString();
        assertEquals("shelf.yaml: no such file", line("plan", job.toString(), "--shelf", shelf));
        assertEquals("shelf.yaml: no such file", line("check", job.toString(), "--shelf", shelf));
    }

    @Test
    void outputFolderThatIsAFile() throws IOException {
        Path out = Files.writeString(folder.resolve("kit"), "mine");
        assertEquals(
                "kit: the output folder is a file; name a folder",
                line("plan", job.toString(), "--out", out.toString()));
        assertEquals("mine", Files.readString(out));
    }

    @Test
    void outputFolderThatIsSomebodyElses() throws IOException {
        Path out = Files.createDirectory(folder.resolve("kit"));
        Files.writeString(out.resolve("letter.txt"), "mine");
        String line = line("plan", job.toString(), "--out", out.toString());
        assertTrue(line.startsWith("kit: the output folder holds files but no kit.json of ours"), line);
    }

    @Test
    void outputFolderThatCannotBeWritten() throws IOException {
        assumeFalse(System.getProperty("user.name").equals("root"), "root may write everywhere");
        Path out = Files.createDirectory(folder.resolve("kit"));
        assertTrue(out.toFile().setWritable(false));
        String line = line("plan", job.toString(), "--out", out.toString());
        assertTrue(out.toFile().setWritable(true));
        assertEquals("kit: the output folder cannot be written", line);
    }

    @ParameterizedTest
    @CsvSource({
        "plan, runbend plan:",
        "check, runbend check:",
        "plna JOB, runbend:",
        "plan JOB --oout kit, runbend plan:",
        "plan JOB --out, runbend plan:",
        "plan JOB JOB, runbend plan:",
        "check JOB --out kit, runbend check:",
        "--colour, runbend:"
    })
    void usageErrors(String words, String start) throws IOException {
        List<String> args = new ArrayList<>();
        for (String word : List.of(words.split(" ", -1))) {
            if (!word.isEmpty()) {
                args.add(word.equals("JOB") ? job.toString() : word);
            }
        }
        String line = line(args.toArray(String[]::new));
        assertTrue(line.startsWith(start), line);
        assertTrue(line.endsWith("--help')"), line);
    }

    @ParameterizedTest
    @CsvSource({"--help", "plan --help", "check --help"})
    void helpEndsWellWithAnExample(String words) throws IOException {
        CommandRun run = CommandRun.of(words.split(" ", -1));
        assertEquals(0, run.code());
        assertEquals("", run.err());
        assertTrue(run.out().contains("Example:"), run::out);
        assertTrue(run.out().contains("runbend "), run::out);
    }

    /** Pictures and papers of ours are replaced; those of others, or changed since, only if somebody says so. */
    @Test
    void picturesAndPapersOfOthers() throws IOException {
        Path svg = folder.resolve("loop.svg");
        Path pdf = folder.resolve("confirm.pdf");
        for (List<String> command : List.of(
                List.of("loop", job.toString(), "--svg", svg.toString(), "--quiet"),
                List.of("confirm", job.toString(), "--out", pdf.toString(), "--quiet"))) {
            String[] again = command.toArray(String[]::new);
            String[] forced =
                    Stream.concat(command.stream(), Stream.of("--replace")).toArray(String[]::new);
            Path file = Path.of(command.get(3));
            assertEquals(0, CommandRun.of(again).code());
            byte[] ours = Files.readAllBytes(file);
            assertEquals(0, CommandRun.of(again).code(), "our own is replaced");
            assertArrayEquals(ours, Files.readAllBytes(file));
            Files.write(
                    file,
                    "signed".getBytes(java.nio.charset.StandardCharsets.UTF_8),
                    java.nio.file.StandardOpenOption.APPEND);
            byte[] signed = Files.readAllBytes(file);
            assertEquals(
                    file.getFileName() + ": exists and is not as Runbend wrote it; name another file, or say --replace",
                    line(again));
            assertArrayEquals(signed, Files.readAllBytes(file));
            assertEquals(0, CommandRun.of(forced).code());
            assertArrayEquals(ours, Files.readAllBytes(file));
        }
    }

    /** A job file may be called so; it is no list of arguments. */
    @Test
    void fileNamesThatBeginWithAt() throws IOException {
        Files.writeString(folder.resolve("@x"), "check\n" + job + "\n");
        CommandRun run = CommandRun.of("check", "@x");
        assertEquals(2, run.code());
        assertEquals("@x: no such file", run.err().strip());
    }

    /** A picture replaces pictures only, and in one step. */
    @Test
    void pictureInTheWayOfSomethingElse() throws IOException {
        Path letter = Files.writeString(folder.resolve("letter.txt"), "mine");
        Path album = Files.createDirectory(folder.resolve("album.svg"));
        for (Path svg : List.of(letter, album)) {
            assertEquals(
                    svg.getFileName() + ": exists and is no .svg file; name a new file",
                    line("loop", job.toString(), "--svg", svg.toString()));
        }
        Path binder = Files.createDirectory(folder.resolve("binder.pdf"));
        assertEquals(
                "binder.pdf: exists and is no .pdf file; name a new file",
                line("confirm", job.toString(), "--out", binder.toString()));
        Path nowhere = folder.resolve("gone").resolve("loop.svg");
        assertEquals(
                "gone" + File.separator + "loop.svg: cannot be written",
                line("loop", job.toString(), "--svg", nowhere.toString()));
        assertEquals("mine", Files.readString(letter));
    }
}
