package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.StraightCost;
import org.runbend.optimizer.loop.LoopListener;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.TradeOff;
import org.runbend.optimizer.loop.WorkLimit;

/**
 * Lays the loop of one block by bounded passes. Always the pair (units left out, turns) of least objective that is still
 * open is asked for; a pass that fails without loss proves that the pair is impossible, so the first loop found is best
 * if all passes before it were lossless. Where passes become long, beams look for loops, which are then improved window
 * by window; the passes go on only for what would be better still. What was proved stays proved.
 */
final class BoundedLaying {
    /** States in a layer of a lossless pass: chosen for memory, some hundred MB; not measured. */
    private static final int MOST_PER_LAYER = 2_000_000;
    /** Work for a pair of nodes: people wait longer for large floors; chosen, not measured. */
    private static final long STATES_PER_PAIR = 140;
    /** Work after which a loop is wanted before the passes go on; chosen, not measured. */
    private static final long PATIENCE = 8_000_000;

    /**
     * States a layer of the beams, the narrow one first: 20,000 found 76 turns on 628 places with pillars, where
     * lossless passes gave up, when it came; 3,000 was chosen, not measured.
     */
    private static final int[] BEAMS = {3_000, 20_000};

    /** States of a beam in all layers: chosen, not measured. */
    private static final int MOST_IN_BEAM = 22_000_000;

    /** States a layer of the beam that is run where nothing else found a loop: chosen, not measured. */
    private static final int ROUGH_BEAM = 1_500;
    /** States in all layers of beams that meet; chosen, not measured. */
    private static final int MOST_NARROW = 1_200_000;

    /** The same of wide beams that meet: chosen, not measured. */
    private static final int MOST_WIDE = 5_000_000;
    /** Pairs of nodes for each state of a layer of a wide beam; a narrow one has half of them; chosen, not measured. */
    private static final int PAIRS_PER_STATE = 50;

    /** States a layer of a beam at least: chosen, not measured. */
    private static final int LEAST_BEAM = 200;

    /** How far above the bound a beam may go, in turns; chosen, not measured. */
    private static final int BEAM_REACH = 40;
    /** Numbers of units for which beams look for loops; chosen, not measured. */
    private static final int MOST_SCOUTED = 3;
    /** Share of all work that windows may do, for each loop found by a beam; chosen, not measured. */
    private static final int WINDOW_SHARE = 12;
    /** The same for the best of them; chosen, not measured. */
    private static final int POLISH_SHARE = 3;

    /** A gap to the bound that is worth another beginning; chosen, not measured. */
    private static final double WIDE_GAP = 0.02;

    private final BlockProblem blockProblem;
    private final LoopListener listener;
    private final PriceUnits prices;
    private final ConfigurationProgram program;
    private final int nodes;
    private final int turnCost;
    private final boolean pricesPieces;
    private final long mostShape;
    private final long mostInAll;
    private final Passes passes;
    private final List<Front> fronts = new ArrayList<>();
    private final Map<Integer, ReducedCosts> reducedCostsByUnits = new TreeMap<>();
    /** Least turns met, by nodes left out. */
    private final Map<Integer, Integer> met = new TreeMap<>();

    private int[] best = {};
    private long bestObjective = Long.MAX_VALUE / 4;
    /** States of passes, and those of beams and windows. */
    private long passed;

    private long spent;
    private boolean scouted;

    /** What is known about loops with one number of units. */
    private static final class Front {
        private final ReducedCosts reducedCosts;
        private long proved;
        private boolean done;
        private boolean stalled;

        Front(ReducedCosts reducedCosts) {
            this.reducedCosts = reducedCosts;
            this.proved = reducedCosts.shapeBound();
        }
    }

    BoundedLaying(BlockProblem blockProblem) {
        this(blockProblem, LoopListener.SILENT);
    }

    BoundedLaying(BlockProblem blockProblem, LoopListener listener) {
        this.listener = listener;
        WorkLimit limit = blockProblem.problem().limit();
        Prelude prelude = new Prelude(blockProblem);
        this.blockProblem = prelude.blockProblem();
        this.prices = prelude.prices();
        this.program = prelude.program();
        this.reducedCostsByUnits.putAll(prelude.reducedCostsByUnits());
        this.passed = prelude.spent();
        this.nodes = blockProblem.frontier().size();
        this.turnCost = blockProblem.frontier().turnCost();
        this.pricesPieces = blockProblem.frontier().pricesPieces();
        this.mostShape = blockProblem.mostShape(nodes);
        this.mostInAll = Math.min(limit.totalStates(), Math.max(2 * PATIENCE, STATES_PER_PAIR * nodes * nodes));
        this.passes = new Passes(
                this.blockProblem.frontier(), prices, (int) Math.min(MOST_PER_LAYER, limit.statesPerLayer()), prelude);
    }

