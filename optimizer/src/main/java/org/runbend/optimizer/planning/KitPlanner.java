package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.bare.Reason;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.CutLayer;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.coils.CoilNesting;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.coils.CoilProblem;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.laying.LaidLoops;
import org.runbend.optimizer.laying.Laying;
import org.runbend.optimizer.laying.LoopLaying;
import org.runbend.optimizer.laying.LoopPipes;
import org.runbend.optimizer.laying.OwnLoop;
import org.runbend.optimizer.plan.KeptPipe;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LaidFloor;
import org.runbend.optimizer.plan.PortHole;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plates.KeptPiece;
import org.runbend.optimizer.plates.PlatePacking;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.plates.PlateProblem;
import org.runbend.optimizer.tape.TapeMeasuring;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;

/**
 * The main job: floor, loop, breakdown, plates, coils, box, in this order, then verified.
 *
 * <p>Same job, same plan: no step reads a clock or an unseeded number.
 */
public final class KitPlanner {
    /** Where pipe is short, places are left out for its length whatever else speaks against them. */
    private static final Set<Reason> CAUSED_BY_LENGTH = EnumSet.of(Reason.TURNS, Reason.COLOURS);

    /** Prices tried where the usual one leaves too much bare; the contract holds them to 4. */
    private static final int[] RAISED = {2, 4};

    /** Share of the places that may stay bare before that: chosen, not measured; a fifth is seen by whoever walks over the floor. */
    private static final double BARE = 0.2;

    /** Degrees of an arc that a sketch draws by one line. */
    private static final double SKETCHED = 15;

    private final Work work;
    private final List<CutLayer> boardsBefore;
    private final boolean atAGlance;

    /** A planner under some work. */
    public KitPlanner(Work work) {
        this(work, List.of());
    }

    /**
     * A planner for prices alone: pipe is laid and everything bought as always, but plates are not made easy to saw nor compared with
     * others, which saves most of the time.
     */
    public static KitPlanner atAGlance(Work work) {
        return new KitPlanner(work, List.of(), true);
    }

    /** A planner for a floor that boards were cut for before it changed. */
    KitPlanner(Work work, List<CutLayer> boardsBefore) {
        this(work, boardsBefore, false);
    }

    private KitPlanner(Work work, List<CutLayer> boardsBefore, boolean atAGlance) {
        this.work = work;
        this.boardsBefore = List.copyOf(boardsBefore);
        this.atAGlance = atAGlance;
    }

    /**
     * Plans a job.
     *
     * @throws Unbuildable if the job cannot be built as asked
     * @throws IllegalStateException if a verifier finds a fault in our own plan
     */
    public KitPlan plan(Job job) {
        FixingPart.refuse(job);
        return job.hasOwnLoop() ? own(job) : priced(job);
    }

    /**
     * Where the price of a place left out is ours to say, it is raised while more than a fifth of the places stays bare and
     * that helps: on a floor of few places a wave of bends is dear and a bare corner is seen.
     */
    private KitPlan priced(Job job) {
        Fresh fresh = fresh(job);
        return plan(fresh.job(), fresh.laid());
    }

    /**
     * A floor laid at the price of a place left out that was settled for it.
     *
     * @param job the job at that price
     * @param laid its loops
     */
    record Fresh(Job job, LaidFloor laid) {}

    /** The floor laid as in {@link #plan(Job)}, nothing bought for it yet. */
    Fresh fresh(Job asked) {
        Job job = PlacePricing.settled(asked);
        LaidFloor laid = lay(job);
        Job now = job;
        boolean free = job.written().autoPrice()
                && job.pipe().loopLimit().isEmpty()
                && !job.layout().fitCoil();
        for (int price : free ? RAISED : new int[0]) {
            if (leftOut(laid) <= BARE * laid.place().reachable()) {
                break;
            }
            Job dearer = job.with(
                    job.floor(),
                    job.layout().withPrice(job.layout().leftOutPrice().withLeftOut(price)));
            LaidFloor other = lay(dearer);
            if (leftOut(other) < leftOut(laid)) {
                laid = other;
                now = dearer;
            }
        }
        return new Fresh(now, laid);
    }

    private static int leftOut(LaidFloor laid) {
        return laid.loops().stream().mapToInt(KitPlan.LoopPlan::leftOut).sum();
    }

