package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineSegment;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfDrawing;
import org.runbend.export.dxf.read.DxfEntity;

/**
 * Finds a loop on a layer of a drawing: lines, polylines and arcs that make one open line, in the direction of the part
 * that was drawn first. What cannot be taken for one is refused in one line.
 */
public final class LoopReading {
    /** Widest gap that is closed, mm; up to 0.01 mm silently. */
    private static final double TOLERANCE = 0.5;

    /** Vertices of straight lines that lie this near to the line without them are none, mm. */
    private static final double STRAIGHT = 0.01;

    /** No pipe bends tighter, mm. */
    private static final double LEAST_RADIUS = 5;

    private static final int MOST_NAMED = 12;
    private static final int MOST_CHAINS = 4;

    private final DxfDrawing drawing;
    private final String layer;
    private final Optional<DrawingUnit> wished;
    private final List<String> remarks = new ArrayList<>();

    private LoopReading(DxfDrawing drawing, String layer, Optional<DrawingUnit> wished) {
        this.drawing = drawing;
        this.layer = layer;
        this.wished = wished;
    }

    /**
     * The loop on a layer.
     *
     * @param unit unit of the drawing's numbers, in place of the header's
     * @throws NoLoop if there is none, or more than one, or the unit is not known
     */
    public static DrawnLine read(DxfDrawing drawing, String layer, Optional<DrawingUnit> unit) {
        return new LoopReading(drawing, layer, unit).line();
    }

    private DrawnLine line() {
        DxfDrawing own = ofLayer();
        DrawingUnit unit = unit(own);
        DrawnShapes figures = new DrawnShapes(own, unit.mm());
        checkForms(figures);
        Joining joined = new Joining(figures.pieces, TOLERANCE);
        OpenLines.Chain chain = only(figures, joined);
        sayJoined(joined, figures);
        List<Vertex> vertices = new ArrayList<>(Piece.joined(chain.pieces()));
        vertices.add(new Vertex(chain.end().x(), chain.end().y(), 0));
        return new DrawnLine(rounded(figures, straightened(apart(vertices))), unit, remarks);
    }

    /** Bends that were drawn as chords or splines are arcs. */
    private List<Vertex> rounded(DrawnShapes figures, List<Vertex> vertices) {
        Bends.Found found = Bends.of(vertices, false, TOLERANCE, LEAST_RADIUS);
        figures.bends.stream().limit(MOST_CHAINS).forEach(b -> remarks.add("a spline of the drawn loop: " + b.words()));
        if (found.arcs() > 0) {
            remarks.add("bends of the drawn loop: " + found.words());
        }
        return found.vertices();
    }

    private DxfDrawing ofLayer() {
        List<DxfEntity> entities = drawing.entities().stream()
                .filter(e -> e.layer().equalsIgnoreCase(layer))
                .toList();
        if (entities.isEmpty()) {
            throw nothingThere();
        }
        return new DxfDrawing(
                drawing.version(),
                drawing.unit(),
                drawing.metric(),
                entities,
                drawing.counts(),
                drawing.ignored(),
                drawing.hidden(),
                drawing.paper(),
                new TreeMap<>(),
                drawing.remarks());
    }

    private NoLoop nothingThere() {
        if (drawing.hidden().keySet().stream().anyMatch(layer::equalsIgnoreCase)) {
            return new NoLoop("layer " + name() + " is frozen or off");
        }
        TreeSet<String> layers = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        drawing.entities().forEach(e -> layers.add(e.layer()));
        String more = layers.size() > MOST_NAMED ? " and " + (layers.size() - MOST_NAMED) + " more" : "";
        return new NoLoop("nothing visible is on layer " + name() + "; "
                + (layers.isEmpty()
                        ? "nothing visible is drawn in model space"
                        : "there are "
                                + layers.stream()
                                        .limit(MOST_NAMED)
                                        .map(FloorReading::shown)
                                        .collect(Collectors.joining(", "))
                                + more));
    }

    private String name() {
        return FloorReading.shown(layer);
    }

    private DrawingUnit unit(DxfDrawing own) {
        return wished.or(drawing::unit).orElseThrow(() -> {
            Optional<Extent> box = UnitHints.box(own);
            String size = box.map(b -> ", and what is on layer " + name() + " measures " + FloorReading.n(b.width())
                            + " x " + FloorReading.n(b.height()))
                    .orElse("");
            String units = box.map(b -> UnitHints.fitting(b.width(), b.height(), drawing.metric())).stream()
                    .flatMap(List::stream)
                    .map(u -> "units: " + u.symbol() + " makes it "
                            + UnitHints.metres(
                                    box.get().width() * u.mm(), box.get().height() * u.mm()))
                    .collect(Collectors.joining(", "));
            return new NoLoop("the drawing names no unit" + size + "; "
                    + (units.isEmpty() ? "say the unit of its numbers, such as units: mm" : units));
        });
    }

    private void checkForms(DrawnShapes figures) {
        figures.curves.stream().findFirst().ifPresent(kind -> {
            throw new NoLoop("layer " + name() + " has a curve that is no arc (" + kind.toLowerCase(Locale.ROOT)
                    + "); draw the loop of lines and arcs");
        });
        figures.contours.stream().findFirst().ifPresent(c -> {
            throw closed(c.path().vertices().get(0).point());
        });
        figures.circles.stream().findFirst().ifPresent(c -> {
            throw new NoLoop("layer " + name() + " has a circle at " + FloorReading.shown(new Point(c.x(), c.y()))
                    + "; keep anything but the loop on another layer");
        });
        if (figures.pieces.isEmpty()) {
            throw new NoLoop("layer " + name() + " holds words or points only, no line");
        }
        say(figures.words.size(), "words");
        say(figures.spots.size(), "points");
    }

