package org.runbend.optimizer.cutting.cover;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.StockUse;

/** A cover plan in the making: each piece knows its stretch and its stock piece; lengths in steps. */
final class CoverPlan {
    private final CoverGrid grid;
    private final List<Integer> plates = new ArrayList<>();
    private final List<Piece> pieces = new ArrayList<>();

    CoverPlan(CoverGrid grid) {
        this.grid = grid;
    }

    private static final class Piece {
        private final int stretch;
        private final int plate;
        private int steps;

        Piece(int stretch, int plate, int steps) {
            this.stretch = stretch;
            this.plate = plate;
            this.steps = steps;
        }
    }

    /** Takes one more stock piece and returns its number in the plan. */
    int open(int stock) {
        plates.add(stock);
        return plates.size() - 1;
    }

    void lay(int stretch, int plate, int steps) {
        pieces.add(new Piece(stretch, plate, steps));
    }

    long cost() {
        return plates.stream()
                .mapToLong(s -> grid.problem().stock().get(s).cost())
                .sum();
    }

    int pieceCount() {
        return pieces.size();
    }

    long covered() {
        long covered = 0;
        for (int r = 0; r < grid.problem().stretches().size(); r++) {
            covered += coveredOf(r);
        }
        return covered;
    }

    /** Cheaper, then fewer pieces, then more covered. */
    boolean isBetterThan(CoverPlan other) {
        return Comparator.comparingLong(CoverPlan::cost)
                        .thenComparingInt(CoverPlan::pieceCount)
                        .thenComparing(
                                Comparator.comparingLong(CoverPlan::covered).reversed())
                        .compare(this, other)
                < 0;
    }

    private long coveredOf(int stretch) {
        long sum = 0;
        for (Piece p : pieces) {
            sum += p.stretch == stretch ? grid.length(p.steps) + grid.problem().gap() : 0;
        }
        return sum == 0 ? 0 : sum - grid.problem().gap();
    }

    private long least(int stretch) {
        return grid.problem().stretches().get(stretch).least();
    }

    private long room(int plate) {
        long taken = 0;
        for (Piece p : pieces) {
            taken += p.plate == plate ? grid.length(p.steps) + grid.problem().kerf() : 0;
        }
        return grid.problem().stock().get(plates.get(plate)).length()
                - Math.max(0, taken - grid.problem().kerf());
    }

    /** Leaves out pieces that the target does not need, shortest first, then lengthens what has room on both sides. */
    void polish() {
        pieces.sort(Comparator.comparingInt(p -> p.steps));
        long spare = covered() - grid.problem().target();
        for (Piece p : List.copyOf(pieces)) {
            long without = without(p);
            if (without <= spare && coveredOf(p.stretch) - without >= least(p.stretch)) {
                pieces.remove(p);
                spare -= without;
            }
        }
        pieces.forEach(this::lengthen);
        dropEmptyPlates();
    }

    private long without(Piece p) {
        long before = coveredOf(p.stretch);
        return Math.min(before, grid.length(p.steps) + grid.problem().gap());
    }

    private void lengthen(Piece p) {
        long onStretch = grid.problem().stretches().get(p.stretch).length() - coveredOf(p.stretch);
        long inPlate = room(p.plate);
        long more = Math.min(onStretch, inPlate) / grid.problem().step();
        p.steps = Math.max(p.steps, grid.sizeWithin(p.steps + more));
    }

    private void dropEmptyPlates() {
        List<Integer> kept = new ArrayList<>();
        List<Piece> moved = new ArrayList<>();
        for (int plate = 0; plate < plates.size(); plate++) {
            int number = plate;
            List<Piece> its = pieces.stream().filter(p -> p.plate == number).toList();
            if (!its.isEmpty()) {
                its.forEach(p -> moved.add(new Piece(p.stretch, kept.size(), p.steps)));
                kept.add(plates.get(plate));
            }
        }
        plates.clear();
        plates.addAll(kept);
        pieces.clear();
        pieces.addAll(moved);
    }

    /** The plan as an answer, with a bound proved elsewhere. */
    CoverSolution solution(Bound bound) {
        List<List<Long>> byStretch = new ArrayList<>();
        for (int r = 0; r < grid.problem().stretches().size(); r++) {
            int stretch = r;
            byStretch.add(
                    lengths(pieces.stream().filter(p -> p.stretch == stretch).toList()));
        }
        List<StockUse> uses = new ArrayList<>();
        for (int plate = 0; plate < plates.size(); plate++) {
            int number = plate;
            List<Piece> its = pieces.stream().filter(p -> p.plate == number).toList();
            long left = Math.max(0, room(plate) - grid.problem().kerf());
            uses.add(new StockUse(plates.get(plate), lengths(its), left));
        }
        uses.sort(Comparator.comparingInt(StockUse::stock));
        return new CoverSolution(byStretch, uses, cost(), covered(), bound);
    }

    private List<Long> lengths(List<Piece> some) {
        return some.stream()
                .map(p -> grid.length(p.steps))
                .sorted(Comparator.reverseOrder())
                .toList();
    }
}
