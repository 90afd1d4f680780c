package org.runbend.optimizer.guide;

import java.util.List;
import org.runbend.catalog.product.GuideBush;
import org.runbend.catalog.product.Routing;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Job;

/**
 * What a guide is wanted for. Sizes in mm.
 *
 * @param spacing centre to centre of neighbouring runs
 * @param bendRadius radius of bends, to the centreline
 * @param groove the channel that is to be cut
 * @param edge centreline to the edge of the floor
 * @param cutters diameters of the cutters at hand
 * @param bushes the guide bushes at hand
 * @param thickness of the plate that the guide is made of
 */
public record GuideProblem(
        double spacing,
        double bendRadius,
        Groove groove,
        double edge,
        List<Double> cutters,
        List<GuideBush> bushes,
        double thickness) {
    /** Copies the lists. */
    public GuideProblem {
        cutters = List.copyOf(cutters);
        bushes = List.copyOf(bushes);
    }

    /** The guide for a job: bends as a plan lays them, cutters and bushes of its catalog. */
    public static GuideProblem of(Job job) {
        Routing routing = job.catalog().routing();
        double spacing = job.layout().spacing();
        return new GuideProblem(
                spacing,
                Math.max(spacing / 2, job.pipe().product().fittedRadius()),
                job.groove(),
                job.layout().edge(),
                routing.cutters(),
                routing.bushes(),
                routing.guideThickness());
    }
}
