package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Filleting;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.coils.CoilNesting;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.coils.CoilProblem;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plates.PlatePacking;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.plates.PlateProblem;

/**
 * The main job: floor, loop, breakdown, plates, coils, box, in this order, then verified.
 *
 * <p>Same job, same plan: no step reads a clock or an unseeded number.
 */
public final class KitPlanner {
    private final Progress progress;

    /** A planner that tells the listener what it is at. */
    public KitPlanner(Progress progress) {
        this.progress = progress;
    }

    /**
     * Plans a job.
     *
     * @throws Unbuildable if the job cannot be built as asked
     * @throws IllegalStateException if a verifier finds a fault in our own plan
     */
    public KitPlan plan(Job job) {
        return job.hasOwnLoop() ? own(job) : laid(job);
    }

    /** The designer's loop as it is: no lattice, no bounds, nothing left out. */
    private KitPlan own(Job job) {
        progress.step("checking the loop drawn");
        Breakdown breakdown = new OwnLoop(job).checked();
        long cut = cutLength(job, breakdown);
        checkLimit(job, cut);
        int turns = (int)
                Math.round(bends(breakdown).mapToDouble(b -> Math.abs(b.turn())).sum() / 90);
        double radius = bends(breakdown).mapToDouble(Element.Bend::radius).min().orElse(bendRadius(job));
        KitPlan.LoopPlan loop = new KitPlan.LoopPlan(
                "A",
                breakdown,
                breakdown.floorLength(),
                cut,
                turns,
                0,
                OptionalInt.empty(),
                turns,
                OptionalInt.empty(),
                List.of());
        return assemble(job, radius, KitPlan.LatticePlace.none(job.layout().spacing()), loop, List.of());
    }

    private static Stream<Element.Bend> bends(Breakdown breakdown) {
        return breakdown.elements().stream()
                .filter(Element.Bend.class::isInstance)
                .map(Element.Bend.class::cast);
    }

    private KitPlan laid(Job job) {
        double radius = bendRadius(job);
        LoopLaying.Laid laid = new LoopLaying().lay(job, radius, progress);
        Breakdown breakdown = new Filleting().breakDown(laid.path(), radius);
        long cut = cutLength(job, breakdown);
        checkLimit(job, cut);
        KitPlan.LoopPlan loop = new KitPlan.LoopPlan(
                "A",
                breakdown,
                breakdown.floorLength(),
                cut,
                laid.loop().turns(),
                laid.loop().leftOut(),
                laid.loop().turnBound(),
                laid.loop().objective(),
                laid.loop().objectiveBound(),
                laid.bare());
        KitPlan.LatticePlace place = new KitPlan.LatticePlace(
                laid.lattice().origin(),
                laid.lattice().angle(),
                laid.lattice().spacing(),
                laid.lattice().reachable());
        progress.step("asking why floor stays bare");
        List<BareFloor> bare = new LoopLaying().bareFloor(job, radius, laid);
        return assemble(job, radius, place, loop, bare);
    }

    private KitPlan assemble(
            Job job, double radius, KitPlan.LatticePlace place, KitPlan.LoopPlan loop, List<BareFloor> bare) {
        progress.step("nesting the pipe");
        CoilPlan coils = new CoilNesting()
                .nest(new CoilProblem(
                        job.pipe().product(),
                        job.shelf(),
                        List.of(new CoilPlan.LoopCut(loop.name(), loop.cutLength()))));
        progress.step("packing the plates");
        PlatePlan plates = new PlatePacking()
                .pack(new PlateProblem(job.floor(), job.plates(), job.shelf(), List.of(loop.breakdown())));
        return assemble(job, radius, place, loop, plates, coils, bare);
    }

    /** Radius at which bends are laid, mm: half the spacing, or the pipe's least radius as fitted where that is larger. */
    static double bendRadius(Job job) {
        return Math.max(job.layout().spacing() / 2, job.pipe().product().fittedRadius());
    }

    private KitPlan assemble(
            Job job,
            double radius,
            KitPlan.LatticePlace place,
            KitPlan.LoopPlan loop,
            PlatePlan plates,
            CoilPlan coils,
            List<BareFloor> bare) {
        List<KitPlan.BoxItem> items = new BoxPacking(
                        job, job.hasOwnLoop() ? radius : job.layout().spacing() / 2)
                .pack(List.of(loop.breakdown()), plates, coils);
        Optional<ChannelPlan> channel = Channels.of(job, List.of(loop.breakdown()));
        double served = loop.floorLength() * job.layout().spacing() / FloorShapes.heatedArea(job.floor());
        KitPlan plan = new KitPlan(
                job,
                radius,
                place,
                List.of(loop),
                plates,
                coils,
                items,
                items.stream().mapToLong(KitPlan.BoxItem::sum).sum(),
                items.stream().mapToDouble(i -> i.weight() * i.quantity()).sum(),
                channel,
                PlanChecks.of(job, radius, place.reachable(), loop, served, plates, channel),
                remarks(job, radius, loop.breakdown(), plates, bare),
                bare);
        progress.step("verifying");
        List<String> violations = KitVerifier.verify(plan);
        if (!violations.isEmpty()) {
            throw new IllegalStateException("the plan breaks a rule: " + violations);
        }
        return plan;
    }

    private static List<String> remarks(
            Job job, double radius, Breakdown loop, PlatePlan plates, List<BareFloor> bare) {
        List<String> remarks = new ArrayList<>(job.warnings());
        Channels.remark(job).ifPresent(remarks::add);
        remarks.addAll(plates.remarks());
        if (job.hasOwnLoop()) {
            remarks.add("The loop is laid as it was drawn: it was checked, not improved.");
        }
        KeptPipe.remark(job, radius, List.of(loop)).ifPresent(remarks::add);
        bare.forEach(b -> remarks.add(b.sentence()));
        return remarks;
    }

    /** Whole mm, rounded up; a millionth of a mm is forgiven so that exact lengths are not pushed up by noise. */
    private static long cutLength(Job job, Breakdown breakdown) {
        double bare =
                breakdown.floorLength() + job.pipe().flowTail() + job.pipe().returnTail();
        return (long) Math.ceil(bare * (1 + job.pipe().allowance()) - 1e-6);
    }

    private static void checkLimit(Job job, long cut) {
        if (cut > job.pipe().loopLimit().orElse(Double.POSITIVE_INFINITY)) {
            throw new Unbuildable(
                    "pipe.loopLimit",
                    String.format(
                            Locale.ROOT,
                            "the loop needs %d mm of pipe, the limit is %.0f mm; laying a shorter loop is not available yet",
                            cut,
                            job.pipe().loopLimit().orElseThrow()));
        }
    }
}
