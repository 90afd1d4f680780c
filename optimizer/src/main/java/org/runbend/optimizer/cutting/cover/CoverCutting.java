package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Random;
import java.util.stream.IntStream;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.Stretch;
import org.runbend.optimizer.mip.ThreadWatch;
import org.runbend.optimizer.mip.Watch;
import org.runbend.optimizer.work.Work;

/**
 * Covers stretches with pieces of free length at least cost of stock: lengths and cutting are decided together. At that
 * cost few pieces and much cover are sought, without a proof that they are the fewest and the most.
 *
 * <p>Method: the plan of {@link RunByRunCutting} for a start (so no answer is dearer than cutting each stretch by itself),
 * then wrap-around states over several orders of the stretches, and where a gap is left an integer program over the columns
 * of the bound. Bound: the larger of material and two-column program (its prices, then whole stock pieces), both in whole numbers. Limits are counts, never a
 * clock; orders are shuffled with a fixed seed.
 */
public final class CoverCutting {
    /** States of a beam: chosen, not measured. */
    private static final int WIDTH = 300;
    /** Orders of the stretches that are searched: chosen, not measured. */
    private static final int ORDERS = 8;
    /** Orders where pieces cost saw work too: chosen, not measured. */
    private static final int LABOUR_ORDERS = 2;
    /** Nodes of the master as an integer program: chosen, not measured. */
    private static final int NODES = 50;
    /** Any number would do; chosen. */
    private static final long SEED = 20_260_101L;

    /** How much work a plan is worth. */
    public enum Effort {
        /** All steps. */
        FULL,
        /** Without the integer program and without a search for fewer pieces: for plans that are compared by the dozen. */
        LITTLE
    }

    private final Watch watch;
    private final Effort effort;

    /** A solver that nobody watches. */
    public CoverCutting() {
        this(Watch.NONE);
    }

    /** A solver that tells what it learns and ends early, with the best so far, when asked to. */
    public CoverCutting(Watch watch) {
        this(watch, Effort.FULL);
    }

    /** The same with more or less work. */
    public CoverCutting(Watch watch, Effort effort) {
        this.watch = watch;
        this.effort = effort;
    }

    /**
     * The cheapest plan found with its bound, or why there is none.
     *
     * @throws java.util.concurrent.CancellationException soon after the thread is interrupted; the thread stays interrupted
     */
    public Answer<CoverSolution> solve(CoverProblem problem) {
        return solve(new CoverGrid(problem));
    }

    /** The same with the sizes of a grid alone; the bound holds for those sizes. */
    Answer<CoverSolution> solve(CoverGrid grid) {
        Work.check();
        CoverProblem problem = grid.problem();
        if (problem.target() == 0 && problem.stretches().stream().allMatch(s -> s.least() == 0)) {
            return Answer.found(new CoverPlan(grid).solution(new Bound(0, Bound.Proof.MATERIAL)));
        }
        long reach = grid.stretchLengths().stream().mapToLong(grid::reach).sum();
        if (reach < problem.target()) {
            return Answer.none(String.format(
                    Locale.ROOT,
                    "the stretches take at most %.2f mm of the %.2f mm asked for",
                    reach / 100.0,
                    problem.target() / 100.0));
        }
        for (Stretch s : problem.stretches()) {
            if (grid.reach(s.length()) < s.least()) {
                return Answer.none(String.format(
                        Locale.ROOT,
                        "a stretch of %.2f mm takes at most %.2f mm of the %.2f mm asked for",
                        s.length() / 100.0,
                        grid.reach(s.length()) / 100.0,
                        s.least() / 100.0));
            }
        }
        OptionalLong material = new CoverMaterial(grid).bound();
        if (material.isEmpty()) {
            return Answer.none("all stock together does not reach the target");
        }
        Answer<CoverSolution> answer = new Run(
                        grid, new Bound(material.getAsLong(), Bound.Proof.MATERIAL), new ThreadWatch(watch), effort)
                .solve();
        Work.check();
        return answer;
    }

    /** One problem on its way. */
    private static final class Run {
        private final CoverGrid grid;
        private final Watch watch;
        private final Effort effort;
        private Bound bound;
        private CoverPlan best;

        Run(CoverGrid grid, Bound material, Watch watch, Effort effort) {
            this.effort = effort;
            this.grid = grid;
            this.watch = watch;
            bound = material;
        }

        Answer<CoverSolution> solve() {
            offer(new RunByRunCutting().plan(grid));
            CoverMaster master = new CoverMaster(grid, watch);
            learn(master);
            search(2, simpleRate(), 0, true);
            boolean generates = CoverDuals.isWorthwhile(grid);
            if (isOpen() && generates) {
                learn(master);
                master.generate(best == null ? Long.MAX_VALUE : best.cost());
                bound = bound.max(new Bound(master.bound(), Bound.Proof.PATTERN_LP));
                tell();
            }
            if (isOpen()) {
                search(ORDERS, master.rate() > 0 ? master.rate() : simpleRate(), 0, true);
            }
            if (isOpen() && generates && effort == Effort.FULL) {
                learn(master);
                offer(master.plan(NODES));
            }
            if (effort == Effort.FULL) {
                fewerPieces();
            }
            return best == null
                    ? Answer.unknown(
                            watch.asksForEnd()
                                    ? "the work was ended before a plan was found"
                                    : "no plan was found within the work limit")
                    : Answer.found(best.solution(bound));
        }

        private boolean isOpen() {
            return (best == null || best.cost() > bound.value()) && !watch.asksForEnd();
        }

        private void tell() {
            watch.learned(best == null ? Long.MAX_VALUE : best.cost(), bound.value());
        }

        private void offer(CoverPlan plan) {
            if (plan == null || plan.covered() < grid.problem().target()) {
                return;
            }
            plan.polish();
            if (best == null || plan.isBetterThan(best)) {
                best = plan;
                tell();
            }
        }

        private void learn(CoverMaster master) {
            if (best != null) {
                master.learn(best.solution(bound));
            }
        }

        private double simpleRate() {
            return grid.problem().stock().stream()
                    .filter(s -> s.unlimited() && grid.gain(s) > 0)
                    .mapToDouble(s -> (double) s.cost() / grid.gain(s))
                    .min()
                    .orElse(1);
        }

        /** Looks for fewer pieces at the cost reached, with pieces weighed at a twentieth and a fifth of the shortest one. */
        private void fewerPieces() {
            long length = grid.length(grid.least());
            for (double share : new double[] {0.05, 0.2}) {
                search(best == null ? 0 : LABOUR_ORDERS, simpleRate(), share * simpleRate() * length, false);
            }
        }

        private void search(int orders, double rate, double pieceWeight, boolean untilProved) {
            CoverBeam beam = new CoverBeam(grid, WIDTH, rate, pieceWeight, watch);
            List<Integer> order = new ArrayList<>(
                    IntStream.range(0, grid.problem().stretches().size())
                            .boxed()
                            .toList());
            order.sort(Comparator.comparingLong(
                    r -> -grid.problem().stretches().get(r).length()));
            Random random = new Random(SEED);
            for (int n = 0; n < orders && !watch.asksForEnd() && !(untilProved && !isOpen()); n++) {
                offer(beam.plan(order, best == null ? Long.MAX_VALUE : best.cost()));
                if (n == 0) {
                    Collections.reverse(order);
                } else {
                    Collections.shuffle(order, random);
                }
            }
        }
    }
}
