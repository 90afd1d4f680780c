package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfDrawing;

/** Which unit a drawing of a floor may be in, by its size. */
final class UnitHints {
    private static final List<DrawingUnit> METRIC = List.of(DrawingUnit.MM, DrawingUnit.CM, DrawingUnit.M);
    private static final List<DrawingUnit> IMPERIAL = List.of(DrawingUnit.IN, DrawingUnit.FT);
    /** Floors of vans, boats and huts (common practice): longer side, mm; box, mm2. */
    private static final double SHORTEST = 700;

    private static final double LONGEST = 12_000;
    private static final double SMALLEST = 0.4e6;
    private static final double LARGEST = 30e6;

    private UnitHints() {}

    /** The end of a message: units that make a floor of a box with these sides, most likely first. */
    static String words(double width, double height, Optional<Boolean> metric) {
        List<DrawingUnit> fit = fitting(width, height, metric);
        if (fit.isEmpty()) {
            return "no usual unit makes a floor of it; say the unit of its numbers, such as --drawing-units mm";
        }
        return fit.stream()
                .map(u -> "--drawing-units " + u.symbol() + " makes a floor of "
                        + metres(width * u.mm(), height * u.mm()))
                .collect(Collectors.joining(", "));
    }

    /** Units that make a floor of a box with these sides, most likely first. */
    static List<DrawingUnit> fitting(double width, double height, Optional<Boolean> metric) {
        List<DrawingUnit> first = metric.orElse(true) ? METRIC : IMPERIAL;
        List<DrawingUnit> then = metric.orElse(true) ? IMPERIAL : METRIC;
        return Stream.concat(first.stream(), then.stream())
                .filter(u -> fits(width * u.mm(), height * u.mm()))
                .toList();
    }

    private static boolean fits(double width, double height) {
        double longer = Math.max(width, height);
        double box = width * height;
        return longer >= SHORTEST && longer <= LONGEST && box >= SMALLEST && box <= LARGEST;
    }

    static String metres(double width, double height) {
        return String.format(Locale.ROOT, "%.2f x %.2f m", width / 1000, height / 1000);
    }

    /** Box of the largest closed line in drawing units or, if there is none, of all that was drawn; empty if nothing was. */
    static Optional<Extent> box(DxfDrawing drawing) {
        DrawnShapes figures = new DrawnShapes(drawing, 1);
        List<Extent> boxes = new ArrayList<>();
        figures.contours.forEach(c -> boxes.add(c.box()));
        figures.circles.forEach(
                c -> boxes.add(Extent.at(new Point(c.x(), c.y())).grow(c.radius())));
        figures.pieces.forEach(p ->
                boxes.add(Extent.around(p.vertices().stream().map(Vertex::point).toList())));
        Optional<Extent> all = boxes.stream().reduce(Extent::union);
        double size = all.map(b -> Math.max(b.width(), b.height())).orElse(0.0);
        return ClosedLines.of(figures, 5e-4 * size).contours().stream()
                .map(Contour::box)
                .max(Comparator.comparingDouble(b -> b.width() * b.height()))
                .or(() -> all);
    }
}
