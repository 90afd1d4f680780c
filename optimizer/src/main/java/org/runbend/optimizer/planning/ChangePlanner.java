package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.laying.EarlierLaying;
import org.runbend.optimizer.laying.LaidLoops;
import org.runbend.optimizer.laying.LoopPipes;
import org.runbend.optimizer.plan.KitChange;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LaidFloor;
import org.runbend.optimizer.plan.LoopChange;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plates.KeptPiece;
import org.runbend.optimizer.work.Work;

/**
 * Plans a job whose floor changed after a kit was cut for it, so that little of that kit is lost for what it is worth.
 *
 * <p>Method: the loop before is held on its lattice but for a region round what changed, which grows
 * ({@link EarlierLaying}); each loop so found and the one that a plan begun afresh would lay are priced by
 * {@link ChangeWorth}: the loop's own objective, and what of groove, pipe and plates is thrown away for it. The least is
 * taken. What was cut is stock for it, and plates stay where they lie.
 */
public final class ChangePlanner {
    private final Work work;

    /** A planner under some work. */
    public ChangePlanner(Work work) {
        this.work = work;
    }

    /**
     * A plan and what becomes of the kit before.
     *
     * @param plan the plan
     * @param change what stays of the kit, what goes and what is cut again
     */
    public record Changed(KitPlan plan, KitChange change) {}

    /** A floor that may be chosen. */
    private record Option(List<KitPlan.LoopPlan> loops, Optional<LaidLoops> held, double worth) {}

    /**
     * Plans a job after a kit was cut.
     *
     * @throws org.runbend.optimizer.job.Unbuildable if the job cannot be built as asked
     * @throws IllegalStateException if a verifier finds a fault in our own plan
     */
    public Changed plan(Job job, EarlierKit was) {
        List<Remnant> stock = was.remnants(job.shelf());
        KitPlanner planner = new KitPlanner(work, was.boards());
        if (job.hasOwnLoop()) {
            KitPlan plan = planner.plan(withStock(job, stock));
            return new Changed(
                    plan,
                    KitChange.of(
                            was,
                            plan,
                            stock,
                            List.of(),
                            new KitChange.Way(false, Optional.of("a loop that somebody drew is laid as it is")),
                            Optional.empty()));
        }
        KitPlanner.Fresh fresh = planner.fresh(job);
        Job settled = fresh.job();
        ChangeWorth worth = ChangeWorth.of(settled, was);
        Option best = new Option(
                fresh.laid().loops(), Optional.empty(), worth.of(fresh.laid().loops()));
        EarlierLaying laying = new EarlierLaying(settled, LoopPipes.bendRadius(settled), was, work);
        Optional<String> obstacle = laying.obstacle();
        Optional<LaidLoops> held =
                obstacle.isEmpty() ? laying.lay(laid -> worth(settled, worth, laid)) : Optional.empty();
        if (held.isPresent()) {
            List<KitPlan.LoopPlan> loops = KitPlanner.loops(settled, held.get());
            Option option = new Option(loops, held, worth.of(loops));
            best = option.worth() < best.worth() ? option : best;
        }
        LaidFloor floor = best.held().map(l -> planner.floor(settled, l)).orElse(fresh.laid());
        List<Breakdown> pipes =
                floor.loops().stream().map(KitPlan.LoopPlan::breakdown).toList();
        List<KeptPiece> kept = KeptPlates.of(was, stock, pipes);
        Optional<LoopChange> afresh =
                best.held().map(l -> LoopChange.of(was.elements(), fresh.laid().loops()));
        Job asked = settled;
        List<Remark> remarks = new ArrayList<>(floor.remarks());
        if (settled.plates().byHeat()) {
            AutoCoverage.Asked chosen = AutoCoverage.asked(settled, floor.loops());
            asked = chosen.job();
            remarks.add(chosen.remark());
        }
        remarks.add(0, new Remark.Changed(LoopChange.of(was.elements(), floor.loops()), afresh));
        KitPlan plan = planner.plan(
                withStock(asked, stock),
                new LaidFloor(floor.place(), floor.price(), floor.loops(), floor.bare(), remarks),
                kept);
        return new Changed(
                plan,
                KitChange.of(
                        was, plan, stock, kept, new KitChange.Way(best.held().isPresent(), obstacle), afresh));
    }

    /** What a loop comes to; one that takes more pipe than the job allows has no finite worth. */
    private static double worth(Job job, ChangeWorth worth, LaidLoops laid) {
        double limit = job.pipe().loopLimit().orElse(Double.POSITIVE_INFINITY);
        LoopPipes pipes = new LoopPipes(job, LoopPipes.bendRadius(job));
        boolean fits = pipes.of(laid).stream().allMatch(p -> CutLength.of(job, p) <= limit);
        return fits ? worth.of(KitPlanner.loops(job, laid)) : Double.POSITIVE_INFINITY;
    }

    private static Job withStock(Job job, List<Remnant> stock) {
        return job.with(new Shelf(
                Stream.concat(stock.stream(), job.shelf().remnants().stream()).toList()));
    }

    /** Least price of a product's stock by length, minor units for a mm of groove. */
    static double byLength(SpreaderPlate plate) {
        return plate.stock().stream()
                .mapToDouble(s -> (double) s.cost() / s.length())
                .min()
                .orElse(0);
    }
}
