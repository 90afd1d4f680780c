package org.runbend.optimizer.plan;

import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;
import org.runbend.optimizer.job.Veto;
import org.runbend.optimizer.loop.Axis;

/**
 * How the lattice is turned and which way runs are wanted on it. What the job says goes first; then parts that are kept, then
 * lines to run along, then supports, as these are met at right angles or not at all; else the floor's longer side.
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
        return new LatticeDirection(0, width(job, true) >= width(job, false) ? Axis.X : Axis.Y);
    }

    private static OptionalDouble met(Job job) {
        DoubleStream kept = job.layout().vetoes().stream()
                .filter(Veto.Kept.class::isInstance)
                .mapToDouble(v -> ((Veto.Kept) v).direction());
        DoubleStream lines = job.layout().vetoes().stream()
                .filter(Veto.MustRun.class::isInstance)
                .mapToDouble(v -> ((Veto.MustRun) v).direction());
        DoubleStream supports = job.floor().supports().stream()
                .filter(s -> s.cross() == Support.Crossing.SQUARE)
                .mapToDouble(Support::direction);
        return DoubleStream.concat(kept, DoubleStream.concat(lines, supports)).findFirst();
    }

    private static double width(Job job, boolean x) {
        double[] sorted = job.floor().outline().stream()
                .mapToDouble(x ? Point::x : Point::y)
                .sorted()
                .toArray();
        return sorted[sorted.length - 1] - sorted[0];
    }
}
