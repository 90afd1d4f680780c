package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.LatticeSearch;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.laying.EarlierGrid.Place;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.loop.search.LoopSolver;
import org.runbend.optimizer.work.Work;

/**
 * Lays a loop on a floor that changed after its kit was cut: on the lattice of the loop before, which is held wherever it
 * still fits but in a region round what changed. The region grows step by step, in all directions and along rows and
 * columns, and each gives a loop; who asked weighs what they throw away against how good they are.
 */
public final class EarlierLaying {
    /** How far a region reaches beyond what changed, in places across and along; the last ones have no end. */
    private static final int[][] REACHES = {
        {1, 1}, {2, 2}, {3, 3}, {1, 3}, {3, 1}, {5, 5}, {2, 1000}, {1000, 2}, {8, 8}, {1000, 1000}
    };

    /** Places of a floor on which many more regions are tried, and of one on which some are: chosen by how long they take. */
    private static final int SMALL = 260;

    private static final int WIDE = 450;
    private static final int MOST_SMALL = 60;
    private static final int MOST = 4;

    /** Pairs of places for the pipe's ends among which that of the loop before is looked for. */
    private static final int PORTS = 200;

    private final Job job;
    private final double radius;
    private final EarlierKit was;
    private final Work work;

    /** For a job whose bends have a radius, mm, and the kit that was cut before. */
    public EarlierLaying(Job job, double radius, EarlierKit was, Work work) {
        this.job = job;
        this.radius = radius;
        this.was = was;
        this.work = work;
    }

    /** Why nothing of a loop before can be held, a clause; empty where it can be tried. */
    public Optional<String> obstacle() {
        if (was.place().isEmpty() || job.hasOwnLoop()) {
            return Optional.of("a loop that somebody drew is laid as it is");
        }
        if (was.loops().size() > 1 || job.layout().loops().orElse(2) > 1) {
            return Optional.of("only a single loop is held");
        }
        if (job.isStiff()) {
            return Optional.of("its pipe is too stiff for half circles from run to run");
        }
        if (job.layout().fitCoil()) {
            return Optional.of("it is shortened to a coil");
        }
        return isSameDirection() ? Optional.empty() : Optional.of("the job wants runs in another direction");
    }

    private boolean isSameDirection() {
        double angle = was.place().orElseThrow().angle();
        return Math.abs(LatticeDirection.of(LatticeDirection.settled(job, angle))
                                .angle()
                        - angle)
                < 1e-6;
    }

    /**
     * The loop of least worth among those that hold what they can of the loop before; empty where nothing of it can be held.
     *
     * @param worth what a loop comes to, all that is thrown away for it counted; less is better
     */
    public Optional<LaidLoops> lay(ToDoubleFunction<LaidLoops> worth) {
        EarlierKit.Place place = was.place().orElseThrow();
        Job settled = LatticeDirection.settled(job, place.angle());
        FloorProblem problem =
                LoopLaying.problem(settled, radius, job.floor().port().reach(), PORTS);
        return new LatticeSearch()
                .at(problem, place.origin())
                .flatMap(lattice -> new Search(settled, problem, lattice, worth).best());
    }

    /** The search on one lattice. */
    private final class Search {
        private final Job settled;
        private final FloorProblem problem;
        private final Lattice lattice;
        private final ToDoubleFunction<LaidLoops> worth;
        private final EarlierGrid before;
        private final Map<Place, Integer> nodes;
        private final Optional<PortPair> port;
        private final Set<Set<Place>> tried = new HashSet<>();
        private Optional<LoopSolution> best = Optional.empty();
        private double least = Double.POSITIVE_INFINITY;

        Search(Job settled, FloorProblem problem, Lattice lattice, ToDoubleFunction<LaidLoops> worth) {
            this.settled = settled;
            this.problem = problem;
            this.lattice = lattice;
            this.worth = worth;
            before = new EarlierGrid(lattice, was.loops().get(0));
            nodes = EarlierGrid.nodes(lattice.graph());
            int[] ends = before.port(nodes);
            port = lattice.ports().stream()
                    .filter(p ->
                            (p.from() == ends[0] && p.to() == ends[1]) || (p.from() == ends[1] && p.to() == ends[0]))
                    .findFirst();
        }

