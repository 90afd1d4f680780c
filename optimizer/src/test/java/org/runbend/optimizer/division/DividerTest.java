package org.runbend.optimizer.division;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;

class DividerTest {
    /**
     * A rectangle of even sides divide in k equal strips of even width: each strip of m x n nodes takes 2 x min(m, n) turns
     * (worked on the square in arXiv 2103.15778), so this is what a division must reach where the port lies at the divides.
     */
    @ParameterizedTest(name = "{0} x {1} in {2}")
    @CsvSource({"8, 4, 2, 16", "8, 8, 2, 16", "12, 4, 3, 24"})
    void stripsAreFound(int columns, int rows, int loops, int turns) {
        LatticeGraph graph = grid(columns, rows);
        List<PortPair> ports = new ArrayList<>();
        for (int column = 0; column + 1 < columns; column++) {
            ports.add(new PortPair(column, column + 1, column));
        }
        Division division = divide(graph, ports, loops).orElseThrow();
        assertEquals(loops, division.loops().size());
        Set<Integer> served = new HashSet<>();
        for (LoopSolution loop : division.loops()) {
            loop.cycle().forEach(n -> assertTrue(served.add(n), () -> "node " + n + " is in two loops"));
            assertEquals((double) (columns * rows) / loops, loop.cycle().size(), 2);
        }
        assertEquals(columns * rows, served.size());
        int sum = division.loops().stream().mapToInt(LoopSolution::turns).sum();
        assertTrue(sum <= turns, () -> sum + " turns");
    }

    /** One pair of neighbours is no place for two loops. */
    @Test
    void onePairIsTooFew() {
        assertEquals(Optional.empty(), divide(grid(6, 4), List.of(new PortPair(0, 1, 0)), 2));
    }

    /** Against trying every choice of pairs. */
    @Test
    void placesAreCountedLikeByTryingAll() {
        Random random = new Random(7);
        for (int round = 0; round < 200; round++) {
            List<PortPair> rim = new ArrayList<>();
            for (int node = 0; node < 9; node++) {
                if (random.nextInt(4) > 0) {
                    rim.add(new PortPair(node, node + 1, node));
                }
            }
            assertEquals(most(rim, 0, new HashSet<>()), PortPlaces.apart(rim), rim::toString);
        }
    }

    private static int most(List<PortPair> pairs, int from, Set<Integer> taken) {
        if (from == pairs.size()) {
            return 0;
        }
        PortPair pair = pairs.get(from);
        int without = most(pairs, from + 1, taken);
        if (taken.contains(pair.from()) || taken.contains(pair.to())) {
            return without;
        }
        Set<Integer> more = new HashSet<>(taken);
        more.add(pair.from());
        more.add(pair.to());
        return Math.max(without, 1 + most(pairs, from + 1, more));
    }

    private static Optional<Division> divide(LatticeGraph graph, List<PortPair> ports, int loops) {
        return new Divider()
                .divide(List.of(new DivisionProblem(graph, ports, loops, Preference.longRuns(), WorkLimit.standard())));
    }

    private static LatticeGraph grid(int columns, int rows) {
        LatticeGraph.Builder grid = LatticeGraph.builder();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                int node = grid.addNode(column, row, 10);
                if (column > 0) {
                    grid.link(node - 1, node);
                }
                if (row > 0) {
                    grid.link(node - columns, node);
                }
            }
        }
        return grid.build();
    }
}
