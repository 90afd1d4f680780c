package org.runbend.export.bench;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.search.CircuitModel;
import org.runbend.optimizer.planning.LoopInspector;
import org.runbend.optimizer.work.Work;

/**
 * How good the loops of a folder of floors are, how much of that is proved, and how long the whole {@code plan} takes in a
 * fresh JVM of 2 GB.
 *
 * <p>Usage: {@code java -cp export/target/runbend.jar org.runbend.export.bench.LoopBench FLOORS_DIR --catalog F
 * [--sample N]}. Prints CSV: {@code floor,nodes,reachable,leftOut,turns,turnBound,objective,objectiveBound,seconds}; cells
 * are empty where nothing is known. The first N floors (2) have a second line, on which CP-SAT answers the same question
 * with a circuit constraint; it may do a fixed amount of work.
 */
public final class LoopBench {
    private static final String HEAP = "-Xmx2g";
    private static final int USUAL_SAMPLE = 2;
    /** Work for the circuit model in the solver's own units: on one core half a minute to a minute at 160 nodes. */
    private static final double CIRCUIT_WORK = 20;

    private final PrintWriter out;
    private final Path catalog;

    private LoopBench(PrintWriter out, Path catalog) {
        this.out = out;
        this.catalog = catalog;
    }

    /** Runs the bench; exits with 2 when folder or catalog is not named. */
    public static void main(String[] args) throws IOException, InterruptedException {
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        Optional<String> catalog = option(args, "--catalog");
        int sample = option(args, "--sample").map(Integer::parseInt).orElse(USUAL_SAMPLE);
        if (args.length == 0 || args[0].startsWith("--") || catalog.isEmpty()) {
            out.println("usage: LoopBench FLOORS_DIR --catalog F [--sample N]");
            System.exit(2);
        }
        new LoopBench(out, Path.of(catalog.get())).run(floors(Path.of(args[0])), sample);
    }

    private static Optional<String> option(String[] args, String name) {
        int at = List.of(args).indexOf(name);
        return at >= 0 && at + 1 < args.length ? Optional.of(args[at + 1]) : Optional.empty();
    }

    private static List<Path> floors(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(p -> p.getFileName().toString().endsWith(".yaml"))
                    .sorted(Comparator.comparing(p -> p.getFileName().toString()))
                    .toList();
        }
    }

    private void run(List<Path> floors, int sample) throws IOException, InterruptedException {
        out.println("floor,nodes,reachable,leftOut,turns,turnBound,objective,objectiveBound,seconds");
        for (int i = 0; i < floors.size(); i++) {
            Path folder = Files.createTempDirectory("runbend-bench-");
            try {
                measure(floors.get(i), folder, i < sample);
            } finally {
                remove(folder);
            }
        }
    }

    private void measure(Path floor, Path folder, boolean beside) throws IOException, InterruptedException {
        String name = floor.getFileName().toString().replaceFirst("\\.yaml$", "");
        Path job = folder.resolve(floor.getFileName());
        Files.copy(floor, job);
        Files.copy(catalog, folder.resolve(catalog.getFileName()));
        Path kit = folder.resolve("kit");
        double seconds = plan(job, kit);
        if (!Files.exists(kit.resolve("kit.json"))) {
            out.printf(Locale.ROOT, "%s,,,,,,,,%.2f%n", name, seconds);
            return;
        }
        LoopFigures found = LoopFigures.read(kit.resolve("kit.json"));
        LoopProblem problem = new LoopInspector(Work.silent()).problem(JobReader.read(job, Optional.empty()));
        OptionalInt nodes = OptionalInt.of(problem.graph().size());
        print(name, nodes, found, seconds);
        if (beside) {
            circuit(name, problem, nodes, found.reachable());
        }
    }

    /** Seconds that the plan command takes; what it says goes to our own streams. */
    private static double plan(Path job, Path kit) throws IOException, InterruptedException {
        List<String> command = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                HEAP,
                "-cp",
                System.getProperty("java.class.path"),
                "org.runbend.export.cli.Runbend",
                "plan",
                job.toString(),
                "--quiet",
                "--out",
                kit.toString());
        long start = System.nanoTime();
        new ProcessBuilder(command).inheritIO().start().waitFor();
        return (System.nanoTime() - start) / 1e9;
    }

    private void circuit(String name, LoopProblem problem, OptionalInt nodes, OptionalInt reachable) {
        long start = System.nanoTime();
        CircuitModel.Answer answer = new CircuitModel(CIRCUIT_WORK).solve(problem);
        double seconds = (System.nanoTime() - start) / 1e9;
        LoopFigures figures = new LoopFigures(
                reachable, answer.leftOut(), answer.turns(), OptionalInt.empty(), answer.objective(), answer.bound());
        print(name + " (CP-SAT circuit)", nodes, figures, seconds);
    }

    private void print(String name, OptionalInt nodes, LoopFigures f, double seconds) {
        String cells = Stream.of(
                        nodes, f.reachable(), f.leftOut(), f.turns(), f.turnBound(), f.objective(), f.objectiveBound())
                .map(cell -> cell.isPresent() ? Integer.toString(cell.getAsInt()) : "")
                .collect(Collectors.joining(","));
        out.printf(Locale.ROOT, "%s,%s,%.2f%n", name, cells, seconds);
    }

    private static void remove(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(p);
            }
        }
    }
}
