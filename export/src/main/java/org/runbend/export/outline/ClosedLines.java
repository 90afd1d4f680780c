package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.runbend.export.drawing.Point;

/**
 * All closed lines of a drawing, largest first.
 *
 * @param contours drawn as such or joined, none twice
 * @param closed gaps that were closed
 * @param corners corners of these lines that were made to meet, of very many the first ones
 * @param open the gap of the largest chain that stayed open
 * @param doubled lines drawn twice
 * @param dividing lines that divide a closed line
 * @param left lines that are part of no closed one
 */
record ClosedLines(
        List<Contour> contours,
        List<Gap> closed,
        List<Corner> corners,
        Optional<Gap> open,
        int doubled,
        int dividing,
        List<Piece> left) {

    private static final int MOST_CORNERS = 200;

    /** Joins lines layer by layer, then what is left over of all layers. */
    static ClosedLines of(DrawnShapes figures, double tolerance) {
        Map<String, List<Piece>> byLayer = new LinkedHashMap<>();
        figures.pieces.forEach(
                p -> byLayer.computeIfAbsent(p.layer(), l -> new ArrayList<>()).add(p));
        List<Chaining> chainings = new ArrayList<>();
        List<Piece> left = new ArrayList<>();
        int layersLeft = 0;
        Chaining last = null;
        for (List<Piece> pieces : byLayer.values()) {
            Chaining chaining = chained(pieces, tolerance, chainings);
            boolean any = left.addAll(chaining.left());
            layersLeft += any ? 1 : 0;
            last = any || last == null ? chaining : last;
        }
        // what is left of one layer alone was joined there already
        if (last == null || layersLeft > 1) {
            last = chained(left, tolerance, chainings);
        }
        List<Contour> all = new ArrayList<>(figures.hatched());
        all.addAll(figures.contours);
        figures.circles.forEach(c -> all.add(Contour.circle(c.layer(), new Point(c.x(), c.y()), c.radius())));
        List<Gap> closed = new ArrayList<>();
        List<Corner> corners = new ArrayList<>();
        int doubled = 0;
        int dividing = 0;
        for (Chaining c : chainings) {
            all.addAll(c.contours());
            closed.addAll(c.joined().gaps());
            corners.addAll(c.joined().corners());
            doubled += c.joined().doubled();
            dividing += c.dividing();
        }
        return new ClosedLines(
                distinct(all),
                closed,
                corners.stream().limit(MOST_CORNERS).filter(c -> isOn(c, all)).toList(),
                last.open(),
                doubled,
                dividing,
                last.left());
    }

    /** How many lines are part of no closed one. */
    int loose() {
        return left.size();
    }

    private static boolean isOn(Corner corner, List<Contour> all) {
        return all.stream().anyMatch(c -> c.hasVertexAt(corner.at()));
    }

    private static Chaining chained(List<Piece> pieces, double tolerance, List<Chaining> into) {
        Chaining chaining = new Chaining(new Joining(pieces, tolerance));
        chaining.run();
        into.add(chaining);
        return chaining;
    }

    private static List<Contour> distinct(List<Contour> all) {
        List<Ranked> ranked = new ArrayList<>();
        all.forEach(c -> ranked.add(new Ranked(c, c.weight())));
        ranked.sort((a, b) -> Double.compare(b.weight, a.weight));
        List<Contour> out = new ArrayList<>();
        for (Ranked r : ranked) {
            boolean twin = false;
            // Twins have nearly equal areas, so they are among the last few.
            for (int i = out.size() - 1; i >= 0 && !twin && i > out.size() - 50; i--) {
                twin = out.get(i).isLike(r.contour);
            }
            if (!twin) {
                out.add(r.contour);
            }
        }
        return out;
    }

    private record Ranked(Contour contour, double weight) {}
}
