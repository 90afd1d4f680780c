package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.Axis;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Posture;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.verify.LoopVerifier;

/** Images of a floor, made here by matrices, share a posture; what differs does not. */
class PostureTest {
    private static final int FLOORS = 120;

    /** Columns and rows of the image by those of the floor: all eight of the square's symmetries. */
    private static final List<int[]> MATRICES = List.of(
            new int[] {1, 0, 0, 1},
            new int[] {0, -1, 1, 0},
            new int[] {-1, 0, 0, -1},
            new int[] {0, 1, -1, 0},
            new int[] {-1, 0, 0, 1},
            new int[] {1, 0, 0, -1},
            new int[] {0, 1, 1, 0},
            new int[] {0, -1, -1, 0});

    /** Turned, mirrored, shifted and numbered anew: one posture, and loops that are images of each other. */
    @Test
    void imagesShareTheirLoop() {
        Random random = new Random(11);
        int laid = 0;
        for (int i = 0; i < FLOORS; i++) {
            LoopProblem floor = floor(random, i % 3 == 0);
            Posture posture = Posture.of(floor);
            Answer<LoopSolution> answer = new LoopSolver().solve(posture.problem());
            for (int[] matrix : MATRICES) {
                Image image = new Image(floor, matrix, random);
                Posture other = Posture.of(image.problem());
                assertEquals(posture.numbers(), other.numbers(), "floor " + i);
                if (answer instanceof Answer.Found<LoopSolution> found) {
                    LoopSolution there = other.back(found.it());
                    assertEquals(List.of(), LoopVerifier.verify(image.problem(), there), "floor " + i);
                    assertEquals(found.it().objective(), there.objective());
                    laid++;
                }
            }
            if (answer instanceof Answer.Found<LoopSolution> found) {
                assertEquals(List.of(), LoopVerifier.verify(floor, posture.back(found.it())), "floor " + i);
            }
        }
        assertTrue(laid > FLOORS * MATRICES.size() / 2, laid + " loops");
    }

    /** Laid as it stands, a floor costs as much as in the posture of its images. */
    @Test
    void costsTheSame() {
        Random random = new Random(12);
        for (int i = 0; i < FLOORS; i++) {
            LoopProblem floor = floor(random, i % 3 == 0);
            assertEquals(
                    new LoopSolver().solve(floor).value().map(LoopSolution::objective),
                    new LoopSolver().solve(Posture.of(floor).problem()).value().map(LoopSolution::objective),
                    "floor " + i);
        }
    }

    /** Whatever a loop depends on makes another posture. */
    @Test
    void differencesAreSeen() {
        LatticeGraph grid = Lattices.picture("oooo\noooo\noooo\noooo\n");
        List<LoopProblem> all = new ArrayList<>();
        all.add(problem(grid, Axis.NONE, 0));
        all.add(problem(grid, Axis.X, 0));
        all.add(problem(grid, Axis.Y, 0));
        all.add(problem(grid, Axis.NONE, 4));
        all.add(problem(grid.copy().price(11).build(), Axis.NONE, 0));
        all.add(problem(grid.copy().turnCost(2).build(), Axis.NONE, 0));
        all.add(problem(grid.copy().stiff().build(), Axis.NONE, 0));
        all.add(problem(
                grid.copy().stiff().allowReturn(5, Heading.EAST, Heading.NORTH).build(), Axis.NONE, 0));
        all.add(problem(grid.copy().want(5).build(), Axis.NONE, 0));
        all.add(problem(grid.copy().crowd(5).build(), Axis.NONE, 0));
        all.add(problem(grid.copy().unlink(5, 6).build(), Axis.NONE, 0));
        all.add(problem(grid.copy().forbidBend(5, Heading.EAST, Heading.NORTH).build(), Axis.NONE, 0));
        LoopProblem first = all.get(0);
        all.add(new LoopProblem(
                first.graph(), first.ports(), new Preference(Axis.NONE, true, 2.0 / 3.0), first.limit()));
        all.add(new LoopProblem(first.graph(), first.ports(), new Preference(Axis.NONE, false, 0.5), first.limit()));
        all.add(new LoopProblem(first.graph(), first.ports(), first.preference(), new WorkLimit(7, 8)));
        Map<List<Integer>, Integer> seen = new HashMap<>();
        for (int i = 0; i < all.size(); i++) {
            Integer same = seen.put(Posture.of(all.get(i)).numbers(), i);
            assertEquals(null, same, "problem " + i);
        }
        assertNotEquals(0, seen.size());
    }

    private static LoopProblem problem(LatticeGraph graph, Axis axis, int from) {
        return new LoopProblem(
                graph,
                List.of(new PortPair(from, from + 1, 0)),
                new Preference(axis, false, 2.0 / 3.0),
                WorkLimit.standard());
    }

