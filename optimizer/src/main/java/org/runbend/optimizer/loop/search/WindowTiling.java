package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.runbend.optimizer.lattice.BlockGraph;

/**
 * Overlapping windows of one shape after the other over a whole lattice; each round they lie and are swept otherwise.
 */
final class WindowTiling {
    /** Width and height in nodes; chosen, not measured. */
    private static final int[][] SHAPES = {{8, 40}, {40, 8}, {14, 14}, {11, 24}, {24, 11}};

    private final BlockGraph blockGraph;

    WindowTiling(BlockGraph blockGraph) {
        this.blockGraph = blockGraph;
    }

    /** Number of shapes; so many rounds in a row have one each. */
    int shapes() {
        return SHAPES.length;
    }

    /** The windows of a round as local numbers in the order in which they are decided. */
    List<int[]> windows(int round) {
        int[] shape = SHAPES[round % SHAPES.length];
        int[] columns =
                IntStream.range(0, blockGraph.size()).map(blockGraph::column).toArray();
        int[] rows = IntStream.range(0, blockGraph.size()).map(blockGraph::row).toArray();
        List<int[]> windows = new ArrayList<>();
        int left = IntStream.of(columns).min().orElse(0) - round / SHAPES.length * 2 % shape[0];
        int low = IntStream.of(rows).min().orElse(0) - round / SHAPES.length * 2 % shape[1];
        int right = IntStream.of(columns).max().orElse(0);
        int high = IntStream.of(rows).max().orElse(0);
        for (int r = low; r <= high; r += shape[1] / 2) {
            for (int c = left; c <= right; c += shape[0] / 2) {
                int[] locals = locals(c, r, shape, round);
                if (locals.length > 1) {
                    windows.add(locals);
                }
            }
        }
        return windows;
    }

    /** The nodes of a window, line by line across its shorter side, from one of its four corners. */
    private int[] locals(int column, int row, int[] shape, int round) {
        int sx = (round & 1) == 0 ? 1 : -1;
        int sy = (round & 2) == 0 ? 1 : -1;
        Comparator<Integer> byColumn = Comparator.comparingInt(i -> sx * blockGraph.column(i));
        Comparator<Integer> byRow = Comparator.comparingInt(i -> sy * blockGraph.row(i));
        return IntStream.range(0, blockGraph.size())
                .filter(i -> blockGraph.column(i) >= column && blockGraph.column(i) < column + shape[0])
                .filter(i -> blockGraph.row(i) >= row && blockGraph.row(i) < row + shape[1])
                .boxed()
                .sorted(shape[0] < shape[1] ? byRow.thenComparing(byColumn) : byColumn.thenComparing(byRow))
                .mapToInt(Integer::intValue)
                .toArray();
    }
}
