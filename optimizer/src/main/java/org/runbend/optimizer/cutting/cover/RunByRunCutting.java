package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.Stretch;

/**
 * What it costs to cut each stretch by itself: its pieces come from stock pieces of its own and the rest of them is scrap.
 * Which stretches are covered how far is chosen at least cost for the target, exactly for that way of working.
 *
 * <p>Method: least cost by number of pieces and total they can have, over the stock that can be bought in any number
 * (single offcuts are left aside); each stretch's choices are then combined, dominated sums dropped.
 */
public final class RunByRunCutting {
    /** The plan of least cost without sharing stock between stretches, bounded by the material only. */
    public Answer<CoverSolution> solve(CoverProblem problem) {
        CoverGrid grid = new CoverGrid(problem);
        CoverPlan plan = plan(grid);
        if (plan == null) {
            return Answer.none("no stock that can be bought in any number reaches the target");
        }
        long bound = new CoverMaterial(grid).bound().orElse(0);
        return Answer.found(plan.solution(new Bound(bound, Bound.Proof.MATERIAL)));
    }

    /** The same with pieces of the lengths named alone, hundredths of mm. */
    public Answer<CoverSolution> solve(CoverProblem problem, List<Long> lengths) {
        int[] sizes = lengths.stream()
                .mapToInt(l -> Math.toIntExact(l / problem.step()))
                .distinct()
                .sorted()
                .toArray();
        CoverPlan plan = plan(new CoverGrid(new CoverGrid(problem), sizes));
        return plan == null
                ? Answer.none("no stock that can be bought in any number reaches the target in these lengths")
                : Answer.found(plan.solution(new Bound(0, Bound.Proof.MATERIAL)));
    }

    /** The plan itself, or null when there is none. */
    CoverPlan plan(CoverGrid grid) {
        Own own = new Own(grid);
        List<Sum> sums = List.of(new Sum(0, 0, null, null));
        for (Stretch stretch : grid.problem().stretches()) {
            List<Choice> choices = own.choices(stretch.length()).stream()
                    .filter(c -> c.covered() >= stretch.least())
                    .toList();
            sums = combined(sums, choices, grid.problem().target());
            if (sums.isEmpty()) {
                return null;
            }
        }
        Sum best = sums.get(sums.size() - 1);
        return best.covered() < grid.problem().target() ? null : own.laid(best);
    }

    /** A way to cover one stretch: {@code pieces} pieces of at most {@code steps} in all. */
    private record Choice(long cost, long covered, int pieces, int steps) {}

    private record Sum(long cost, long covered, Choice choice, Sum before) {}

    private static List<Sum> combined(List<Sum> sums, List<Choice> choices, long target) {
        List<Sum> all = new ArrayList<>();
        for (Sum s : sums) {
            for (Choice c : choices) {
                all.add(new Sum(s.cost() + c.cost(), Math.min(target, s.covered() + c.covered()), c, s));
            }
        }
        all.sort(Comparator.comparingLong(Sum::cost)
                .thenComparing(Comparator.comparingLong(Sum::covered).reversed()));
        List<Sum> kept = new ArrayList<>();
        long covered = -1;
        for (Sum s : all) {
            if (s.covered() > covered) {
                covered = s.covered();
                kept.add(s);
            }
        }
        return kept;
    }

    /** Least cost of own stock by number of pieces and total, for all stretches at once. */
    private static final class Own {
        private static final long NONE = Long.MAX_VALUE;

        private final CoverGrid grid;
        private final SizeSums sums;
        private final List<Option> options = new ArrayList<>();
        private final long[][] cost;
        private final Step[][] step;
        private final SortedMap<Long, List<Choice>> known = new TreeMap<>();

        /** One stock piece cut into {@code pieces} pieces of at most {@code steps} in all. */
        private record Option(int stock, int pieces, int steps, long cost) {}

        private record Step(Option option, int fromSteps) {}

