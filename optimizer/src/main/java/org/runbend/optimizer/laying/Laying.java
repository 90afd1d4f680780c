package org.runbend.optimizer.laying;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.work.Work;

/** Lays as many loops as the job asks for, or as few as its limits of length allow. */
public final class Laying {
    private static final int MOST_LOOPS = 6;
    /**
     * Share of the heated floor that loops serve at the very least; with fewer loops than it needs none is laid;
     * chosen, not measured.
     */
    private static final double SERVED = 0.6;
    /** The same for wide floors, where laying too few loops for a look takes a minute; chosen, not measured. */
    private static final double WIDE_SERVED = 0.75;
    /** Places of a wide floor; chosen, not measured. */
    private static final double WIDE = 1_000;

    private final Job job;
    private final double radius;
    private final Work work;
    private final Optional<Job> known;

    private Laying(Job job, double radius, Work work, Optional<Job> known) {
        this.job = job;
        this.radius = radius;
        this.work = work;
        this.known = known;
    }

    /** All that several loops of a job depend on. */
    private record Question(Job job, int loops) {}

    /** Laying for a job, its direction settled. */
    public static Laying of(Job job, double radius, Work work) {
        return new Laying(new FreeDirection(radius, work).settle(job), radius, work, Optional.empty());
    }

    /**
     * Laying beside what is laid for the same floor at other prices or with another preference: a single loop comes on the same
     * lattice, and on a wide floor begins with the one that is known.
     *
     * @param known the job that is laid, its direction settled
     * @param job the same job but for prices, preference, plates and limits of the pipe
     */
    public static Laying beside(Job known, Job job, double radius, Work work) {
        return new Laying(job, radius, work, Optional.of(known));
    }

    /** The loops; throws {@code Unbuildable} where the job cannot be laid as asked. */
    public LaidLoops lay() {
        OptionalInt asked = job.layout().loops();
        return asked.isPresent() ? new CoilFitting(job, radius, work).fit(lay(asked.getAsInt())) : fewest();
    }

    /** Whether loops can be laid within the limit of the pipe. */
    static boolean isWithinLimit(Job job, Work work) {
        double radius = LoopPipes.bendRadius(job);
        Laying laying = of(job, radius, work);
        LaidLoops laid = laying.lay(job.layout().loops().orElse(1));
        return new CoilFitting(laying.job, radius, work).fitted(laid).isPresent();
    }

    private LaidLoops lay(int loops) {
        return loops == 1
                ? single()
                : work.once(new Question(withoutPlates(), loops), LaidLoops.class, () -> new SeveralLaying(
                                job, radius, loops)
                        .lay(work));
    }

    /** The job as far as laying asks: which plates cover how much is left out, and its direction is as good as said. */
    private Job withoutPlates() {
        Job said = LatticeDirection.settled(job, LatticeDirection.of(job).angle());
        return said.with(said.layout(), said.pipe(), said.plates().with(List.of(), 0));
    }

    private LaidLoops single() {
        LoopLaying laying = new LoopLaying();
        LoopLaying.Laid laid =
                known.isPresent() ? laying.layBeside(known.get(), job, radius, work) : laying.lay(job, radius, work);
        return job.isStiff()
                ? LaidLoops.ofStiff(laid.lattice(), laid.loop())
                : LaidLoops.of(laid.lattice(), laid.loop());
    }

    private LaidLoops fewest() {
        double limit = CutLength.longest(job);
        int loops = atLeast(limit);
        while (loops <= MOST_LOOPS) {
            LaidLoops laid = new CoilFitting(job, radius, work).balanced(layAtLeast(loops, limit));
            if (laid.loops().stream().allMatch(l -> cut(l) <= limit)) {
                return laid;
            }
            loops++;
        }
        throw new Unbuildable(
                "layout.loops",
                String.format(
                        Locale.ROOT,
                        "%d loops are not enough: none may be cut longer than %.0f mm; a greater spacing needs less pipe",
                        MOST_LOOPS,
                        limit));
    }

    /** Names the limit too where so many loops as it takes cannot be had. */
    private LaidLoops layAtLeast(int loops, double limit) {
        try {
            return lay(loops);
        } catch (Unbuildable fault) {
            throw loops == 1 || !fault.key().equals("layout.loops")
                    ? fault
                    : new Unbuildable(
                            fault.key(),
                            String.format(
                                    Locale.ROOT,
                                    "auto takes %d loops, none cut longer than %.0f mm: %s",
                                    loops,
                                    limit,
                                    fault.getMessage()));
        }
    }

    /** Fewer loops could not serve the floor. */
    private int atLeast(double limit) {
        double all = FloorShapes.heatedArea(job.floor()) / job.layout().spacing();
        double onFloor = (all / job.layout().spacing() > WIDE ? WIDE_SERVED : SERVED) * all;
        double tails = job.pipe().flowTail() + job.pipe().returnTail();
        double room = limit / (1 + job.pipe().allowance()) - tails;
        return room <= 0 ? MOST_LOOPS + 1 : (int) Math.max(1, Math.ceil(onFloor / room));
    }

    private long cut(LaidLoops.One loop) {
        return CutLength.of(job, new LoopPipes(job, radius).of(loop));
    }
}
