package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.LatticeSearch;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.work.Work;

/**
 * Turns the lattice to the long wall along which a loop serves the floor best, where the job leaves the direction free and
 * nothing on site settles it.
 *
 * <p>Linear programs compare the directions: turns, and the price of each heated node that another direction reaches or the
 * loop leaves out.
 */
public final class FreeDirection {
    /** Lattices of a direction that are reckoned, on small floors and on others; chosen, not measured. */
    private static final int MOST_RECKONED = 3;

    /** Places of a small floor: chosen, not measured. */
    private static final int SMALL = 250;
    /**
     * What a turned lattice must save where long walls lie along the axes, in turns: programs flatter ragged rims;
     * chosen, not measured.
     */
    private static final int MARGIN = 10;

    private final double radius;
    private final Work work;

    /** For bends of a radius, mm, under some work. */
    public FreeDirection(double radius, Work work) {
        this.radius = radius;
        this.work = work;
    }

    /** A direction with its lattices and what the best of them reaches. */
    private record Option(Job job, boolean turned, List<Lattice> lattices, int reachable) {
        /** Turns in hand. */
        double bonus(int inHand) {
            return turned ? 0 : inHand;
        }

        /** The price of what another lattice reaches and this one does not. */
        double outOfReach(int most) {
            return price(most - reachable);
        }

        double value(int most) {
            return lattices.stream()
                    .limit(most <= SMALL ? MOST_RECKONED : 1)
                    .mapToDouble(l -> LoopLaying.estimate(job, l) + price(most - l.reachable()))
                    .min()
                    .orElse(Double.MAX_VALUE);
        }

        private double price(int nodes) {
            return (double) job.layout().leftOutPrice().leftOut() * nodes;
        }
    }

    /** The job with its direction settled, or the job itself where there is but one. */
    public Job settle(Job job) {
        List<Double> angles =
                LatticeDirection.isOpen(job) ? LongWalls.angles(job.floor().outline()) : List.of();
        if (angles.isEmpty()) {
            return job;
        }
        work.step("comparing the directions of long walls");
        List<Option> options = new ArrayList<>(List.of(option(job, false)));
        angles.forEach(angle -> options.add(option(LatticeDirection.turned(job, angle), true)));
        Option best = best(options, work, LongWalls.alongAxes(job.floor().outline()) ? MARGIN : 0);
        if (best.turned()) {
            work.step(String.format(
                    Locale.ROOT,
                    "runs lie along a wall at %.1f degrees",
                    best.job().layout().along().orElse(0)));
        }
        return best.job();
    }

    /** The best option; the one that is not turned has so many turns in hand. */
    private static Option best(List<Option> options, Work work, int inHand) {
        options.sort(Comparator.comparingInt(option -> -option.reachable()));
        Option best = options.get(0);
        int most = best.reachable();
        double first = best.value(most) - best.bonus(inHand);
        List<Option> others = options.stream()
                .skip(1)
                .filter(option -> option.outOfReach(most) - option.bonus(inHand) < first)
                .toList();
        List<Double> values = work.each(others, option -> option.value(most) - option.bonus(inHand));
        double least = first;
        for (int i = 0; i < others.size(); i++) {
            best = values.get(i) < least ? others.get(i) : best;
            least = Math.min(least, values.get(i));
        }
        return best;
    }

    private Option option(Job job, boolean turned) {
        double reach = job.floor().port().reach();
        List<Lattice> lattices = new LatticeSearch().best(LoopLaying.problem(job, radius, reach), MOST_RECKONED);
        return new Option(
                job,
                turned,
                lattices,
                lattices.stream().mapToInt(Lattice::reachable).max().orElse(0));
    }
}
