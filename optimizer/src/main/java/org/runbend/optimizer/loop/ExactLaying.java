package org.runbend.optimizer.loop;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Lays the loop of one block by the frontier program: first with a narrow beam for a ceiling, then without loss, then
 * once more among the loops of least objective for the wishes of lower order.
 */
final class ExactLaying {
    private static final int BEAM = 1500;
    /** Beyond 62 open links a mask of slots no longer fits one word; such floors are hopeless here anyway. */
    private static final int MOST_SLOTS = 62;

    private final LoopProblem problem;
    private final List<PortPair> ports;
    private final Region region;

    ExactLaying(LoopProblem problem, BiconnectedBlock block, List<PortPair> ports) {
        this.problem = problem;
        this.ports = List.copyOf(ports);
        this.region = new Region(problem.graph(), block);
    }

    LoopOutcome solve() {
        Frontier frontier = frontier();
        if (frontier.slotCount() > MOST_SLOTS) {
            return tooWide(frontier, "no state was tried");
        }
        Packing packing = new Packing(frontier.slotCount());
        Sweep beam = new Sweep(frontier, packing, Sweep.NONE);
        beam.runBeam(BEAM);
        Sweep exact = beam;
        if (beam.cut()) {
            exact = new Sweep(frontier, packing, beam.best());
            exact.runExactly(problem.limit());
        }
        if (exact.cut()) {
            return tooWide(frontier, String.format(Locale.ROOT, "the work limit came after %d states", exact.total()));
        }
        if (exact.best() == Sweep.NONE) {
            return new LoopOutcome.NoLoop("every ring through a port pair needs a bend that is forbidden");
        }
        return new LoopOutcome.Found(solution(frontier, legs(frontier, packing, exact), exact.best()));
    }

    private Frontier frontier() {
        int[] portNodes = ports.stream()
                .flatMapToInt(port -> IntStream.of(port.from(), port.to()))
                .map(region::local)
                .toArray();
        return new Frontier(region, new NodeOrder(region, portNodes).choose(), ports);
    }

    private LoopOutcome tooWide(Frontier frontier, String why) {
        return new LoopOutcome.TooWide(String.format(
                Locale.ROOT,
                "%d nodes with up to %d links open at once: %s",
                frontier.size(),
                frontier.slotCount(),
                why));
    }

    private int[] legs(Frontier frontier, Packing packing, Sweep exact) {
        if (!exact.whole()) {
            return exact.trace();
        }
        return new BestOfEqual(frontier, packing, problem.preference(), region.graph()).choose(exact);
    }

    private LoopSolution solution(Frontier frontier, int[] legs, long best) {
        CycleTrace trace = new CycleTrace(region.graph(), frontier, legs);
        PortPair port = trace.bestPort(ports);
        int turns = trace.turns();
        int leftOut = trace.leftOut();
        OptionalInt turnBound = OptionalInt.of(turnBound(best, leftOut));
        return new LoopSolution(
                trace.cycle(port),
                port,
                turns,
                leftOut,
                turnBound,
                (int) best,
                OptionalInt.of((int) best),
                List.of(new TradeOff(leftOut, turns, turnBound)));
    }

    /**
     * Every loop has turns + prices at least the optimum, and leaving out so many nodes costs no more than the dearest of
     * them; turns come in pairs.
     */
    private int turnBound(long best, int leftOut) {
        long dearest = IntStream.range(0, region.size())
                .map(i -> -region.graph().price(region.node(i)))
                .sorted()
                .limit(leftOut)
                .mapToLong(price -> -price)
                .sum();
        long bound = Math.max(4, best - dearest);
        return (int) (bound + bound % 2);
    }
}
