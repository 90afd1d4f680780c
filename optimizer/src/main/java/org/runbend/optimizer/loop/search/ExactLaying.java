package org.runbend.optimizer.loop.search;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.loop.LoopListener;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * Lays the loop of one narrow block by the frontier program: first with a narrow beam for a ceiling, then without loss,
 * then once more among the loops of least objective for the lower levels; an even loop is looked for from there. If the work
 * limit comes first, the beam's loop is the answer, without bounds.
 */
final class ExactLaying {
    /** States a layer of the first beam, whose loop is the ceiling: chosen, not measured. */
    private static final int BEAM = 1500;

    private final BlockProblem blockProblem;
    private final LoopListener listener;

    ExactLaying(BlockProblem blockProblem) {
        this(blockProblem, LoopListener.SILENT);
    }

    ExactLaying(BlockProblem blockProblem, LoopListener listener) {
        this.blockProblem = blockProblem;
        this.listener = listener;
    }

    Answer<LoopSolution> solve() {
        Frontier frontier = blockProblem.frontier();
        StateEncoding encoding = blockProblem.encoding();
        Sweep beam = new Sweep(frontier, encoding, Sweep.NONE);
        beam.runBeam(BEAM);
        Sweep exact = beam;
        if (beam.truncated()) {
            if (beam.best() < Sweep.NONE) {
                int[] found = beam.trace();
                listener.better(blockProblem.tradeOff(found), () -> blockProblem.cycle(found));
            }
            exact = new Sweep(frontier, encoding, beam.best());
            exact.runExactly(blockProblem.problem().limit());
        }
        if (exact.truncated()) {
            return unproved(beam, exact);
        }
        if (exact.best() == Sweep.NONE) {
            return Answer.none("every ring through a port pair needs a bend that is forbidden");
        }
        return proved(legs(encoding, exact), exact.best());
    }

    private Answer<LoopSolution> unproved(Sweep beam, Sweep exact) {
        if (beam.best() == Sweep.NONE) {
            return blockProblem.tooWide(
                    String.format(Locale.ROOT, "the work limit came after %d states", exact.total()));
        }
        return Answer.found(blockProblem.solution(beam.trace(), OptionalInt.empty(), OptionalInt.empty(), List.of()));
    }

    private Answer<LoopSolution> proved(int[] legs, long best) {
        OptionalInt turnBound = blockProblem.turnBound(best, blockProblem.trace(legs));
        return Answer.found(blockProblem.solution(legs, turnBound, OptionalInt.of((int) best), List.of()));
    }

    private int[] legs(StateEncoding encoding, Sweep exact) {
        if (!exact.whole()) {
            return exact.trace();
        }
        LoopProblem problem = blockProblem.problem();
        int[] longest = new BestOfEqual(blockProblem.frontier(), encoding, problem.preference()).choose(exact);
        return problem.preference().evenHeat() ? even(longest) : longest;
    }

    private int[] even(int[] legs) {
        PriceUnits prices = new PriceUnits(blockProblem.frontier());
        ConfigurationProgram program = new ConfigurationProgram(new Configurations(blockProblem.frontier()), prices);
        return new EqualLoops(blockProblem, prices).even(legs, program.reducedCosts(EqualLoops.units(prices, legs)));
    }
}
