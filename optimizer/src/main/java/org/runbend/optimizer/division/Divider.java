package org.runbend.optimizer.division;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.loop.LimitedProblem;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.search.LimitedSolver;
import org.runbend.optimizer.loop.search.LoopSketch;
import org.runbend.optimizer.loop.search.LoopSolver;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.LoopVerifier;

/**
 * Lays several loops of nearly equal length: divides the lattice into parts, each with its own port pair, and lays the loop
 * of each part by itself.
 *
 * <p>Method: many splits are reckoned at a glance, some are looked at with a narrow beam, the best few are laid in earnest;
 * the least sum of objectives among those of balanced lengths wins. The split is not proved best; each part's loop may be.
 * Parts share no node, so their loops cannot cross, and each port pair is a link of the rim, so neither can their tails.
 */
public final class Divider {
    /** What a sketch that finds nothing is taken to cost; derived: more than any loop costs. */
    private static final long NOTHING = 1_000_000;

    /** Splits sketched: chosen, not measured. */
    private static final int MOST_SKETCHED = 30;
    /** Splits laid in earnest; on large parts, where each takes long, only half as many; chosen, not measured. */
    private static final int MOST_LAID = 4;

    /** Places of a large part: derived, those of {@code Setting} beyond which passes are guided. */
    private static final int LARGE = 260;
    /**
     * Lattices of so many nodes, about 15 m2 at 100 mm, get one split laid: all of it is to end within a minute;
     * chosen, not measured.
     */
    private static final int VAST = 1_500;
    /**
     * Pairs a part offers; more would be open at once than the laying of a loop can tell apart; derived from the bits
     * of a port code.
     */
    private static final int MOST_PORTS = 8;

    /** Shortest length over longest, at least; our choice. */
    private static final double BALANCED = 0.9;

    /** Splits of one lattice that are sketched: chosen, not measured. */
    private static final int MOST_OF_A_LATTICE = 12;

    /** A way to divide one of the lattices, and what it seems to cost, nodes that another lattice has more included. */
    private record Candidate(int problem, Split split, long cost) {}

    /**
     * The best division found among some lattices of one floor; empty if no split gives each loop its own way to the port.
     */
    public Optional<Division> divide(List<DivisionProblem> problems) {
        List<Candidate> looked = glances(problems).stream()
                .limit(mostSketched(problems))
                .map(c -> new Candidate(
                        c.problem, c.split, c.cost - c.split.total() + sketch(problems.get(c.problem), c.split)))
                .sorted(Comparator.comparingLong(Candidate::cost))
                .toList();
        List<Division> found = new ArrayList<>();
        for (Candidate candidate : looked) {
            DivisionProblem problem = problems.get(candidate.problem);
            if (found.size() >= mostLaid(problem)) {
                break;
            }
            lay(candidate.problem, problem, all(candidate.split)).ifPresent(found::add);
        }
        long most = problems.stream().mapToLong(Divider::worth).max().orElse(0);
        return found.stream()
                .min(Comparator.comparing((Division d) -> !isBalanced(d))
                        .thenComparingLong(d -> objective(d) + most - worth(problems.get(d.problem()))));
    }

    private static int mostSketched(List<DivisionProblem> problems) {
        return problems.stream().anyMatch(p -> p.graph().size() > VAST) ? MOST_SKETCHED / 3 : MOST_SKETCHED;
    }

    private static int mostLaid(DivisionProblem problem) {
        if (problem.graph().size() > VAST) {
            return 1;
        }
        return problem.graph().size() / problem.loops() > LARGE ? MOST_LAID / 2 : MOST_LAID;
    }

    /** Whether any split gives each loop its own way to the port; a quick look. */
    public boolean canDivide(DivisionProblem problem) {
        return !glances(List.of(problem)).isEmpty();
    }

    private static List<Candidate> glances(List<DivisionProblem> problems) {
        long most = problems.stream().mapToLong(Divider::worth).max().orElse(0);
        List<Candidate> glances = new ArrayList<>();
        for (int i = 0; i < problems.size(); i++) {
            for (List<Integer> nodes : blocks(problems.get(i))) {
                for (Split split : new Splitting(problems.get(i), nodes).splits(nodes, MOST_OF_A_LATTICE)) {
                    glances.add(new Candidate(i, split, split.total() + most - worth(problems.get(i))));
                }
            }
        }
        glances.sort(Comparator.comparingLong(Candidate::cost));
        return glances;
    }

