package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.BiconnectedBlock;

/**
 * Finds the offsets at which a loop on the lattice can serve most of the heated floor.
 *
 * <p>Method: count the heated nodes at every candidate offset (exact fits and tenths of the spacing), then build the
 * full graph, best count first, until no candidate left can hold more nodes than the best one built can serve. Equal
 * graphs are kept once. A candidate costs nodes x (outline sides + keep-outs) distance formulas.
 */
public final class LatticeSearch {
    /** Lattices of equal worth that are compared before one of them is chosen; chosen, not measured. */
    public static final int MOST_CHOSEN_FROM = 12;

    /** Places of all lattices built: chosen, not measured. */
    private static final int MOST_BUILT_NODES = 60_000;
    /** Where each lattice takes a search for lead-ins, fewer are built; chosen, not measured. */
    private static final int MOST_JOINED_NODES = 15_000;

    /** Exact fits to corners that are built first: chosen, not measured. */
    private static final int MOST_FITS = 5;

    /** Lattices of a glance: chosen, not measured. */
    private static final int MOST_GLANCES = 2;

    /**
     * The lattices on which a loop can serve most heated nodes, those that leave most choice first; empty if none has a
     * port pair.
     *
     * @param count how many to return at most
     */
    public List<Lattice> best(FloorProblem problem, int count) {
        return search(problem, count, 0);
    }

    /**
     * Lattices on which a loop can serve most heated nodes, or up to so many less; those that serve more first.
     *
     * @param count how many to return at most
     * @param less how many nodes less are still good
     */
    public List<Lattice> good(FloorProblem problem, int count, int less) {
        return search(problem, count, less);
    }

    private static List<Lattice> search(FloorProblem problem, int count, int less) {
        LatticeBuilder builder = new LatticeBuilder(problem);
        List<Candidate> onHoles = builder.offsetOnHoles().stream()
                .map(o -> new Candidate(o, builder.countHeated(o)))
                .toList();
        List<Lattice> met = search(problem, builder, onHoles, count, less);
        return met.isEmpty() ? search(problem, builder, candidates(problem, builder), count, less) : met;
    }

    private static List<Lattice> search(
            FloorProblem problem, LatticeBuilder builder, List<Candidate> candidates, int count, int less) {
        int mostBuilt = problem.entry().isSettledFirst() ? MOST_JOINED_NODES : MOST_BUILT_NODES;
        List<Lattice> best = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        int most = 1;
        long built = 0;
        for (Candidate candidate : candidates) {
            if (candidate.heated < most - less || (built > mostBuilt && !best.isEmpty())) {
                break;
            }
            built += candidate.heated;
            Optional<Lattice> lattice = builder.build(candidate.offset);
            int coverable = lattice.map(LatticeSearch::coverable).orElse(0);
            if (coverable < Math.max(1, most - less)) {
                continue;
            }
            if (coverable > most) {
                most = coverable;
                best.removeIf(l -> coverable(l) < coverable - less);
                seen.clear();
                best.forEach(l -> seen.add(GraphSignature.of(l)));
            }
            if (seen.add(GraphSignature.of(lattice.get()))) {
                best.add(lattice.get());
            }
        }
        best.sort(Comparator.comparingInt((Lattice l) -> less == 0 ? 0 : -coverable(l))
                .thenComparingInt(l -> -GraphSignature.freedom(l)));
        return best.size() > count ? List.copyOf(best.subList(0, count)) : List.copyOf(best);
    }

    /**
     * A quick look: the lattice on which a loop can serve most among the one at hand, moved nowhere, and a few that fit the
     * outline's corners exactly. About ten times as quick as {@link #best}, and may overlook what that finds.
     *
     * @param now a lattice of a similar problem
     */
    public Optional<Lattice> glance(FloorProblem problem, Lattice now) {
        LatticeBuilder builder = new LatticeBuilder(problem);
        List<Candidate> fits = new ArrayList<>();
        List<Point> outline = builder.outline();
        ForcedRuns forced = builder.forcedRuns();
        List<Double> ys = Offsets.fits(outline, Point::y, problem.spacing(), problem.edge(), MOST_FITS);
        List<Double> xs = Offsets.fits(outline, Point::x, problem.spacing(), problem.edge(), MOST_FITS);
        for (double y : forced.offsets(false, ys)) {
            for (double x : forced.offsets(true, xs)) {
                Point offset = new Point(x, y);
                fits.add(new Candidate(offset, builder.countHeated(offset)));
            }
        }
        fits.sort(Comparator.comparingInt(c -> -c.heated));
        return Stream.concat(
                        Stream.of(new LatticeAxes(problem.angle()).in(now.origin())),
                        fits.stream().limit(MOST_GLANCES).map(Candidate::offset))
                .flatMap(offset -> builder.build(offset).stream())
                .max(Comparator.comparingInt(LatticeSearch::coverable));
    }

    /** The lattice that has a node at a place, if pipe can come onto the floor on it. */
    public Optional<Lattice> at(FloorProblem problem, Point node) {
        return new LatticeBuilder(problem).build(new LatticeAxes(problem.angle()).in(node));
    }

    /** Most heated nodes that one loop through the ports can serve as far as colours tell. */
    private static int coverable(Lattice lattice) {
        BiconnectedBlock block = BiconnectedBlock.ofLink(
                        lattice.graph(),
                        lattice.ports().get(0).from(),
                        lattice.ports().get(0).to())
                .orElseThrow();
        return Colours.coverable(lattice.graph(), block.nodes());
    }

    private static List<Candidate> candidates(FloorProblem problem, LatticeBuilder builder) {
        List<Candidate> candidates = new ArrayList<>();
        List<Point> outline = builder.outline();
        ForcedRuns forced = builder.forcedRuns();
        List<Double> xs = forced.offsets(
                true,
                builder.throughHoles(Point::x, Offsets.along(outline, Point::x, problem.spacing(), problem.edge())));
        List<Double> ys = forced.offsets(
                false,
                builder.throughHoles(Point::y, Offsets.along(outline, Point::y, problem.spacing(), problem.edge())));
        for (double y : ys) {
            for (double x : xs) {
                Point offset = new Point(x, y);
                candidates.add(new Candidate(offset, builder.countHeated(offset)));
            }
        }
        candidates.sort(Comparator.comparingInt(c -> -c.heated));
        return candidates;
    }

    private record Candidate(Point offset, int heated) {}
}
