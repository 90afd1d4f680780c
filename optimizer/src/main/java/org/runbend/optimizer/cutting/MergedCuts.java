package org.runbend.optimizer.cutting;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A cutting problem with equal cuts and equal stock pooled, longest cut first. A cut of w takes w + kerf of a capacity of
 * length - trim + kerf, so that kerfs need no further thought.
 */
final class MergedCuts {
    private final CuttingProblem problem;
    private final long[] sizes;
    private final long[] counts;
    private final List<Kind> kinds;

    /** Equal stock: capacity 0 or less takes nothing; {@code members} are indices into the problem. */
    record Kind(long capacity, long cost, long available, List<Integer> members) {}

    /** What one stock piece of a kind gives: how many of each size. */
    static final class Pattern {
        private final int kind;
        private final long[] amounts;

        Pattern(int kind, long[] amounts) {
            this.kind = kind;
            this.amounts = amounts;
        }

        int kind() {
            return kind;
        }

        long[] amounts() {
            return amounts;
        }
    }

    MergedCuts(CuttingProblem problem) {
        this.problem = problem;
        SortedMap<Long, Long> bySize = new TreeMap<>(Comparator.reverseOrder());
        for (Demand d : problem.demands()) {
            if (d.count() > 0) {
                bySize.merge(d.length() + problem.kerf(), (long) d.count(), Long::sum);
            }
        }
        sizes = bySize.keySet().stream().mapToLong(Long::longValue).toArray();
        counts = bySize.values().stream().mapToLong(Long::longValue).toArray();
        kinds = kinds(problem);
    }

    private static List<Kind> kinds(CuttingProblem problem) {
        record Key(long capacity, long cost, boolean unlimited) {}
        SortedMap<Key, List<Integer>> members = new TreeMap<>(Comparator.comparing(Key::unlimited)
                .thenComparingLong(Key::cost)
                .thenComparingLong(Key::capacity));
        for (int i = 0; i < problem.stock().size(); i++) {
            Stock s = problem.stock().get(i);
            if (s.available() > 0) {
                Key key = new Key(s.length() - problem.endTrim() + problem.kerf(), s.cost(), s.unlimited());
                members.computeIfAbsent(key, k -> new ArrayList<>()).add(i);
            }
        }
        List<Kind> kinds = new ArrayList<>();
        members.forEach((key, list) -> {
            long available = list.stream()
                    .mapToLong(i -> problem.stock().get(i).available())
                    .sum();
            kinds.add(new Kind(key.capacity(), key.cost(), key.unlimited() ? Stock.ANY : available, List.copyOf(list)));
        });
        return kinds;
    }

    int sizeCount() {
        return sizes.length;
    }

    long size(int i) {
        return sizes[i];
    }

    long count(int i) {
        return counts[i];
    }

    long[] counts() {
        return counts.clone();
    }

    long totalCount() {
        long total = 0;
        for (long c : counts) {
            total += c;
        }
        return total;
    }

    List<Kind> kinds() {
        return kinds;
    }

    /** Length taken by a pattern, kerfs included. */
    long taken(long[] amounts) {
        long taken = 0;
        for (int i = 0; i < sizes.length; i++) {
            taken += amounts[i] * sizes[i];
        }
        return taken;
    }

    /** What a pattern leaves after a kerf for each cut. */
    long leftover(Pattern p) {
        return Math.max(0, kinds.get(p.kind()).capacity() - problem.kerf() - taken(p.amounts()));
    }

    /** The part of the leftover that is thrown away. */
    long scrap(Pattern p) {
        long leftover = leftover(p);
        return leftover < problem.keepFrom() ? leftover : 0;
    }

    /** The plan in the problem's own numbering: pooled cuts and stock are dealt out in order. */
    CuttingSolution solution(List<Pattern> patterns, Bound costBound, Bound scrapBound) {
        List<Deque<Integer>> waiting = new ArrayList<>();
        for (long size : sizes) {
            waiting.add(waiting(size));
        }
        List<Deque<Integer>> shelf = new ArrayList<>();
        kinds.forEach(kind -> shelf.add(shelf(kind)));
        List<StockCut> cuts = new ArrayList<>();
        long cost = 0;
        long scrap = 0;
        for (Pattern p : patterns) {
            cuts.add(new StockCut(take(shelf.get(p.kind())), demands(p, waiting), leftover(p)));
            cost += kinds.get(p.kind()).cost();
            scrap += scrap(p);
        }
        cuts.sort(Comparator.comparingInt(StockCut::stock));
        return new CuttingSolution(cuts, cost, scrap, costBound, scrapBound);
    }

    private Deque<Integer> waiting(long size) {
        Deque<Integer> queue = new ArrayDeque<>();
        for (int d = 0; d < problem.demands().size(); d++) {
            if (problem.demands().get(d).length() + problem.kerf() == size) {
                queue.addAll(Collections.nCopies(problem.demands().get(d).count(), d));
            }
        }
        return queue;
    }

    private Deque<Integer> shelf(Kind kind) {
        Deque<Integer> queue = new ArrayDeque<>();
        for (int member : kind.members()) {
            int available = problem.stock().get(member).available();
            queue.addAll(Collections.nCopies((int) Math.min(available, totalCount()), member));
        }
        return queue;
    }

    private static int take(Deque<Integer> queue) {
        return queue.removeFirst();
    }

    private static List<Integer> demands(Pattern p, List<Deque<Integer>> waiting) {
        List<Integer> demands = new ArrayList<>();
        for (int i = 0; i < p.amounts().length; i++) {
            for (long n = 0; n < p.amounts()[i]; n++) {
                demands.add(take(waiting.get(i)));
            }
        }
        Collections.sort(demands);
        return demands;
    }
}