    /** The designer's loop as it is: no lattice, no bounds, nothing left out. */
    private KitPlan own(Job job) {
        work.step("checking the loop drawn");
        Breakdown breakdown = new LoopPipes(job, LoopPipes.bendRadius(job)).withSlots(new OwnLoop(job).checked());
        long cut = CutLength.of(job, breakdown);
        checkLimit(job, "the loop", cut);
        int turns = (int)
                Math.round(bends(breakdown).mapToDouble(b -> Math.abs(b.turn())).sum() / 90);
        double radius = bends(breakdown).mapToDouble(Element.Bend::radius).min().orElse(LoopPipes.bendRadius(job));
        KitPlan.LoopPlan loop = new KitPlan.LoopPlan(
                "A",
                breakdown,
                breakdown.floorLength(),
                cut,
                turns,
                0,
                OptionalInt.empty(),
                0,
                job.layout().leftOutPrice().turn() * turns,
                OptionalInt.empty(),
                List.of());
        return assemble(
                job,
                radius,
                KitPlan.LatticePlace.none(job.layout().spacing()),
                List.of(loop),
                List.of(),
                List.of(),
                List.of());
    }

    private static Stream<Element.Bend> bends(Breakdown breakdown) {
        return breakdown.elements().stream()
                .filter(Element.Bend.class::isInstance)
                .map(Element.Bend.class::cast);
    }

    /**
     * Lays the loops of a job without plates and coils. Jobs that differ in nothing but the products and the coverage of
     * their plates are laid alike.
     *
     * @throws Unbuildable if the job cannot be laid as asked
     */
    public LaidFloor lay(Job asked) {
        Job job = PlacePricing.settled(asked);
        double radius = LoopPipes.bendRadius(job);
        return floor(job, Laying.of(job, radius, work).lay());
    }

    /**
     * The same beside what is laid for another job of the same floor, on its lattice and beginning with its loop.
     *
     * @param known the job that is laid, its price and its direction settled
     * @param job the same job but for prices, preference, plates and limits of the pipe; its price is settled
     * @throws Unbuildable if the job cannot be laid as asked
     */
    public LaidFloor layBeside(Job known, Job job) {
        double radius = LoopPipes.bendRadius(job);
        return floor(job, Laying.beside(known, job, radius, work).lay());
    }

    /** The floor with loops that are laid, and why what they leave bare stays bare. */
    LaidFloor floor(Job job, LaidLoops laid) {
        double radius = LoopPipes.bendRadius(job);
        List<KitPlan.LoopPlan> loops = loops(job, laid);
        KitPlan.LatticePlace place = new KitPlan.LatticePlace(
                laid.lattice().origin(),
                laid.lattice().angle(),
                laid.lattice().spacing(),
                laid.lattice().reachable());
        work.sketch(() -> sketch(loops));
        work.step("asking why floor stays bare");
        List<BareFloor> bare = new LoopLaying()
                .bareFloor(job, radius, laid).stream()
                        .filter(b -> laid.limit().isEmpty() || !CAUSED_BY_LENGTH.contains(b.reason()))
                        .toList();
        return new LaidFloor(place, job.layout().leftOutPrice(), loops, bare, remarks(job, laid));
    }

    private static Progress.Sketch sketch(List<KitPlan.LoopPlan> loops) {
        return new Progress.Sketch(loops.stream()
                .map(l -> l.breakdown().chords(SKETCHED).stream()
                        .map(p -> new Progress.Place(p.x(), p.y()))
                        .toList())
                .toList());
    }

    /** The pipe of loops that are laid. */
    static List<KitPlan.LoopPlan> loops(Job job, LaidLoops laid) {
        List<KitPlan.LoopPlan> loops = new ArrayList<>();
        for (LaidLoops.One one : laid.loops()) {
            loops.add(loopPlan(
                    job, LoopPipes.bendRadius(job), laid.loops().size() == 1, LaidLoops.name(loops.size()), one));
        }
        return loops;
    }

    /**
     * Plans the rest of a job.
     *
     * @param job the job laid, or one that is laid alike
     * @param laid its loops
     * @throws Unbuildable if the job cannot be built as asked
     * @throws IllegalStateException if a verifier finds a fault in our own plan
     */
    public KitPlan plan(Job job, LaidFloor laid) {
        return plan(job, laid, List.of());
    }

