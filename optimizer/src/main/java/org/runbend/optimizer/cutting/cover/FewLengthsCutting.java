package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.FewLengthsCurve;
import org.runbend.optimizer.cutting.FewLengthsProblem;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.mip.Watch;
import org.runbend.optimizer.work.Work;

/**
 * Covers stretches with pieces of few different lengths, at least cost of stock, for one length, two and so on: the saw's
 * stop is set once for each length.
 *
 * <p>Method: all single lengths and all pairs are looked at, larger sets grow from the best smaller ones by a length, and
 * lengths of the best are changed one at a time. A glance ({@link LengthSet}) says what a set can do at best, the linear
 * program of the promising ones puts them in order, and the first few are cut. Bound: that without a limit, and for one
 * length and for two the least of all sets' own bounds, in whole numbers. Limits are counts, never a clock.
 */
public final class FewLengthsCutting {
    /** Sizes up to which every set of them is looked at: chosen, not measured. */
    private static final int SIZES = 160;
    /** Sets whose linear program is solved: chosen, not measured. */
    private static final int PRICED = 24;
    /** The same for one or two lengths: chosen, not measured. */
    private static final int PRICED_PAIRS = 60;
    /** Sets that are cut in earnest: chosen, not measured. */
    private static final int CUT = 3;
    /** Sets that the next number of lengths goes on from: chosen, not measured. */
    private static final int PARENTS = 3;
    /** Sizes of the free plan that are tried first: chosen, not measured. */
    private static final int USED = 10;
    /** Lengths more than the stock needs that are tried: they may save pieces; chosen, not measured. */
    private static final int MORE = 2;

    /** What a piece counts when sets are put in order, as a share of the dearest stock: chosen, not measured. */
    private static final double PIECE = 0.02;

    private final Watch watch;
    private final CoverCutting cutting;
    private final int more;

    /** A solver that nobody watches. */
    public FewLengthsCutting() {
        this(Watch.NONE, CoverCutting.Effort.FULL);
    }

    /** A solver that ends early, with the best so far, when asked to, and cuts each set with more or less work. */
    public FewLengthsCutting(Watch watch, CoverCutting.Effort effort) {
        this.watch = watch;
        cutting = new CoverCutting(watch, effort);
        more = effort == CoverCutting.Effort.FULL ? MORE : 1;
    }

    /**
     * A plan for each number of lengths up to the most that are allowed.
     *
     * @throws java.util.concurrent.CancellationException soon after the thread is interrupted; the thread stays interrupted
     */
    public FewLengthsCurve solve(FewLengthsProblem problem) {
        Answer<CoverSolution> free = cutting.solve(problem.cover());
        if (free instanceof Answer.Found<CoverSolution> found
                && !found.it().stock().isEmpty()) {
            return new Run(problem, found.it()).curve();
        }
        return new FewLengthsCurve(
                List.of(new FewLengthsCurve.Point(Math.max(1, problem.given().size()), free, 0)), free);
    }

    /** A set of lengths with what its linear program came to. */
    private record Priced(LengthSet set, long bound, double value, double pieces) {
        /** Of sets that cost nearly the same those with fewer pieces come first. */
        double rank(double dearest) {
            return value + PIECE * dearest * pieces;
        }
    }

    /** One problem on its way. */
    private final class Run {
        private final FewLengthsProblem problem;
        private final CoverSolution free;
        private final CoverGrid whole;
        private final int[] given;
        private final int[] sizes;
        private final boolean hasAllSizes;
        private final List<FewLengthsCurve.Point> points = new ArrayList<>();
        private CoverSolution best;
        private final List<Integer> used;
        private long proved;
        private long reach;
        private boolean isClosed;
        private List<LengthSet> parents = new ArrayList<>();

        Run(FewLengthsProblem problem, CoverSolution free) {
            this.problem = problem;
            this.free = free;
            whole = new CoverGrid(problem.cover());
            given = problem.given().stream()
                    .mapToInt(l -> Math.toIntExact(l / problem.cover().step()))
                    .toArray();
            int[] all = whole.sizes();
            hasAllSizes = all.length <= SIZES;
            used = mostUsed();
            sizes = hasAllSizes ? all : new UsefulSizes(whole, free).sizes(SIZES);
        }

        private List<Integer> mostUsed() {
            TreeMap<Integer, Integer> times = new TreeMap<>();
            free.pieces()
                    .forEach(list -> list.forEach(
                            l -> times.merge(Math.toIntExact(l / problem.cover().step()), 1, Integer::sum)));
            return times.keySet().stream()
                    .sorted(Comparator.comparingInt(u -> -times.get(u)))
                    .limit(USED)
                    .toList();
        }

