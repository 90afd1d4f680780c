package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Support;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.Veto;

/**
 * Which wishes collide when no loop serves them all: each is left away in turn, and where a loop comes back, that wish is
 * one of those that collide.
 */
final class WishConflict {
    /** Further wishes are not tried; each costs a quick look at the floor. */
    private static final int MOST_TRIED = 24;

    /** A wish by its key in the job file, and the job without it. */
    private record Wish(String key, Job without) {}

    private WishConflict() {}

    /** One line that names the wishes; empty if the job has no vetoes or supports, or none of them is at fault. */
    static Optional<Unbuildable> of(Job job, Predicate<Job> canBeLaid) {
        if (job.layout().vetoes().isEmpty() && job.floor().supports().isEmpty()) {
            return Optional.empty();
        }
        List<String> guilty = wishes(job).stream()
                .limit(MOST_TRIED)
                .filter(w -> canBeLaid.test(w.without))
                .map(Wish::key)
                .limit(2)
                .toList();
        if (guilty.size() == 2) {
            return Optional.of(new Unbuildable(
                    guilty.get(0),
                    "collides with " + guilty.get(1) + ": no loop can have both, either alone can be had"));
        }
        if (guilty.size() == 1) {
            return Optional.of(
                    new Unbuildable(
                            guilty.get(0),
                            "collides with floor.outline, layout.edge or floor.port: no loop can have it, without it one can be laid"));
        }
        boolean bare = canBeLaid.test(with(job, job.floor().keepOuts(), List.of(), List.of()));
        return bare
                ? Optional.of(new Unbuildable(
                        "layout.veto",
                        "wishes here and in floor.supports exclude each other in more than one way, so that leaving one"
                                + " away is not enough"))
                : Optional.empty();
    }

    private static List<Wish> wishes(Job job) {
        List<Wish> wishes = new ArrayList<>();
        List<Veto> vetoes = job.layout().vetoes();
        List<Support> supports = job.floor().supports();
        List<KeepOut> keepOuts = job.floor().keepOuts();
        for (int i = 0; i < vetoes.size(); i++) {
            wishes.add(new Wish(vetoes.get(i).key(), with(job, keepOuts, supports, without(vetoes, i))));
        }
        for (int i = 0; i < supports.size(); i++) {
            String key = "floor.supports[" + i + "] '" + supports.get(i).name() + "'";
            wishes.add(new Wish(key, with(job, keepOuts, without(supports, i), vetoes)));
        }
        for (int i = 0; i < keepOuts.size(); i++) {
            String key = "floor.keepOut[" + i + "] '" + keepOuts.get(i).name() + "'";
            wishes.add(new Wish(key, with(job, without(keepOuts, i), supports, vetoes)));
        }
        return wishes;
    }

    private static <T> List<T> without(List<T> all, int index) {
        List<T> left = new ArrayList<>(all);
        left.remove(index);
        return left;
    }

    private static Job with(Job job, List<KeepOut> keepOuts, List<Support> supports, List<Veto> vetoes) {
        return job.with(job.floor().with(keepOuts, supports), job.layout().with(vetoes));
    }
}
