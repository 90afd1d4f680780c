package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.division.Divider;
import org.runbend.optimizer.division.DivisionProblem;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.work.Work;

/** Shortens loops to the limit of the pipe, or to a coil that they would be a little too long for. */
public final class CoilFitting {
    /** A loop is shortened to a coil by a fifth at most, else the floor would stay cold: common practice. */
    private static final double LEAST_SHARE = 0.8;

    /** Loops laid for a coil: chosen, not measured. */
    private static final int MOST_TRIES = 8;
    /** Shortest length on the floor over longest, at least; our choice. */
    private static final double BALANCED = 0.9;

    /** Rounds in which the longer loops are shortened: chosen, not measured. */
    private static final int MOST_ROUNDS = 3;
    /**
     * Wishes that are left away in turn to see whether a short loop comes back; each costs laying it; chosen, not
     * measured.
     */
    private static final int MOST_LEFT_AWAY = 6;
    /**
     * What a quarter bend saves of its two legs, in spacings; derived: two halves of a spacing less a quarter circle
     * of half a spacing.
     */
    private static final double SAVED = 1 - Math.PI / 4;

    private final Job job;
    private final double radius;
    private final Work work;

    CoilFitting(Job job, double radius, Work work) {
        this.job = job;
        this.radius = radius;
        this.work = work;
    }

    /**
     * The loops, shortened where that is asked.
     *
     * @throws Unbuildable if no loop is as short as the limit
     */
    LaidLoops fit(LaidLoops laid) {
        double limit = job.pipe().loopLimit().orElse(Double.POSITIVE_INFINITY);
        return fitted(laid).orElseThrow(() -> tooShort(limit));
    }

    /** The same; empty if no loop is as short as the limit. */
    Optional<LaidLoops> fitted(LaidLoops laid) {
        double longest = longest(laid, laid.solutions());
        OptionalDouble wanted = limit(longest, laid.solutions().size());
        return wanted.isEmpty() || longest <= wanted.getAsDouble()
                ? Optional.of(balanced(laid))
                : within(laid, laid.solutions(), wanted.getAsDouble())
                        .map(shorter -> balanced(shortened(laid, shorter, wanted.getAsDouble())));
    }

    private LaidLoops shortened(LaidLoops laid, List<LoopSolution> shorter, double limit) {
        return laid.shortened(shorter, limit, job.floor().port().at());
    }

    private double longest(LaidLoops laid, List<LoopSolution> loops) {
        return loops.stream().mapToDouble(l -> cut(laid, l)).max().orElse(0);
    }

    /** The loops, those over a limit shortened to it; empty if one cannot be. */
    private Optional<List<LoopSolution>> within(LaidLoops laid, List<LoopSolution> loops, double limit) {
        List<LoopSolution> shorter = new ArrayList<>();
        for (int i = 0; i < loops.size(); i++) {
            LoopSolution loop = loops.get(i);
            work.step(String.format(Locale.ROOT, "fitting loop %d to %.2f m", i + 1, limit / 1000));
            Optional<LoopSolution> fitted = cut(laid, loop) <= limit ? Optional.of(loop) : shortened(laid, i, limit);
            if (fitted.isEmpty()) {
                return Optional.empty();
            }
            shorter.add(fitted.get());
        }
        return Optional.of(shorter);
    }

    /** Shortens the longer ones to what keeps lengths within a tenth of each other, if that is found. */
    LaidLoops balanced(LaidLoops laid) {
        LaidLoops now = laid;
        for (int i = 0; i < MOST_ROUNDS; i++) {
            LaidLoops before = now;
            double shortest = now.solutions().stream()
                    .mapToDouble(l -> cut(before, l))
                    .min()
                    .orElse(0);
            double most = Math.floor((shortest - tails()) / BALANCED + tails());
            Optional<List<LoopSolution>> next =
                    longest(now, now.solutions()) <= most ? Optional.empty() : within(now, now.solutions(), most);
            if (next.isEmpty()) {
                return now;
            }
            now = shortened(now, next.get(), most);
        }
        return now;
    }

    /** The limit of the pipe, or the coil to be fitted if that is shorter, mm. */
    private OptionalDouble limit(double longest, int loops) {
        OptionalDouble limit = job.pipe().loopLimit();
        if (!job.layout().fitCoil()) {
            return limit;
        }
        double full = Math.min(longest, limit.orElse(longest));
        double all = coils(1).max().orElse(0);
        OptionalDouble coil = coils(loops)
                .filter(c -> c <= full && (c >= LEAST_SHARE * full || all < full))
                .max();
        return coil.isPresent() ? coil : limit;
    }

    /** Lengths that coils on offer give each of so many loops, and, for a single loop, opened coils, mm. */
    private DoubleStream coils(int loops) {
        DoubleStream sold = job.pipe().product().coils().stream()
                .flatMapToDouble(c -> IntStream.rangeClosed(1, loops).mapToDouble(n -> Math.floor(c.length() / n)));
        DoubleStream opened = job.shelf().of(job.pipe().product().sku()).stream()
                .mapToDouble(r -> Math.floor(r.length()))
                .filter(r -> loops == 1);
        return DoubleStream.concat(sold, opened);
    }

    /** Begins with as many nodes as bends might make room for, and takes away what is then too long. */
    private Optional<LoopSolution> shortened(LaidLoops laid, int index, double limit) {
        LoopSolution full = laid.solutions().get(index);
        double spacing = job.layout().spacing();
        double onFloor = limit / (1 + job.pipe().allowance())
                - job.pipe().flowTail()
                - job.pipe().returnTail();
        int nodes = (int) Math.min(full.cycle().size() - 2, Math.floor(onFloor / spacing + SAVED * full.turns() + 1));
        for (int i = 0; i < MOST_TRIES && nodes >= 4; i++) {
            Optional<LoopSolution> loop =
                    new Divider().shorter(problem(laid), laid.parts().get(index), nodes);
            if (loop.isEmpty()) {
                break;
            }
            double over = cut(laid, loop.get()) - limit;
            if (over <= 0) {
                return loop;
            }
            nodes = loop.get().cycle().size()
                    - 2 * (int) Math.ceil(over / (1 + job.pipe().allowance()) / (2 * spacing));
        }
        return Optional.empty();
    }

    /** Says with what a limit collides that no loop was found for. */
    private Unbuildable tooShort(double limit) {
        Optional<String> guilty = limit <= tails()
                ? Optional.empty()
                : WishConflict.lengthening(job)
                        .limit(MOST_LEFT_AWAY)
                        .filter(w -> Laying.isWithinLimit(w.without(), work.hushed()))
                        .map(WishConflict.Wish::key)
                        .findFirst();
        String reason = String.format(Locale.ROOT, "no useful loop was found that is cut from %.0f mm; ", limit);
        return new Unbuildable(
                "pipe.loopLimit",
                guilty.map(key -> "collides with " + key + ": " + reason + "either alone can be had")
                        .orElse(reason
                                + String.format(
                                        Locale.ROOT, "its tails and their allowance alone take %.0f mm", tails())));
    }

    private double tails() {
        return (job.pipe().flowTail() + job.pipe().returnTail())
                * (1 + job.pipe().allowance());
    }

    private DivisionProblem problem(LaidLoops laid) {
        return new DivisionProblem(
                laid.lattice().graph(),
                laid.lattice().ports(),
                laid.solutions().size(),
                LoopLaying.preference(job),
                WorkLimit.standard());
    }

    private double cut(LaidLoops laid, LoopSolution loop) {
        return CutLength.of(job, new LoopPipes(job, radius).of(laid.lattice(), loop));
    }
}
