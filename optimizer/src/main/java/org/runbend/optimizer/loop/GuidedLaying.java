package org.runbend.optimizer.loop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Lays the loop of one block by guided passes. Always the pair (units left out, turns) of least objective that is still
 * open is asked for; a pass that fails without loss proves that the pair is impossible, so the first loop found is best
 * if all passes before it were lossless. Where a pass needs too many states, a beam looks for a loop instead; what was
 * proved before stays proved.
 */
final class GuidedLaying {
    private static final int MOST_PER_LAYER = 400_000;
    private static final int[] BEAMS = {3_000, 20_000};
    private static final int MOST_IN_BEAM = 22_000_000;
    /** How far above the bound a beam may go, in turns. */
    private static final int BEAM_REACH = 40;
    /** Where so many numbers of units are too wide to ask about, so are the others. */
    private static final int MOST_STALLS = 3;

    private final Setting setting;
    private final PriceUnits prices;
    private final GuideProgram program;
    private final int nodes;
    private final long mostInAll;
    private final int mostPerLayer;
    private final List<Front> fronts = new ArrayList<>();

    private int[] best = {};
    private long bestObjective = Long.MAX_VALUE / 4;
    private long spent;
    private int stalls;

    /** What is known about loops with one number of units. */
    private static final class Front {
        private final Guide guide;
        private int proved;
        private int next;
        private boolean stalled;

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
        while (spent < mostInAll / 2 && stalls < MOST_STALLS) {
            openWhatMayBeBetter();
            Front front =
                    asked().min(Comparator.comparingLong(this::nextObjective)).orElse(null);
            if (front == null || nextObjective(front) >= bestObjective) {
                break;
            }
            attempt(front);
        }
        if (best.length == 0 && stalls > 0) {
            mergeCover();
        }
        return outcome();
    }

    /** The last resort when no beam came through. */
    private void mergeCover() {
        best = new MergedCover(setting, 1).find();
        if (best.length > 0) {
            bestObjective = setting.objective(best);
        }
    }

    /** Fronts of which more can be asked without loss. */
    private Stream<Front> asked() {
        return fronts.stream().filter(front -> front.next <= nodes && !front.stalled);
    }

    private long nextObjective(Front front) {
        return front.next + prices.price() * front.guide.units();
    }

    private long provedObjective(Front front) {
        return front.proved + prices.price() * front.guide.units();
    }

    private void open(int units) {
        fronts.add(new Front(program.guide(units)));
    }

    /** Opens the next number of units while its bound is below all that is still asked for. */
    private void openWhatMayBeBetter() {
        while (nextUnits() <= prices.unitsFrom(0)) {
            long bound = boundOfUnopened();
            long least = asked().mapToLong(this::nextObjective).min().orElse(bestObjective);
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

    /** Asks without loss for a loop of the next number of turns. */
    private void attempt(Front front) {
        GuidedSweep sweep = new GuidedSweep(setting, prices, front.guide, front.next);
        sweep.runExactly(mostPerLayer, mostInAll / 2 - spent);
        spent += Math.max(1, sweep.total());
        if (sweep.found().length > 0) {
            keep(front, sweep);
        } else if (sweep.cut()) {
            front.stalled = true;
            stalls++;
            for (int beam : BEAMS) {
                scout(front, Math.min(beam, MOST_IN_BEAM / nodes));
            }
        } else {
            front.next += 2;
            front.proved = front.next;
        }
    }

    /** Looks with a beam for a loop that beats the best. */
    private void scout(Front front, int beam) {
        long beaten = bestObjective - 1 - prices.price() * front.guide.units();
        int target = (int) Math.min(front.proved + BEAM_REACH, beaten - Math.floorMod(beaten, 2));
        if (target < front.proved) {
            return;
        }
        GuidedSweep sweep = new GuidedSweep(setting, prices, front.guide, target);
        sweep.runBeam(beam, mostInAll - spent);
        spent += sweep.total();
        if (sweep.found().length > 0) {
            keep(front, sweep);
        }
    }

    private void keep(Front front, GuidedSweep sweep) {
        if (!front.stalled) {
            front.next = nodes + 1;
        }
        long objective = sweep.turns() + prices.price() * front.guide.units();
        if (objective < bestObjective) {
            best = sweep.found();
            bestObjective = objective;
        }
    }

    private int unitsOf(int[] legs) {
        return IntStream.range(0, nodes)
                .filter(t -> legs[t] == 0)
                .map(prices::units)
                .sum();
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
            bound = Math.min(bound, front.proved > nodes ? bound : provedObjective(front));
            turns = front.guide.units() == unitsOf(best) ? front.proved : turns;
        }
        CycleTrace trace = setting.trace(best);
        boolean asked = prices.isUniform() && turns < Integer.MAX_VALUE;
        int turnBound = asked ? turns : setting.turnBound(bound, trace.leftOut());
        return new LoopOutcome.Found(setting.solution(
                best, OptionalInt.of(Math.min(trace.turns(), turnBound)), OptionalInt.of((int) bound), List.of()));
    }
}
