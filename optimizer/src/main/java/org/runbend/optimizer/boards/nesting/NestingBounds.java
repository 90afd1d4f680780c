package org.runbend.optimizer.boards.nesting;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.runbend.optimizer.boards.nesting.NestingProblem.Item;

/**
 * Lower bounds on boards by dual feasible functions: where f never adds up to over 1 for lengths that add up to at most 1, and
 * g likewise for widths, the sum of f(length) g(width) over the items of a board is at most 1. An item that may be turned
 * counts with the lesser of its two ways. Functions: the identity (area); u_k of Lueker; one that forgets items up to e and
 * counts those over 1 - e as whole. Source: Fekete and Schepers 2001, from memory.
 */
public final class NestingBounds {
    /** Sums are cut by this before they are rounded up, so noise never claims a board; what it costs is no bound. */
    private static final double NOISE = 1e-7;

    private static final int MOST_STEPS = 8;

    private NestingBounds() {}

    /** A dual feasible function of two sizes, each by the room that a board has for it. */
    public record Weighing(DoubleUnaryOperator along, DoubleUnaryOperator across) {
        /** The least that an item adds, of the ways it may lie. */
        public double of(double length, double width, double room, double height, boolean turnable) {
            double value = fits(length, width, room, height)
                    ? along.applyAsDouble(length / room) * across.applyAsDouble(width / height)
                    : Double.POSITIVE_INFINITY;
            if (turnable && fits(width, length, room, height)) {
                value = Math.min(value, along.applyAsDouble(width / room) * across.applyAsDouble(length / height));
            }
            return value;
        }

        private static boolean fits(double length, double width, double room, double height) {
            return length <= room + NestingProblem.SAME && width <= height + NestingProblem.SAME;
        }
    }

    /** The greatest of the bounds, at least 1 where there is an item. */
    static int of(NestingProblem problem) {
        List<Double> alongs = new ArrayList<>();
        List<Double> acrosses = new ArrayList<>();
        for (Item i : problem.items()) {
            alongs.add((i.length() + problem.kerf()) / problem.room());
            acrosses.add((i.width() + problem.kerf()) / problem.height());
            if (i.turnable()) {
                alongs.add((i.width() + problem.kerf()) / problem.room());
                acrosses.add((i.length() + problem.kerf()) / problem.height());
            }
        }
        double best = problem.items().isEmpty() ? 0 : 1;
        for (Weighing w : weighings(alongs, acrosses)) {
            double sum = 0;
            for (Item i : problem.items()) {
                sum += w.of(
                        i.length() + problem.kerf(),
                        i.width() + problem.kerf(),
                        problem.room(),
                        problem.height(),
                        i.turnable());
            }
            best = Math.max(best, Math.ceil(sum - NOISE));
        }
        return (int) best;
    }

    /** Pairs of functions for items of these shares of a board. */
    public static List<Weighing> weighings(List<Double> alongs, List<Double> acrosses) {
        List<DoubleUnaryOperator> forLengths = functions(alongs);
        List<DoubleUnaryOperator> forWidths = functions(acrosses);
        List<Weighing> all = new ArrayList<>();
        for (DoubleUnaryOperator f : forLengths) {
            for (DoubleUnaryOperator g : forWidths) {
                all.add(new Weighing(f, g));
            }
        }
        return all;
    }

    /** A few pairs that need no items: area, halves and thirds. */
    public static List<Weighing> few() {
        DoubleUnaryOperator same = x -> x;
        DoubleUnaryOperator half = x -> x > 0.5 + 1e-9 ? 1 : 0;
        DoubleUnaryOperator thirds = x -> stepped(x, 2);
        return List.of(
                new Weighing(same, same),
                new Weighing(half, same),
                new Weighing(same, half),
                new Weighing(half, half),
                new Weighing(thirds, same),
                new Weighing(same, thirds));
    }

    private static List<DoubleUnaryOperator> functions(List<Double> shares) {
        List<DoubleUnaryOperator> all = new ArrayList<>();
        all.add(x -> x);
        for (int k = 1; k <= MOST_STEPS; k++) {
            int steps = k;
            all.add(x -> stepped(x, steps));
        }
        TreeSet<Double> cuts = new TreeSet<>();
        shares.stream()
                .map(s -> Math.min(s, 1 - s))
                .filter(s -> s > 0 && s < 0.5)
                .forEach(cuts::add);
        for (double cut : thinned(cuts)) {
            all.add(x -> x > 1 - cut + 1e-9 ? 1 : x < cut - 1e-9 ? 0 : x);
        }
        all.add(x -> x > 0.5 + 1e-9 ? 1 : 0);
        return all;
    }

    /** At most a dozen of them, evenly. */
    private static List<Double> thinned(Set<Double> cuts) {
        List<Double> all = new ArrayList<>(cuts);
        int step = Math.max(1, all.size() / 12);
        List<Double> some = new ArrayList<>();
        for (int i = 0; i < all.size(); i += step) {
            some.add(all.get(i));
        }
        return some;
    }

    /** Lueker's function: x where (k + 1) x is whole, else (k + 1) x rounded down by k. */
    private static double stepped(double x, int k) {
        double many = (k + 1) * x;
        double whole = Math.rint(many);
        return Math.abs(many - whole) < 1e-9 ? x : Math.floor(many) / k;
    }
}
