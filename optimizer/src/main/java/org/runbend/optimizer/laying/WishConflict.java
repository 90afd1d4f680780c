package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.runbend.catalog.product.Pipe;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Support;
import org.runbend.optimizer.job.Unbuildable;

/**
 * Which wishes collide when no loop serves them all: each is left away in turn, and where a loop comes back, that wish is
 * one of those that collide.
 */
final class WishConflict {
    /** Further wishes are not tried; each costs a quick look at the floor; chosen, not measured. */
    private static final int MOST_TRIED = 24;

    private static final double ANYWHERE = 1e6;

    /**
     * A wish.
     *
     * @param key as a person finds it in the job file
     * @param without the job without it; a size is not left away but made as easy as it can be
     * @param remedy what would do, a clause
     */
    record Wish(String key, Job without, String remedy) {
        private Wish(String key, Job without) {
            this(key, without, "either alone can be had");
        }
    }

    private WishConflict() {}

    /**
     * One line that names the wishes; empty if the job has no rules for pipe or supports and no stiff pipe, or none is at fault.
     *
     * @param canBeLaid a quick look whether a job has a loop
     */
    static Optional<Unbuildable> of(Job job, Predicate<Job> canBeLaid) {
        if (!hasWishes(job) && !job.isStiff()) {
            return Optional.empty();
        }
        List<Wish> guilty =
                all(job).filter(w -> canBeLaid.test(w.without)).limit(2).toList();
        if (guilty.isEmpty()) {
            return severalWays(job, canBeLaid);
        }
        Wish first = guilty.get(0);
        if (guilty.size() == 2 && !isSize(first)) {
            Wish second = guilty.get(1);
            return Optional.of(new Unbuildable(
                    first.key, "collides with " + second.key + ": no loop can have both, " + second.remedy));
        }
        if (isPipe(first)) {
            return Optional.of(new Unbuildable(first.key, stiff(job, canBeLaid) + first.remedy));
        }
        return isSize(first)
                ? Optional.empty()
                : Optional.of(new Unbuildable(
                        first.key,
                        "collides with floor.outline or more than one other wish: no loop can have it, without it"
                                + " one can be laid"));
    }

    private static String stiff(Job job, Predicate<Job> canBeLaid) {
        return hasWishes(job) && canBeLaid.test(withoutWishes(job))
                ? "collides with layout.veto and floor.supports: no loop of pipe as stiff as this keeps them all, "
                : "collides with floor.outline: no loop of pipe as stiff as this fits the floor, ";
    }

    private static boolean hasWishes(Job job) {
        return !job.layout().pipeRules().isEmpty() || !job.floor().supports().isEmpty();
    }

    private static Job withoutWishes(Job job) {
        return with(job, job.floor().keepOuts(), List.of(), List.of());
    }

    private static Optional<Unbuildable> severalWays(Job job, Predicate<Job> canBeLaid) {
        if (!hasWishes(job) || !canBeLaid.test(withoutWishes(job))) {
            return Optional.empty();
        }
        boolean supportsAlone = job.layout().pipeRules().isEmpty();
        String where = supportsAlone
                ? "the supports leave no loop"
                : "wishes here" + (job.floor().supports().isEmpty() ? "" : " and in floor.supports")
                        + " exclude each other";
        return Optional.of(new Unbuildable(
                supportsAlone ? "floor.supports" : "layout.veto",
                where + " in more than one way, so that leaving one away is not enough"));
    }

    private static boolean isSize(Wish wish) {
        return isPipe(wish) || wish.key.equals("layout.edge") || wish.key.equals("floor.port.reach");
    }

    private static boolean isPipe(Wish wish) {
        return wish.key.equals("pipe.product");
    }

    /** Wishes of the fitter first, then what stands on the floor, then sizes. */
    private static Stream<Wish> all(Job job) {
        return Stream.of(pipeRules(job), supports(job), keepOuts(job), stiffness(job), sizes(job))
                .flatMap(List::stream)
                .limit(MOST_TRIED);
    }

    /** Whatever a person asked for on this floor, without the sizes. */
    static Stream<Wish> things(Job job) {
        return Stream.of(pipeRules(job), supports(job), keepOuts(job), stiffness(job))
                .flatMap(List::stream)
                .limit(MOST_TRIED);
    }

    /** What may make a loop longer: lines and parts it has to follow, what it must not cross or bend at, stiff pipe. */
    static Stream<Wish> lengthening(Job job) {
        return Stream.of(pipeRules(job), stiffness(job), supports(job)).flatMap(List::stream);
    }

    private static List<Wish> pipeRules(Job job) {
        List<Wish> wishes = new ArrayList<>();
        List<PipeRule> pipeRules = job.layout().pipeRules();
        for (int i = 0; i < pipeRules.size(); i++) {
            Job without = with(job, job.floor().keepOuts(), job.floor().supports(), without(pipeRules, i));
            wishes.add(new Wish(pipeRules.get(i).key(), without));
        }
        return wishes;
    }

    private static List<Wish> supports(Job job) {
        List<Wish> wishes = new ArrayList<>();
        List<Support> supports = job.floor().supports();
        for (int i = 0; i < supports.size(); i++) {
            Job without = with(
                    job,
                    job.floor().keepOuts(),
                    without(supports, i),
                    job.layout().pipeRules());
            wishes.add(new Wish("floor.supports[" + i + "] '" + supports.get(i).name() + "'", without));
        }
        return wishes;
    }

    private static List<Wish> keepOuts(Job job) {
        List<Wish> wishes = new ArrayList<>();
        List<KeepOut> keepOuts = job.floor().keepOuts();
        for (int i = 0; i < keepOuts.size(); i++) {
            Job without = with(
                    job,
                    without(keepOuts, i),
                    job.floor().supports(),
                    job.layout().pipeRules());
            wishes.add(new Wish("floor.keepOut[" + i + "] '" + keepOuts.get(i).name() + "'", without));
        }
        return wishes;
    }

    /** Pipe that bends as tightly as the spacing asks is not stiff. */
    private static List<Wish> stiffness(Job job) {
        if (!job.isStiff()) {
            return List.of();
        }
        Pipe pipe = job.pipe().product();
        Pipe soft = new Pipe(
                pipe.sku(),
                pipe.name(),
                pipe.outer(),
                pipe.wall(),
                pipe.material(),
                job.layout().spacing() / 2,
                Math.max(pipe.handRadius(), job.layout().spacing() / 2),
                pipe.aid(),
                pipe.weightPerMetre(),
                pipe.coils(),
                pipe.maxTemperature(),
                pipe.supply(),
                pipe.test());
        Job without = job.with(job.layout(), job.pipe().of(soft), job.plates());
        return List.of(new Wish("pipe.product", without, "a pipe that bends to half the spacing would do"));
    }

    private static List<Wish> sizes(Job job) {
        double least = job.pipe().product().outer() / 2;
        Job near = job.with(job.floor(), job.layout().withEdge(least));
        Job reaching = job.with(job.floor().withReach(ANYWHERE), job.layout());
        return List.of(
                new Wish("layout.edge", near, "a smaller edge would do"),
                new Wish("floor.port.reach", reaching, "a greater reach would do"));
    }

    private static <T> List<T> without(List<T> all, int index) {
        List<T> left = new ArrayList<>(all);
        left.remove(index);
        return left;
    }

    private static Job with(Job job, List<KeepOut> keepOuts, List<Support> supports, List<PipeRule> pipeRules) {
        return job.with(job.floor().with(keepOuts, supports), job.layout().with(pipeRules));
    }
}
