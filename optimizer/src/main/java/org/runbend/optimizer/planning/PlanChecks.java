package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitHeat;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.PlanCheck.Verdict;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.plates.PlateStretch;
import org.runbend.optimizer.plates.StretchFinder;

/** What is checked on every plan and printed with it. */
final class PlanChecks {
    /** How much shorter than the longest the shortest loop may be, %. */
    private static final double LIKE_LENGTH = 10;

    /** Lengths of plates are whole hundredths of mm: a share this near to the one asked is meant to be it, %. */
    private static final double ROUNDING = 0.01;

    private PlanChecks() {}

    static List<PlanCheck> of(
            Job job,
            double tightest,
            int reachable,
            List<KitPlan.LoopPlan> loops,
            double served,
            PlatePlan plates,
            Optional<ChannelPlan> channel,
            Optional<KitHeat> heat) {
        long cut = loops.stream().mapToLong(KitPlan.LoopPlan::cutLength).max().orElse(0);
        List<PlanCheck> checks = new ArrayList<>();
        Pipe pipe = job.pipe().product();
        checks.add(PlanCheck.atLeast(
                "least bend radius", tightest, pipe.fittedRadius(), "mm", Verdict.FAIL, "catalog, as fitted"));
        boolean aid = tightest < pipe.handRadius();
        checks.add(PlanCheck.atLeast(
                "bend radius by hand",
                tightest,
                pipe.handRadius(),
                "mm",
                Verdict.WARN,
                aid ? "catalog, by hand: use the bending aid" : "catalog, by hand"));
        double limit = CutLength.longest(job) / 1000;
        checks.add(PlanCheck.atMost(
                "pipe in one piece",
                cut / 1000.0,
                limit,
                "m",
                Verdict.FAIL,
                job.pipe().loopLimit().isPresent() ? "job, loopLimit, and longest coil" : "longest coil"));
        checks.add(served(served, job.hasOwnLoop()));
        if (!job.hasOwnLoop()) {
            checks.add(reached(
                    reachable,
                    loops.stream().mapToInt(KitPlan.LoopPlan::leftOut).sum()));
        }
        balance(loops).ifPresent(checks::add);
        double plated = platedShare(job, loops, plates);
        double asked = 100 * job.plates().coverage();
        checks.add(PlanCheck.atLeast(
                PlanCheck.PLATED,
                plated,
                asked,
                "%",
                Verdict.WARN,
                "job, plates.coverage; gaps and the last step of a stretch count as covered there"));
        checks.addAll(tape(job.measured()));
        List<Breakdown> pipes = loops.stream().map(KitPlan.LoopPlan::breakdown).toList();
        checks.addAll(AirChecks.of(job, pipes, plates));
        checks.add(straightAtHoles(pipes, job.hasOwnLoop()));
        checks.addAll(CommonSense.of(job, loops, heat.isPresent()));
        heat.ifPresent(h -> checks.addAll(HeatChecks.of(h.solution())));
        channel.ifPresent(c -> checks.addAll(Channels.checks(job, c)));
        return checks;
    }

    /** No bend lies on a slot; of a loop that somebody drew a person is told. */
    private static PlanCheck straightAtHoles(List<Breakdown> pipes, boolean drawn) {
        double straight = Double.POSITIVE_INFINITY;
        double slot = 0;
        for (Breakdown pipe : pipes) {
            List<Element> whole = pipe.pipe();
            for (Element end : List.of(whole.get(0), whole.get(whole.size() - 1))) {
                straight = Math.min(straight, end instanceof Element.Run ? end.length() : 0);
            }
            slot = pipe.slots().stream().mapToDouble(Slot::length).max().orElse(0);
        }
        Verdict bad = drawn ? Verdict.WARN : Verdict.FAIL;
        return new PlanCheck(
                "straight pipe at a hole, at least",
                straight,
                Finding.Side.AT_LEAST,
                slot,
                "mm",
                straight >= slot - 1e-6 ? Verdict.OK : bad,
                "slot in which the pipe turns");
    }

