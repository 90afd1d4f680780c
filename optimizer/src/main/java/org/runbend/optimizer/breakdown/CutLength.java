package org.runbend.optimizer.breakdown;

import java.util.List;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;

/** Length to which the pipe of a loop is cut, whole mm. */
public final class CutLength {
    private CutLength() {}

    /**
     * Pipe on the floor, the straight ways from both holes to the port and both tails, with the allowance, rounded up; a
     * millionth of a mm is forgiven so that exact lengths are not pushed up by noise.
     */
    public static long of(Job job, Breakdown breakdown) {
        double bare = breakdown.floorLength() + flowEnd(job, breakdown) + returnEnd(job, breakdown);
        return (long) Math.ceil(bare * (1 + job.pipe().allowance()) - 1e-6);
    }

    /** The straight ways from both holes to the port, outside the floor, mm. */
    public static double outside(Job job, Breakdown breakdown) {
        return flowEnd(job, breakdown)
                - job.pipe().flowTail()
                + returnEnd(job, breakdown)
                - job.pipe().returnTail();
    }

    /** What goes through the flow hole: the way to the port, from which tails are measured, and the tail, mm. */
    public static double flowEnd(Job job, Breakdown breakdown) {
        Point hole = breakdown.elements().get(0).from();
        return job.floor().port().at().distance(hole) + job.pipe().flowTail();
    }

    /** What goes through the return hole, likewise, mm. */
    public static double returnEnd(Job job, Breakdown breakdown) {
        List<Element> elements = breakdown.elements();
        Point hole = elements.get(elements.size() - 1).to();
        return job.floor().port().at().distance(hole) + job.pipe().returnTail();
    }

    /** The longest cut that can be had: the pipe's limit, or the longest coil that is sold or opened, mm. */
    public static double longest(Job job) {
        double coil = Math.max(
                job.pipe().product().longestCoil(),
                job.shelf().of(job.pipe().product().sku()).stream()
                        .mapToDouble(r -> r.length())
                        .max()
                        .orElse(0));
        return Math.min(coil, job.pipe().loopLimit().orElse(coil));
    }
}
