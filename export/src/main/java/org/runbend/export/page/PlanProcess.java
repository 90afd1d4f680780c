package org.runbend.export.page;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** A process that makes one plan, ended by its own handle. */
final class PlanProcess {
    /** Code of a Java that ran out of memory and was told to end then. */
    static final int NO_MEMORY = 3;

    private final Process process;

    private PlanProcess(Process process) {
        this.process = process;
    }

    /**
     * Starts one.
     *
     * @param command what follows the virtual machine's own options: class path, main class and its words
     */
    static PlanProcess start(List<String> command, Path folder, int heap) {
        List<String> all = new ArrayList<>(java(heap));
        all.addAll(command);
        try {
            return new PlanProcess(new ProcessBuilder(all)
                    .directory(folder.toFile())
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start());
        } catch (IOException e) {
            throw new UncheckedIOException("no process for a plan could be started", e);
        }
    }

    /** A Java of so many megabytes, for work that is short. */
    static List<String> java(int heap) {
        return List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + heap + "m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:+ExitOnOutOfMemoryError",
                "-Djava.awt.headless=true");
    }

    /** Sends the request and hands on each line that comes back, until the process ends; its code. */
    int converse(Map<String, Object> request, Consumer<String> heard) throws IOException {
        try (Writer in = process.outputWriter(StandardCharsets.UTF_8);
                BufferedReader out =
                        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            in.write(Json.write(request) + "\n");
            in.flush();
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                if (line.startsWith("{\"event\":\"")) { // libraries may print what they like
                    heard.accept(line);
                }
            }
        }
        try {
            return process.waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            end();
            return -1;
        }
    }

    boolean isAlive() {
        return process.isAlive();
    }

    /** Ends it at once. */
    void end() {
        process.destroyForcibly();
    }
}