    /** As the job asks for it, %: gaps between the pieces of a stretch count as covered, its last step is not asked for. */
    private static double platedShare(Job job, List<KitPlan.LoopPlan> loops, PlatePlan plates) {
        Job.PlateRequest request = job.plates();
        double width = request.products().stream()
                .mapToDouble(SpreaderPlate::width)
                .min()
                .orElse(0);
        double step = request.products().stream()
                .mapToDouble(SpreaderPlate::step)
                .max()
                .orElse(0);
        List<Breakdown> pipes = loops.stream().map(KitPlan.LoopPlan::breakdown).toList();
        List<PlateStretch> stretches = new StretchFinder(
                        job.floor(),
                        request,
                        width,
                        pipes.stream().flatMap(p -> p.slots().stream()).toList())
                .find(pipes);
        double asked = stretches.stream().mapToDouble(s -> s.length() - step).sum();
        double covered = 0;
        for (PlateStretch s : stretches) {
            List<Double> on = plates.pieces().stream()
                    .filter(p -> p.places().stream().anyMatch(at -> isOn(s, at, p.length())))
                    .map(PlatePiece::length)
                    .toList();
            covered += on.stream().mapToDouble(l -> l).sum() + request.gap() * Math.max(0, on.size() - 1);
        }
        double share = asked <= 0 ? (stretches.isEmpty() ? 0 : 100) : Math.min(100, 100 * covered / asked);
        double target = 100 * request.coverage();
        return Math.abs(share - target) < ROUNDING ? target : share;
    }

    private static boolean isOn(PlateStretch stretch, PlatePiece.Place at, double length) {
        double middle = at.from() + length / 2;
        return at.loop() == stretch.loop()
                && at.element() == stretch.element()
                && stretch.from() <= middle
                && middle <= stretch.to();
    }

    /** How well the measured lengths of a floor agree; no line for a floor that was not measured. */
    private static List<PlanCheck> tape(List<Job.MeasuredLength> measured) {
        if (measured.isEmpty()) {
            return List.of();
        }
        double worst =
                measured.stream().mapToDouble(m -> Math.abs(m.residual())).max().orElse(0);
        boolean wrong = worst > Job.MeasuredLength.WRONG;
        Verdict verdict = wrong ? Verdict.FAIL : worst > Job.MeasuredLength.DOUBTFUL ? Verdict.WARN : Verdict.OK;
        return List.of(new PlanCheck(
                "greatest residual of the measured lengths",
                worst,
                Finding.Side.AT_MOST,
                wrong ? Job.MeasuredLength.WRONG : Job.MeasuredLength.DOUBTFUL,
                "mm",
                verdict,
                "own limit"));
    }

    /** Loops of one valve block should be of like length, else the short ones take the flow; common practice. */
    private static Optional<PlanCheck> balance(List<KitPlan.LoopPlan> loops) {
        double longest =
                loops.stream().mapToDouble(KitPlan.LoopPlan::floorLength).max().orElse(0);
        double shortest =
                loops.stream().mapToDouble(KitPlan.LoopPlan::floorLength).min().orElse(0);
        double share = longest == 0 ? 0 : 100 * (longest - shortest) / longest;
        return loops.size() < 2
                ? Optional.empty()
                : Optional.of(PlanCheck.atMost(
                        "lengths of loops within, at most", share, LIKE_LENGTH, "%", Verdict.WARN, "common practice"));
    }

    private static PlanCheck reached(int reachable, int leftOut) {
        double share = reachable == 0 ? 0 : 100.0 * (reachable - leftOut) / reachable;
        return PlanCheck.atLeast("reachable places served", share, 95, "%", Verdict.WARN, "common practice");
    }

    /**
     * Below 80 % a person should look; below 60 % the floor is not heated by this loop, unless a designer wants it so.
     * Both are common practice.
     */
    private static PlanCheck served(double share, boolean wanted) {
        int limit = share < 0.6 && !wanted ? 60 : 80;
        return PlanCheck.atLeast(
                "share of heated floor served", 100 * share, limit, "%", Verdict.WARN, "common practice");
    }
}