        FewLengthsCurve curve() {
            int last = problem.most();
            for (int n = Math.max(1, given.length); n <= last; n++) {
                Work.check();
                level(n);
                last = isOpen() ? last : Math.min(last, n + (isClosed ? 0 : more));
                isClosed |= !isOpen();
                if (usedByFree() <= n && (best == null || free.cost() <= best.cost())) {
                    best = best != null && best.cost() == free.cost() ? best : free;
                }
                Answer<CoverSolution> answer = answer(n);
                if (!isClosed || isEasier(answer)) {
                    points.add(new FewLengthsCurve.Point(n, answer, reach));
                }
            }
            return new FewLengthsCurve(points, Answer.found(free));
        }

        /** Whether a plan has fewer pieces than the last one. */
        private boolean isEasier(Answer<CoverSolution> answer) {
            return points.isEmpty()
                    || !(points.get(points.size() - 1).answer() instanceof Answer.Found<CoverSolution> last)
                    || (answer instanceof Answer.Found<CoverSolution> now
                            && (now.it().cost() < last.it().cost()
                                    || now.it().pieceCount() < last.it().pieceCount()));
        }

        /** More lengths may save something. */
        private boolean isOpen() {
            return best == null || best.cost() > free.cost();
        }

        private long usedByFree() {
            return IntStream.concat(
                            Arrays.stream(given),
                            free.pieces().stream()
                                    .flatMap(List::stream)
                                    .mapToInt(l ->
                                            Math.toIntExact(l / problem.cover().step())))
                    .distinct()
                    .count();
        }

        private Answer<CoverSolution> answer(int lengths) {
            if (best == null) {
                return proved == Long.MAX_VALUE ? Answer.none(none(lengths)) : Answer.unknown(none(lengths));
            }
            Bound bound = free.bound();
            bound = bound.max(new Bound(Math.min(proved, best.cost()), Bound.Proof.EXHAUSTIVE));
            return Answer.found(new CoverSolution(best.pieces(), best.stock(), best.cost(), best.covered(), bound));
        }

        private String none(int lengths) {
            return String.format(
                    Locale.ROOT,
                    "pieces of %d %s cover %.2f mm at most, as far as found, of the %.2f mm asked for",
                    lengths,
                    lengths == 1 ? "length" : "lengths",
                    Math.min(reach, problem.cover().target()) / 100.0,
                    problem.cover().target() / 100.0);
        }

        private void level(int n) {
            List<LengthSet> sets = sets(n);
            reach = sets.stream().mapToLong(LengthSet::reach).max().orElse(0);
            boolean complete = hasAllSizes && given.length == 0 && n <= 2;
            proved = complete ? sets.stream().mapToLong(LengthSet::bound).min().orElse(0) : 0;
            List<Priced> priced = priced(sets, n <= 2 ? PRICED_PAIRS : PRICED);
            cut(priced);
            if (n > 2 && (isOpen() || isClosed)) {
                cutMore(priced, usedSets(n));
            }
            if (n > 2 && (isOpen() || isClosed) && !priced.isEmpty()) {
                cutMore(priced, changed(priced.get(0).set()));
            }
            if (complete && best != null) {
                proved = bound(sets, priced);
            }
            List<LengthSet> next =
                    new ArrayList<>(priced.stream().map(Priced::set).toList());
            sets.stream().filter(s -> !next.contains(s)).limit(PARENTS).forEach(next::add);
            parents = List.copyOf(next.subList(0, Math.min(PARENTS, next.size())));
        }

        private void cutMore(List<Priced> priced, List<LengthSet> sets) {
            List<Priced> more = priced(sets, PRICED);
            cut(more);
            priced.addAll(more);
            priced.sort(Comparator.comparingDouble(Priced::value));
        }

        /** The least that any set of this level costs: what its linear program proved, or else the glance. */
        private long bound(List<LengthSet> sets, List<Priced> priced) {
            Map<String, Long> known = new TreeMap<>();
            priced.forEach(p -> known.put(p.set().toString(), p.bound()));
            return sets.stream()
                    .mapToLong(s -> Math.max(s.bound(), known.getOrDefault(s.toString(), 0L)))
                    .min()
                    .orElse(0);
        }

