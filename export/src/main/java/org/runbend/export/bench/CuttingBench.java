package org.runbend.export.bench;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.runbend.optimizer.cutting.AssignmentModel;
import org.runbend.optimizer.cutting.CuttingAnswer;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.CuttingVerifier;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.PatternCutting;
import org.runbend.optimizer.cutting.Stock;

/**
 * How many stock pieces the cutting engine needs for instances of the cutting stock problem, what is proved, and in what
 * time.
 *
 * <p>Usage: {@code java -cp export/target/runbend.jar org.runbend.export.bench.CuttingBench --instances DIR [--seconds 10]
 * [--beside N]}. DIR is searched for {@code *.txt}: the number of sizes, the stock length, then a size and its count on a
 * line. Prints CSV {@code instance,stock,bound,proved,seconds}. With {@code --beside N} each of N instances spread over
 * the folder has a second line for a textbook assignment model in CP-SAT at the same limit. The clock ends an instance
 * here and nowhere else.
 */
public final class CuttingBench {
    private final PrintWriter out;
    private final double seconds;

    private CuttingBench(PrintWriter out, double seconds) {
        this.out = out;
        this.seconds = seconds;
    }

    /** Runs the bench; exits with 2 when nothing to do is named. */
    public static void main(String[] args) throws IOException {
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        Optional<String> folder = option(args, "--instances");
        double seconds = option(args, "--seconds").map(Double::parseDouble).orElse(10.0);
        if (folder.isEmpty()) {
            out.println("usage: CuttingBench --instances DIR [--seconds 10] [--beside N]");
            System.exit(2);
        }
        int beside = option(args, "--beside").map(Integer::parseInt).orElse(0);
        new CuttingBench(out, seconds).run(files(Path.of(folder.get())), beside);
    }

    private static Optional<String> option(String[] args, String name) {
        int at = List.of(args).indexOf(name);
        return at >= 0 && at + 1 < args.length ? Optional.of(args[at + 1]) : Optional.empty();
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(p -> p.getFileName().toString().endsWith(".txt"))
                    .sorted()
                    .toList();
        }
    }

    private void run(List<Path> files, int beside) throws IOException {
        out.println("instance,stock,bound,proved,seconds");
        for (int f = 0; f < files.size(); f++) {
            String name = files.get(f).getFileName().toString().replaceFirst("\\.txt$", "");
            CuttingProblem problem = read(files.get(f));
            measure(name, problem);
            boolean sampled = (long) f * beside / files.size() != (f + 1L) * beside / files.size();
            if (sampled) {
                assign(name + " (CP-SAT assignment)", problem);
            }
        }
    }

    /** Reads an instance; equal sizes on several lines are added up by the engine. */
    private static CuttingProblem read(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8).stream()
                .map(String::strip)
                .filter(l -> !l.isEmpty())
                .toList();
        int sizes = Integer.parseInt(lines.get(0));
        List<Demand> demands = lines.subList(2, 2 + sizes).stream()
                .map(l -> l.split("\\s+"))
                .map(cells -> new Demand("size " + cells[0], Long.parseLong(cells[0]), Integer.parseInt(cells[1])))
                .toList();
        Stock stock = Stock.bought("stock", Long.parseLong(lines.get(1)), 1);
        return new CuttingProblem(List.of(stock), demands, 0, 0, 0);
    }

    private void measure(String name, CuttingProblem problem) {
        Deadline deadline = new Deadline(seconds);
        CuttingAnswer answer = new PatternCutting(deadline).solve(problem);
        double taken = deadline.taken();
        if (!(answer instanceof CuttingSolution solution)) {
            print(name, -1, 0, taken);
            return;
        }
        List<String> wrong = CuttingVerifier.verify(problem, solution);
        if (!wrong.isEmpty()) {
            throw new IllegalStateException(name + ": " + wrong);
        }
        print(name, solution.cost(), solution.costBound().value(), taken);
    }

    private void assign(String name, CuttingProblem problem) {
        Deadline deadline = new Deadline(seconds);
        AssignmentModel.Answer answer = new AssignmentModel(seconds).solve(problem);
        print(name, answer.stock().orElse(-1), answer.bound(), deadline.taken());
    }

    private void print(String name, long stock, long bound, double taken) {
        boolean proved = stock == bound;
        out.printf(
                Locale.ROOT, "%s,%s,%d,%s,%.3f%n", name, stock < 0 ? "" : Long.toString(stock), bound, proved, taken);
    }
}
