package org.runbend.optimizer.plan;

import java.util.Optional;
import org.runbend.optimizer.job.Job;

/**
 * How pipe turns from its groove down into a hole, mm; distances are from the hole's axis along the first run.
 *
 * @param radius of the turn, to the middle of the pipe
 * @param begin where the pipe begins to dip
 * @param drop how far its middle has come down at the axis
 * @param through up to where the slot goes right through the board, as the underside of the pipe leaves the board there
 */
public record HoleTurn(double radius, double begin, double drop, double through) {
    /**
     * The turn of a job's pipe, if it goes down and the job says the build-up. The pipe lies on a circle of the radius that
     * touches its straight where it begins to dip (chord geometry), its underside on one that is half its diameter smaller.
     */
    public static Optional<HoleTurn> of(Job job) {
        return job.floor().port().turn() == Job.Turn.DOWN
                ? job.build().map(b -> of(job, boardThickness(job, b)))
                : Optional.empty();
    }

    /** Whether the pipe turns up through a cover that the job tells. */
    public static boolean goesUp(Job job) {
        return job.floor().port().turn() == Job.Turn.UP
                && job.build().map(Job.Build::coverThickness).orElse(0.0) > 0;
    }

    /**
     * How far the pipe is off plumb where its middle comes through the face at the hole, degrees: it has turned from level
     * over the slot's length alone (chord geometry); 0 where it turns no way but straight on.
     */
    public static double lean(Job job) {
        double share = beginOf(job) / job.turnRadius();
        return job.floor().port().turn() == Job.Turn.LEVEL
                ? 0
                : Math.toDegrees(Math.acos(Math.max(0, Math.min(1, share))));
    }

    /**
     * How far beyond the axis the cover is cut for a pipe that turns up, whole mm: where the pipe's far edge leaves the cover's
     * top, and never less than half the slot's width.
     */
    public static double beyond(Job job) {
        double cover = job.build().map(Job.Build::coverThickness).orElse(0.0);
        double outer = job.pipe().product().outer();
        double radius = job.turnRadius() + outer / 2;
        double rise = Math.min(radius, cover + outer);
        double edge = Math.sqrt(radius * radius - (radius - rise) * (radius - rise));
        return Math.ceil(Math.max(job.groove().bendWidth() / 2, edge - beginOf(job)) - 1e-6);
    }

    /** Where the pipe leaves its straight, up or down, from the hole's axis, mm: its slot is half a pipe longer. */
    public static double beginOf(Job job) {
        return job.slotLength() - job.pipe().product().outer() / 2;
    }

    /** {@link #through} as it is told and routed, whole mm: room that is told must be made. */
    public double throughTold() {
        return Math.ceil(through - 1e-6);
    }

    /** What the groove is cut into, mm: the board, or, where the job names none, what is as thick as the groove and the insulation. */
    public static double boardThickness(Job job, Job.Build build) {
        return build.board().map(Job.RoutedBoard::thickness).orElse(job.groove().depth() + job.insulationLaid(build));
    }

    private static HoleTurn of(Job job, double board) {
        double outer = job.pipe().product().outer();
        double radius = job.turnRadius();
        double begin = beginOf(job);
        double drop = radius - Math.sqrt(Math.max(0, radius * radius - begin * begin));
        double under = radius - outer / 2;
        double fall = Math.min(under, board - outer);
        double through = begin - Math.sqrt(under * under - (under - fall) * (under - fall));
        return new HoleTurn(radius, begin, drop, Math.max(0, through));
    }
}
