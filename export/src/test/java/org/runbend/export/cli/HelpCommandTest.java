package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.export.CommandRun;
import org.runbend.optimizer.work.Progress;
import picocli.AutoComplete;

/** Help, launchers, completion and progress. */
class HelpCommandTest {
    @TempDir
    Path folder;

    @Test
    void bareRunbendShowsHelp() {
        CommandRun run = CommandRun.of();
        assertEquals(0, run.code(), run::err);
        assertTrue(run.out().contains("Usage: runbend"), run::out);
        assertEquals(run.out(), CommandRun.of("help").out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"job", "catalog", "shelf", "choices", "drawings", "exit codes", "exit-codes", "outline"})
    void eachTopicTells(String topic) {
        CommandRun run = CommandRun.of(("help " + topic).split(" ", -1));
        assertEquals(0, run.code(), run::err);
        assertTrue(run.out().lines().count() >= 4, run::out);
        assertTrue(run.out().lines().allMatch(l -> l.length() <= 120), run::out);
    }

    /** Keys with what the schema says of them; a key behind a reference, in a list and behind a choice of forms. */
    @Test
    void keysComeFromTheSchemas() {
        String job = CommandRun.of("help", "job").out();
        for (String key : List.of(
                "floor.outline ",
                "floor.keepOut[].name ",
                "floor.outline[].arc ",
                "floor.port.at ",
                "layout.spacing ",
                "pipe.product ",
                "plates.coverage ")) {
            assertTrue(job.contains(key), () -> key + " is missing in " + job);
        }
        assertTrue(job.contains("required"), job);
        assertTrue(CommandRun.of("help", "catalog").out().contains("pipes[].sku"));
    }

    @Test
    void unknownTopicIsOneLine() {
        CommandRun run = CommandRun.of("help", "weather");
        assertEquals(2, run.code());
        assertEquals(1, run.err().lines().count());
        assertTrue(run.err().contains("there is no help on 'weather'; topics are job, catalog"), run::err);
    }

    /** The launcher finds the jar beside it, also through a link, and hands on what was typed. */
    @Test
    void launcherRunsTheJarBesideIt() throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "there is no /bin/sh");
        Path launcher = folder.resolve("runbend");
        Files.copy(Path.of("src", "main", "launchers", "runbend"), launcher);
        Path bin = Files.createDirectory(folder.resolve("bin"));
        Path java = Files.writeString(bin.resolve("java"), "#!/bin/sh\nfor a in \"$@\"; do echo \"<$a>\"; done\n");
        Files.setPosixFilePermissions(java, PosixFilePermissions.fromString("rwxr-xr-x"));
        Path link = Files.createSymbolicLink(bin.resolve("rb"), Path.of("..", "runbend"));
        for (Path started : List.of(launcher, link)) {
            ProcessBuilder builder = new ProcessBuilder("/bin/sh", started.toString(), "plan", "my job.yaml");
            builder.environment().remove("JAVA_HOME");
            builder.environment().put("PATH", bin + ":" + System.getenv("PATH"));
            Process process = builder.redirectErrorStream(true).start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(0, process.waitFor(), said);
            assertEquals(
                    "<-XX:TieredStopAtLevel=1>\n<-jar>\n<" + folder.toRealPath().resolve("runbend.jar")
                            + ">\n<plan>\n<my job.yaml>\n",
                    said);
        }
    }

    @Test
    void completionKnowsCommandsAndOptions() {
        String script = AutoComplete.bash("runbend", Runbend.commandLine());
        for (String word : List.of(
                "plan",
                "check",
                "outline",
                "quote",
                "help",
                "--size",
                "--discount",
                "--contour",
                "--unheated",
                "--contours")) {
            assertTrue(script.contains(word), word);
        }
    }

    /** Ten seconds a step from the first on: eleven steps are left before step 4 of 14, itself among them. */
    @Test
    void progressSaysHowFarAndHowLong() {
        Deque<Long> times = new ArrayDeque<>(List.of(0L, 2L, 5L, 15L, 35L, 150L));
        StringWriter said = new StringWriter();
        TimedProgress progress = new TimedProgress(new PrintWriter(said), () -> times.pop() * 1_000_000_000L);
        progress.step(new Progress.Step("packing plates", 0, 0));
        progress.step(new Progress.Step("more", 1, 14));
        progress.step(new Progress.Step("less", 2, 14));
        progress.step(new Progress.Step("other", 4, 14));
        progress.step(new Progress.Step("verifying", 0, 0));
        assertEquals(
                List.of(
                        "... 2 s  packing plates",
                        "... 5 s  1 of 14, more",
                        "... 15 s  2 of 14, less, about 2 min 10 s to go",
                        "... 35 s  4 of 14, other, about 1 min 50 s to go",
                        "... 2 min 30 s  verifying"),
                said.toString().lines().toList());
    }
}
