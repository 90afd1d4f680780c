package org.runbend.optimizer.bare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.floor.Colours;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.StraightCost;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.loop.search.LoopSketch;

/** Places of the port's block that the loop does not serve: no bend fits, colours do not come out, or turns cost more. */
final class LeftOutParts {
    /** A price at which turns hardly count: more turns than any floor takes. */
    private static final int DEAR = 10_000;

    private final Lattice lattice;
    private final LatticeGraph graph;
    private final LoopSolution loop;
    private final double price;
    private final Servable servable;
    private final Cells cells;
    private final List<Integer> bare;

    LeftOutParts(BareProblem problem, BiconnectedBlock block, Servable servable) {
        this.lattice = problem.lattice();
        this.graph = lattice.graph();
        this.loop = problem.loop();
        this.price = problem.problem().leftOutPrice().inTurns();
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
        String them = count == 1 ? "it" : "more of them";
        String each = price == 1 ? "1 quarter bend" : Plain.number(price) + " quarter bends";
        String ends = graph.straightCost().isNone()
                ? ""
                : " Ends of runs that no plate reaches count as parts of a bend, for the heat they lack and the work they make.";
        return (loop.isProvedBest()
                        ? ": a loop from this port that serves " + them + " takes at least " + each
                                + " more for each place (that is proved)"
                        : ": no loop was found that serves " + them + " for less than " + each + " more for each place")
                + ", and a place is held to be worth no more (leftOutPrice)." + ends;
    }

    /** The least price at which a loop that serves more is the better one, if a quick look finds such a loop. */
    private List<Remedy> keepingPrice() {
        LatticeGraph dear = graph.copy()
                .turnCost(1)
                .straightCost(StraightCost.NONE)
                .price(DEAR)
                .build();
        long objective = new LoopSketch()
                .objective(new LoopProblem(dear, List.of(loop.port()), Preference.longRuns(), WorkLimit.standard()))
                .orElse(Long.MAX_VALUE);
        int kept = loop.leftOut() - (int) Math.min(loop.leftOut(), objective / DEAR);
        long turns = objective % DEAR - loop.turns();
        if (kept == 0 || turns <= 0) {
            return List.of();
        }
        double area = kept * lattice.spacing() * lattice.spacing() / 1e6;
        return List.of(new Remedy(Remedy.Change.PRICE, "", price, turns / kept + 1, 0, 0, kept, kept, area, turns));
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