    private static LoopProblem floor(Random random, boolean stiff) {
        LatticeGraph plain =
                Lattices.crowded(Lattices.ragged(4 + random.nextInt(3), 3 + random.nextInt(3), random), random);
        LatticeGraph.Builder graph = plain.copy();
        if (stiff) {
            graph.stiff();
            for (int n = 0; n < plain.size(); n++) {
                if (random.nextInt(3) > 0 && plain.neighbour(n, Heading.EAST) >= 0) {
                    graph.allowReturn(n, Heading.EAST, random.nextBoolean() ? Heading.NORTH : Heading.SOUTH);
                }
                if (random.nextInt(3) > 0 && plain.neighbour(n, Heading.NORTH) >= 0) {
                    graph.allowReturn(n, Heading.NORTH, random.nextBoolean() ? Heading.EAST : Heading.WEST);
                }
            }
        }
        List<PortPair> ports = new ArrayList<>(Lattices.links(plain));
        Collections.shuffle(ports, random);
        List<PortPair> some = new ArrayList<>();
        for (PortPair p : ports.subList(0, Math.min(4, ports.size()))) {
            boolean back = random.nextBoolean();
            some.add(new PortPair(back ? p.to() : p.from(), back ? p.from() : p.to(), some.size()));
        }
        Axis axis = List.of(Axis.NONE, Axis.X, Axis.Y).get(random.nextInt(3));
        return new LoopProblem(
                graph.build(), some, new Preference(axis, random.nextBoolean(), 0.5), WorkLimit.standard());
    }

    /** An image of a problem by a matrix, shifted, its nodes and port pairs shuffled. */
    private record Image(LoopProblem problem) {
        Image(LoopProblem floor, int[] matrix, Random random) {
            this(made(floor, matrix, random));
        }

        private static LoopProblem made(LoopProblem floor, int[] m, Random random) {
            LatticeGraph graph = floor.graph();
            List<Integer> order =
                    new ArrayList<>(IntStream.range(0, graph.size()).boxed().toList());
            Collections.shuffle(order, random);
            LatticeGraph.Builder image = LatticeGraph.builder();
            int[] number = new int[graph.size()];
            int shift = random.nextInt(9) - 4;
            for (int n : order) {
                int column = m[0] * graph.column(n) + m[1] * graph.row(n) + shift;
                int row = m[2] * graph.column(n) + m[3] * graph.row(n) - 2 * shift;
                number[n] = image.addNode(column, row, graph.price(n));
            }
            for (int n : order) {
                copy(graph, n, image, number, m);
            }
            if (graph.isStiff()) {
                image.stiff();
            }
            image.turnCost(graph.turnCost()).straightCost(graph.straightCost());
            List<PortPair> ports = new ArrayList<>();
            floor.ports().forEach(p -> ports.add(new PortPair(number[p.from()], number[p.to()], p.rank())));
            Collections.shuffle(ports, random);
            Preference wish = floor.preference();
            Axis across = wish.axis() == Axis.X ? Axis.Y : Axis.X;
            Axis axis = wish.axis() == Axis.NONE || m[0] != 0 ? wish.axis() : across;
            return new LoopProblem(
                    image.build(),
                    ports,
                    new Preference(axis, wish.evenHeat(), wish.bendClearanceInSpacings()),
                    floor.limit());
        }

        private static void copy(LatticeGraph graph, int n, LatticeGraph.Builder image, int[] number, int[] m) {
            if (graph.isWanted(n)) {
                image.want(number[n]);
            }
            if (graph.isCrowded(n)) {
                image.crowd(number[n]);
            }
            for (Heading leg : Heading.values()) {
                if (graph.neighbour(n, leg) >= 0) {
                    image.link(number[n], number[graph.neighbour(n, leg)]);
                }
                if (!graph.bendAllowed(n, leg, leg.left())) {
                    image.forbidBend(number[n], turned(leg, m), turned(leg.left(), m));
                }
                for (Heading side : List.of(leg.left(), leg.right())) {
                    if (graph.neighbour(n, leg) >= 0 && graph.returnAllowed(n, leg, side)) {
                        Heading along = turned(leg, m);
                        if (along == Heading.EAST || along == Heading.NORTH) {
                            image.allowReturn(number[n], along, turned(side, m));
                        }
                    }
                }
            }
        }

        private static Heading turned(Heading heading, int[] m) {
            return Heading.ofStep(m[0] * heading.dx() + m[1] * heading.dy(), m[2] * heading.dx() + m[3] * heading.dy());
        }
    }
}