    /** Prices of all nodes that loops could be divided from. */
    private static long worth(DivisionProblem problem) {
        return blocks(problem).stream()
                .flatMap(List::stream)
                .mapToLong(problem.graph()::price)
                .sum();
    }

    /** Nodes of the blocks that hold places for all loops, the largest first. */
    private static List<List<Integer>> blocks(DivisionProblem problem) {
        return BiconnectedBlock.all(problem.graph()).stream()
                .filter(b -> b.holdsAllWanted(problem.graph()))
                .filter(b -> PortPlaces.apart(problem.ports().stream()
                                .filter(p -> b.contains(p.from()) && b.contains(p.to()))
                                .toList())
                        >= problem.loops())
                .max(Comparator.comparingLong(b -> b.price(problem.graph())))
                .map(b -> List.of(b.nodes()))
                .orElse(List.of());
    }

    private static List<List<Integer>> all(Split split) {
        List<List<Integer>> parts = new ArrayList<>(split.parts());
        parts.add(split.rest());
        return parts;
    }

    private static long sketch(DivisionProblem problem, Split split) {
        long sum = 0;
        for (List<Integer> part : all(split)) {
            LoopProblem loop = loopProblem(problem, new Subgraph(problem.graph(), part));
            sum += new LoopSketch().objective(loop).orElse(NOTHING);
        }
        return sum;
    }

    private static LoopProblem loopProblem(DivisionProblem problem, Subgraph part) {
        return new LoopProblem(
                part.graph(), part.ports(problem.ports(), MOST_PORTS), problem.preference(), problem.limit());
    }

    private static Optional<Division> lay(int index, DivisionProblem problem, List<List<Integer>> parts) {
        List<LoopSolution> loops = new ArrayList<>();
        for (List<Integer> part : parts) {
            Optional<LoopSolution> loop = layPart(problem, part);
            if (loop.isEmpty()) {
                return Optional.empty();
            }
            loops.add(loop.get());
        }
        return Optional.of(new Division(index, parts, loops));
    }

    private static Optional<LoopSolution> layPart(DivisionProblem problem, List<Integer> nodes) {
        Subgraph part = new Subgraph(problem.graph(), nodes);
        LoopProblem loop = loopProblem(problem, part);
        Answer<LoopSolution> outcome = new LoopSolver().solve(loop);
        if (!(outcome instanceof Answer.Found<LoopSolution> found)) {
            return Optional.empty();
        }
        return Optional.of(part.inWhole(verified(loop, found.it())));
    }

    /**
     * The most useful loop of a part that passes no more nodes than that; empty if none was found.
     *
     * @param part nodes in ascending order
     */
    public Optional<LoopSolution> shorter(DivisionProblem problem, List<Integer> part, int mostNodes) {
        Subgraph graph = new Subgraph(problem.graph(), part);
        LoopProblem loop = loopProblem(problem, graph);
        if (problem.graph().isStiff()) {
            return new StiffShortening(loop).atMost(mostNodes).map(graph::inWhole);
        }
        Answer<LoopSolution> outcome = new LimitedSolver().solve(new LimitedProblem(loop, mostNodes));
        return outcome instanceof Answer.Found<LoopSolution> found
                ? Optional.of(graph.inWhole(verified(loop, found.it())))
                : Optional.empty();
    }

    private static LoopSolution verified(LoopProblem loop, LoopSolution solution) {
        List<Finding> violations = LoopVerifier.verify(loop, solution);
        if (!violations.isEmpty()) {
            throw new IllegalStateException("the loop of a part breaks a rule: " + violations);
        }
        return solution;
    }

    private static long objective(Division division) {
        return division.loops().stream().mapToLong(LoopSolution::objective).sum();
    }

    private static boolean isBalanced(Division division) {
        double shortest = Double.POSITIVE_INFINITY;
        double longest = 0;
        for (LoopSolution loop : division.loops()) {
            double length = length(loop);
            shortest = Math.min(shortest, length);
            longest = Math.max(longest, length);
        }
        return shortest >= BALANCED * longest;
    }

    /** In spacings: a step from node to node, less what a quarter bend saves of its two legs, 2 x 1/2 - pi / 4. */
    private static double length(LoopSolution loop) {
        return loop.cycle().size() - 1 - (1 - Math.PI / 4) * loop.turns();
    }
}