    private void say(int n, String what) {
        if (n > 0) {
            remarks.add("layer " + name() + " of the drawing also holds " + what + " (" + n
                    + "), which are no part of the loop");
        }
    }

    private NoLoop closed(Point at) {
        return new NoLoop("the line on layer " + name() + " is closed, it goes through " + FloorReading.shown(at)
                + "; a loop begins and ends at the port, so open it there");
    }

    private OpenLines.Chain only(DrawnShapes figures, Joining joined) {
        joined.closedOnes().stream().findFirst().ifPresent(c -> {
            throw closed(c.path().vertices().get(0).point());
        });
        OpenLines.branching(joined).ifPresent(p -> {
            throw new NoLoop("more than two lines of layer " + name() + " meet at " + FloorReading.shown(p)
                    + "; a loop does not branch");
        });
        OpenLines lines = new OpenLines(joined, figures.pieces.size());
        lines.closed().ifPresent(p -> {
            throw closed(p);
        });
        if (lines.chains().isEmpty()) {
            throw new NoLoop("the lines on layer " + name() + " have no length");
        }
        if (lines.chains().size() > 1) {
            throw several(lines.chains());
        }
        return lines.chains().get(0);
    }

    private NoLoop several(List<OpenLines.Chain> chains) {
        Gap nearest = nearest(chains);
        String ways = chains.stream()
                .limit(MOST_CHAINS)
                .map(c -> FloorReading.shown(c.start()) + " to " + FloorReading.shown(c.end()))
                .collect(Collectors.joining(", "));
        int more = chains.size() - Math.min(chains.size(), MOST_CHAINS);
        return new NoLoop(
                "layer " + name() + " has " + chains.size() + " lines that do not meet, a loop is one: " + ways
                        + (more > 0 ? " and " + more + " more" : "") + "; the nearest ends are "
                        + FloorReading.n(nearest.width()) + " mm apart, at " + FloorReading.shown(nearest.a()) + " and "
                        + FloorReading.shown(nearest.b()));
    }

    /** The nearest ends of two lines; of very many lines the first ones only. */
    private static Gap nearest(List<OpenLines.Chain> all) {
        List<OpenLines.Chain> chains = all.subList(0, Math.min(all.size(), 500));
        List<Gap> gaps = new ArrayList<>();
        for (int i = 0; i < chains.size(); i++) {
            for (int j = 0; j < i; j++) {
                for (Point a : List.of(chains.get(j).start(), chains.get(j).end())) {
                    for (Point b : List.of(chains.get(i).start(), chains.get(i).end())) {
                        gaps.add(new Gap(a, b));
                    }
                }
            }
        }
        return gaps.stream().min(Comparator.comparingDouble(Gap::width)).orElseThrow();
    }

    private void sayJoined(Joining joined, DrawnShapes figures) {
        joined.gaps().stream()
                .limit(MOST_CHAINS)
                .forEach(g -> remarks.add("a gap of " + Decimals.of(g.width(), 3)
                        + " mm in the drawn loop was closed at " + FloorReading.shown(g.a())));
        if (joined.gaps().size() > MOST_CHAINS) {
            remarks.add((joined.gaps().size() - MOST_CHAINS) + " more gaps in the drawn loop were closed");
        }
        joined.corners().stream()
                .limit(MOST_CHAINS)
                .forEach(c -> remarks.add("lines of the drawn loop that crossed or fell short by up to "
                        + Decimals.of(c.off(), 3) + " mm were made to meet at " + FloorReading.shown(c.at())));
        if (joined.corners().size() > MOST_CHAINS) {
            remarks.add((joined.corners().size() - MOST_CHAINS) + " more corners of the drawn loop were made to meet");
        }
        if (joined.doubled() > 0) {
            remarks.add(joined.doubled() + " of " + figures.pieces.size() + " parts of the loop were drawn twice");
        }
    }

    /** Vertices that lie on one another are one. */
    private static List<Vertex> apart(List<Vertex> vertices) {
        List<Vertex> out = new ArrayList<>();
        for (Vertex v : vertices) {
            if (!out.isEmpty() && out.get(out.size() - 1).point().distance(v.point()) < Contour.SAME) {
                out.remove(out.size() - 1);
            }
            out.add(v);
        }
        return out;
    }

    /** Drops vertices on straight ways, however finely these were drawn. */
    private static List<Vertex> straightened(List<Vertex> vertices) {
        List<Vertex> out = new ArrayList<>();
        List<Vertex> dropped = new ArrayList<>();
        for (int i = 0; i < vertices.size(); i++) {
            Vertex v = vertices.get(i);
            boolean between = i > 0
                    && i + 1 < vertices.size()
                    && v.bulge() == 0
                    && vertices.get(i - 1).bulge() == 0;
            dropped.add(v);
            if (between && isOnTheWay(out.get(out.size() - 1), vertices.get(i + 1), dropped)) {
                continue;
            }
            dropped.clear();
            out.add(v);
        }
        return out;
    }

    private static boolean isOnTheWay(Vertex a, Vertex b, List<Vertex> between) {
        LineSegment way = new LineSegment(a.x(), a.y(), b.x(), b.y());
        return between.stream().allMatch(v -> way.distance(new Coordinate(v.x(), v.y())) <= STRAIGHT);
    }
}
