package org.runbend.optimizer.cutting.patterns;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Random;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CostSums;
import org.runbend.optimizer.mip.Watch;

/**
 * Branches on how many stock pieces of each kind are used, cheapest bound first: only limits of the kinds change, so
 * pricing stays the same and every bound stays proved. Some nodes are dived from. Counts nodes, and stops when they are
 * used up.
 */
final class CountBranching {
    /** A number so near to a whole one is whole: chosen, above the noise of the linear program. */
    private static final double WHOLE = 1e-5;
    /** Nodes from dive to dive: chosen, not measured. */
    private static final int DIVE_EVERY = 4;
    /** Dives at the end of a branch: chosen, not measured. */
    private static final int LAST_DIVES = 16;
    /** Any number would do; chosen. */
    private static final long SEED = 20_260_101L;

    private final MergedCuts cuts;
    private final ColumnGeneration generation;
    private final Diving diving;
    private final GapProgram gap;
    private final FitProgram fit;
    private final CostSums sums;
    private final int nodes;
    private final Watch watch;

    CountBranching(
            MergedCuts cuts,
            ColumnGeneration generation,
            Diving diving,
            GapProgram gap,
            FitProgram fit,
            CostSums sums,
            int nodes,
            Watch watch) {
        this.cuts = cuts;
        this.generation = generation;
        this.diving = diving;
        this.gap = gap;
        this.fit = fit;
        this.sums = sums;
        this.nodes = nodes;
        this.watch = watch;
    }

    /**
     * What branching came to.
     *
     * @param plan cheaper than what was known, if one was found
     * @param bound no plan costs less
     * @param proof the weakest argument that the bound rests on
     */
    record Outcome(Optional<PatternPlan> plan, long bound, Bound.Proof proof) {}

    private record Node(ResidualProblem residual, Relaxation parent, long bound, long number) {}

    /** Branches from a relaxation of the residual; plans of {@code best} or more are of no interest. */
    Outcome solve(ResidualProblem root, Relaxation relaxed, long best) {
        return new Tree(best).run(root, relaxed);
    }

    private final class Tree {
        private final PriorityQueue<Node> open = new PriorityQueue<>(Comparator.comparingLong(Node::bound)
                .thenComparing(Comparator.comparingLong(Node::number).reversed()));
        private long best;
        private PatternPlan plan;
        private Bound.Proof proof = Bound.Proof.PATTERN_LP;
        private long undecided = Long.MAX_VALUE;
        private long numbers;

        Tree(long best) {
            this.best = best;
        }

        Outcome run(ResidualProblem root, Relaxation relaxed) {
            add(root, relaxed, sums.lift(relaxed.bound()));
            for (int n = 0; n < nodes && !open.isEmpty() && open.peek().bound() < best && !watch.asksForEnd(); n++) {
                work(open.remove(), n);
                watch.learned(best, bound());
            }
            return new Outcome(Optional.ofNullable(plan), bound(), proof);
        }

        private long bound() {
            long least = Math.min(best, undecided);
            return open.isEmpty() ? least : Math.min(least, open.peek().bound());
        }

        private void work(Node node, int n) {
            Relaxation relaxed = generation.solve(node.residual(), node.parent().useful(cuts), best);
            long bound = Math.max(node.bound(), sums.lift(relaxed.bound()));
            if (bound >= best) {
                return;
            }
            if (!relaxed.hasTimes()) {
                undecided = Math.min(undecided, bound);
                return;
            }
            int kind = mostCostlyFraction(relaxed);
            if (kind < 0 || n % DIVE_EVERY == 0) {
                Optional<Random> random = n == 0 ? Optional.empty() : Optional.of(new Random(SEED + n));
                offer(diving.dive(node.residual(), relaxed, best, bound, random));
            }
            if (bound < best && ((kind >= 0 && n > 0) || !lift(node, relaxed, bound))) {
                branch(node, relaxed, bound, kind);
            }
        }

