package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.catalog.product.Routing;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.channel.ChannelMaker;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.ChannelProblem;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.PlanCheck.Verdict;
import org.runbend.optimizer.plan.Remark;

/**
 * The channel of a job: width = pipe + twice the plate + play, at bends pipe + the play there, depth = pipe + plate.
 *
 * <p>Common practice for 16 mm pipe is 17-18 mm of width, 20 mm at bends and 14-16 mm of depth; other pipes are held to the
 * same allowances.
 */
final class Channels {
    private static final String PRACTICE = "common practice, 17-18 mm for 16 mm pipe";
    private static final String BEND_PRACTICE = "common practice, 20 mm for 16 mm pipe";
    private static final String DEPTH_PRACTICE = "common practice, 14-16 mm for 16 mm pipe, and the plate under it";

    private Channels() {}

    /** The channel of the loops; empty if no cutter of the catalog goes into it. */
    static Optional<ChannelPlan> of(Job job, List<Breakdown> loops) {
        Groove groove = job.groove();
        OptionalDouble cutter = routing(job).cutterFor(groove.width());
        if (cutter.isEmpty()) {
            return Optional.empty();
        }
        ChannelSize size = new ChannelSize(
                groove.width(),
                groove.bendWidth(),
                groove.depth(),
                job.floor().port().turn() == Job.Turn.LEVEL ? 0 : groove.pad(),
                cutter.getAsDouble());
        return Optional.of(new ChannelMaker().make(new ChannelProblem(size, loops)));
    }

    /** Why there is no channel. */
    static Optional<Remark> remark(Job job) {
        double width = job.groove().width();
        return routing(job).cutterFor(width).isPresent()
                ? Optional.empty()
                : Optional.of(new Remark.NoChannel(width, routing(job).cutters().get(0)));
    }

    static List<PlanCheck> checks(Job job, ChannelPlan channel) {
        double outer = job.pipe().product().outer();
        ChannelSize size = channel.size();
        List<PlanCheck> checks = new ArrayList<>();
        checks.add(range("width of the channel over the pipe", size.width() - outer, 1, 2, PRACTICE));
        checks.add(range("width of the channel over the pipe at bends", size.bendWidth() - outer, 3, 5, BEND_PRACTICE));
        checks.add(range("depth of the channel over the pipe", size.depth() - outer, -2, 0.5, DEPTH_PRACTICE));
        double web = routing(job).leastWeb();
        if (Double.isFinite(channel.leastWeb())) {
            checks.add(PlanCheck.atLeast(
                    "least web between channels",
                    channel.leastWeb(),
                    web,
                    "mm",
                    Verdict.WARN,
                    "catalog, routing.leastWeb"));
        }
        return checks;
    }

    /** The limit printed is the one that was passed, or the nearer one. */
    private static PlanCheck range(String name, double value, double from, double to, String source) {
        return value < from - 1e-9
                ? PlanCheck.atLeast(name, value, from, "mm", Verdict.WARN, source)
                : PlanCheck.atMost(name, value, to, "mm", Verdict.WARN, source);
    }

    private static Routing routing(Job job) {
        return job.catalog().routing();
    }
}
