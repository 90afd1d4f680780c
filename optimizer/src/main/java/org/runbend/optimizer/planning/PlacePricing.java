package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Labour;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.heat.HeatRequest;
import org.runbend.optimizer.heat.PipeStrip;
import org.runbend.optimizer.heat.PlaceProblem;
import org.runbend.optimizer.heat.PlaceReckoning;
import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.output.Side;
import org.runbend.optimizer.heat.quantity.OddInput;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.job.Unbuildable;
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
        return job.with(job.floor(), job.layout().withPrice(price(job, value(job))));
    }

    /** What a place is worth on a job's floor. */
    public static PlaceValue value(Job job) {
        double coverage = job.plates().byHeat() ? USUAL_COVERAGE : job.plates().coverage();
        Labour labour = job.catalog().labour().orElse(Labour.USUAL);
        Optional<PipeStrip> plated = job.plates().products().stream()
                .findFirst()
                .map(p -> strip(p, job.layout().spacing()));
        Optional<Job.Heating> heating = job.heating();
        HeatRequest wish = heating.map(Job.Heating::request).orElse(HeatRequest.NONE);
        try {
            return new PlaceValue(
                    new PlaceReckoning()
                            .solve(new PlaceProblem(
                                    HeatPart.build(job, wish),
                                    plated,
                                    job.layout().spacing(),
                                    LoopPipes.bendRadius(job),
                                    coverage,
                                    job.plates().bendClearance(),
                                    heating.map(Job.Heating::flow).orElse(USUAL_TEMPERATURES[0]),
                                    heating.map(Job.Heating::room).orElse(USUAL_TEMPERATURES[1]),
                                    heating.map(Job.Heating::outside).orElse(USUAL_TEMPERATURES[2]))),
                    plated.isPresent() ? coverage : 0,
                    labour.bend(),
                    labour.watt());
        } catch (OddInput e) {
            throw new Unbuildable("heating", e.getMessage());
        }
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

    private static PipeStrip strip(SpreaderPlate plate, double spacing) {
        List<Side> sides = HeatPart.sides(plate, spacing);
        return new PipeStrip(
                FloorZone.Kind.PLATED, spacing, Optional.of(HeatPart.sheet(plate)), sides.get(0), sides.get(1));
    }
}
