package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.runbend.optimizer.job.Point;

/**
 * Finds the offsets at which the lattice serves most of the heated floor.
 *
 * <p>Method: count the heated nodes at every candidate offset (exact fits and tenths of the spacing), then build the
 * full graph, best count first, until no candidate left can hold more reachable nodes than the best one built. Equal
 * graphs are kept once. A candidate costs nodes x (outline sides + keep-outs) distance formulas.
 */
public final class LatticeSearch {
    private static final int MOST_BUILT_NODES = 60_000;

    /**
     * The lattices with most reachable heated nodes, exact fits first; empty if none has a port pair.
     *
     * @param most how many to return at most
     */
    public List<Lattice> best(FloorProblem problem, int most) {
        LatticeBuilder builder = new LatticeBuilder(problem);
        List<Candidate> candidates = candidates(problem, builder);
        List<Lattice> best = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        int reachable = 1;
        long built = 0;
        for (Candidate candidate : candidates) {
            if (candidate.heated < reachable || (built > MOST_BUILT_NODES && !best.isEmpty())) {
                break;
            }
            built += candidate.heated;
            Optional<Lattice> lattice = builder.build(candidate.offset);
            if (lattice.isEmpty() || lattice.get().reachable() < reachable) {
                continue;
            }
            if (lattice.get().reachable() > reachable) {
                reachable = lattice.get().reachable();
                best.clear();
                seen.clear();
            }
            if (seen.add(GraphSignature.of(lattice.get()))) {
                best.add(lattice.get());
            }
        }
        best.sort(Comparator.comparingInt(l -> -GraphSignature.freedom(l)));
        return best.size() > most ? List.copyOf(best.subList(0, most)) : List.copyOf(best);
    }

    private static List<Candidate> candidates(FloorProblem problem, LatticeBuilder builder) {
        List<Candidate> candidates = new ArrayList<>();
        List<Point> outline = builder.outline();
        for (double y : Offsets.along(outline, Point::y, problem.spacing(), problem.edge())) {
            for (double x : Offsets.along(outline, Point::x, problem.spacing(), problem.edge())) {
                Point offset = new Point(x, y);
                candidates.add(new Candidate(offset, builder.countHeated(offset)));
            }
        }
        candidates.sort(Comparator.comparingInt(c -> -c.heated));
        return candidates;
    }

    private record Candidate(Point offset, int heated) {}
}
