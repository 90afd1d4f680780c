package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.mip.Watch;

/**
 * Lays the stretches one after another, wrapping the rest of a stock piece around to the next stretch, as in preemptive
 * scheduling (McNaughton 1959). A state is cost so far, rest of the stock piece in hand, covered length and pieces; a state
 * that another equals or beats in all of them is dropped, and of the rest the most promising are kept.
 */
final class CoverBeam {
    private static final Comparator<State> PROMISING = Comparator.comparingDouble(State::rank)
            .thenComparingLong(State::cost)
            .thenComparingInt(State::pieces);

    private static final int[] NONE = {};

    private final CoverGrid grid;
    private final CoverProblem problem;
    private final Watch watch;
    private final int[] mostPieces;
    private final int width;
    private final double rate;
    private final double pieceWeight;
    private final List<Integer> bought = new ArrayList<>();
    private final List<Integer> shelf = new ArrayList<>();

    /**
     * {@code rate} is the price of a hundredth of mm by which states of different progress are compared, {@code
     * pieceWeight} what a piece more is held to cost in that comparison.
     */
    CoverBeam(CoverGrid grid, int width, double rate, double pieceWeight, Watch watch) {
        this.grid = grid;
        this.watch = watch;
        this.problem = grid.problem();
        mostPieces = problem.stretches().stream()
                .mapToInt(s -> grid.piecesOn(s.length()))
                .toArray();
        this.width = width;
        this.rate = rate;
        this.pieceWeight = pieceWeight;
        List<Integer> byLength = new ArrayList<>();
        for (int s = 0; s < problem.stock().size(); s++) {
            if (grid.gain(problem.stock().get(s)) > 0) {
                byLength.add(s);
            }
        }
        byLength.sort(Comparator.comparingLong(s -> -problem.stock().get(s).length()));
        for (int s : byLength) {
            Stock stock = problem.stock().get(s);
            if (stock.unlimited()) {
                bought.add(s);
            }
            for (int n = 0; !stock.unlimited() && n < Math.min(stock.available(), 500); n++) {
                shelf.add(s);
            }
        }
    }

    /** One piece laid, and everything before it. {@code used} is what the stretch in work has taken. */
    private record State(
            State before,
            int stretch,
            int steps,
            int plate,
            int openedStock,
            int plates,
            int nextShelf,
            long cost,
            long left,
            int inHand,
            long used,
            int onStretch,
            long covered,
            int pieces,
            double rank) {
        State nextStretch() {
            return new State(
                    before,
                    stretch,
                    steps,
                    plate,
                    openedStock,
                    plates,
                    nextShelf,
                    cost,
                    left,
                    inHand,
                    0,
                    0,
                    covered,
                    pieces,
                    rank);
        }

        boolean beats(State o) {
            return cost <= o.cost
                    && nextShelf <= o.nextShelf
                    && left >= o.left
                    && onStretch <= o.onStretch
                    && covered >= o.covered
                    && pieces <= o.pieces;
        }
    }

    /** The best plan for the stretches in this order, or null when none was found that costs at most {@code limit}. */
    CoverPlan plan(List<Integer> order, long limit) {
        State start = new State(null, -1, 0, -1, -1, 0, 0, 0, 0, -1, 0, 0, 0, 0, 0);
        List<State> states = List.of(start);
        long ahead = order.stream().mapToLong(this::reach).sum();
        for (int stretch : order) {
            if (watch.asksForEnd()) {
                return null;
            }
            ahead -= reach(stretch);
            states = overOne(states, stretch, ahead, limit);
        }
        return states.stream()
                .filter(s -> s.covered() >= problem.target())
                .min(Comparator.comparingLong(State::cost)
                        .thenComparingInt(State::pieces)
                        .thenComparing(Comparator.comparingLong(State::covered).reversed()))
                .map(this::laid)
                .orElse(null);
    }

    private long reach(int stretch) {
        return grid.reach(problem.stretches().get(stretch).length());
    }

    private List<State> overOne(List<State> states, int stretch, long ahead, long limit) {
        long least = problem.stretches().get(stretch).least();
        List<State> out = new ArrayList<>(least > 0 ? List.of() : states);
        List<State> frontier = states;
        while (!frontier.isEmpty()) {
            List<State> next = new ArrayList<>();
            frontier.forEach(s -> extend(s, stretch, next));
            next.removeIf(s -> s.cost() > limit);
            frontier = best(next, true);
            frontier.stream().filter(s -> s.used() >= least).forEach(s -> out.add(s.nextStretch()));
        }
        out.removeIf(s -> s.covered() + ahead < problem.target());
        return best(out, false);
    }

