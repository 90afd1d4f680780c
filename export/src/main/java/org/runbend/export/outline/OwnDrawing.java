package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.DxfVertex;
import org.runbend.export.dxf.read.DxfDrawing;
import org.runbend.export.dxf.read.DxfEntity;

/**
 * What Runbend told programs in a drawing of its own (see {@code drafting.ReadBack}). Shapes are those drawn, so that what
 * somebody moved is where it was moved to. What carries no such lines and lies on a layer of ours is drawing only.
 */
final class OwnDrawing {
    private static final Set<String> KINDS = Set.of("vent", "drain", "bolt", "anchor", "pillar", "hatch", "other");
    private static final Set<String> CROSSINGS = Set.of("square", "never");
    private static final Set<String> FACTS = Set.of(
            "job",
            "order",
            "customer",
            "date",
            "revision",
            "port",
            "reach",
            "turn",
            "holes",
            "pipe",
            "plates",
            "spacing",
            "edge");
    /** What lies under the floor, by number: places of its corners, then its name. */
    static final Pattern BELOW = Pattern.compile("below\\d{1,3}");

    private static final double MOST_CLEARANCE = 2000;
    private static final String WHY = "as Runbend wrote it into its drawing";

    private final DxfDrawing drawing;
    private Optional<Contour> floor = Optional.empty();
    private final List<Obstacle> keepOuts = new ArrayList<>();
    private final List<Obstacle> unheated = new ArrayList<>();
    private final List<Mark> marks = new ArrayList<>();
    private final List<FloorSketch.Support> supports = new ArrayList<>();
    private final TreeMap<String, String> facts = new TreeMap<>();
    private final Set<Integer> taken = new TreeSet<>();

    /** A mark: words at a point, or at the middle of a side. */
    record Mark(Point at, boolean ofSide, String text) {}

    /** What is told of an entity. */
    private record Noted(List<Integer> numbers, DxfEntity entity, Map<String, String> values) {
        double order() {
            return Optional.ofNullable(values.get("number"))
                    .flatMap(OwnDrawing::number)
                    .orElse(0.0);
        }
    }

    private OwnDrawing(DxfDrawing drawing) {
        this.drawing = drawing;
        // files keep the order of layers, a job its own
        whole().stream().sorted(Comparator.comparingDouble(Noted::order)).forEach(this::take);
    }

    /** Everything that something is told of; lines and arcs that are parts of one line are put together. */
    private List<Noted> whole() {
        List<Noted> whole = new ArrayList<>();
        Map<Map<String, String>, List<Integer>> parts = new LinkedHashMap<>();
        drawing.notes().forEach((number, notes) -> {
            Map<String, String> values = values(notes);
            if (values.containsKey("part")) {
                parts.computeIfAbsent(values, v -> new ArrayList<>()).add(number);
            } else {
                whole.add(new Noted(List.of(number), drawing.entities().get(number), values));
            }
        });
        parts.forEach((values, numbers) -> joined(numbers).ifPresent(e -> whole.add(new Noted(numbers, e, values))));
        return whole;
    }

    /** The closed line that parts make. */
    private Optional<DxfEntity> joined(List<Integer> numbers) {
        List<DxfEntity> entities = numbers.stream().map(drawing.entities()::get).toList();
        Chaining chaining = new Chaining(new Joining(DrawnShapes.pieces(entities), 2 * Contour.SAME));
        chaining.run();
        return chaining.contours().stream()
                .max(Comparator.comparingDouble(Contour::area))
                .map(c -> new DxfEntity.Polyline(
                        c.layer(),
                        c.path().vertices().stream()
                                .map(v -> new DxfVertex(v.x(), v.y(), v.bulge()))
                                .toList(),
                        true));
    }

    /** The drawing of ours that this is, if it is one and its floor is still closed. */
    static Optional<OwnDrawing> of(DxfDrawing drawing) {
        if (drawing.notes().isEmpty()) {
            return Optional.empty();
        }
        OwnDrawing own = new OwnDrawing(drawing);
        return own.floor.isPresent() ? Optional.of(own) : Optional.empty();
    }

    Contour floor() {
        return floor.orElseThrow();
    }

    List<Obstacle> keepOuts() {
        return keepOuts;
    }

    List<Obstacle> unheated() {
        return unheated;
    }

    List<Mark> marks() {
        return marks;
    }

    List<FloorSketch.Support> supports() {
        return supports;
    }

    SortedMap<String, String> facts() {
        return facts;
    }

    /** What others added on layers of their own. */
    DxfDrawing rest() {
        List<DxfEntity> others = new ArrayList<>();
        for (int i = 0; i < drawing.entities().size(); i++) {
            DxfEntity e = drawing.entities().get(i);
            if (!taken.contains(i) && !DrawnShapes.isOwnLayer(e.layer())) {
                others.add(e);
            }
        }
        return new DxfDrawing(
                drawing.version(),
                drawing.unit(),
                drawing.metric(),
                others,
                drawing.counts(),
                drawing.ignored(),
                drawing.hidden(),
                0,
                new TreeMap<>(),
                drawing.remarks());
    }

