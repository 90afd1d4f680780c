package org.runbend.optimizer.laying;

import java.util.DoubleSummaryStatistics;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Support;
import org.runbend.optimizer.lattice.Axis;

/**
 * How the lattice is turned and which way runs are wanted on it. What the job says goes first; then parts that are kept, then
 * lines to run along, then supports, as these are met at right angles or not at all; else the floor's longer side, on the lattice that {@link FreeDirection} settles.
 *
 * @param angle of the lattice, degrees from the x axis, 0 to under 90
 * @param axis of the lattice along which runs are wanted
 */
public record LatticeDirection(double angle, Axis axis) {
    /** The direction for a job. */
    public static LatticeDirection of(Job job) {
        OptionalDouble met = met(job);
        if (job.layout().axis() != Job.RunAxis.FREE) {
            return new LatticeDirection(
                    job.layout().along().orElse(0), job.layout().axis() == Job.RunAxis.X ? Axis.X : Axis.Y);
        }
        double angle = met.orElse(0) % 90;
        if (angle > 0) {
            return new LatticeDirection(angle, met.orElse(0) < 90 ? Axis.X : Axis.Y);
        }
        return at(job, 0);
    }

    /** Whether neither the job nor anything on site settles the direction. */
    static boolean isOpen(Job job) {
        return job.layout().axis() == Job.RunAxis.FREE && met(job).isEmpty();
    }

    /** The job with its direction settled as its lattice came to lie. */
    public static Job settled(Job job, double angle) {
        return isOpen(job) ? turned(job, angle) : job;
    }

    /** The job with its lattice turned by so many degrees and runs along the floor's longer side. */
    static Job turned(Job job, double angle) {
        Job.RunAxis axis = at(job, angle).axis() == Axis.X ? Job.RunAxis.X : Job.RunAxis.Y;
        return job.with(job.floor(), job.layout().with(angle, axis));
    }

    private static LatticeDirection at(Job job, double angle) {
        return new LatticeDirection(angle, width(job, angle) >= width(job, angle + 90) ? Axis.X : Axis.Y);
    }

    private static OptionalDouble met(Job job) {
        DoubleStream kept = job.layout().pipeRules().stream()
                .filter(PipeRule.Kept.class::isInstance)
                .mapToDouble(v -> ((PipeRule.Kept) v).direction());
        DoubleStream lines = job.layout().pipeRules().stream()
                .filter(PipeRule.MustRun.class::isInstance)
                .mapToDouble(v -> ((PipeRule.MustRun) v).direction());
        DoubleStream supports = job.floor().supports().stream()
                .filter(s -> s.cross() == Support.Crossing.SQUARE)
                .mapToDouble(Support::direction);
        return DoubleStream.concat(kept, DoubleStream.concat(lines, supports)).findFirst();
    }

    /** How far the floor reaches in a direction, mm. */
    private static double width(Job job, double degrees) {
        double x = Math.cos(Math.toRadians(degrees));
        double y = Math.sin(Math.toRadians(degrees));
        DoubleSummaryStatistics along = job.floor().outline().stream()
                .mapToDouble(p -> p.x() * x + p.y() * y)
                .summaryStatistics();
        return along.getMax() - along.getMin();
    }
}
