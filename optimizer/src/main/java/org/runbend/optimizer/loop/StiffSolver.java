package org.runbend.optimizer.loop;

import java.util.List;
import java.util.OptionalInt;

/**
 * Lays a loop for stiff pipe: no two turns follow each other but over the port link, which is not laid. So corners find
 * room for a radius up to one spacing.
 *
 * <p>Method: a narrow beam for a ceiling, then the frontier program without loss under it; what is not proved within the
 * work limit has no bound. A bound is that of loops of this kind.
 */
public final class StiffSolver {
    private static final int[] BEAMS = {3_000, 20_000};

    /** A solver without settings; every limit comes with the problem. */
    public StiffSolver() {}

    /** Lays the loop, or says why not. */
    public LoopOutcome solve(LoopProblem problem) {
        List<PortBlock> blocks = PortBlock.of(problem);
        if (blocks.isEmpty()) {
            return new LoopOutcome.NoLoop("no port pair lies on a ring of linked nodes");
        }
        Setting setting = blocks.get(0).setting(problem);
        if (!setting.isRepresentable()) {
            return setting.tooWide("no state was tried");
        }
        long mostInAll = problem.limit().totalStates() / 3;
        StiffSweep best = null;
        for (int beam : BEAMS) {
            StiffSweep sweep = new StiffSweep(setting, StiffSweep.NONE);
            sweep.run(beam, mostInAll);
            best = best == null || sweep.best() < best.best() ? sweep : best;
            if (!sweep.cut()) {
                return proved(setting, sweep);
            }
        }
        StiffSweep exact = new StiffSweep(setting, best.best());
        exact.run((int) problem.limit().statesPerLayer(), mostInAll);
        return exact.cut() ? unproved(setting, exact.best() < best.best() ? exact : best) : proved(setting, exact);
    }

    private static LoopOutcome proved(Setting setting, StiffSweep sweep) {
        if (sweep.found().length == 0) {
            return new LoopOutcome.NoLoop("every ring through a port pair has two turns in a row");
        }
        OptionalInt turns = OptionalInt.of(
                setting.turnBound(sweep.best(), setting.trace(sweep.found()).leftOut()));
        return new LoopOutcome.Found(
                setting.solution(sweep.found(), turns, OptionalInt.of((int) sweep.best()), List.of()));
    }

    private static LoopOutcome unproved(Setting setting, StiffSweep sweep) {
        return sweep.found().length == 0
                ? setting.tooWide("the work limit came first")
                : new LoopOutcome.Found(
                        setting.solution(sweep.found(), OptionalInt.empty(), OptionalInt.empty(), List.of()));
    }
}