    private static Map<String, String> values(List<String> notes) {
        Map<String, String> values = new TreeMap<>();
        for (String note : notes) {
            int cut = note.indexOf('=');
            if (cut > 0) {
                values.putIfAbsent(note.substring(0, cut), note.substring(cut + 1));
            }
        }
        return values;
    }

    private void take(Noted noted) {
        DxfEntity e = noted.entity;
        Map<String, String> notes = noted.values;
        boolean known =
                switch (notes.getOrDefault("is", "")) {
                    case "floor" -> takeFloor(e, notes);
                    case "keepOut" -> takeKeepOut(e, notes);
                    case "unheated" -> takeUnheated(e, notes);
                    case "mark" -> takeMark(notes);
                    case "support" -> takeSupport(notes);
                    default -> false;
                };
        if (known) {
            taken.addAll(noted.numbers);
        }
    }

    private boolean takeFloor(DxfEntity e, Map<String, String> notes) {
        if (floor.isPresent()) {
            return false;
        }
        floor = contour(e);
        notes.forEach((key, value) -> {
            if (FACTS.contains(key) || BELOW.matcher(key).matches()) {
                facts.put(key, value);
            }
        });
        return floor.isPresent();
    }

    private boolean takeKeepOut(DxfEntity e, Map<String, String> notes) {
        String kind = KINDS.contains(notes.get("kind")) ? notes.get("kind") : "other";
        Optional<Double> number = Optional.ofNullable(notes.get("clearance")).flatMap(OwnDrawing::number);
        double clearance = Math.max(0, Math.min(MOST_CLEARANCE, number.orElse(0.0)));
        String name = notes.getOrDefault("name", kind);
        if (e instanceof DxfEntity.Circle c) {
            Point centre = new Point(c.x(), c.y());
            keepOuts.add(new Obstacle(name, kind, centre, c.radius(), Optional.empty(), clearance, WHY));
            return true;
        }
        if (e instanceof DxfEntity.Line l) {
            Point at = new Point((l.x1() + l.x2()) / 2, (l.y1() + l.y2()) / 2);
            keepOuts.add(new Obstacle(name, kind, at, 0, Optional.empty(), clearance, WHY));
            return true;
        }
        return region(e, name, kind, clearance, keepOuts);
    }

    private boolean takeUnheated(DxfEntity e, Map<String, String> notes) {
        return region(e, notes.getOrDefault("name", "unheated"), "other", 0, unheated);
    }

    private static boolean region(DxfEntity e, String name, String kind, double clearance, List<Obstacle> into) {
        Optional<Contour> region = contour(e).flatMap(JobForm::region);
        region.ifPresent(c -> into.add(new Obstacle(name, kind, c.box().centre(), 0, Optional.of(c), clearance, WHY)));
        return region.isPresent();
    }

    private boolean takeMark(Map<String, String> notes) {
        Optional<Point> side = points(notes.get("side")).stream().findFirst();
        Optional<Point> at = points(notes.get("at")).stream().findFirst();
        String text = notes.getOrDefault("text", "");
        if (text.isBlank() || (side.isEmpty() && at.isEmpty())) {
            return false;
        }
        return marks.add(new Mark(side.or(() -> at).get(), side.isPresent(), text));
    }

    private boolean takeSupport(Map<String, String> notes) {
        List<Point> ends = points(notes.get("line"));
        Optional<Double> width = Optional.ofNullable(notes.get("width")).flatMap(OwnDrawing::number);
        String cross = CROSSINGS.contains(notes.get("cross")) ? notes.get("cross") : "square";
        if (ends.size() != 2 || width.isEmpty()) {
            return false;
        }
        String name = notes.getOrDefault("name", "support");
        return supports.add(new FloorSketch.Support(name, ends.get(0), ends.get(1), width.get(), cross));
    }

    private static Optional<Contour> contour(DxfEntity e) {
        if (e instanceof DxfEntity.Circle c) {
            return Optional.of(Contour.circle(c.layer(), new Point(c.x(), c.y()), c.radius()));
        }
        if (!(e instanceof DxfEntity.Polyline p) || !p.closed()) {
            return Optional.empty();
        }
        List<Vertex> vertices = new ArrayList<>();
        for (DxfVertex v : p.vertices()) {
            vertices.add(new Vertex(v.x(), v.y(), v.bulge()));
        }
        return Contour.of(p.layer(), vertices, false);
    }

    /** Points of numbers with blanks between. */
    static List<Point> points(String numbers) {
        List<Point> points = new ArrayList<>();
        String[] parts = numbers == null ? new String[0] : numbers.strip().split(" +", -1);
        for (int i = 0; i + 1 < parts.length; i += 2) {
            Optional<Double> x = number(parts[i]);
            Optional<Double> y = number(parts[i + 1]);
            if (x.isPresent() && y.isPresent()) {
                points.add(new Point(x.get(), y.get()));
            }
        }
        return points;
    }

    private static Optional<Double> number(String text) {
        return text.matches("-?\\d{1,9}(\\.\\d{1,9})?") ? Optional.of(Double.parseDouble(text)) : Optional.empty();
    }
}
