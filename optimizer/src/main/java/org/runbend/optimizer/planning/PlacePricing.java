package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.product.Labour;
import org.runbend.optimizer.heat.BareFloor;
import org.runbend.optimizer.heat.FloorBuild;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatRequest;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.LoopHeat;
import org.runbend.optimizer.heat.PipeStrip;
import org.runbend.optimizer.heat.PlaceHeat;
import org.runbend.optimizer.heat.PlaceProblem;
import org.runbend.optimizer.heat.PlaceReckoning;
import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.quantity.OddInput;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.laying.LoopPipes;
import org.runbend.optimizer.plan.PlaceValue;

/**
 * What a place left out is worth where the job leaves that to us ({@code layout.leftOutPrice: auto}): the heat it loses, over the heat
 * that a quarter bend loses and its labour as watts. Known before anything is laid.
 */
public final class PlacePricing {
    /** Share of the straight pipe in plates where the job leaves that to the heat wanted. */
    private static final double USUAL_COVERAGE = 0.85;

    /** A job that says nothing of temperatures: flow, room and outside, degrees C (our choice; of the result hardly anything depends on it). */
    private static final double[] USUAL_TEMPERATURES = {40, 20, -10};

    /** Pieces that pass more places are not told from long ones. */
    private static final int MOST_COUNTED = 7;

    private PlacePricing() {}

    /** The job with its price settled; the job itself where it names one or its loop is drawn. */
    public static Job settled(Job job) {
        if (!job.written().autoPrice()
                || job.hasOwnLoop()
                || job.layout().leftOutPrice().turn() != 1) {
            return job;
        }
        return job.with(job.floor(), job.layout().withPrice(worked(job)));
    }

    /** The price that heat and labour come to on a job's floor, whatever the job says of it. */
    public static PlacePrice worked(Job job) {
        return price(job, value(job));
    }

    /** What a place is worth on a job's floor; where its heat cannot be reckoned, on one with the usual build-up and temperatures. */
    public static PlaceValue value(Job job) {
        double coverage = job.plates().byHeat() ? USUAL_COVERAGE : job.plates().coverage();
        Labour labour = job.catalog().labour().orElse(Labour.USUAL);
        return new PlaceValue(
                heat(job, coverage), job.plates().products().isEmpty() ? 0 : coverage, labour.bend(), labour.watt());
    }

    private static PlaceHeat heat(Job job, double coverage) {
        HeatRequest request = job.heating().map(Job.Heating::request).orElse(HeatRequest.NONE);
        double[] celsius = job.heating()
                .map(h -> new double[] {h.flow(), h.room(), h.outside()})
                .orElse(USUAL_TEMPERATURES);
        try {
            return heat(job, HeatPart.build(job, request), coverage, celsius);
        } catch (OddInput e) {
            return heat(job, HeatPart.usualBuild(job), coverage, USUAL_TEMPERATURES);
        }
    }

    private static PlaceHeat heat(Job job, FloorBuild build, double coverage, double[] celsius) {
        return new PlaceReckoning()
                .solve(new PlaceProblem(
                        build,
                        job.plates().products().stream()
                                .findFirst()
                                .map(p -> HeatPart.strip(
                                        p, job.layout().spacing(), job.layout().spacing())),
                        job.layout().spacing(),
                        LoopPipes.bendRadius(job),
                        coverage,
                        job.plates().bendClearance(),
                        celsius[0],
                        celsius[1],
                        celsius[2]));
    }

    /** What the floor that a plan heats would give with pipe in plates from wall to wall, at the mean temperature of its loops, W. */
    static double wallToWall(Job job, HeatProblem problem, HeatSolution solution) {
        double area = problem.loops().stream()
                        .flatMap(l -> l.strips().stream())
                        .mapToDouble(PipeStrip::area)
                        .sum()
                + problem.bare().stream()
                        .filter(b -> b.kind() == FloorZone.Kind.BARE)
                        .mapToDouble(BareFloor::area)
                        .sum();
        double mean =
                solution.loops().stream().mapToDouble(LoopHeat::mean).average().orElseThrow();
        Job.Heating heating = job.heating().orElseThrow();
        PlaceHeat place = heat(job, problem.build(), 1, new double[] {mean, heating.room(), heating.outside()});
        double square = job.layout().spacing() * job.layout().spacing() * 1e-6;
        return area * place.straight() / square;
    }

    private static PlacePrice price(Job job, PlaceValue value) {
        return new PlacePrice(
                PlacePrice.PARTS,
                parts(value.leftOut()),
                parts(value.pieceEnd()),
                extras(job).stream().map(e -> parts(e * value.withoutPlate())).toList());
    }

    private static int parts(double turns) {
        return (int) Math.round(turns * PlacePrice.PARTS);
    }

    /**
     * For straight pieces that pass one place, two, ... and in which no plate as short as the job's least piece fits: how much more of
     * them stays without a plate than the clearances beside both bends, in places.
     */
    private static List<Double> extras(Job job) {
        double spacing = job.layout().spacing();
        double radius = LoopPipes.bendRadius(job);
        List<Double> extras = new ArrayList<>();
        for (int places = 1; places <= MOST_COUNTED; places++) {
            double free = (places + 1) * spacing - 2 * radius - 2 * job.plates().bendClearance();
            if (free >= job.plates().minPiece()) {
                break;
            }
            extras.add(Math.max(0, free) / spacing);
        }
        while (!extras.isEmpty() && extras.get(extras.size() - 1) == 0) {
            extras.remove(extras.size() - 1);
        }
        return extras;
    }
}
