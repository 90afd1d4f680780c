package org.runbend.optimizer.cutting.patterns;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.verify.CuttingVerifier;

/**
 * A sample of each class of the cutting stock instances in {@code shared/data/csp} beside the project (BPPLIB: Delorme, Iori
 * and Martello 2018, https://doi.org/10.1007/s11590-017-1192-z), held against their published optima. The files may not be
 * copied into the project. Where the folder is absent, in CI too, the log of the build says in capitals that nothing was
 * held against them; {@link InstanceClassesTest} makes instances of the same classes and runs everywhere.
 */
class SharedInstancesTest {
    private static final int EACH = 2;

    @Test
    void sampleOfEachClassIsProvedOptimal() throws IOException {
        Path folder = folder();
        TreeMap<String, Long> optima = new TreeMap<>();
        for (String line : Files.readAllLines(folder.resolve("bounds.csv"))) {
            String[] cells = line.split(",", -1);
            if (cells.length == 3 && cells[1].equals(cells[2]) && !cells[1].equals("lb")) {
                optima.put(cells[0], Long.parseLong(cells[1]));
            }
        }
        TreeMap<String, List<Path>> classes = new TreeMap<>();
        try (var all = Files.walk(folder)) {
            all.filter(f -> f.toString().endsWith(".txt")).sorted().forEach(f -> classes.computeIfAbsent(
                            kind(name(f)), k -> new ArrayList<>())
                    .add(f));
        }
        assertTrue(classes.size() >= 10, "classes: " + classes.keySet());
        for (List<Path> files : classes.values()) {
            for (int n = 0; n < EACH; n++) {
                Path file = files.get(n * (files.size() - 1) / (EACH - 1));
                CuttingProblem problem = problem(file);
                CuttingSolution solution =
                        new PatternCutting().solve(problem).value().orElseThrow();
                assertEquals(List.of(), CuttingVerifier.verify(problem, solution), name(file));
                assertEquals(optima.get(name(file)), solution.cost(), name(file));
                assertEquals(solution.cost(), solution.costBound().value(), name(file));
            }
        }
    }

    private static String name(Path file) {
        return file.getFileName().toString().replaceFirst("\\.txt$", "");
    }

    /** Falkenauer_t120_05 is of class t120; N1C1W1_A of set 1 with 50 items, N1W1B1R0 of set 2, HARD0 of set 3 of Scholl. */
    private static String kind(String name) {
        return name.startsWith("Falkenauer_") ? name.split("_", -1)[1] : name.substring(0, 3);
    }

    private static CuttingProblem problem(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        List<Demand> demands = new ArrayList<>();
        for (String line : lines.subList(2, lines.size())) {
            String[] cells = line.strip().split("\\s+", -1);
            if (cells.length == 2) {
                demands.add(new Demand(cells[0], Long.parseLong(cells[0]), Integer.parseInt(cells[1])));
            }
        }
        long stock = Long.parseLong(lines.get(1).strip());
        return new CuttingProblem(List.of(Stock.bought("stock", stock, 1)), demands, 0, 0, 0);
    }

    private static Path folder() {
        Path at = Path.of("").toAbsolutePath();
        while (at != null && !Files.isDirectory(at.resolve("shared/data/csp"))) {
            at = at.getParent();
        }
        if (at == null) {
            System.err.println(
                    "NOT TESTED: cutting was not held against the published instances of BPPLIB, because the folder"
                            + " shared/data/csp is not beside the project. Their files may not be copied into it.");
        }
        assumeTrue(at != null, "the folder shared/data/csp with published instances is not there");
        return at.resolve("shared/data/csp");
    }
}
