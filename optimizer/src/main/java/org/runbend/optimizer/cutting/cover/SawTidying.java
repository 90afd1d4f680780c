package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableSet;
import java.util.OptionalInt;
import java.util.TreeSet;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.SawCost;
import org.runbend.optimizer.cutting.StockUse;
import org.runbend.optimizer.cutting.Stretch;
import org.runbend.optimizer.work.Work;

/**
 * Makes a cover plan easier to saw without buying more: less work of the saw, then fewer lengths, fewer pieces, a longer least
 * piece, more cover. The stock stays; pieces are made alike, joined, left out or lengthened as long as the target is reached,
 * and packed anew into the same stock each time.
 *
 * <p>Method: the best of all single changes is made until none is better; the work limit is a count. Nothing is proved.
 */
public final class SawTidying {
    /** Changes in a row: chosen as a stop, not measured. */
    private static final int CHANGES = 60;

    private final CoverProblem problem;
    private final CoverGrid grid;
    private final SawCost cost;
    private final NavigableSet<Integer> given = new TreeSet<>();
    private final int most;

    /**
     * For plans of a problem.
     *
     * @param given lengths in use elsewhere, hundredths of mm: their stop is set anyhow
     * @param most greatest number of different lengths, those given included
     */
    public SawTidying(CoverProblem problem, SawCost cost, List<Long> given, int most) {
        this.problem = problem;
        this.cost = cost;
        this.most = most;
        grid = new CoverGrid(problem);
        given.forEach(l -> this.given.add((int) (l / problem.step())));
    }

    /** A plan of no more cost that is no harder to saw; where it has more lengths than the old one was bound to, without its bound. */
    public CoverSolution tidied(CoverSolution plan) {
        if (plan.stock().isEmpty()) {
            return plan;
        }
        int[] stock = plan.stock().stream().mapToInt(StockUse::stock).toArray();
        List<List<Integer>> laid = new ArrayList<>();
        plan.pieces()
                .forEach(list -> laid.add(list.stream()
                        .map(l -> Math.toIntExact(l / problem.step()))
                        .toList()));
        Plan start = packed(laid, stock);
        Plan given = asCut(laid, plan);
        Plan best = start == null || given.isBetterThan(start) ? given : start;
        boolean found = true;
        for (int n = 0; n < CHANGES && found; n++) {
            Work.check();
            Plan next = bestChange(best, stock);
            found = next != null;
            best = found ? next : best;
        }
        return best.solution(plan);
    }

    /** Pieces by stretch and by stock piece, in steps. */
    private final class Plan {
        private final List<List<Integer>> laid;
        private final List<List<Integer>> cuts;
        private final int[] stock;
        private final long covered;
        private final double work;
        private final int lengths;
        private final int pieces;
        private final int least;

        Plan(List<List<Integer>> laid, List<List<Integer>> cuts, int[] stock) {
            this.laid = laid;
            this.cuts = cuts;
            this.stock = stock;
            covered = laid.stream().mapToLong(SawTidying.this::covered).sum();
            NavigableSet<Integer> stops = new TreeSet<>();
            int saw = 0;
            for (int p = 0; p < cuts.size(); p++) {
                List<Integer> its = cuts.get(p);
                boolean usedUp = !its.isEmpty() && rest(p) == 0;
                saw += its.size() - (usedUp ? 1 : 0);
                if (its.size() > 1 || !usedUp) {
                    stops.addAll(its);
                }
            }
            stops.removeAll(given);
            work = saw * cost.cut() + stops.size() * cost.stop();
            NavigableSet<Integer> all = new TreeSet<>(given);
            laid.forEach(all::addAll);
            lengths = all.size();
            pieces = laid.stream().mapToInt(List::size).sum();
            least = laid.stream().flatMap(List::stream).mapToInt(u -> u).min().orElse(0);
        }

        private long rest(int plate) {
            long used = cuts.get(plate).stream()
                    .mapToLong(u -> grid.length(u) + problem.kerf())
                    .sum();
            return problem.stock().get(stock[plate]).length() + problem.kerf() - used;
        }

        boolean isBetterThan(Plan o) {
            if (Math.abs(work - o.work) > 1e-9) {
                return work < o.work;
            }
            return Comparator.comparingInt((Plan p) -> p.lengths)
                            .thenComparingInt(p -> p.pieces)
                            .thenComparingInt(p -> -p.least)
                            .thenComparingLong(p -> -p.covered)
                            .compare(this, o)
                    < 0;
        }

