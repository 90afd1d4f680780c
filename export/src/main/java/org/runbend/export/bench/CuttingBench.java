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
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.FewLengthsCurve;
import org.runbend.optimizer.cutting.FewLengthsProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.cover.CoverCutting;
import org.runbend.optimizer.cutting.cover.FewLengthsCutting;
import org.runbend.optimizer.cutting.cover.RunByRunCutting;
import org.runbend.optimizer.cutting.patterns.AssignmentModel;
import org.runbend.optimizer.cutting.patterns.PatternCutting;
import org.runbend.optimizer.verify.CoverVerifier;
import org.runbend.optimizer.verify.CuttingVerifier;
import org.runbend.optimizer.verify.Finding;

/**
 * How many stock pieces the cutting engine needs for instances of the cutting stock problem, what is proved, and in what
 * time.
 *
 * <p>Usage: {@code java -cp export/target/runbend.jar org.runbend.export.bench.CuttingBench --instances DIR [--seconds 10]
 * [--beside N]}. DIR is searched for {@code *.txt}: the number of sizes, the stock length, then a size and its count on a
 * line. Prints CSV {@code instance,stock,bound,proved,seconds}. With {@code --beside N} each of N instances spread over
 * the folder has a second line for a textbook assignment model in CP-SAT at the same limit. {@code --coils} and {@code
 * --plates} run seeded cases of a workshop, with the first plan (for plates: each run cut by itself) beside ours, {@code
 * --few} plates in 1 to 6 lengths, with the cost in any lengths beside them. The
 * clock ends an instance here and nowhere else.
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
        CuttingBench bench = new CuttingBench(out, seconds);
        List<String> words = List.of(args);
        if (words.contains("--coils") || words.contains("--plates") || words.contains("--few")) {
            bench.cases(words);
            return;
        }
        if (folder.isEmpty()) {
            out.println("usage: CuttingBench --instances DIR [--seconds 10] [--beside N] | --coils | --plates | --few");
            System.exit(2);
        }
        int beside = option(args, "--beside").map(Integer::parseInt).orElse(0);
        bench.run(files(Path.of(folder.get())), beside);
    }

    /** Seeded cases: what the first plan (first-fit decreasing) costs, what ours does, the bound, and how long it took. */
    private void cases(List<String> words) {
        out.println("case,pieces,first,cost,bound,gapPercent,seconds");
        if (words.contains("--coils")) {
            for (int orders : new int[] {20, 40, 200, 1000}) {
                cut(orders + " orders", CuttingCases.coils(orders, 1));
            }
        }
        if (words.contains("--few")) {
            for (int runs : new int[] {12, 20, 40}) {
                for (int percent : new int[] {85, 92}) {
                    few(runs + " runs " + percent + " %", CuttingCases.cover(runs, percent, false, 1));
                }
            }
        }
        if (words.contains("--plates")) {
            for (int runs : new int[] {20, 40, 60}) {
                for (int percent : new int[] {85, 92, 97}) {
                    cover(runs + " runs " + percent + " %", CuttingCases.cover(runs, percent, false, 1));
                }
                cover(runs + " runs 95 % of three lengths", CuttingCases.cover(runs, 95, true, 1));
            }
            cut("a day of 1000 orders", CuttingCases.day(1000, 1));
            for (int orders : new int[] {40, 1000}) {
                cut("a day of " + orders + " orders in three lengths", CuttingCases.dayOfThree(orders, 1));
            }
        }
    }

    /** Plates in few lengths: for each number of them, pieces, the cost in any lengths, cost and bound; time is for all. */
    private void few(String name, CoverProblem problem) {
        Deadline clock = new Deadline(seconds);
        FewLengthsCurve curve = new FewLengthsCutting().solve(new FewLengthsProblem(problem, List.of(), 6));
        double taken = clock.taken();
        long free = curve.free() instanceof Answer.Found<CoverSolution> s ? s.it().cost() : 0;
        for (FewLengthsCurve.Point p : curve.points()) {
            if (p.answer() instanceof Answer.Found<CoverSolution> found
                    && CoverVerifier.verify(problem, found.it()).isEmpty()) {
                CoverSolution s = found.it();
                printCase(
                        name + " in " + p.lengths(),
                        s.pieceCount(),
                        free,
                        s.cost(),
                        s.bound().value(),
                        taken);
            }
        }
    }

    private void cut(String name, CuttingProblem problem) {
        Deadline deadline = new Deadline(seconds);
        Answer<CuttingSolution> answer = new PatternCutting(deadline).solve(problem);
        double taken = deadline.taken();
        if (answer instanceof Answer.Found<CuttingSolution> found
                && CuttingVerifier.verify(problem, found.it()).isEmpty()) {
            CuttingSolution s = found.it();
            int pieces = problem.demands().stream().mapToInt(Demand::count).sum();
            printCase(name, pieces, deadline.first(), s.cost(), s.costBound().value(), taken);
        }
    }

    private void cover(String name, CoverProblem problem) {
        Deadline clock = new Deadline(seconds);
        Answer<CoverSolution> answer = new CoverCutting().solve(problem);
        double taken = clock.taken();
        long alone = new RunByRunCutting().solve(problem) instanceof Answer.Found<CoverSolution> r ? r.it().cost() : 0;
        if (answer instanceof Answer.Found<CoverSolution> found
                && CoverVerifier.verify(problem, found.it()).isEmpty()) {
            CoverSolution s = found.it();
            printCase(name, s.pieceCount(), alone, s.cost(), s.bound().value(), taken);
        }
    }

    private void printCase(String name, int pieces, long first, long cost, long bound, double taken) {
        double gap = cost == 0 ? 0 : 100.0 * (cost - bound) / cost;
        out.printf(Locale.ROOT, "%s,%d,%d,%d,%d,%.4f,%.2f%n", name, pieces, first, cost, bound, gap, taken);
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
        Answer<CuttingSolution> answer = new PatternCutting(deadline).solve(problem);
        double taken = deadline.taken();
        if (!(answer instanceof Answer.Found<CuttingSolution> found)) {
            print(name, -1, 0, taken);
            return;
        }
        CuttingSolution solution = found.it();
        List<Finding> wrong = CuttingVerifier.verify(problem, solution);
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
