package org.runbend.optimizer.bare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.runbend.optimizer.floor.Colours;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.loop.BiconnectedBlock;
import org.runbend.optimizer.loop.LatticeGraph;
import org.runbend.optimizer.loop.LoopSolution;

/** Places of the port's block that the loop does not serve: no bend fits, colours do not come out, or turns cost more. */
final class LeftOutParts {
    private final Lattice lattice;
    private final LatticeGraph graph;
    private final LoopSolution loop;
    private final int price;
    private final Servable servable;
    private final Cells cells;
    private final List<Integer> bare;

    LeftOutParts(BareProblem problem, BiconnectedBlock block, Servable servable) {
        this.lattice = problem.lattice();
        this.graph = lattice.graph();
        this.loop = problem.loop();
        this.price = problem.problem().leftOutPrice();
        this.servable = servable;
        this.cells = new Cells(lattice);
        Set<Integer> served = new HashSet<>(loop.cycle());
        this.bare = block.nodes().stream()
                .filter(n -> graph.price(n) > 0 && !served.contains(n))
                .toList();
    }

    List<Part> find() {
        List<Part> parts = new ArrayList<>();
        List<Integer> tight = bare.stream().filter(n -> !servable.contains(n)).toList();
        List<Integer> free = bare.stream().filter(servable::contains).toList();
        if (!tight.isEmpty()) {
            parts.add(part(Reason.NO_ARC, tight, noArc(tight.size()), List.of()));
        }
        int forced = Math.min(free.size(), servable.heated() - servable.coverable());
        List<Integer> ofExcess = inExcessFirst(free);
        if (forced > 0) {
            parts.add(part(Reason.COLOURS, ofExcess.subList(0, forced), colours(forced), List.of()));
        }
        if (forced < free.size()) {
            List<Integer> dear = ofExcess.subList(forced, free.size());
            parts.add(part(Reason.TURNS, dear, turns(dear.size()), keepingPrice()));
        }
        return parts;
    }

    private Part part(Reason reason, List<Integer> nodes, String cause, List<Remedy> known) {
        return new Part(reason, nodes.size(), 1, cells.middle(nodes), cells.of(nodes), cause, known);
    }

    private String noArc(int count) {
        return String.format(
                Locale.ROOT,
                ": the bend of radius %.0f mm that a loop needs to pass %s comes too near to the outline or a keep-out.",
                lattice.radius(),
                count == 1 ? "it" : "them");
    }

    private String colours(int forced) {
        int[] heated = Colours.count(graph, servable.nodes(), true);
        return String.format(
                Locale.ROOT,
                ": a closed loop passes as many odd places as even ones, like the fields of a chessboard, and here are %d"
                        + " of one kind and %d of the other, so one loop must leave out %d.",
                Math.max(heated[0], heated[1]),
                Math.min(heated[0], heated[1]),
                forced);
    }

    private String turns(int count) {
        String cause = loop.isProvedBest()
                ? ": it is proved that serving %s takes at least %d turns more a place, and leftOutPrice %2$d says that a"
                        + " place is not worth more."
                : ": no loop was found that serves %s for less than %d turns more a place, the leftOutPrice.";
        return String.format(Locale.ROOT, cause, count == 1 ? "it" : "more of them", price);
    }

    /** The least price at which a loop that was met is the better one. */
    private List<Remedy> keepingPrice() {
        return loop.pairs().stream()
                .filter(p -> p.leftOut() < loop.leftOut() && p.turns() > loop.turns())
                .map(p -> new Remedy(
                        Remedy.Change.PRICE,
                        "",
                        price,
                        Math.floorDiv(p.turns() - loop.turns(), loop.leftOut() - p.leftOut()) + 1,
                        0,
                        0,
                        loop.leftOut() - p.leftOut(),
                        loop.leftOut() - p.leftOut(),
                        (loop.leftOut() - p.leftOut()) * lattice.spacing() * lattice.spacing() / 1e6))
                .min(Comparator.comparingDouble(Remedy::to))
                .stream()
                .toList();
    }

    /** Places of the colour in excess first, then by row and column, so that a cut of the list is one of colour. */
    private List<Integer> inExcessFirst(List<Integer> nodes) {
        int[] heated = Colours.count(graph, servable.nodes(), true);
        int excess = heated[0] > heated[1] ? 0 : 1;
        List<Integer> sorted = new ArrayList<>(nodes);
        sorted.sort(Comparator.comparingInt((Integer n) -> Colours.of(graph, n) == excess ? 0 : 1)
                .thenComparingInt(n -> n));
        return sorted;
    }
}
