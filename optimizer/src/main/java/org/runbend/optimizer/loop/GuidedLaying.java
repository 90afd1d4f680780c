package org.runbend.optimizer.loop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;

/**
 * Lays the loop of one block by guided passes. Always the pair (units left out, turns) of least objective that is still
 * open is asked for; a pass that fails without loss proves that the pair is impossible, so the first loop found is best
 * if all passes before it were lossless.
 */
final class GuidedLaying {
    private static final int MOST_PER_LAYER = 400_000;

    private final Setting setting;
    private final PriceUnits prices;
    private final GuideProgram program;
    private final int nodes;
    private final long mostInAll;
    private final int mostPerLayer;
    private final List<Front> fronts = new ArrayList<>();

    private int[] best = {};
    private long bestObjective = Long.MAX_VALUE / 4;
    private int bestUnits;
    private long spent;

    /** What is known about loops with one number of units. */
    private static final class Front {
        private final Guide guide;
        private int proved;
        private int next;

        Front(Guide guide) {
            this.guide = guide;
            this.proved = guide.turnBound();
            this.next = proved;
        }
    }

    GuidedLaying(Setting setting) {
        this.setting = setting;
        this.prices = new PriceUnits(setting.frontier());
        this.program = new GuideProgram(new Configurations(setting.frontier()), prices);
        this.nodes = setting.frontier().size();
        WorkLimit limit = setting.problem().limit();
        this.mostInAll = limit.totalStates();
        this.mostPerLayer = (int) Math.min(MOST_PER_LAYER, limit.statesPerLayer());
    }

    LoopOutcome solve() {
        open(prices.first());
        while (spent < mostInAll) {
            openWhatMayBeBetter();
            Front front = fronts.stream()
                    .filter(open -> open.next <= nodes)
                    .min(Comparator.comparingLong(this::nextObjective))
                    .orElse(null);
            if (front == null || nextObjective(front) >= bestObjective) {
                break;
            }
            attempt(front);
        }
        return outcome();
    }

    private long nextObjective(Front front) {
        return front.next + prices.price() * front.guide.units();
    }

    private void open(int units) {
        fronts.add(new Front(program.guide(units)));
    }

    /** Opens the next number of units while its bound is below all that is still asked for. */
    private void openWhatMayBeBetter() {
        while (nextUnits() <= prices.unitsFrom(0)) {
            long bound = boundOfUnopened();
            long least = fronts.stream()
                    .filter(open -> open.next <= nodes)
                    .mapToLong(this::nextObjective)
                    .min()
                    .orElse(Long.MAX_VALUE);
            if (bound > Math.min(least, bestObjective - 1)) {
                return;
            }
            open(nextUnits());
        }
    }

    private int nextUnits() {
        return fronts.get(fronts.size() - 1).guide.units() + prices.step();
    }

    /** Least objective, rounded up, of loops with more units than any front. */
    private long boundOfUnopened() {
        if (nextUnits() > prices.unitsFrom(0)) {
            return Long.MAX_VALUE / 4;
        }
        long best = 4 + prices.price() * nextUnits();
        for (Front front : fronts) {
            long parts = front.guide.objectiveFrom(nextUnits(), prices.price());
            best = Math.max(best, -Math.floorDiv(-parts, Guide.SCALE));
        }
        return best;
    }

    private void attempt(Front front) {
        GuidedSweep sweep = new GuidedSweep(setting, prices, front.guide, front.next);
        sweep.run(mostPerLayer, mostInAll - spent);
        spent += Math.max(1, sweep.total());
        if (sweep.found().length > 0) {
            best = sweep.found();
            bestUnits = front.guide.units();
            bestObjective = sweep.turns() + prices.price() * bestUnits;
            front.next = nodes + 1;
            return;
        }
        boolean lossless = !sweep.cut() && front.proved == front.next;
        front.next += 2;
        front.proved = lossless ? front.next : front.proved;
    }

    private LoopOutcome outcome() {
        if (best.length == 0) {
            return fronts.stream().allMatch(front -> front.proved > nodes) && nextUnits() > prices.unitsFrom(0)
                    ? new LoopOutcome.NoLoop("every ring through a port pair needs a bend that is forbidden")
                    : setting.tooWide("the work limit came after " + spent + " states");
        }
        long bound = Math.min(bestObjective, boundOfUnopened());
        int turns = Integer.MAX_VALUE;
        for (Front front : fronts) {
            bound = Math.min(bound, front.proved + prices.price() * front.guide.units());
            turns = front.guide.units() == bestUnits ? front.proved : turns;
        }
        CycleTrace trace = setting.trace(best);
        int turnBound = prices.isUniform() ? turns : setting.turnBound(bound, trace.leftOut());
        return new LoopOutcome.Found(setting.solution(
                best, OptionalInt.of(Math.min(trace.turns(), turnBound)), OptionalInt.of((int) bound), List.of()));
    }
}
