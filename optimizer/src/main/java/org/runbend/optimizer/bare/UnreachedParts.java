package org.runbend.optimizer.bare;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;

/** Places outside the port's block: joined to it by one place, or by none. */
final class UnreachedParts {
    static final String JOINED =
            " join the port's part of the floor by one place only, so a closed loop cannot go there and" + " back.";

    private final Lattice lattice;
    private final LatticeGraph graph;
    private final BiconnectedBlock block;
    private final Cells cells;

    UnreachedParts(Lattice lattice, BiconnectedBlock block) {
        this.lattice = lattice;
        this.graph = lattice.graph();
        this.block = block;
        this.cells = new Cells(lattice);
    }

    /** One part for each set of linked places outside the block. */
    List<Part> find() {
        List<Part> parts = new ArrayList<>();
        boolean[] seen = new boolean[graph.size()];
        block.nodes().forEach(n -> seen[n] = true);
        for (int node = 0; node < graph.size(); node++) {
            if (!seen[node]) {
                TreeSet<Integer> joints = new TreeSet<>();
                List<Integer> heated = component(node, seen, joints).stream()
                        .filter(n -> graph.price(n) > 0)
                        .toList();
                if (!heated.isEmpty()) {
                    parts.add(part(heated, joints));
                }
            }
        }
        return parts;
    }

    private List<Integer> component(int start, boolean[] seen, NavigableSet<Integer> joints) {
        List<Integer> found = new ArrayList<>();
        Deque<Integer> open = new ArrayDeque<>(List.of(start));
        seen[start] = true;
        while (!open.isEmpty()) {
            int node = open.poll();
            found.add(node);
            for (Heading h : Heading.values()) {
                int next = graph.neighbour(node, h);
                if (next >= 0 && block.contains(next)) {
                    joints.add(next);
                } else if (next >= 0 && !seen[next]) {
                    seen[next] = true;
                    open.add(next);
                }
            }
        }
        return found;
    }

    private Part part(List<Integer> heated, NavigableSet<Integer> joints) {
        boolean joined = !joints.isEmpty();
        String joins = heated.size() == 1 ? " joins" : " join";
        String cause = joined
                ? joins + " the port's part of the floor by one place only, "
                        + Landmarks.brackets(lattice.at(joints.first()))
                        + ", so a closed loop cannot go there and back."
                : joins + " the port's part of the floor nowhere.";
        return new Part(
                joined ? Reason.JOINED_BY_ONE : Reason.NOT_JOINED,
                heated.size(),
                1,
                cells.middle(heated),
                cells.of(heated),
                cause,
                List.of());
    }
}
