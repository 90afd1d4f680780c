package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.LatticeSearch;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.lattice.PortPair;

/** Where holes would do, when those of the job cannot be joined to any loop. */
final class NearestHoles {
    /** Lattices on which other holes are tried: chosen, not measured. */
    private static final int LOOKED_AT = 12;

    private final Job job;
    private final double radius;

    NearestHoles(Job job, double radius) {
        this.job = job;
        this.radius = radius;
    }

    /** One line: what does not fit, and the nearest pair of places that was found to. */
    Unbuildable fault() {
        Optional<String> places = nearest();
        String text = String.format(
                Locale.ROOT,
                "no loop can be joined to these holes: pipe goes straight on from a hole over its slot, bends at %.0f mm or"
                        + " more, keeps off the edge and off other pipe, and meets the loop within %.0f mm of the port; %s",
                job.turnRadius(),
                job.floor().port().reach(),
                places.map(p -> "holes at " + p + " would do").orElse("another place of the port may do"));
        return new Unbuildable("floor.port.holes", text);
    }

    private Optional<String> nearest() {
        List<Job.HolePair> holes = job.floor().port().holes();
        Job free = job.with(job.floor().with(job.floor().port().with(List.of())), job.layout());
        List<Lattice> lattices = new LatticeSearch()
                .best(LoopLaying.problem(free, radius, job.floor().port().reach()), LOOKED_AT);
        List<Job.HolePair> pairs = new ArrayList<>();
        for (Lattice lattice : lattices) {
            for (PortPair p : lattice.ports()) {
                pairs.add(new Job.HolePair(lattice.at(p.from()), lattice.at(p.to())));
                pairs.add(new Job.HolePair(lattice.at(p.to()), lattice.at(p.from())));
            }
        }
        return pairs.stream()
                .sorted(Comparator.comparingDouble(p -> Math.rint(1000 * away(holes.get(0), p))))
                .limit(LOOKED_AT)
                .filter(p -> holes.size() == 1 && canBeLaid(p))
                .findFirst()
                .map(p -> text(p.flow()) + " and " + text(p.back()));
    }

    private boolean canBeLaid(Job.HolePair pair) {
        Job there = job.with(job.floor().with(job.floor().port().with(List.of(pair))), job.layout());
        return !new LatticeSearch()
                .best(LoopLaying.problem(there, radius, job.floor().port().reach()), 1)
                .isEmpty();
    }

    private static double away(Job.HolePair a, Job.HolePair b) {
        return a.flow().distance(b.flow()) + a.back().distance(b.back());
    }

    private static String text(Point p) {
        return String.format(Locale.ROOT, "[%.1f, %.1f]", p.x(), p.y()).replace(".0", "");
    }
}
