package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * Lays a loop that leaves out at least so many price units: bounded passes over the pairs (units, turns) of least objective,
 * each a proof that there is no such loop or the loop itself. Where a pass needs too many states a beam looks for a loop.
 */
final class LimitedLaying {
    /** States in a layer of a lossless pass: chosen, not measured. */
    private static final int MOST_PER_LAYER = 250_000;

    /** As in {@link BoundedLaying}. */
    private static final int[] BEAMS = {3_000, 20_000};

    /** As in {@link BoundedLaying}. */
    private static final int MOST_IN_BEAM = 22_000_000;

    /** As in {@link BoundedLaying}. */
    private static final int BEAM_REACH = 40;
    /** More numbers of units than these are not looked at: each costs a linear program; chosen, not measured. */
    private static final int MOST_FRONTS = 5;

    private final BlockProblem blockProblem;
    private final PriceUnits prices;
    private final ConfigurationProgram program;
    private final int nodes;
    private final int turnCost;
    private final int least;
    private final int dearest;
    private final long mostInAll;
    private final List<Front> fronts = new ArrayList<>();

    private int[] best = {};
    private long bestObjective = Long.MAX_VALUE / 4;
    private long spent;

    /** What is known about loops with one number of units. */
    private static final class Front {
        private final ReducedCosts reducedCosts;
        private long proved;
        private boolean done;

        Front(ReducedCosts reducedCosts) {
            this.reducedCosts = reducedCosts;
            this.proved = reducedCosts.shapeBound();
        }
    }

    LimitedLaying(BlockProblem blockProblem, int leastUnits) {
        this.blockProblem = blockProblem;
        this.prices = new PriceUnits(blockProblem.frontier());
        this.program = new ConfigurationProgram(new Configurations(blockProblem.frontier()), prices);
        this.nodes = blockProblem.frontier().size();
        this.turnCost = blockProblem.frontier().turnCost();
        int least = Math.max(leastUnits, prices.first());
        boolean odd = prices.step() == 2 && Math.floorMod(least - prices.first(), 2) == 1;
        this.least = odd ? least + 1 : least;
        this.dearest =
                Math.max(1, IntStream.range(0, nodes).map(prices::units).max().orElse(1));
        this.mostInAll = blockProblem.problem().limit().totalStates() / 2;
    }

    Answer<LoopSolution> solve() {
        if (least > prices.unitsFrom(0)) {
            return Answer.none("no loop is that short");
        }
        open(least);
        while (spent < mostInAll) {
            openWhatMayBeBetter();
            Front front = fronts.stream()
                    .filter(f -> !f.done && f.proved <= mostShape(f))
                    .min(Comparator.comparingLong(this::objective))
                    .orElse(null);
            if (front == null || objective(front) >= bestObjective) {
                break;
            }
            attempt(front);
        }
        return outcome();
    }

    /** A loop turns at each of its nodes at most, and so many units are so many nodes at least that it does not pass. */
    private long mostShape(Front front) {
        long passed = nodes - (front.reducedCosts.units() + dearest - 1L) / dearest;
        return blockProblem.mostShape(passed);
    }

    private void open(int units) {
        fronts.add(new Front(program.reducedCosts(units)));
    }

    private long objective(Front front) {
        return front.proved + prices.price() * front.reducedCosts.units();
    }

    /** A further unit costs its price and saves what the program says; fronts in a row tell when it pays. */
    private void openWhatMayBeBetter() {
        int next = fronts.get(fronts.size() - 1).reducedCosts.units() + prices.step();
        long asked = fronts.stream()
                .filter(f -> !f.done && f.proved <= mostShape(f))
                .mapToLong(this::objective)
                .min()
                .orElse(Long.MAX_VALUE / 4);
        boolean maybe = 4L * turnCost + prices.price() * next <= Math.min(asked, bestObjective - 1);
        if (fronts.size() < MOST_FRONTS && next <= prices.unitsFrom(0) && maybe) {
            open(next);
        }
    }

    private void attempt(Front front) {
        BoundedSweep sweep = new BoundedSweep(blockProblem, prices, front.reducedCosts, front.proved);
        sweep.runExactly(MOST_PER_LAYER, mostInAll - spent);
        spent += Math.max(1, sweep.total());
        if (sweep.found().length > 0) {
            front.done = true;
            keep(front, sweep);
        } else if (sweep.truncated()) {
            front.done = true;
            for (int beam : BEAMS) {
                scout(front, Math.min(beam, MOST_IN_BEAM / nodes));
            }
        } else {
            front.proved = front.reducedCosts.attainable(front.proved + 1);
        }
    }

    private void scout(Front front, int beam) {
        long beaten = bestObjective - 1 - prices.price() * front.reducedCosts.units();
        boolean whole = !blockProblem.frontier().pricesPieces();
        long target = Math.min(
                front.proved + (long) BEAM_REACH * turnCost,
                whole ? beaten - Math.floorMod(beaten, 2L * turnCost) : beaten);
        if (target < front.proved) {
            return;
        }
        BoundedSweep sweep = new BoundedSweep(blockProblem, prices, front.reducedCosts, target);
        sweep.runBeam(beam, Long.MAX_VALUE);
        spent += sweep.total();
        if (sweep.found().length > 0) {
            keep(front, sweep);
        }
    }

    private void keep(Front front, BoundedSweep sweep) {
        long objective = sweep.shape() + prices.price() * front.reducedCosts.units();
        if (objective < bestObjective) {
            best = sweep.found();
            bestObjective = objective;
        }
    }

    private Answer<LoopSolution> outcome() {
        if (best.length == 0) {
            return blockProblem.tooWide("the work limit came after " + spent + " states");
        }
        CycleTrace trace = blockProblem.trace(best);
        OptionalInt bound = fronts.stream()
                .filter(f -> !blockProblem.frontier().pricesPieces()
                        && prices.isUniform()
                        && f.reducedCosts.units() == trace.leftOut())
                .mapToInt(f -> (int) Math.min(trace.turns(), f.proved / turnCost))
                .findFirst();
        return Answer.found(blockProblem.solution(best, bound, OptionalInt.empty(), List.of()));
    }
}