    /** The same with pieces of plate that were cut before and may stay. */
    KitPlan plan(Job asked, LaidFloor laid, List<KeptPiece> kept) {
        Job job = asked.with(asked.floor(), asked.layout().withPrice(laid.price()));
        return assemble(job, LoopPipes.bendRadius(job), laid.place(), laid.loops(), laid.bare(), laid.remarks(), kept);
    }

    private static KitPlan.LoopPlan loopPlan(Job job, double radius, boolean single, String name, LaidLoops.One one) {
        Breakdown breakdown = new LoopPipes(job, radius).of(one);
        long cut = CutLength.of(job, breakdown);
        checkLimit(job, single ? "the loop" : "loop " + name, cut);
        return new KitPlan.LoopPlan(
                name,
                breakdown,
                breakdown.floorLength(),
                cut,
                one.turns(),
                one.leftOut(),
                one.turnBound(),
                one.pieceCost(),
                one.objective(),
                one.objectiveBound(),
                one.bare());
    }

    /** What a person should know of the loops. */
    private static List<Remark> remarks(Job job, LaidLoops laid) {
        List<Remark> remarks = new ArrayList<>();
        int loops = laid.loops().size();
        if (loops > 1) {
            remarks.add(new Remark.Divided(loops, LaidLoops.name(loops - 1), laid.eachProvedBest()));
        }
        if (laid.limit().isPresent()) {
            remarks.add(new Remark.Shortened(
                    laid.limit().getAsDouble(),
                    laid.loops().stream().mapToInt(l -> l.bare().size()).sum(),
                    laid.lattice().reachable(),
                    job.isStiff()));
        }
        if (job.isStiff()) {
            remarks.add(new Remark.Stiff(LoopLaying.stiff(job), laid.eachProvedBest()));
        }
        return remarks;
    }

    private KitPlan assemble(
            Job job,
            double radius,
            KitPlan.LatticePlace place,
            List<KitPlan.LoopPlan> loops,
            List<BareFloor> bare,
            List<Remark> known,
            List<KeptPiece> kept) {
        work.step("nesting the pipe");
        CoilPlan coils = new CoilNesting()
                .nest(new CoilProblem(
                        job.pipe().product(),
                        job.shelf(),
                        loops.stream()
                                .map(l -> new CoilPlan.LoopCut(l.name(), l.cutLength()))
                                .toList()));
        work.step("packing the plates");
        if (job.plates().byHeat()) {
            AutoCoverage.Asked asked = AutoCoverage.asked(job, loops);
            return assemble(
                    asked.job(),
                    radius,
                    place,
                    loops,
                    bare,
                    Stream.concat(known.stream(), Stream.of(asked.remark())).toList(),
                    kept);
        }
        PlateProblem problem = PlateComparing.problem(job, breakdowns(loops));
        PlatePacking.Packed packed = packed(problem, kept);
        KitPlan plan = assemble(job, radius, place, loops, packed.plan(), coils, bare, known);
        return plan.with(PlateComparing.lengths(problem, plan, packed.lengths()));
    }

    private PlatePacking.Packed packed(PlateProblem problem, List<KeptPiece> kept) {
        PlatePacking packing = new PlatePacking(work);
        if (!kept.isEmpty()) {
            return packing.packKeeping(problem, kept);
        }
        return atAGlance ? packing.packAtAGlance(problem) : packing.packAndCompare(problem);
    }

    private static List<Breakdown> breakdowns(List<KitPlan.LoopPlan> loops) {
        return loops.stream().map(KitPlan.LoopPlan::breakdown).toList();
    }