        CoverSolution solution(CoverSolution old) {
            List<List<Long>> pieces =
                    laid.stream().map(SawTidying.this::lengths).toList();
            List<StockUse> uses = new ArrayList<>();
            long price = 0;
            for (int p = 0; p < cuts.size(); p++) {
                if (!cuts.get(p).isEmpty()) {
                    price += problem.stock().get(stock[p]).cost();
                    uses.add(new StockUse(stock[p], lengths(cuts.get(p)), Math.max(0, rest(p) - problem.kerf())));
                }
            }
            uses.sort(Comparator.comparingInt(StockUse::stock));
            // the bound of a plan in few lengths is none for more lengths
            Bound bound = old.bound().value() <= price ? old.bound() : new Bound(0, Bound.Proof.MATERIAL);
            return new CoverSolution(pieces, uses, price, covered, bound);
        }
    }

    private List<Long> lengths(List<Integer> steps) {
        return steps.stream()
                .sorted(Comparator.reverseOrder())
                .map(u -> grid.length(u))
                .toList();
    }

    private long covered(List<Integer> row) {
        return row.isEmpty() ? 0 : grid.length(row.stream().mapToLong(u -> u).sum()) + (row.size() - 1) * problem.gap();
    }

    private Plan asCut(List<List<Integer>> laid, CoverSolution plan) {
        List<List<Integer>> cuts = plan.stock().stream()
                .map(use -> use.pieces().stream()
                        .map(l -> Math.toIntExact(l / problem.step()))
                        .toList())
                .toList();
        return new Plan(
                laid, cuts, plan.stock().stream().mapToInt(StockUse::stock).toArray());
    }

    /** The same pieces in the same stock, longest first, each where it leaves least; null where they do not fit so. */
    private Plan packed(List<List<Integer>> laid, int[] stock) {
        List<Integer> all = new ArrayList<>();
        laid.forEach(all::addAll);
        all.sort(Comparator.reverseOrder());
        long[] rest = new long[stock.length];
        Arrays.setAll(rest, p -> problem.stock().get(stock[p]).length());
        List<List<Integer>> cuts = new ArrayList<>();
        for (int p = 0; p < stock.length; p++) {
            cuts.add(new ArrayList<>());
        }
        for (int u : all) {
            int best = -1;
            for (int p = 0; p < stock.length; p++) {
                if (rest[p] >= grid.length(u) && (best < 0 || rest[p] < rest[best])) {
                    best = p;
                }
            }
            if (best < 0) {
                return null;
            }
            cuts.get(best).add(u);
            rest[best] -= grid.length(u) + problem.kerf();
        }
        return new Plan(laid, cuts, stock);
    }

    private Plan bestChange(Plan now, int[] stock) {
        Plan best = null;
        for (List<List<Integer>> laid : changes(now, stock)) {
            if (isCover(laid)) {
                Plan next = packed(laid, stock);
                boolean better = next != null && next.lengths <= Math.max(most, now.lengths) && next.isBetterThan(now);
                best = better && (best == null || next.isBetterThan(best)) ? next : best;
            }
        }
        return best;
    }

    private boolean isCover(List<List<Integer>> laid) {
        long sum = 0;
        for (int r = 0; r < laid.size(); r++) {
            long own = covered(laid.get(r));
            Stretch stretch = problem.stretches().get(r);
            if (own > stretch.length() || own < stretch.least()) {
                return false;
            }
            sum += own;
        }
        return sum >= problem.target();
    }

    private List<List<List<Integer>>> changes(Plan now, int[] stock) {
        NavigableSet<Integer> sizes = new TreeSet<>(given);
        NavigableSet<Integer> own = new TreeSet<>();
        now.laid.forEach(own::addAll);
        sizes.addAll(own);
        for (int plate : stock) {
            sizes.add(Math.toIntExact(problem.stock().get(plate).length() / problem.step()));
        }
        sizes.removeIf(u -> u < grid.least() || u > grid.most());
        List<List<List<Integer>>> changes = new ArrayList<>();
        for (int a : own) {
            for (int b : sizes) {
                if (a != b) {
                    changes.add(alike(now.laid, a, b, b));
                    OptionalInt common = b < a ? common(now, b, a) : OptionalInt.empty();
                    common.ifPresent(c -> changes.add(alike(now.laid, a, b, c)));
                }
            }
            changes.add(moved(now, a, sizes));
            leaveOut(now, a, own, changes);
        }
        join(now, sizes, changes);
        return changes;
    }

