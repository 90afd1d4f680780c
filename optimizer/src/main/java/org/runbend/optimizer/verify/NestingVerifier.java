package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.runbend.optimizer.boards.nesting.NestingProblem;
import org.runbend.optimizer.boards.nesting.NestingSolution;

/**
 * Holds a packing against its boards: each rectangle inside the trim, a kerf from the others, and, for a track saw, cut free
 * by cuts from edge to edge. Knows nothing of how it was packed.
 */
public final class NestingVerifier {
    private static final double SAME = 1e-6;

    private NestingVerifier() {}

    private record Box(int item, double x, double y, double right, double top) {
        double low(boolean across) {
            return across ? y : x;
        }

        double high(boolean across) {
            return across ? top : right;
        }
    }

    /** What is wrong with a packing; nothing if it is as it should be. */
    public static List<Finding> verify(NestingProblem problem, NestingSolution solution) {
        Findings findings = new Findings();
        findings.unless(
                solution.places().size() == problem.items().size(),
                "%d pieces have a place, there are %d",
                solution.places().size(),
                problem.items().size());
        findings.unless(
                solution.bound() <= solution.boards(),
                "the bound of %d boards is over the %d used",
                solution.bound(),
                solution.boards());
        List<List<Box>> boards = new ArrayList<>();
        for (int b = 0; b < solution.boards(); b++) {
            boards.add(new ArrayList<>());
        }
        double area = 0;
        for (int i = 0; i < Math.min(solution.places().size(), problem.items().size()); i++) {
            NestingSolution.Place p = solution.places().get(i);
            NestingProblem.Item item = problem.items().get(i);
            findings.unless(item.turnable() || !p.turned(), "piece %d may not be turned", i);
            findings.unless(p.board() >= 0 && p.board() < solution.boards(), "piece %d lies on no board", i);
            double long0 = p.turned() ? item.width() : item.length();
            double wide0 = p.turned() ? item.length() : item.width();
            area += long0 * wide0;
            if (p.board() >= 0 && p.board() < solution.boards()) {
                boards.get(p.board()).add(new Box(i, p.x(), p.y(), p.x() + long0, p.y() + wide0));
            }
        }
        findings.unless(
                area <= solution.boards() * problem.length() * problem.width() + SAME,
                "the pieces are larger than the %d boards",
                solution.boards());
        boards.forEach(b -> board(problem, b, findings));
        return findings.all();
    }

    private static void board(NestingProblem problem, List<Box> boxes, Findings findings) {
        findings.unless(!boxes.isEmpty(), "a board is bought and not cut");
        for (Box a : boxes) {
            findings.unless(
                    a.x() >= problem.trim() - SAME
                            && a.y() >= problem.trim() - SAME
                            && a.right() <= problem.length() - problem.trim() + SAME
                            && a.top() <= problem.width() - problem.trim() + SAME,
                    "piece %d juts out of its board",
                    a.item());
            for (Box b : boxes) {
                double apart = Math.max(
                        Math.max(b.x() - a.right(), a.x() - b.right()), Math.max(b.y() - a.top(), a.y() - b.top()));
                findings.unless(
                        a.item() >= b.item() || apart >= problem.kerf() - SAME,
                        "pieces %d and %d lie %.3f mm apart, the saw takes %.3f",
                        a.item(),
                        b.item(),
                        apart,
                        problem.kerf());
            }
        }
        findings.unless(
                !problem.guillotine() || cuttable(boxes, problem.kerf()), "a board cannot be cut from edge to edge");
    }

    /** Whether cuts from edge to edge part all pieces: some cut parts them in two groups that can be parted in turn. */
    private static boolean cuttable(List<Box> boxes, double kerf) {
        if (boxes.size() <= 1) {
            return true;
        }
        for (boolean across : new boolean[] {false, true}) {
            List<Box> sorted = new ArrayList<>(boxes);
            sorted.sort(Comparator.comparingDouble(b -> b.low(across)));
            double reach = sorted.get(0).high(across);
            for (int i = 1; i < sorted.size(); i++) {
                if (sorted.get(i).low(across) >= reach + kerf - SAME) {
                    return cuttable(sorted.subList(0, i), kerf) && cuttable(sorted.subList(i, sorted.size()), kerf);
                }
                reach = Math.max(reach, sorted.get(i).high(across));
            }
        }
        return false;
    }
}