    Answer<LoopSolution> solve() {
        reducedCostsByUnits.keySet().forEach(this::open);
        while (passed < mostInAll) {
            openWhatMayBeBetter();
            Front front =
                    asked().min(Comparator.comparingLong(this::provedObjective)).orElse(null);
            if (front == null || provedObjective(front) >= bestObjective) {
                break;
            }
            attempt(front);
            if (passed > PATIENCE) {
                scout();
            }
        }
        if (best.length == 0) {
            scout();
        }
        if (pricesPieces && bestObjective > provedBound() * (1 + WIDE_GAP)) {
            beginPlainly();
        }
        return outcome();
    }

    /** Begins with a known loop and makes it better window by window; bounds are those of the programs alone. */
    Answer<LoopSolution> solveFrom(List<Integer> cycle) {
        reducedCostsByUnits.keySet().forEach(this::open);
        int[] legs = blockProblem.legs(cycle);
        if (legs.length == 0) {
            return solve();
        }
        openWhatMayBeBetter();
        improve(legs, mostInAll / WINDOW_SHARE);
        return outcome();
    }

    /** Fronts of which more can be asked without loss. */
    private Stream<Front> asked() {
        return fronts.stream().filter(front -> front.proved <= mostShape && !front.done && !front.stalled);
    }

    private long provedObjective(Front front) {
        return front.proved + prices.price() * front.reducedCosts.units();
    }

    private void open(int units) {
        fronts.add(new Front(reducedCosts(units)));
    }

    private ReducedCosts reducedCosts(int units) {
        return reducedCostsByUnits.computeIfAbsent(units, program::reducedCosts);
    }

    /** Opens the next number of units while its bound is below all that is still asked for. */
    private void openWhatMayBeBetter() {
        while (nextUnits() <= prices.unitsFrom(0)) {
            long bound = boundOfUnopened();
            long least = asked().mapToLong(this::provedObjective).min().orElse(bestObjective);
            if (bound > Math.min(least, bestObjective - 1)) {
                return;
            }
            open(nextUnits());
        }
    }

    private int nextUnits() {
        return fronts.get(fronts.size() - 1).reducedCosts.units() + prices.step();
    }

    /** Least objective, rounded up, of loops with more units than any front. */
    private long boundOfUnopened() {
        if (nextUnits() > prices.unitsFrom(0)) {
            return Long.MAX_VALUE / 4;
        }
        long best = 4L * turnCost + prices.price() * nextUnits();
        for (Front front : fronts) {
            best = Math.max(best, front.reducedCosts.objectiveFrom(nextUnits(), prices.price()));
        }
        return best;
    }

    /**
     * Asks without loss for a loop of the cheapest shape that is still open; where short pieces have a price, within a turn above
     * that, as long as it would be the best.
     */
    private void attempt(Front front) {
        long beaten = bestObjective - 1 - prices.price() * front.reducedCosts.units();
        long target = pricesPieces ? Math.min(front.proved + turnCost, beaten) : front.proved;
        int[] found = passes.ask(front.reducedCosts, target, scouted ? mostInAll - passed : PATIENCE);
        passed += Math.max(1, passes.total());
        if (found.length == 0 && passes.truncated() && !scouted) {
            scout();
            return;
        }
        if (found.length > 0) {
            keepIfBetter(found);
            front.stalled = passes.truncated();
            front.done = !front.stalled;
            front.proved = front.done ? shape(found) : front.proved;
        } else if (passes.truncated()) {
            front.stalled = true;
            scout();
        } else {
            front.proved = front.reducedCosts.attainable(target + 1);
        }
    }

    private long shape(int[] loop) {
        return prices.isInside() ? blockProblem.objective(loop) : blockProblem.shape(loop);
    }

    /** Looks once for good loops without proof: with beams, or else by merging cycles; then window by window. */
    private void scout() {
        boolean needless = scouted || best.length > 0;
        scouted = true;
        if (needless) {
            return;
        }
        Sweep rough = new Sweep(blockProblem.frontier(), blockProblem.encoding(), Sweep.NONE);
        rough.runBeam(ROUGH_BEAM);
        spent += rough.total();
        if (rough.best() < Sweep.NONE) {
            int[] legs = rough.trace();
            Frontier frontier = blockProblem.frontier();
            int port = blockProblem.portLink(legs);
            improve(new CyclePatching(frontier, legs, frontier.linkOf(port)).patch(), mostInAll / WINDOW_SHARE);
        }
        meet();
        if (best.length == 0) {
            promising().forEach(this::beam);
        }
        if (best.length == 0) {
            int[] merged = new PatchedCover(blockProblem, 1).find();
            if (merged.length > 0) {
                improve(merged, mostInAll / WINDOW_SHARE);
            }
        }
        if (best.length > 0) {
            improve(best, mostInAll / POLISH_SHARE);
        }
    }

    private List<Front> promising() {
        return fronts.stream()
                .filter(front -> front.proved <= mostShape)
                .sorted(Comparator.comparingLong(this::provedObjective))
                .limit(MOST_SCOUTED)
                .toList();
    }