        /** All numbers are whole: an integer program looks at the costs next to the bound. False when it cannot tell. */
        private boolean lift(Node node, Relaxation relaxed, long bound) {
            Relaxation tight = generation.tighten(node.residual(), relaxed.patterns());
            if (tight.prices().isEmpty()) {
                return false;
            }
            GapProgram.Outcome outcome =
                    gap.solveNear(node.residual(), tight.prices().get(), sums, bound, sums.below(best));
            offer(outcome.plan());
            if (!outcome.decided()) {
                return false;
            }
            proof = Bound.Proof.INTEGER_PROGRAM;
            add(node.residual(), relaxed, sums.lift(outcome.most() + 1));
            return true;
        }

        /** Splits at a fraction, or off the number that a kind has; where all are settled the node stays undecided. */
        private void branch(Node node, Relaxation relaxed, long bound, int fraction) {
            ResidualProblem r = node.residual();
            int kind = fraction < 0 ? unsettled(r) : fraction;
            if (kind < 0) {
                settle(r, relaxed);
                return;
            }
            long down = (long) Math.floor(relaxed.used(kind) + WHOLE);
            long up = fraction < 0 ? down : down + 1;
            if (fraction < 0) {
                add(r.withLimits(kind, down, down), relaxed, bound);
                down--;
                up++;
            }
            add(r.withLimits(kind, r.least(kind), down), relaxed, bound);
            add(r.withLimits(kind, up, r.most(kind)), relaxed, bound);
        }

        /** All numbers, and so the cost, are settled: do the cuts fit? Where nobody can tell the node stays undecided. */
        private void settle(ResidualProblem residual, Relaxation relaxed) {
            long cost = 0;
            for (int k = 0; k < cuts.kinds().size(); k++) {
                cost += residual.least(k) * cuts.kinds().get(k).cost();
            }
            FitProgram.Outcome outcome = cost < best
                    ? fit.solve(residual, relaxed.patterns())
                    : new FitProgram.Outcome(Optional.empty(), true, proof);
            offer(outcome.plan());
            if (outcome.isNone()) {
                proof = outcome.proof().compareTo(proof) > 0 ? outcome.proof() : proof;
            } else if (outcome.plan().isEmpty()) {
                diveOften(residual, relaxed, cost);
                undecided = Math.min(undecided, cost);
            }
        }

        /** The last resort where all numbers are settled and an integer program cannot tell. */
        private void diveOften(ResidualProblem residual, Relaxation relaxed, long bound) {
            for (int n = 0; n < LAST_DIVES && bound < best && !watch.asksForEnd(); n++) {
                offer(diving.dive(residual, relaxed, best, bound, Optional.of(new Random(SEED - 1 - n))));
            }
        }

        private void add(ResidualProblem residual, Relaxation relaxed, long bound) {
            open.add(new Node(residual, relaxed, bound, numbers++));
        }

        /** The dearest priced kind whose number is not fixed yet. */
        private int unsettled(ResidualProblem r) {
            int chosen = -1;
            for (int k = 0; k < cuts.kinds().size(); k++) {
                long cost = cuts.kinds().get(k).cost();
                if (cost > 0
                        && r.least(k) < r.most(k)
                        && (chosen < 0 || cost > cuts.kinds().get(chosen).cost())) {
                    chosen = k;
                }
            }
            return chosen;
        }

        private void offer(Optional<PatternPlan> found) {
            if (found.isPresent() && found.get().cost() < best) {
                plan = found.get();
                best = plan.cost();
            }
        }

        private int mostCostlyFraction(Relaxation relaxed) {
            int chosen = -1;
            double worst = 0;
            for (int k = 0; k < cuts.kinds().size(); k++) {
                double used = relaxed.used(k);
                double off = Math.abs(used - Math.rint(used));
                double weight = off * (cuts.kinds().get(k).cost() + 1.0);
                if (off > WHOLE && weight > worst) {
                    worst = weight;
                    chosen = k;
                }
            }
            return chosen;
        }
    }

    /** Kinds of stock with a limit or a price of their own: where there is one kind only, there is nothing to branch on. */
    static boolean isUseful(List<MergedCuts.Kind> kinds) {
        return kinds.size() > 1;
    }
}
