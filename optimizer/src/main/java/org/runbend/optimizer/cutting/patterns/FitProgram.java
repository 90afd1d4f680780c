package org.runbend.optimizer.cutting.patterns;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CostSums;
import org.runbend.optimizer.mip.Watch;

/**
 * Whether all cuts fit on stock whose numbers are settled. The cost no longer tells patterns apart then, but the length
 * does: every pattern costs the length of its stock, the linear program over all patterns says by how much the cuts fall
 * short of the stock, and a plan can use only the patterns that waste no more than that; they are few where it matters.
 */
final class FitProgram {
    private static final CostSums EVERY_LENGTH = new CostSums(List.of(), 0);

    private final MergedCuts cuts;
    private final CutUnits units;
    private final ColumnGeneration generation;
    private final GapProgram gap;

    /** Searches and programs stop after so many nodes; beyond so many patterns nothing is decided. */
    FitProgram(MergedCuts cuts, CutUnits units, PatternTable table, int patterns, int nodes, Watch watch) {
        this.cuts = cuts;
        this.units = units;
        MergedCuts lengths = cuts.withCosts(units::capacity);
        generation = new ColumnGeneration(lengths, table, EVERY_LENGTH, watch);
        gap = new GapProgram(lengths, units, table.nodeLimit(), patterns, nodes, watch);
    }

    /**
     * What came of it.
     *
     * @param plan a plan with no more stock than allowed, if one was found
     * @param isNone true when there is none, so far as {@code proof} goes
     */
    record Outcome(Optional<PatternPlan> plan, boolean isNone, Bound.Proof proof) {}

    /** Looks for a plan with at most the greatest numbers of the residual; begins with the patterns given. */
    Outcome solve(ResidualProblem settled, Collection<Pattern> pool) {
        ResidualProblem residual = settled.withoutLeast();
        long room = room(residual);
        Relaxation relaxed = generation.tighten(residual, pool);
        if (relaxed.bound() > room) {
            return new Outcome(Optional.empty(), true, Bound.Proof.PATTERN_LP);
        }
        if (relaxed.prices().isEmpty()) {
            return new Outcome(Optional.empty(), false, Bound.Proof.PATTERN_LP);
        }
        GapProgram.Outcome outcome = gap.solve(residual, relaxed.prices().get(), relaxed.bound(), room);
        Optional<PatternPlan> plan = outcome.plan().map(this::atCost);
        return new Outcome(plan, outcome.decided() && plan.isEmpty(), Bound.Proof.INTEGER_PROGRAM);
    }

    private long room(ResidualProblem residual) {
        long room = 0;
        for (int k = 0; k < cuts.kinds().size(); k++) {
            room = Math.addExact(room, Math.multiplyExact(residual.most(k), units.capacity(k)));
        }
        return room;
    }

    private PatternPlan atCost(PatternPlan byLength) {
        PatternPlan plan = new PatternPlan(cuts);
        byLength.times().forEach(plan::add);
        return plan;
    }
}