    /** Beams from both ends: narrow ones for a loop soon, then wide ones. */
    private void meet() {
        BidirectionalBeam beams = new BidirectionalBeam(blockProblem.frontier(), prices);
        int wide = Math.max(LEAST_BEAM, nodes * nodes / PAIRS_PER_STATE);
        List<Front> promising = promising();
        promising.forEach(front -> meet(beams, front, Math.min(wide / 2, MOST_NARROW / nodes)));
        promising.forEach(front -> meet(beams, front, Math.min(wide, MOST_WIDE / nodes)));
        spent += beams.spent();
    }

    private void meet(BidirectionalBeam beams, Front front, int beam) {
        int[] loop = beams.find(front.reducedCosts, front.proved + (long) BEAM_REACH * turnCost, beam);
        if (loop.length > 0) {
            improve(loop, mostInAll / WINDOW_SHARE);
        }
    }

    private void beam(Front front) {
        for (int beam : BEAMS) {
            BoundedSweep sweep = new BoundedSweep(
                    blockProblem, prices, front.reducedCosts, front.proved + (long) BEAM_REACH * turnCost);
            sweep.runBeam(Math.min(beam, MOST_IN_BEAM / nodes), mostInAll - spent);
            spent += sweep.total();
            if (sweep.found().length > 0) {
                improve(sweep.found(), mostInAll / WINDOW_SHARE);
                return;
            }
        }
    }

    private void improve(int[] loop, long most) {
        keepIfBetter(loop);
        long goal = Math.min(
                boundOfUnopened(),
                fronts.stream()
                        .filter(front -> front.proved <= mostShape)
                        .mapToLong(this::provedObjective)
                        .min()
                        .orElse(0));
        WindowSearch windows = new WindowSearch(blockProblem, prices, this::reducedCosts, most, goal);
        keepIfBetter(windows.improve(loop));
        spent += windows.spent();
    }

    private void keepIfBetter(int[] loop) {
        TradeOff pair = blockProblem.tradeOff(loop);
        met.merge(pair.leftOut(), pair.turns(), Math::min);
        if (blockProblem.objective(loop) < bestObjective) {
            best = loop;
            bestObjective = blockProblem.objective(loop);
            listener.better(pair, () -> blockProblem.cycle(loop));
        }
    }

    private long provedBound() {
        long bound = Math.min(bestObjective, boundOfUnopened());
        for (Front front : fronts) {
            bound = Math.min(bound, front.proved > mostShape ? bound : provedObjective(front));
        }
        return bound;
    }

    /** Lays a loop for which straight pieces cost nothing, which is found more easily on wide floors, and makes it better. */
    private void beginPlainly() {
        LoopProblem asked = blockProblem.problem();
        LoopProblem plain = new LoopProblem(
                asked.graph().copy().straightCost(StraightCost.NONE).build(),
                asked.ports(),
                asked.preference(),
                asked.limit());
        new LoopSolver()
                .solve(plain)
                .value()
                .map(loop -> blockProblem.legs(loop.cycle()))
                .filter(legs -> legs.length > 0)
                .ifPresent(legs -> improve(legs, mostInAll / POLISH_SHARE));
    }

    private Answer<LoopSolution> outcome() {
        if (best.length == 0) {
            return fronts.stream().allMatch(front -> front.proved > mostShape) && nextUnits() > prices.unitsFrom(0)
                    ? Answer.none("every ring through a port pair needs a bend that is forbidden")
                    : blockProblem.tooWide("the work limit came after " + (passed + spent) + " states");
        }
        long bound = provedBound();
        best = new EqualLoops(blockProblem, prices).choose(best, reducedCosts(EqualLoops.units(prices, best)));
        CycleTrace trace = blockProblem.trace(best);
        OptionalInt turnBound = provedTurns(trace.leftOut(), trace.turns());
        return Answer.found(blockProblem.solution(
                best,
                turnBound.isPresent() ? turnBound : blockProblem.turnBound(bound, trace),
                OptionalInt.of((int) bound),
                pairsBeside(trace.leftOut())));
    }

    /** The other pairs met, each with what was proved about it. */
    private List<TradeOff> pairsBeside(int leftOut) {
        List<TradeOff> pairs = new ArrayList<>();
        met.forEach((left, turns) -> {
            if (left != leftOut) {
                pairs.add(new TradeOff(left, turns, provedTurns(left, turns)));
            }
        });
        return pairs;
    }

    /** Where short pieces have a price too, what a shape costs at least says nothing of its turns. */
    private OptionalInt provedTurns(int left, int turns) {
        return fronts.stream()
                .filter(front -> !pricesPieces && prices.isUniform() && front.reducedCosts.units() == left)
                .mapToInt(front -> (int) Math.min(turns, front.proved / turnCost))
                .findFirst();
    }
}