        Optional<LaidLoops> best() {
            Set<Place> damage = before.damage(nodes, port.isPresent());
            Set<Place> all = new TreeSet<>(damage);
            all.addAll(before.gained(block(lattice)));
            if (damage.isEmpty()) {
                tryFree(Set.of());
            }
            for (int[] reach : REACHES) {
                tryFree(around(damage, reach, nodes.keySet()));
                tryFree(around(all, reach, nodes.keySet()));
            }
            int left = lattice.graph().size() <= SMALL
                    ? MOST_SMALL
                    : lattice.graph().size() <= WIDE ? MOST : 0;
            boolean better = best.isPresent();
            while (better) {
                better = false;
                for (Set<Place> free : beside(before.changed(best.orElseThrow().cycle()))) {
                    if (left > 0 && !tried.contains(free)) {
                        left--;
                        better |= tryFree(free);
                    }
                }
            }
            return best.map(loop -> LaidLoops.of(lattice, loop));
        }

        /** Regions like one that a loop was found in: a row or a column less, or one more all round. */
        private List<Set<Place>> beside(Set<Place> region) {
            List<Set<Place>> others = new ArrayList<>();
            for (int[] reach : new int[][] {{0, 0}, {1, 0}, {0, 1}, {1, 1}}) {
                others.add(around(region, reach, nodes.keySet()));
            }
            region.stream().map(Place::row).distinct().forEach(row -> others.add(without(region, p -> p.row() == row)));
            region.stream()
                    .map(Place::column)
                    .distinct()
                    .forEach(column -> others.add(without(region, p -> p.column() == column)));
            return others;
        }

        private Set<Place> without(Set<Place> region, Predicate<Place> out) {
            return region.stream().filter(out.negate()).collect(Collectors.toCollection(TreeSet::new));
        }

        /** Lays the loop with a region free; whether it is the best so far. */
        private boolean tryFree(Set<Place> free) {
            if (!tried.add(free)) {
                return false;
            }
            work.step("holding what was cut", tried.size(), Math.max(tried.size(), 2 * REACHES.length));
            List<PortPair> ports = lattice.ports().stream()
                    .filter(p -> port.filter(p::equals).isPresent() || isFree(lattice, p, free))
                    .limit(FloorProblem.PORTS)
                    .toList();
            Optional<LoopSolution> loop = lay(settled, lattice, before.holding(nodes, free), ports);
            if (loop.isEmpty() || !hasRoom(settled, problem, lattice, loop.get())) {
                return false;
            }
            double now = worth.applyAsDouble(LaidLoops.of(lattice, loop.get()));
            if (now < least) {
                least = now;
                best = loop;
                return true;
            }
            return false;
        }
    }

    private static Set<Integer> block(Lattice lattice) {
        PortPair first = lattice.ports().get(0);
        return new TreeSet<>(BiconnectedBlock.ofLink(lattice.graph(), first.from(), first.to())
                .orElseThrow()
                .nodes());
    }

    private static Set<Place> around(Set<Place> seeds, int[] reach, Set<Place> all) {
        Set<Place> region = new TreeSet<>();
        for (Place p : all) {
            boolean near = seeds.stream()
                    .anyMatch(s ->
                            Math.abs(s.column() - p.column()) <= reach[0] && Math.abs(s.row() - p.row()) <= reach[1]);
            if (near) {
                region.add(p);
            }
        }
        return region;
    }

    private static boolean isFree(Lattice lattice, PortPair pair, Set<Place> free) {
        LatticeGraph graph = lattice.graph();
        return free.contains(new Place(graph.column(pair.from()), graph.row(pair.from())))
                && free.contains(new Place(graph.column(pair.to()), graph.row(pair.to())));
    }

    private static Optional<LoopSolution> lay(Job settled, Lattice lattice, LatticeGraph held, List<PortPair> ports) {
        if (ports.isEmpty()) {
            return Optional.empty();
        }
        LoopProblem problem = new LoopProblem(held, ports, LoopLaying.preference(settled), WorkLimit.standard());
        return new LoopSolver().solve(problem).value().map(loop -> loop.countedOn(lattice.graph()));
    }

    private boolean hasRoom(Job settled, FloorProblem problem, Lattice lattice, LoopSolution loop) {
        LoopPipes pipes = new LoopPipes(settled, radius);
        return pipes.withoutRoom(
                        problem,
                        List.of(pipes.of(lattice, loop)),
                        !lattice.leads().isEmpty())
                .isEmpty();
    }
}