    /** Pieces of two lengths made one length. */
    private static List<List<Integer>> alike(List<List<Integer>> laid, int a, int b, int to) {
        return laid.stream()
                .map(row -> row.stream().map(u -> u == a || u == b ? to : u).toList())
                .toList();
    }

    /** How long the shorter pieces can be made where they lie, if that is under the longer length. */
    private OptionalInt common(Plan now, int shorter, int longer) {
        long most = longer;
        for (int r = 0; r < now.laid.size(); r++) {
            List<Integer> row = now.laid.get(r);
            int times = Collections.frequency(row, shorter);
            if (times > 0) {
                long room = problem.stretches().get(r).length() - covered(row);
                most = Math.min(most, shorter + room / problem.step() / times);
            }
        }
        return most > shorter && most < longer ? OptionalInt.of((int) most) : OptionalInt.empty();
    }

    /** Each piece of a length takes the next longer length that fits its stretch, or else the next shorter one. */
    private List<List<Integer>> moved(Plan now, int length, NavigableSet<Integer> sizes) {
        List<List<Integer>> laid = new ArrayList<>();
        for (int r = 0; r < now.laid.size(); r++) {
            List<Integer> row = new ArrayList<>(now.laid.get(r));
            for (int k = 0; k < row.size(); k++) {
                if (row.get(k) == length) {
                    long room = problem.stretches().get(r).length() - covered(row);
                    row.set(k, moved(length, sizes, room));
                }
            }
            laid.add(row);
        }
        return laid;
    }

    private int moved(int length, NavigableSet<Integer> sizes, long room) {
        NavigableSet<Integer> longer = sizes.tailSet(length, false);
        if (!longer.isEmpty() && grid.length(longer.first() - length) <= room) {
            return longer.first();
        }
        NavigableSet<Integer> shorter = sizes.headSet(length, false);
        return shorter.isEmpty() ? length : shorter.last();
    }

    /** A piece of a length less, made up for by pieces of one length, all lengthened alike. */
    private void leaveOut(Plan now, int length, NavigableSet<Integer> own, List<List<List<Integer>>> changes) {
        for (int r = 0; r < now.laid.size(); r++) {
            int at = now.laid.get(r).indexOf(length);
            if (at < 0) {
                continue;
            }
            List<Integer> row = new ArrayList<>(now.laid.get(r));
            row.remove(at);
            List<List<Integer>> laid = new ArrayList<>(now.laid);
            laid.set(r, row);
            changes.add(laid);
            long missing =
                    problem.target() - laid.stream().mapToLong(this::covered).sum();
            for (int u : own) {
                long times = laid.stream()
                        .mapToLong(l -> Collections.frequency(l, u))
                        .sum();
                if (missing > 0 && times > 0) {
                    long more = -Math.floorDiv(-missing, times * problem.step());
                    if (u + more <= grid.most()) {
                        changes.add(alike(laid, u, u, (int) (u + more)));
                    }
                }
            }
        }
    }

    /** Two pieces of a stretch made one, as long as both or of a length in use. */
    private void join(Plan now, NavigableSet<Integer> sizes, List<List<List<Integer>>> changes) {
        for (int r = 0; r < now.laid.size(); r++) {
            List<Integer> row = now.laid.get(r);
            for (int a = 0; a < row.size(); a++) {
                for (int b = a + 1; b < row.size(); b++) {
                    List<Integer> rest = new ArrayList<>(row);
                    int both = rest.remove(b) + rest.remove(a);
                    int most = (int) Math.min(grid.most(), both + problem.gap() / problem.step());
                    NavigableSet<Integer> tried = new TreeSet<>(sizes.headSet(most, true));
                    tried.add(most);
                    tried.removeIf(u -> u < both / 2);
                    for (int u : tried) {
                        List<Integer> joined = new ArrayList<>(rest);
                        joined.add(u);
                        List<List<Integer>> laid = new ArrayList<>(now.laid);
                        laid.set(r, joined);
                        changes.add(laid);
                    }
                }
            }
        }
    }
}
