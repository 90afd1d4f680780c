package org.runbend.optimizer.cutting.patterns;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntToLongFunction;
import org.runbend.optimizer.cutting.Costs;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockCut;

/**
 * A cutting problem with equal cuts and equal stock pooled, longest cut first. A cut of w takes w + kerf of a capacity of
 * length - trim + kerf, so that kerfs need no further thought.
 */
final class MergedCuts {
    private final CuttingProblem problem;
    private final long[] sizes;
    private final int[] counts;
    private final List<Kind> kinds;

    /** Equal stock: capacity 0 or less takes nothing; {@code members} are indices into the problem. */
    record Kind(long capacity, long cost, long available, boolean isNew, List<Integer> members) {}

    MergedCuts(CuttingProblem problem) {
        this.problem = problem;
        SortedMap<Long, Long> bySize = new TreeMap<>(Comparator.reverseOrder());
        for (Demand d : problem.demands()) {
            if (d.count() > 0) {
                bySize.merge(d.length() + problem.kerf(), (long) d.count(), Long::sum);
            }
        }
        sizes = bySize.keySet().stream().mapToLong(Long::longValue).toArray();
        counts = bySize.values().stream().mapToInt(Long::intValue).toArray();
        kinds = kinds(problem);
    }

    private MergedCuts(MergedCuts other, List<Kind> kinds) {
        problem = other.problem;
        sizes = other.sizes;
        counts = other.counts;
        this.kinds = kinds;
    }

    /** The same kinds in the same order, each at another cost of 0 or more. */
    MergedCuts withCosts(IntToLongFunction cost) {
        List<Kind> priced = new ArrayList<>();
        for (int k = 0; k < kinds.size(); k++) {
            Kind kind = kinds.get(k);
            priced.add(new Kind(kind.capacity(), cost.applyAsLong(k), kind.available(), kind.isNew(), kind.members()));
        }
        return new MergedCuts(this, List.copyOf(priced));
    }

    private static List<Kind> kinds(CuttingProblem problem) {
        record Key(long capacity, long cost, boolean unlimited, boolean isNew) {}
        SortedMap<Key, List<Integer>> members = new TreeMap<>(Comparator.comparing(Key::unlimited)
                .thenComparingLong(Key::cost)
                .thenComparingLong(Key::capacity)
                .thenComparing(Key::isNew));
        for (int i = 0; i < problem.stock().size(); i++) {
            Stock s = problem.stock().get(i);
            if (s.available() > 0) {
                Key key = new Key(
                        s.length() - problem.endTrim() + problem.kerf(), s.cost(), s.unlimited(), s.id().isEmpty());
                members.computeIfAbsent(key, k -> new ArrayList<>()).add(i);
            }
        }
        List<Kind> kinds = new ArrayList<>();
        members.forEach((key, list) -> {
            long available = list.stream()
                    .mapToLong(i -> problem.stock().get(i).available())
                    .sum();
            kinds.add(new Kind(
                    key.capacity(),
                    key.cost(),
                    key.unlimited() ? Stock.ANY : available,
                    key.isNew(),
                    List.copyOf(list)));
        });
        return kinds;
    }

    /** Greatest common divisor of all costs. */
    long grain() {
        return Math.max(1, kinds.stream().mapToLong(Kind::cost).reduce(0, Costs::gcd));
    }

    int sizeCount() {
        return sizes.length;
    }

    long size(int i) {
        return sizes[i];
    }

    int count(int i) {
        return counts[i];
    }

    int[] counts() {
        return counts.clone();
    }

    long totalCount() {
        long total = 0;
        for (int c : counts) {
            total += c;
        }
        return total;
    }

    List<Kind> kinds() {
        return kinds;
    }

    /** Length taken by a pattern, kerfs included. */
    long taken(Pattern p) {
        long taken = 0;
        for (int part = 0; part < p.parts(); part++) {
            taken += p.amount(part) * sizes[p.size(part)];
        }
        return taken;
    }

    /** What a pattern leaves after a kerf for each cut. */
    long leftover(Pattern p) {
        return Math.max(0, kinds.get(p.kind()).capacity() - problem.kerf() - taken(p));
    }

    /** The part of the leftover that is thrown away. */
    long scrap(Pattern p) {
        long leftover = leftover(p);
        return leftover < problem.keepFrom() ? leftover : 0;
    }

    /** The single cuts of a plan in the problem's own numbering: pooled cuts and stock are dealt out in order. */
    List<StockCut> dealt(PatternPlan plan) {
        List<Deque<Integer>> waiting = new ArrayList<>();
        for (long size : sizes) {
            waiting.add(waiting(size));
        }
        List<Deque<Integer>> shelf = new ArrayList<>();
        kinds.forEach(kind -> shelf.add(shelf(kind, plan)));
        List<StockCut> dealt = new ArrayList<>();
        plan.times().forEach((p, times) -> {
            for (int n = 0; n < times; n++) {
                dealt.add(new StockCut(take(shelf.get(p.kind())), demands(p, waiting), leftover(p)));
            }
        });
        dealt.sort(Comparator.comparingInt(StockCut::stock));
        return dealt;
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

    private Deque<Integer> shelf(Kind kind, PatternPlan plan) {
        Deque<Integer> queue = new ArrayDeque<>();
        long used = plan.used(kinds.indexOf(kind));
        for (int member : kind.members()) {
            int available = problem.stock().get(member).available();
            queue.addAll(Collections.nCopies((int) Math.min(available, used - queue.size()), member));
        }
        return queue;
    }

    private static int take(Deque<Integer> queue) {
        return queue.removeFirst();
    }

    private static List<Integer> demands(Pattern p, List<Deque<Integer>> waiting) {
        List<Integer> demands = new ArrayList<>();
        for (int part = 0; part < p.parts(); part++) {
            for (int n = 0; n < p.amount(part); n++) {
                demands.add(take(waiting.get(p.size(part))));
            }
        }
        Collections.sort(demands);
        return demands;
    }
}
