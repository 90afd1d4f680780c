package org.runbend.catalog.product;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.runbend.catalog.source.Plain;

/**
 * The insulation that is bought: the thinnest stack of sheets of one board that is at least as thick as asked.
 *
 * @param board what it is made of
 * @param sheets thicknesses from the top down, mm
 */
public record InsulationStack(Board board, List<Double> sheets) {
    private static final double SAME = 1e-9;
    private static final int MOST_SHEETS = 8;

    /** Copies the list. */
    public InsulationStack {
        sheets = List.copyOf(sheets);
    }

    /** The thinnest stack of the first board that has one; nothing where the catalog sells no insulation. */
    public static Optional<InsulationStack> of(Catalog catalog, double asked) {
        InsulationStack best = null;
        for (Board board : catalog.boards()) {
            if (board.kind() == Board.Kind.INSULATION && !board.sheets().isEmpty()) {
                InsulationStack stack = new InsulationStack(board, thinnest(board, asked));
                if (stack.thickness() >= asked - SAME
                        && (best == null || stack.thickness() < best.thickness() - SAME)) {
                    best = stack;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** mm. */
    public double thickness() {
        return sheets.stream().mapToDouble(s -> s).sum();
    }

    /** Words for a list: what it is and its sheets, as in "Extruded foam, 20 + 30 mm". */
    public String words() {
        return board.name() + ", " + sheets.stream().map(Plain::number).collect(Collectors.joining(" + ")) + " mm";
    }

    private static List<Double> thinnest(Board board, double asked) {
        TreeSet<Double> sizes = new TreeSet<>();
        board.sheets().forEach(s -> sizes.add(s.thickness()));
        List<Double> sorted = new ArrayList<>(sizes.descendingSet());
        List<Double> best = new ArrayList<>();
        if (asked > SAME) {
            search(sorted, 0, asked, new ArrayList<>(), best);
        }
        return best;
    }

    /** Sheets from the thickest down; of equal stacks the one with fewer sheets is met first. */
    private static void search(List<Double> sizes, int from, double left, List<Double> taken, List<Double> best) {
        double sum = taken.stream().mapToDouble(s -> s).sum();
        double least = best.stream().mapToDouble(s -> s).sum();
        if (left <= SAME) {
            boolean fewer = Math.abs(sum - least) <= SAME && taken.size() < best.size();
            if (best.isEmpty() || sum < least - SAME || fewer) {
                best.clear();
                best.addAll(taken);
            }
            return;
        }
        if (taken.size() == MOST_SHEETS || (!best.isEmpty() && sum >= least - SAME)) {
            return;
        }
        for (int i = from; i < sizes.size(); i++) {
            taken.add(sizes.get(i));
            search(sizes, i, left - sizes.get(i), taken, best);
            taken.remove(taken.size() - 1);
        }
    }
}
