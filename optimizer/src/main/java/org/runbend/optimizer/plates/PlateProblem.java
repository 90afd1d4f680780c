package org.runbend.optimizer.plates;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Labour;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.cutting.SawCost;
import org.runbend.optimizer.job.Job;

/**
 * Plates wanted for the loops of a floor.
 *
 * @param floor outline, keep-outs and unheated regions
 * @param request products, clearances and coverage
 * @param shelf offcuts at hand
 * @param loops the loops
 * @param labour what cutting takes of a worker's time, if the catalog says so
 */
public record PlateProblem(
        Job.FloorPlan floor, Job.PlateRequest request, Shelf shelf, List<Breakdown> loops, Optional<Labour> labour) {
    private static final double HOUR = 3600;
    private static final double MINUTE = 60;
    private static final double METRES = 0.25;

    /** Copies the list. */
    public PlateProblem {
        loops = List.copyOf(loops);
    }

    /** Where pipe turns into its holes. */
    public List<Slot> slots() {
        return loops.stream().flatMap(l -> l.slots().stream()).toList();
    }

    /** Plates of a workshop that takes as long as is usual. */
    public PlateProblem(Job.FloorPlan floor, Job.PlateRequest request, Shelf shelf, List<Breakdown> loops) {
        this(floor, request, shelf, loops, Optional.empty());
    }

    /** The same floor and loops with another request. */
    PlateProblem with(Job.PlateRequest other) {
        return new PlateProblem(floor, other, shelf, loops, labour);
    }

    /** The same plates with another shelf. */
    PlateProblem with(Shelf other) {
        return new PlateProblem(floor, request, other, loops, labour);
    }

    /** What a second of work is worth, minor units, as in {@link #sawCost}. */
    public double second() {
        Labour times = labour.orElse(Labour.USUAL);
        return times.hour().isPresent() ? times.hour().getAsLong() / HOUR : METRES * cheapest() / MINUTE;
    }

    /**
     * What the work of the saw costs: at the catalog's times and hour. Where it has no times the usual ones are taken, and where
     * it has no cost of an hour, a minute counts as much as a quarter of a metre of the cheapest plate named (own assumption).
     */
    SawCost sawCost() {
        Labour times = labour.orElse(Labour.USUAL);
        double second = second();
        return new SawCost(times.cut() * second, times.stopSetting() * second);
    }

    private double cheapest() {
        return request.products().stream()
                .flatMap(p -> p.stock().stream().map(s -> s.cost() / s.length() * 1000 / p.grooves()))
                .mapToDouble(Double::doubleValue)
                .min()
                .orElse(0);
    }
}
