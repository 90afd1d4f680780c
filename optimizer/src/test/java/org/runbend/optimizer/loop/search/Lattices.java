package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;

/** Lattices for tests. */
public final class Lattices {
    private Lattices() {}

    /** Columns x rows nodes, row by row from the south, all linked, each priced at 10. */
    static LatticeGraph grid(int columns, int rows) {
        return picture("o".repeat(columns).concat("\n").repeat(rows));
    }

    /**
     * A lattice from a drawing, north on top: {@code o} a node of price 10, {@code 0} one of price 0, anything else none;
     * neighbours are linked. Nodes are numbered row by row from the south.
     */
    public static LatticeGraph picture(String drawing) {
        return picturing(drawing).build();
    }

    static LatticeGraph.Builder picturing(String drawing) {
        List<String> lines = drawing.lines().toList();
        LatticeGraph.Builder builder = LatticeGraph.builder();
        for (int row = 0; row < lines.size(); row++) {
            String line = lines.get(lines.size() - 1 - row);
            for (int column = 0; column < line.length(); column++) {
                if (line.charAt(column) == 'o' || line.charAt(column) == '0') {
                    int node = builder.addNode(column, row, line.charAt(column) == 'o' ? 10 : 0);
                    linkBack(builder, node, builder.nodeAt(column - 1, row));
                    linkBack(builder, node, builder.nodeAt(column, row - 1));
                }
            }
        }
        return builder;
    }

    private static void linkBack(LatticeGraph.Builder builder, int node, int other) {
        if (other >= 0) {
            builder.link(node, other);
        }
    }

    /** A lattice with some nodes missing, some free, some corners forbidden. */
    public static LatticeGraph ragged(int columns, int rows, Random random) {
        StringBuilder drawing = new StringBuilder();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                int dice = random.nextInt(12);
                drawing.append(dice == 0 ? '.' : dice == 1 ? '0' : 'o');
            }
            drawing.append('\n');
        }
        LatticeGraph.Builder builder = picturing(drawing.toString());
        int size = builder.build().size();
        for (int i = random.nextInt(6); i > 0; i--) {
            Heading leg = Heading.ofIndex(random.nextInt(4));
            builder.forbidBend(random.nextInt(size), leg, leg.left());
        }
        return builder.build();
    }

    /** The lattice with corners unwelcome at every fourth node or so. */
    static LatticeGraph crowded(LatticeGraph graph, Random random) {
        LatticeGraph.Builder builder = graph.copy();
        for (int n = 0; n < graph.size(); n++) {
            if (random.nextInt(4) == 0) {
                builder.crowd(n);
            }
        }
        return builder.build();
    }

    /** A lattice with that share of its nodes missing: many blocks, many parts. */
    public static LatticeGraph sparse(int columns, int rows, double missing, Random random) {
        StringBuilder drawing = new StringBuilder();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                drawing.append(random.nextDouble() < missing ? '.' : 'o');
            }
            drawing.append('\n');
        }
        return picture(drawing.toString());
    }

    /** Every link once, from the lower node to the higher, ranked in that order. */
    public static List<PortPair> links(LatticeGraph graph) {
        List<PortPair> links = new ArrayList<>();
        for (int node = 0; node < graph.size(); node++) {
            for (Heading heading : List.of(Heading.EAST, Heading.NORTH)) {
                int next = graph.neighbour(node, heading);
                if (next >= 0) {
                    links.add(new PortPair(node, next, links.size()));
                }
            }
        }
        return links;
    }

    static LoopProblem problem(LatticeGraph graph, PortPair... ports) {
        return new LoopProblem(graph, List.of(ports), Preference.longRuns(), WorkLimit.standard());
    }
}
