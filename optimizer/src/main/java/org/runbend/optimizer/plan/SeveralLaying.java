package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.division.Divider;
import org.runbend.optimizer.division.Division;
import org.runbend.optimizer.division.DivisionProblem;
import org.runbend.optimizer.division.PortPlaces;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.LatticeSearch;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.loop.PortPair;
import org.runbend.optimizer.loop.WorkLimit;

/** Lays so many loops of nearly equal length on the lattice that serves most, each from its own place at the port. */
final class SeveralLaying {
    private static final int MOST_SEARCHED = 60;
    private static final int MOST_LATTICES = 10;
    /** Nodes that a lattice may serve less than another, for each loop, if its rim lies better. */
    private static final int LESS_A_LOOP = 3;
    /** Port pairs beyond the nearest of a single loop, for each loop more. */
    private static final int PORTS_A_LOOP = 6;

    /** Steps of a spacing by which a greater reach is tried. */
    private static final int MOST_MORE = 4;

    private static final double ANYWHERE = 1e6;

    private final Job job;
    private final double radius;
    private final int loops;

    SeveralLaying(Job job, double radius, int loops) {
        this.job = job;
        this.radius = radius;
        this.loops = loops;
    }

    LaidLoops lay(Progress progress) {
        if (job.isStiff()) {
            progress.step(LoopLaying.stiff(job));
        }
        progress.step("choosing the lattice");
        double reach = job.floor().port().reach() + (loops - 1) * job.layout().spacing();
        List<Lattice> wide = lattices(reach);
        if (wide.isEmpty()) {
            throw noRoom();
        }
        progress.step(String.format(
                Locale.ROOT,
                "cutting %d nodes for %d loops",
                wide.get(0).graph().size(),
                loops));
        Division division =
                new Divider().divide(wide.stream().map(this::division).toList()).orElseThrow(this::noCut);
        return LaidLoops.of(
                wide.get(division.problem()),
                division.parts(),
                division.loops(),
                job.layout().leftOutPrice(),
                job.floor().port().at());
    }

    private List<Lattice> lattices(double reach) {
        int ports = FloorProblem.PORTS + PORTS_A_LOOP * (loops - 1);
        return new LatticeSearch()
                .good(LoopLaying.problem(job, radius, reach, ports), MOST_SEARCHED, loops * LESS_A_LOOP).stream()
                        .filter(lattice -> PortPlaces.apart(lattice.ports()) >= loops)
                        .limit(MOST_LATTICES)
                        .toList();
    }

    private DivisionProblem division(Lattice lattice) {
        return new DivisionProblem(
                lattice.graph(), lattice.ports(), loops, LoopLaying.preference(job), WorkLimit.standard());
    }

    /** Says which reach would do. */
    private Unbuildable noRoom() {
        List<Lattice> anywhere =
                new LatticeSearch().best(LoopLaying.problem(job, radius, ANYWHERE, Integer.MAX_VALUE), 1);
        if (anywhere.isEmpty()) {
            return LoopLaying.noPlace(job, radius);
        }
        double needed = needed(anywhere.get(0)) - (loops - 1) * job.layout().spacing();
        String need = String.format(
                Locale.ROOT,
                "%d loops need %d places side by side at the port, about %.0f mm of rim, and a reach of %.0f mm holds too"
                        + " few; ",
                loops,
                2 * loops,
                (2 * loops - 1) * job.layout().spacing(),
                job.floor().port().reach());
        return new Unbuildable(
                "layout.loops",
                need
                        + (Double.isFinite(needed)
                                ? String.format(Locale.ROOT, "a floor.port.reach of %.0f would do", Math.ceil(needed))
                                : "the rim of this floor holds fewer loops"));
    }

    /** Distance from the port within which all loops find a place. */
    private double needed(Lattice lattice) {
        Point port = job.floor().port().at();
        List<PortPair> nearest = new ArrayList<>(lattice.ports());
        nearest.sort(Comparator.comparingDouble(p -> distance(lattice, port, p)));
        for (int i = 1; i <= nearest.size(); i++) {
            if (PortPlaces.apart(nearest.subList(0, i)) >= loops) {
                return distance(lattice, port, nearest.get(i - 1));
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private static double distance(Lattice lattice, Point port, PortPair pair) {
        return Math.max(port.distance(lattice.at(pair.from())), port.distance(lattice.at(pair.to())));
    }

    private Unbuildable noCut() {
        String remedy = "fewer loops or another place of the port may do";
        for (int more = 1; more <= MOST_MORE; more++) {
            double reach = job.floor().port().reach() + more * job.layout().spacing();
            List<Lattice> lattices = lattices(reach + (loops - 1) * job.layout().spacing());
            if (lattices.stream().limit(2).anyMatch(l -> new Divider().canDivide(division(l)))) {
                remedy = String.format(Locale.ROOT, "a floor.port.reach of %.0f would do", Math.ceil(reach));
                break;
            }
        }
        return new Unbuildable(
                "layout.loops",
                String.format(
                        Locale.ROOT,
                        "no cut of this floor into %d parts of nearly equal size was found that gives each loop its own way"
                                + " to the port within %.0f mm; %s",
                        loops,
                        job.floor().port().reach(),
                        remedy));
    }
}
