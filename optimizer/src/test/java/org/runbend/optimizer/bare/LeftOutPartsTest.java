package org.runbend.optimizer.bare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.loop.search.Lattices;
import org.runbend.optimizer.loop.search.LoopSolver;

/** A higher price as a remedy: never promised where the exact solver, asked at a price that outweighs all turns, finds no such loop. */
class LeftOutPartsTest {
    private static final int OUTWEIGHS = 10_000;

    /** Stiff pipe, and places that must be passed, can make a loop that serves more impossible; the remedy must know of both. */
    @Test
    void aPriceIsNamedOnlyWhereALoopOfThisPipeServesMore() {
        Random random = new Random(14);
        int named = 0;
        int stiff = 0;
        int forced = 0;
        for (int i = 0; i < 300; i++) {
            boolean isStiff = i % 2 == 0;
            LatticeGraph.Builder builder =
                    cheap(Lattices.ragged(5, 5, random), 1).copy();
            if (isStiff) {
                builder.stiff();
            } else {
                builder.want(random.nextInt(builder.build().size()));
            }
            LatticeGraph graph = builder.build();
            for (PortPair port : Lattices.links(graph)) {
                Optional<LoopSolution> loop = laid(graph, port);
                if (loop.isEmpty() || loop.get().leftOut() == 0) {
                    continue;
                }
                int least = laid(cheap(graph, OUTWEIGHS), port).orElseThrow().leftOut();
                int promised = promised(graph, loop.get());
                assertTrue(
                        loop.get().leftOut() - promised >= least,
                        () -> promised + " more promised at " + port + " of "
                                + loop.get().leftOut() + " left out, " + least + " must be");
                named += promised > 0 ? 1 : 0;
                stiff += isStiff && loop.get().leftOut() > least ? 1 : 0;
                forced += !isStiff && loop.get().leftOut() > least ? 1 : 0;
            }
        }
        assertTrue(named > 50, "remedies named: " + named);
        assertTrue(stiff > 10 && forced > 10, "where there was one to name: " + stiff + ", " + forced);
    }

    /** A place that must be passed hangs on one link: no loop is to be had, so none is promised. */
    @Test
    void noLoopWithoutThePlaceThatMustBePassed() {
        LatticeGraph graph = Lattices.picture("oo.\nooo\n");
        PortPair port = new PortPair(0, 1, 0);
        assertEquals(
                4,
                Servable.through(lattice(graph, port), port)
                        .orElseThrow()
                        .nodes()
                        .size());
        LatticeGraph wanting = graph.copy().want(2).build();
        assertEquals(Optional.empty(), Servable.through(lattice(wanting, port), port));
        assertEquals(Optional.empty(), laid(wanting, port));
    }

    private static LatticeGraph cheap(LatticeGraph graph, int price) {
        return graph.copy().price(price).build();
    }

    private static Optional<LoopSolution> laid(LatticeGraph graph, PortPair port) {
        Answer<LoopSolution> outcome = new LoopSolver()
                .solve(new LoopProblem(graph, List.of(port), Preference.longRuns(), WorkLimit.standard()));
        return outcome instanceof Answer.Found<LoopSolution> found ? Optional.of(found.it()) : Optional.empty();
    }

    /** Places that a higher price is said to serve. */
    private static int promised(LatticeGraph graph, LoopSolution loop) {
        List<Point> outline = List.of(new Point(0, 0), new Point(900, 0), new Point(900, 900), new Point(0, 900));
        FloorProblem floor = new FloorProblem(
                outline, List.of(), List.of(), new Point(0, 0), 9000, 150, 75, graph.isStiff() ? 100 : 75, 0, 1);
        Lattice lattice = lattice(graph, loop.port());
        Job.FloorPlan none = null;
        BareProblem problem = new BareProblem(none, floor, lattice, loop, new BareProblem.Limits(1, 1, 1, 1));
        BiconnectedBlock block = BiconnectedBlock.ofLink(
                        graph, loop.port().from(), loop.port().to())
                .orElseThrow();
        List<Remedy> prices = new ArrayList<>();
        new LeftOutParts(problem, block, Servable.through(lattice, loop.port()).orElseThrow())
                .find()
                .forEach(p -> p.known().stream()
                        .filter(r -> r.change() == Remedy.Change.PRICE)
                        .forEach(prices::add));
        return prices.stream().mapToInt(Remedy::here).max().orElse(0);
    }

    private static Lattice lattice(LatticeGraph graph, PortPair port) {
        return new Lattice(new Point(0, 0), 0, 150, 75, graph, List.of(port), graph.size(), List.of());
    }
}