        private List<LengthSet> sets(int n) {
            Map<String, LengthSet> found = new TreeMap<>();
            if (n == given.length) {
                LengthSet only = new LengthSet(whole, given);
                return new ArrayList<>(List.of(only));
            }
            if (n <= 2 && given.length == 0) {
                for (int a = 0; a < sizes.length; a++) {
                    for (int b = n == 1 ? a : a + 1; b < (n == 1 ? a + 1 : sizes.length); b++) {
                        add(found, n == 1 ? new int[] {sizes[a]} : new int[] {sizes[a], sizes[b]});
                    }
                }
            }
            if (n == 1 + given.length && given.length > 0) {
                parents = parents.isEmpty() ? List.of(new LengthSet(whole, given)) : parents;
            }
            for (LengthSet parent : n > 2 || given.length > 0 ? parents : List.<LengthSet>of()) {
                for (int u : sizes) {
                    with(parent.sizes(), u).ifPresent(s -> add(found, s));
                }
            }
            return sorted(found);
        }

        /** Sets of those given and of lengths that the free plan uses most. */
        private List<LengthSet> usedSets(int n) {
            Map<String, LengthSet> found = new TreeMap<>();
            addUsed(found, given, 0, n);
            return sorted(found);
        }

        private void addUsed(Map<String, LengthSet> found, int[] set, int from, int n) {
            if (set.length == n) {
                add(found, set);
                return;
            }
            for (int u = from; u < used.size(); u++) {
                int next = u + 1;
                with(set, used.get(u)).ifPresent(s -> addUsed(found, s, next, n));
            }
        }

        /** One length of a set, none of those given, changed for another. */
        private List<LengthSet> changed(LengthSet set) {
            Map<String, LengthSet> found = new TreeMap<>();
            for (int out : set.sizes()) {
                if (Arrays.binarySearch(given, out) >= 0) {
                    continue;
                }
                int[] rest = Arrays.stream(set.sizes()).filter(u -> u != out).toArray();
                for (int u : sizes) {
                    if (u != out) {
                        with(rest, u).ifPresent(s -> add(found, s));
                    }
                }
            }
            return sorted(found);
        }

        private void add(Map<String, LengthSet> found, int[] set) {
            found.computeIfAbsent(Arrays.toString(set), k -> new LengthSet(whole, set));
        }

        private Optional<int[]> with(int[] set, int u) {
            return Arrays.binarySearch(set, u) >= 0
                    ? Optional.empty()
                    : Optional.of(IntStream.concat(Arrays.stream(set), IntStream.of(u))
                            .sorted()
                            .toArray());
        }

        private static List<LengthSet> sorted(Map<String, LengthSet> found) {
            List<LengthSet> sets = new ArrayList<>(found.values());
            sets.sort(Comparator.comparingLong(LengthSet::bound)
                    .thenComparingDouble(LengthSet::value)
                    .thenComparingLong(s -> -s.reach()));
            return sets;
        }

        private List<Priced> priced(List<LengthSet> sets, int most) {
            List<Priced> priced = new ArrayList<>();
            long enough = best == null ? Long.MAX_VALUE : best.cost();
            for (LengthSet s : sets) {
                if (priced.size() >= most
                        || s.bound() > enough
                        || (s.bound() == enough && !isClosed)
                        || watch.asksForEnd()) {
                    break;
                }
                if (s.bound() < Long.MAX_VALUE) {
                    CoverMaster master = new CoverMaster(s.grid(), watch);
                    master.generate(enough);
                    priced.add(new Priced(
                            s, master.bound(), Math.max(master.value(), (double) master.bound()), master.pieces()));
                }
            }
            priced.sort(Comparator.comparingDouble(Priced::value));
            return priced;
        }

        private void cut(List<Priced> priced) {
            double dearest = whole.problem().stock().stream()
                    .mapToLong(Stock::cost)
                    .max()
                    .orElse(0);
            List<Priced> byPieces = new ArrayList<>(priced);
            byPieces.sort(Comparator.comparingDouble(p -> p.rank(dearest)));
            List<Priced> some = byPieces.subList(0, Math.min(CUT, priced.size()));
            some.forEach(this::cut);
            priced.stream()
                    .filter(p -> !some.contains(p) && isOpen() && (best == null || p.bound() < best.cost()))
                    .limit(CUT)
                    .forEach(this::cut);
        }

        private void cut(Priced p) {
            offer(cutting.solve(p.set().grid()));
        }

        private void offer(Answer<CoverSolution> answer) {
            if (answer instanceof Answer.Found<CoverSolution> plan && (best == null || isBetter(plan.it(), best))) {
                best = plan.it();
            }
        }

        private static boolean isBetter(CoverSolution a, CoverSolution b) {
            return Comparator.comparingLong(CoverSolution::cost)
                            .thenComparingInt(CoverSolution::pieceCount)
                            .thenComparingLong(s -> -s.covered())
                            .compare(a, b)
                    < 0;
        }
    }
}