    private KitPlan assemble(
            Job job,
            double radius,
            KitPlan.LatticePlace place,
            List<KitPlan.LoopPlan> loops,
            PlatePlan plates,
            CoilPlan coils,
            List<BareFloor> bare,
            List<Remark> known) {
        double tightest = tightest(job, radius, breakdowns(loops));
        Optional<ChannelPlan> channel = Channels.of(job, breakdowns(loops));
        double served = ServedFloor.share(job, breakdowns(loops));
        List<KeptPipe> kept = KeptPipes.of(job, radius, breakdowns(loops));
        ReckonedHeat heat = ReckonedHeat.of(job, loops, plates);
        Optional<SensorPlan> sensor = SensorPart.of(job, breakdowns(loops), plates);
        Optional<BoardsPlan> boards = BoardsPart.of(job, loops, channel, boardsBefore)
                .map(b -> FixingPart.held(job, b, breakdowns(loops), sensor));
        boolean routed = boards.map(BoardsPlan::areRouted).orElse(false);
        List<KitPlan.BoxItem> items = new BoxPacking(job, tightest).pack(breakdowns(loops), plates, coils, routed);
        KitPlan plan = new KitPlan(
                job,
                new TapeMeasuring().measure(job, holes(job, loops)),
                new KitPlan.LaidPart(radius, place, loops, 100 * served, bare, kept),
                plates,
                coils,
                KitPlan.Box.of(items),
                channel,
                heat.heat(),
                Optional.empty(),
                boards,
                sensor,
                Stream.concat(
                                PlanChecks.of(
                                        job, tightest, place.reachable(), loops, served, plates, channel, heat.heat())
                                        .stream(),
                                BoardChecks.of(job, boards, breakdowns(loops), plates).stream())
                        .toList(),
                remarks(
                        job,
                        kept,
                        loops,
                        plates,
                        coils,
                        bare,
                        Stream.of(
                                        known.stream(),
                                        heat.remark().stream(),
                                        BoardsPart.remarks(job, boards).stream(),
                                        FixingPart.remark(boards).stream(),
                                        SensorPart.remark(sensor).stream())
                                .flatMap(r -> r)
                                .toList()));
        work.step("verifying");
        List<Finding> violations = KitVerifier.verify(plan);
        if (!violations.isEmpty()) {
            throw new IllegalStateException("the plan breaks a rule: " + violations);
        }
        return plan;
    }

    private static List<TapeMeasuring.Hole> holes(Job job, List<KitPlan.LoopPlan> loops) {
        return PortHole.of(job, loops).stream()
                .map(h -> new TapeMeasuring.Hole(h.name(), h.at()))
                .toList();
    }

    /** The tightest bend of pipe, lead-ins and the turn into the holes among them, mm. */
    static double tightest(Job job, double radius, List<Breakdown> loops) {
        double turn = job.floor().port().turn() == Job.Turn.LEVEL ? Double.POSITIVE_INFINITY : job.turnRadius();
        double bend = loops.stream()
                .flatMap(KitPlanner::bends)
                .mapToDouble(Element.Bend::radius)
                .min()
                .orElse(radius);
        return Math.min(turn, Math.min(radius, bend));
    }

    private static List<Remark> remarks(
            Job job,
            List<KeptPipe> kept,
            List<KitPlan.LoopPlan> loops,
            PlatePlan plates,
            CoilPlan coils,
            List<BareFloor> bare,
            List<Remark> known) {
        List<Remark> remarks = new ArrayList<>();
        job.warnings().forEach(w -> remarks.add(new Remark.OfJob(w)));
        if (job.pipe().flowTail() + job.pipe().returnTail() == 0) {
            remarks.add(new Remark.NoTails());
        }
        Remark.ThickerInsulation.of(job).ifPresent(remarks::add);
        remarks.addAll(known);
        new NearMiss(job).remark(coils, plates).ifPresent(remarks::add);
        Channels.remark(job).ifPresent(remarks::add);
        plates.unused().forEach(p -> remarks.add(new Remark.PlateUnused(p)));
        if (job.hasOwnLoop()) {
            remarks.add(new Remark.AsDrawn(asDrawn(job)));
        }
        KeptPipes.remark(kept, breakdowns(loops)).ifPresent(remarks::add);
        bare.forEach(b -> remarks.add(new Remark.StaysBare(b)));
        return remarks;
    }

    /** A loop is laid as it was drawn only if nothing was rounded, joined or taken for an arc. */
    private static Remark.Line asDrawn(Job job) {
        if (job.layout().loop().hasCorners()) {
            return Remark.Line.ROUNDED;
        }
        return job.warnings().stream().anyMatch(w -> w.contains("the drawn loop"))
                ? Remark.Line.NEARLY
                : Remark.Line.EXACTLY;
    }

    private static void checkLimit(Job job, String which, long cut) {
        if (cut > job.pipe().loopLimit().orElse(Double.POSITIVE_INFINITY)) {
            throw new Unbuildable(
                    "pipe.loopLimit",
                    String.format(
                            Locale.ROOT,
                            "%s needs %d mm of pipe, the limit is %.0f mm; a loop that was drawn is not shortened",
                            which,
                            cut,
                            job.pipe().loopLimit().orElseThrow()));
        }
    }
}
