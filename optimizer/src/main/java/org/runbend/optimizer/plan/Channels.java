package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.catalog.product.Routing;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.channel.ChannelMaker;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.ChannelProblem;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.PlanCheck.Verdict;

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
        double width = width(job);
        OptionalDouble cutter = routing(job).cutterFor(width);
        if (cutter.isEmpty()) {
            return Optional.empty();
        }
        double bend =
                Math.max(width, job.pipe().product().outer() + routing(job).bendPlay());
        double depth = job.pipe().product().outer() + plate(job);
        ChannelSize size = new ChannelSize(width, bend, depth, routing(job).pad(), cutter.getAsDouble());
        return Optional.of(
                new ChannelMaker().make(new ChannelProblem(size, job.floor().outline(), loops)));
    }

    /** Why there is no channel. */
    static Optional<String> remark(Job job) {
        return routing(job).cutterFor(width(job)).isPresent()
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "No channel is drawn: it is %.1f mm wide and the thinnest cutter of the catalog is %.1f mm.",
                        width(job),
                        routing(job).cutters().get(0)));
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
            Verdict verdict = channel.leastWeb() >= web ? Verdict.OK : Verdict.WARN;
            checks.add(new PlanCheck(
                    "least web between channels", channel.leastWeb(), web, "mm", verdict, "catalog, routing.leastWeb"));
        }
        Verdict inside = channel.inside() >= 0 ? Verdict.OK : Verdict.FAIL;
        checks.add(new PlanCheck(
                "least distance of channel and outline", channel.inside(), 0, "mm", inside, "nothing is cut outside"));
        return checks;
    }

    /** The limit printed is the one that was passed, or the nearer one. */
    private static PlanCheck range(String name, double value, double from, double to, String source) {
        boolean over = value > to + 1e-9;
        Verdict verdict = over || value < from - 1e-9 ? Verdict.WARN : Verdict.OK;
        double limit = over || verdict == Verdict.OK ? to : from;
        return new PlanCheck(name, value, limit, "mm", verdict, source);
    }

    private static double width(Job job) {
        return job.pipe().product().outer() + 2 * plate(job) + routing(job).play();
    }

    private static double plate(Job job) {
        return job.plates().products().stream()
                .mapToDouble(SpreaderPlate::thickness)
                .max()
                .orElse(0);
    }

    private static Routing routing(Job job) {
        return job.catalog().routing();
    }
}
