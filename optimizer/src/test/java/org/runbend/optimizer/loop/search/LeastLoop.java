package org.runbend.optimizer.loop.search;

import java.util.Arrays;
import java.util.OptionalInt;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;

/**
 * The least objective on up to 64 nodes by walking paths from one end of the port to the other, in words of bits. Shares
 * nothing with the solvers. A path is given up when its turns and the prices of the nodes that it can no longer come to
 * exceed the objective asked for; that is raised from 4 in steps of 1 until a path gets through.
 */
final class LeastLoop {
    private final int size;
    private final long[] links;
    private final int[][] next;
    private final int[] price;
    private final int from;
    private final int to;
    private final long inBlock;
    private int limit;

    LeastLoop(LatticeGraph graph, PortPair port) {
        size = graph.size();
        links = new long[size];
        next = new int[size][4];
        price = new int[size];
        from = port.from();
        to = port.to();
        for (int v = 0; v < size; v++) {
            price[v] = graph.price(v);
            for (Heading h : Heading.values()) {
                next[v][h.index()] = graph.neighbour(v, h);
                links[v] |= next[v][h.index()] < 0 ? 0 : 1L << next[v][h.index()];
            }
        }
        inBlock = block();
    }

    /** Empty if there is no loop through the port. */
    OptionalInt objective() {
        int most = size + Arrays.stream(price).sum();
        for (limit = 4; limit <= most; limit++) {
            for (int h = 0; h < 4; h++) {
                int v = next[from][h];
                if (v >= 0 && v != to && walk(v, h, 1L << from, turnAtFrom(h))) {
                    return OptionalInt.of(limit);
                }
            }
        }
        return OptionalInt.empty();
    }

    /** The closing link comes into {@code from}; going on in its direction is no turn. */
    private int turnAtFrom(int h) {
        return next[to][h] == from ? 0 : 1;
    }

    /** Whether a path that has just stepped on v with heading h can be ended within the limit. */
    private boolean walk(int v, int h, long visited, int turns) {
        long on = visited | 1L << v;
        if (v == to) {
            return turns + (next[to][h] == from ? 0 : 1) + prices(inBlock & ~on) <= limit;
        }
        long ahead = flood(v, ~visited);
        if ((ahead >> to & 1) == 0 || turns + prices(inBlock & ~on & ~ahead) > limit) {
            return false;
        }
        for (int turn = 0; turn < 4; turn++) {
            int to4 = (h + turn) % 4;
            int u = next[v][to4];
            if (u >= 0 && (on >> u & 1) == 0 && walk(u, to4, on, turns + (turn == 0 ? 0 : 1))) {
                return true;
            }
        }
        return false;
    }

    private int prices(long nodes) {
        int sum = 0;
        for (long rest = nodes; rest != 0; rest &= rest - 1) {
            sum += price[Long.numberOfTrailingZeros(rest)];
        }
        return sum;
    }

    private long flood(int start, long within) {
        long seen = 1L << start;
        long fresh = seen;
        while (fresh != 0) {
            long reached = 0;
            for (long rest = fresh; rest != 0; rest &= rest - 1) {
                reached |= links[Long.numberOfTrailingZeros(rest)];
            }
            fresh = reached & within & ~seen;
            seen |= fresh;
        }
        return seen;
    }

    /** Menger: nodes that no single other node parts from the port link lie on a ring with it. */
    private long block() {
        long block = 0;
        for (int v = 0; v < size; v++) {
            boolean on = true;
            for (int cut = 0; cut < size; cut++) {
                long ends = (1L << from | 1L << to) & ~(1L << cut);
                on &= cut == v || (flood(v, ~(1L << cut)) & ends) != 0;
            }
            block |= on ? 1L << v : 0;
        }
        return block;
    }
}