    private void extend(State s, int stretch, List<State> next) {
        long gap = s.used() > 0 ? problem.gap() : 0;
        long space = problem.stretches().get(stretch).length() - s.used() - gap;
        if (s.onStretch() >= mostPieces[stretch] || space < grid.length(grid.least())) {
            return;
        }
        for (int steps : sizes(space, s.left())) {
            next.add(after(s, stretch, steps, gap, -1, s.nextShelf()));
        }
        for (int stock : bought) {
            for (int steps : sizes(space, problem.stock().get(stock).length())) {
                next.add(after(s, stretch, steps, gap, stock, s.nextShelf()));
            }
        }
        for (int n = s.nextShelf(); n < Math.min(shelf.size(), s.nextShelf() + 4); n++) {
            int stock = shelf.get(n);
            for (int steps : sizes(space, problem.stock().get(stock).length())) {
                next.add(after(s, stretch, steps, gap, stock, n + 1));
            }
        }
    }

    /** Pieces worth trying in a space from a rest: the longest, and those that leave room for more on either side. */
    private int[] sizes(long space, long rest) {
        long most = Math.min(Math.min(space, rest) / problem.step(), grid.most());
        if (most < grid.least()) {
            return NONE;
        }
        if (grid.isLimited()) {
            return Arrays.stream(grid.sizes()).filter(u -> u <= most).toArray();
        }
        int[] found = new int[4 + 4 * bought.size()];
        int count = insert(found, 0, most, most);
        count = insert(found, count, grid.least(), most);
        count = insert(found, count, Math.floorDiv(space - problem.gap(), problem.step()) - grid.least(), most);
        count = insert(found, count, Math.floorDiv(rest - problem.kerf(), problem.step()) - grid.least(), most);
        for (int stock : bought) {
            long whole = Math.min(grid.most(), problem.stock().get(stock).length() / problem.step());
            for (int n = 1; n <= 4; n++) {
                long last = space - n * (grid.length(whole) + problem.gap());
                count = insert(found, count, Math.floorDiv(last, problem.step()), most);
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** Puts a size, if it is one, into the first {@code count} that are sorted, falling; returns how many there are then. */
    private int insert(int[] sorted, int count, long size, long most) {
        if (size < grid.least() || size > most) {
            return count;
        }
        int at = count;
        while (at > 0 && sorted[at - 1] <= size) {
            at--;
        }
        if (at < count && sorted[at] == size) {
            return count;
        }
        System.arraycopy(sorted, at, sorted, at + 1, count - at);
        sorted[at] = (int) size;
        return count + 1;
    }

    /** The longer rest stays in hand when a new stock piece is opened. */
    private State after(State s, int stretch, int steps, long gap, int opened, int nextShelf) {
        long length = grid.length(steps);
        boolean isNew = opened >= 0;
        long from = isNew ? problem.stock().get(opened).length() : s.left();
        long rest = Math.max(0, from - length - problem.kerf());
        boolean keepsOld = isNew && s.left() > rest;
        int plate = isNew ? s.plates() : s.inHand();
        long cost = s.cost() + (isNew ? problem.stock().get(opened).cost() : 0);
        long left = keepsOld ? s.left() : rest;
        long covered = s.covered() + gap + length;
        return new State(
                s,
                stretch,
                steps,
                plate,
                opened,
                s.plates() + (isNew ? 1 : 0),
                nextShelf,
                cost,
                left,
                keepsOld ? s.inHand() : plate,
                s.used() + gap + length,
                s.onStretch() + 1,
                covered,
                s.pieces() + 1,
                cost - rate * (covered + 0.98 * usable(left)) + pieceWeight * (s.pieces() + 1));
    }

    private long usable(long left) {
        return left < grid.length(grid.least()) ? 0 : left;
    }

    /** The most promising states that none beats; within a stretch only states of equal progress compete. */
    private List<State> best(List<State> states, boolean inStretch) {
        TreeMap<Long, List<State>> kept = new TreeMap<>();
        List<State> result = new ArrayList<>();
        states.sort(PROMISING);
        for (State s : states) {
            if (result.size() >= width) {
                break;
            }
            List<State> rivals = kept.computeIfAbsent(inStretch ? s.used() : 0, k -> new ArrayList<>());
            if (!isBeaten(s, rivals)) {
                rivals.add(s);
                result.add(s);
            }
        }
        return result;
    }

    private static boolean isBeaten(State s, List<State> rivals) {
        for (State r : rivals) {
            if (r.beats(s)) {
                return true;
            }
        }
        return false;
    }

    private CoverPlan laid(State last) {
        List<State> path = new ArrayList<>();
        for (State s = last; s.before() != null; s = s.before()) {
            path.add(0, s);
        }
        CoverPlan plan = new CoverPlan(grid);
        for (State s : path) {
            if (s.openedStock() >= 0) {
                plan.open(s.openedStock());
            }
            plan.lay(s.stretch(), s.plate(), s.steps());
        }
        return plan;
    }
}
