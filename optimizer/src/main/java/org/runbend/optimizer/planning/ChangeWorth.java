package org.runbend.optimizer.planning;

import java.util.List;
import java.util.stream.IntStream;
import org.runbend.catalog.product.Coil;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LoopChange;
import org.runbend.optimizer.plates.KeptPiece;

/**
 * What loops are worth where a kit was cut before, minor units: turns and places left out as the work of as many bends,
 * groove that is filled and routed anew as work, pipe that has to be bought again, and plates that do not stay. A piece of
 * plate that does not stay is stock for others, so half of its cost is held to be lost.
 */
final class ChangeWorth {
    /** Work of a bend, s: chosen, not measured. */
    private static final double BEND = 60;

    /** Work of routing a metre of groove, s: chosen, not measured. */
    private static final double ROUT = 120;

    /** Work of filling a metre of groove and smoothing it, s: chosen, not measured. */
    private static final double FILL = 300;

    private static final double LOST = 0.5;

    private final Job job;
    private final EarlierKit was;
    private final List<Remnant> stock;
    private final double second;

    private ChangeWorth(Job job, EarlierKit was, List<Remnant> stock, double second) {
        this.job = job;
        this.was = was;
        this.stock = stock;
        this.second = second;
    }

    /** For a job and the kit before. */
    static ChangeWorth of(Job job, EarlierKit was) {
        double second = PlateComparing.problem(job, List.of()).second();
        return new ChangeWorth(job, was, was.remnants(job.shelf()), second);
    }

    /** What loops come to; less is better. */
    double of(List<KitPlan.LoopPlan> loops) {
        LoopChange change = LoopChange.of(was.elements(), loops);
        PlacePrice price = job.layout().leftOutPrice();
        double bends =
                loops.stream().mapToDouble(l -> price.inTurns(l.objective())).sum();
        double seconds = BEND * bends + (FILL * change.goes() + ROUT * change.added()) / 1000;
        return second * seconds + pipe(loops) + plates(loops);
    }

    /** Cost of pipe for loops that the pipes before do not reach round, the longest dealt first. */
    private double pipe(List<KitPlan.LoopPlan> loops) {
        double[] had = was.loops().stream()
                .mapToDouble(EarlierKit.Loop::cutLength)
                .sorted()
                .toArray();
        double[] need =
                loops.stream().mapToDouble(KitPlan.LoopPlan::cutLength).sorted().toArray();
        double bought = 0;
        int last = had.length - 1;
        for (int i = need.length - 1; i >= 0; i--) {
            if (last >= 0 && had[last] >= need[i]) {
                last--;
            } else {
                bought += need[i];
            }
        }
        return bought
                * job.pipe().product().coils().stream()
                        .mapToDouble(ChangeWorth::byLength)
                        .min()
                        .orElse(0);
    }

    private static double byLength(Coil coil) {
        return (double) coil.cost() / coil.length();
    }

    private double plates(List<KitPlan.LoopPlan> loops) {
        List<Breakdown> pipes = loops.stream().map(KitPlan.LoopPlan::breakdown).toList();
        List<String> kept = KeptPlates.of(was, stock, pipes).stream()
                .map(KeptPiece::stock)
                .map(Remnant::id)
                .toList();
        return LOST
                * IntStream.range(0, was.pieces().size())
                        .mapToObj(stock::get)
                        .filter(r -> !kept.contains(r.id()))
                        .mapToDouble(r -> r.length()
                                * job.catalog()
                                        .findPlate(r.product())
                                        .map(ChangePlanner::byLength)
                                        .orElse(0.0))
                        .sum();
    }
}
