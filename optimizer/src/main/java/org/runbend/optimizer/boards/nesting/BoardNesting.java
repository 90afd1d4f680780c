package org.runbend.optimizer.boards.nesting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.runbend.optimizer.boards.nesting.NestingProblem.Item;
import org.runbend.optimizer.boards.nesting.NestingSolution.Place;

/**
 * Cuts rectangles from the fewest boards.
 *
 * <p>Method: items in an order go one by one into the free rectangle that a rule chooses; what is left of it is cut in two
 * from edge to edge. Five orders, three rules and four ways to cut the rest are tried, then orders shuffled a little from a
 * fixed seed; the first packing that meets the bound ends it. Every packing can be cut by a track saw, so it serves machines
 * too. Bound: {@link NestingBounds}.
 *
 * <p>Source: guillotine heuristics as surveyed by Jylanki 2010, from memory. Same input, same answer.
 */
public final class BoardNesting {
    private static final long SEED = 20_260_401;

    private final int tries;

    /** Packs with so many shuffled orders after the plain ones. */
    public BoardNesting(int tries) {
        this.tries = tries;
    }

    /** The best packing found and its bound. */
    public NestingSolution solve(NestingProblem problem) {
        int bound = NestingBounds.of(problem);
        List<Integer> plain = new ArrayList<>();
        for (int i = 0; i < problem.items().size(); i++) {
            plain.add(i);
        }
        Filling best = null;
        List<Integer> bestOrder = plain;
        for (Comparator<Item> by : orders()) {
            List<Integer> order = new ArrayList<>(plain);
            order.sort(Comparator.comparing(problem.items()::get, by));
            for (int rule = 0; rule < Filling.RULES; rule++) {
                Filling filling = new Filling(problem, rule).fill(order);
                if (best == null || filling.isBetterThan(best)) {
                    best = filling;
                    bestOrder = order;
                }
            }
        }
        SplittableRandom dice = new SplittableRandom(SEED);
        for (int t = 0; t < tries && best.boards() > bound; t++) {
            List<Integer> order = shuffled(bestOrder, dice);
            Filling filling = new Filling(problem, dice.nextInt(Filling.RULES)).fill(order);
            if (filling.isBetterThan(best)) {
                best = filling;
                bestOrder = order;
            }
        }
        return new NestingSolution(best.places(), best.boards(), bound);
    }

    private static List<Comparator<Item>> orders() {
        return List.of(
                Comparator.comparingDouble(i -> -i.length() * i.width()),
                Comparator.comparingDouble(i -> -Math.max(i.length(), i.width())),
                Comparator.comparingDouble(i -> -i.width()),
                Comparator.comparingDouble(i -> -i.length()),
                Comparator.comparingDouble(i -> -i.length() - i.width()));
    }

    /** A few items drawn to other places. */
    private static List<Integer> shuffled(List<Integer> order, SplittableRandom dice) {
        List<Integer> other = new ArrayList<>(order);
        int moves = other.isEmpty() ? 0 : 1 + dice.nextInt(4);
        for (int m = 0; m < moves; m++) {
            Integer item = other.remove(dice.nextInt(other.size()));
            other.add(dice.nextInt(other.size() + 1), item);
        }
        return other;
    }

    /** One way through the items. */
    private static final class Filling {
        /** Three rules of choice and four ways to cut the rest. */
        static final int RULES = 12;

        private final NestingProblem problem;
        private final int choice;
        private final int cut;
        private final List<Rest> rests = new ArrayList<>();
        private final Place[] places;
        private final List<Double> filled = new ArrayList<>();
        private int boards;

        /** A free rectangle; each item takes a kerf more on its right and above. */
        private record Rest(int board, double x, double y, double length, double width) {}

        Filling(NestingProblem problem, int rule) {
            this.problem = problem;
            choice = rule % 3;
            cut = rule / 3;
            places = new Place[problem.items().size()];
        }

        Filling fill(List<Integer> order) {
            for (int item : order) {
                put(item);
            }
            return this;
        }

        int boards() {
            return boards;
        }

        List<Place> places() {
            return List.of(places);
        }

        /** Fewer boards; of as many, the one whose last board is emptier, as that one may go first. */
        boolean isBetterThan(Filling o) {
            return boards < o.boards || (boards == o.boards && least() < o.least() - NestingProblem.SAME);
        }

        private double least() {
            return filled.stream().mapToDouble(f -> f).min().orElse(0);
        }

        private void put(int index) {
            Item item = problem.items().get(index);
            double length = item.length() + problem.kerf();
            double width = item.width() + problem.kerf();
            int at = -1;
            boolean turned = false;
            double best = Double.POSITIVE_INFINITY;
            for (int r = 0; r < rests.size(); r++) {
                double lies = score(rests.get(r), length, width);
                double turns = item.turnable() ? score(rests.get(r), width, length) : Double.POSITIVE_INFINITY;
                if (Math.min(lies, turns) < best - NestingProblem.SAME) {
                    best = Math.min(lies, turns);
                    at = r;
                    turned = turns < lies - NestingProblem.SAME;
                }
            }
            if (at < 0) {
                rests.add(new Rest(boards, problem.trim(), problem.trim(), problem.room(), problem.height()));
                filled.add(0.0);
                boards++;
                at = rests.size() - 1;
                double lies = score(rests.get(at), length, width);
                double turns = item.turnable() ? score(rests.get(at), width, length) : Double.POSITIVE_INFINITY;
                turned = turns < lies - NestingProblem.SAME;
            }
            Rest rest = rests.remove(at);
            places[index] = new Place(rest.board(), rest.x(), rest.y(), turned);
            filled.set(rest.board(), filled.get(rest.board()) + length * width);
            split(rest, turned ? width : length, turned ? length : width);
        }

        /** Infinite where it does not go in. */
        private double score(Rest rest, double length, double width) {
            double right = rest.length() - length;
            double above = rest.width() - width;
            if (right < -NestingProblem.SAME || above < -NestingProblem.SAME) {
                return Double.POSITIVE_INFINITY;
            }
            double fine =
                    switch (choice) {
                        case 0 -> rest.length() * rest.width() - length * width;
                        case 1 -> Math.min(right, above);
                        default -> Math.max(right, above);
                    };
            return Math.max(0, fine) + rest.board() * 1e-3;
        }

        private void split(Rest rest, double length, double width) {
            double right = rest.length() - length;
            double above = rest.width() - width;
            boolean level =
                    switch (cut) {
                        case 0 -> right <= above;
                        case 1 -> right > above;
                        case 2 -> length * above <= right * width;
                        default -> length * above > right * width;
                    };
            double rightHigh = level ? width : rest.width();
            double aboveLong = level ? rest.length() : length;
            add(new Rest(rest.board(), rest.x() + length, rest.y(), right, rightHigh));
            add(new Rest(rest.board(), rest.x(), rest.y() + width, aboveLong, above));
        }

        private void add(Rest rest) {
            double least = problem.kerf() + NestingProblem.SAME;
            if (rest.length() > least && rest.width() > least) {
                rests.add(rest);
            }
        }
    }
}
