package org.runbend.export.bench;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Times the whole {@code plan} command in a fresh JVM, as a user starts it.
 *
 * <p>Usage: {@code java -cp export/target/runbend.jar org.runbend.export.bench.PlanBench JOB.yaml...}. Prints CSV:
 * {@code job,run,seconds,exit}. Three runs a job, one after the other.
 */
public final class PlanBench {
    private static final int RUNS = 3;

    private PlanBench() {}

    /** Runs the bench; exits with 2 when no job is named. */
    public static void main(String[] args) throws IOException, InterruptedException {
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        if (args.length == 0) {
            out.println("usage: PlanBench JOB.yaml...");
            System.exit(2);
        }
        out.println("job,run,seconds,exit");
        for (String job : args) {
            for (int run = 1; run <= RUNS; run++) {
                out.println(time(Path.of(job), run));
            }
        }
    }

    private static String time(Path job, int run) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("runbend-bench-");
        try {
            List<String> command = new ArrayList<>();
            command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
            command.addAll(List.of("-cp", System.getProperty("java.class.path"), "org.runbend.export.cli.Runbend"));
            command.addAll(List.of(
                    "plan",
                    job.toString(),
                    "--quiet",
                    "--out",
                    folder.resolve("kit").toString()));
            long start = System.nanoTime();
            int exit = new ProcessBuilder(command).inheritIO().start().waitFor();
            double seconds = (System.nanoTime() - start) / 1e9;
            return String.format(Locale.ROOT, "%s,%d,%.2f,%d", job.getFileName(), run, seconds, exit);
        } finally {
            remove(folder);
        }
    }

    private static void remove(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(p);
            }
        }
    }
}