        Own(CoverGrid grid) {
            this.grid = grid;
            sums = new SizeSums(grid.sizes());
            CoverProblem p = grid.problem();
            long longest =
                    p.stretches().stream().mapToLong(Stretch::length).max().orElse(0);
            for (int s = 0; s < p.stock().size(); s++) {
                addOptions(s);
            }
            int steps = Math.toIntExact(longest / p.step());
            cost = new long[grid.piecesOn(longest) + 1][steps + 1];
            step = new Step[cost.length][steps + 1];
            for (long[] row : cost) {
                Arrays.fill(row, NONE);
            }
            cost[0][0] = 0;
            for (int n = 0; n < cost.length; n++) {
                for (int t = 0; t <= steps; t++) {
                    extend(n, t);
                }
            }
        }

        private void addOptions(int stock) {
            Stock s = grid.problem().stock().get(stock);
            for (int n = 1;
                    s.unlimited() && n <= grid.pieces(s.length(), grid.problem().kerf());
                    n++) {
                long total = grid.total(s.length(), n, grid.problem().kerf());
                for (int t = 0; t <= total && grid.isLimited(); t++) {
                    if (sums.makes(n, t)) {
                        options.add(new Option(stock, n, t, s.cost()));
                    }
                }
                if (total >= 0 && !grid.isLimited()) {
                    options.add(new Option(stock, n, Math.toIntExact(total), s.cost()));
                }
            }
        }

        private void extend(int n, int t) {
            if (cost[n][t] == NONE) {
                return;
            }
            for (Option o : options) {
                int pieces = n + o.pieces();
                int total = grid.isLimited() ? t + o.steps() : Math.min(cost[0].length - 1, t + o.steps());
                if (pieces < cost.length && total < cost[0].length && cost[n][t] + o.cost() < cost[pieces][total]) {
                    cost[pieces][total] = cost[n][t] + o.cost();
                    step[pieces][total] = new Step(o, t);
                }
            }
        }

        /** The choices for a stretch that no other beats, cheapest first; the first leaves it bare. */
        List<Choice> choices(long length) {
            return known.computeIfAbsent(length, this::newChoices);
        }

        private List<Choice> newChoices(long length) {
            List<Choice> all = new ArrayList<>();
            for (int n = 1; n <= grid.piecesOn(length); n++) {
                long room = grid.total(length, n, grid.problem().gap());
                for (int t = n * grid.least(); room >= 0 && t < cost[n].length; t++) {
                    if (cost[n][t] != NONE && (t <= room || !grid.isLimited())) {
                        long covered = grid.length(Math.min(t, room))
                                + (n - 1) * grid.problem().gap();
                        all.add(new Choice(cost[n][t], covered, n, t));
                    }
                }
            }
            all.sort(Comparator.comparingLong(Choice::cost)
                    .thenComparing(Comparator.comparingLong(Choice::covered).reversed())
                    .thenComparingInt(Choice::pieces));
            List<Choice> kept = new ArrayList<>(List.of(new Choice(0, 0, 0, 0)));
            for (Choice c : all) {
                if (c.covered() > kept.get(kept.size() - 1).covered()) {
                    kept.add(c);
                }
            }
            return kept;
        }

        CoverPlan laid(Sum best) {
            CoverPlan plan = new CoverPlan(grid);
            int stretch = grid.problem().stretches().size();
            for (Sum s = best; s.before() != null; s = s.before()) {
                lay(plan, --stretch, s.choice());
            }
            return plan;
        }

        private void lay(CoverPlan plan, int stretch, Choice choice) {
            long length = grid.problem().stretches().get(stretch).length();
            long room = choice.pieces() == 0
                    ? 0
                    : grid.total(length, choice.pieces(), grid.problem().gap());
            int n = choice.pieces();
            int t = choice.steps();
            while (n > 0) {
                Step s = step[n][t];
                n -= s.option().pieces();
                t = s.fromSteps();
                long total = Math.min(s.option().steps(), room - (long) n * grid.least());
                layPieces(plan, stretch, s.option(), total);
                room -= total;
            }
        }

        private void layPieces(CoverPlan plan, int stretch, Option option, long total) {
            int plate = plan.open(option.stock());
            if (grid.isLimited()) {
                sums.parts(option.pieces(), option.steps()).forEach(u -> plan.lay(stretch, plate, u));
                return;
            }
            long left = total;
            for (int n = option.pieces() - 1; n >= 0; n--) {
                long steps = Math.min(grid.most(), left - (long) n * grid.least());
                plan.lay(stretch, plate, Math.toIntExact(steps));
                left -= steps;
            }
        }
    }
}
