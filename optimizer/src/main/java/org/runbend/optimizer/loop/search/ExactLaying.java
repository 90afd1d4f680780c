package org.runbend.optimizer.loop.search;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.runbend.optimizer.loop.LoopListener;
import org.runbend.optimizer.loop.LoopOutcome;
import org.runbend.optimizer.loop.LoopProblem;

/**
 * Lays the loop of one narrow block by the frontier program: first with a narrow beam for a ceiling, then without loss,
 * then once more among the loops of least objective for the wishes of lower order; an even loop is looked for from there. If the work limit comes first, the
 * beam's loop is the answer, without bounds.
 */
final class ExactLaying {
    /** States a layer of the first beam, whose loop is the ceiling: chosen, not measured. */
    private static final int BEAM = 1500;

    private final Setting setting;
    private final LoopListener listener;

    ExactLaying(Setting setting) {
        this(setting, LoopListener.SILENT);
    }

    ExactLaying(Setting setting, LoopListener listener) {
        this.setting = setting;
        this.listener = listener;
    }

    LoopOutcome solve() {
        Frontier frontier = setting.frontier();
        Packing packing = setting.packing();
        Sweep beam = new Sweep(frontier, packing, Sweep.NONE);
        beam.runBeam(BEAM);
        Sweep exact = beam;
        if (beam.cut()) {
            if (beam.best() < Sweep.NONE) {
                listener.better(setting.tradeOff(beam.trace()));
            }
            exact = new Sweep(frontier, packing, beam.best());
            exact.runExactly(setting.problem().limit());
        }
        if (exact.cut()) {
            return unproved(beam, exact);
        }
        if (exact.best() == Sweep.NONE) {
            return new LoopOutcome.NoLoop("every ring through a port pair needs a bend that is forbidden");
        }
        return proved(legs(packing, exact), exact.best());
    }

    private LoopOutcome unproved(Sweep beam, Sweep exact) {
        if (beam.best() == Sweep.NONE) {
            return setting.tooWide(String.format(Locale.ROOT, "the work limit came after %d states", exact.total()));
        }
        return new LoopOutcome.Found(
                setting.solution(beam.trace(), OptionalInt.empty(), OptionalInt.empty(), List.of()));
    }

    private LoopOutcome proved(int[] legs, long best) {
        OptionalInt turnBound =
                OptionalInt.of(setting.turnBound(best, setting.trace(legs).leftOut()));
        return new LoopOutcome.Found(setting.solution(legs, turnBound, OptionalInt.of((int) best), List.of()));
    }

    private int[] legs(Packing packing, Sweep exact) {
        if (!exact.whole()) {
            return exact.trace();
        }
        LoopProblem problem = setting.problem();
        int[] longest =
                new BestOfEqual(setting.frontier(), packing, problem.preference(), problem.graph()).choose(exact);
        return problem.preference().evenHeat() ? even(longest) : longest;
    }

    private int[] even(int[] legs) {
        PriceUnits prices = new PriceUnits(setting.frontier());
        GuideProgram program = new GuideProgram(new Configurations(setting.frontier()), prices);
        return new EqualLoops(setting, prices).even(legs, program.guide(EqualLoops.units(prices, legs)));
    }
}
