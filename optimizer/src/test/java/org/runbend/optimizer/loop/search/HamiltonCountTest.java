package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.BlockGraph;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/** The same steps, counting instead of minimising: no state may be lost, merged wrongly or met twice. */
class HamiltonCountTest {
    /** Hamilton cycles of the 2n x 2n grid: 1, 6, 1072, 4638576 (OEIS A003763). All pass the corner's link. */
    @ParameterizedTest
    @CsvSource({"2, 1", "4, 6", "6, 1072", "8, 4638576"})
    void squares(int side, long expected) {
        assertEquals(expected, count(Lattices.grid(side, side)));
    }

    /** Ladders have one Hamilton cycle; 3 x 2n grids have 2^(n-1) (each further pair of columns doubles, by hand). */
    @Test
    void laddersAndThreeRows() {
        assertEquals(1, count(Lattices.grid(2, 7)));
        assertEquals(8, count(Lattices.grid(3, 8)));
        assertEquals(0, count(Lattices.grid(5, 5)));
    }

    private static long count(LatticeGraph graph) {
        List<PortPair> ports = List.of(new PortPair(0, 1, 0));
        BiconnectedBlock block = BiconnectedBlock.ofLink(graph, 0, 1).orElseThrow();
        BlockGraph blockGraph = new BlockGraph(graph, block);
        Frontier frontier = new Frontier(
                blockGraph, new NodeOrder(blockGraph, new int[] {0, 1}).choose().get(0), ports);
        Counter counter = new Counter();
        StateEncoding encoding = new StateEncoding(frontier);
        StateExpansion expansion = new StateExpansion(frontier, encoding, counter);
        Map<List<Long>, Long> states = Map.of(box(new long[encoding.words()]), 1L);
        for (int t = 0; t < frontier.size(); t++) {
            counter.following = new HashMap<>();
            for (Map.Entry<List<Long>, Long> entry : states.entrySet()) {
                counter.ways = entry.getValue();
                counter.last = t == frontier.size() - 1;
                expansion.expand(
                        entry.getKey().stream().mapToLong(Long::longValue).toArray(), 0, t);
            }
            states = counter.following;
        }
        return counter.closed;
    }

    private static List<Long> box(long[] state) {
        return Arrays.stream(state).boxed().toList();
    }

    private static final class Counter implements StateExpansion.Sink {
        private Map<List<Long>, Long> following = new HashMap<>();
        private long ways;
        private long closed;
        private boolean last;

        @Override
        public void next(long[] state, long cost, int legs, int portRank) {
            // The port is the only link offered, so a second way that does not choose it dies by itself.
            if (legs != 0) {
                following.merge(box(state), ways, Long::sum);
            }
        }

        @Override
        public void closed(long cost, long rest, int legs) {
            closed += last ? ways : 0;
        }
    }
}
