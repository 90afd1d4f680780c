package org.runbend.export;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.runbend.export.cli.Runbend;

/** The command line in a process of its own, to be stopped or killed. */
public final class ChildRun {
    private ChildRun() {}

    /** Starts one; what it says goes into a file. */
    public static Process start(Path output, List<String> words) throws IOException {
        return start(output, Runbend.class, words);
    }

    /** Starts a class that begins it in its own way. */
    public static Process start(Path output, Class<?> main, List<String> words) throws IOException {
        return start(output, List.of(), main, words);
    }

    /** Starts it under another program, which stands before it on the command line. */
    public static Process start(Path output, List<String> under, Class<?> main, List<String> words) throws IOException {
        List<String> command = new ArrayList<>(under);
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xshare:auto",
                "-cp",
                System.getProperty("java.class.path"),
                main.getName()));
        command.addAll(words);
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
    }
}
