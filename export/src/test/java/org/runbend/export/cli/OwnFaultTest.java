package org.runbend.export.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletionException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Faults of our own and of Java: exit code 70, one line, the report. */
class OwnFaultTest {
    private static final String REPORT = "; please send (\\S+runbend-fault-\\d+\\.txt) with the job file\n";

    @TempDir
    Path folder;

    private static String said(Throwable e) throws Exception {
        StringWriter err = new StringWriter();
        assertEquals(70, Failures.ownFault(e, new PrintWriter(err, true)));
        String line = err.toString();
        Files.delete(Path.of(line.replaceAll("(?s).*" + REPORT, "$1")));
        return line.replaceAll(REPORT, "");
    }

    @Test
    void eachIsOneLine() throws Exception {
        assertEquals("runbend: a fault of our own (StackOverflowError)", said(new StackOverflowError()));
        assertEquals(
                "runbend: a fault of our own (StackOverflowError)",
                said(new IllegalStateException(new StackOverflowError())));
        assertEquals(
                "runbend: a fault of our own (ArithmeticException)",
                said(new CompletionException(new ArithmeticException())));
        for (Throwable e : List.of(
                new OutOfMemoryError("Java heap space"),
                new CompletionException(new OutOfMemoryError()),
                new IllegalStateException(new ExceptionInInitializerError(new OutOfMemoryError())))) {
            assertTrue(
                    said(e).matches(
                                    "runbend: not enough memory: Java may use \\d+ MB, give it more: java -Xmx\\d+m -jar runbend.jar ..."));
        }
    }

    /** A process with too little memory, and one whose temporary folder is none: the report goes elsewhere then. */
    @Test
    void tooLittleMemory() throws Exception {
        FaultTable.layGood(folder);
        Path home = Files.createDirectory(folder.resolve("home"));
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx6m",
                "-XX:+UseSerialGC",
                "-XX:-UsePerfData",
                "-Djava.io.tmpdir=" + folder.resolve("gone"),
                "-Duser.home=" + home,
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                Runbend.class.getName(),
                "check",
                folder.resolve("job.yaml").toString()));
        Process child = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(child.getInputStream().readAllBytes(), UTF_8);
        assertEquals(70, child.waitFor(), said);
        assertTrue(
                said.matches(
                        "runbend: not enough memory: Java may use \\d+ MB, give it more: java -Xmx2048m -jar runbend.jar ..."
                                + REPORT),
                said);
        assertTrue(said.contains("send " + home), said);
    }
}
