package org.runbend.export.dxf.read;

import java.util.AbstractList;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import org.runbend.export.dxf.DxfVertex;

/** Places everything of model space: inserts blocks, leaves hidden layers out, turns what is no arc into chords. */
final class ModelSpace {
    /** Chords lie within 0.1 mm of their curve, the last hundredth is for rounding. */
    private static final double CHORD_MM = 0.099;
    /** Beyond 100 m nobody needs 0.1 mm; without this a planet drawn by mistake would never end. */
    private static final double CHORD_SHARE = 1e-6;

    private static final double SAME = 1e-9;

    private final Parsed parsed;
    private final DxfLimits limits;
    private final TagSource places;
    private final double chord;
    private final Deque<String> open = new ArrayDeque<>();
    final List<DxfEntity> entities = new ArrayList<>();
    final TreeMap<String, Integer> ignored = new TreeMap<>();
    final TreeMap<String, Integer> hidden = new TreeMap<>();
    final TreeSet<String> missing = new TreeSet<>();
    final TreeMap<Integer, List<String>> notes = new TreeMap<>();
    private long left;
    private int place;

    /** {@code places} only words faults; {@code mm} are the millimetres of a drawing unit. */
    ModelSpace(Parsed parsed, DxfLimits limits, TagSource places, double mm) {
        this.parsed = parsed;
        this.limits = limits;
        this.places = places;
        chord = CHORD_MM / mm;
    }

    void run() {
        left = limits.copies();
        for (Raw raw : parsed.model) {
            left += raw instanceof Raw.Poly poly ? poly.count() + 1 : 1;
        }
        parsed.model.forEach(raw -> add(raw, Placement.IDENTITY, ""));
    }

    private void add(Raw raw, Placement at, String parentLayer) {
        place = raw.head().place();
        spend(1);
        String layer = raw.head().layer().equals("0") && !parentLayer.isEmpty()
                ? parentLayer
                : raw.head().layer();
        Parsed.Layer known = parsed.layers.get(Parsed.key(layer));
        if (known != null) {
            layer = known.name();
            boolean insert = raw instanceof Raw.Insert;
            if (known.frozen() || (known.off() && !insert)) {
                hidden.merge(layer, 1, Integer::sum);
                return;
            }
        }
        int number = entities.size();
        place(raw, at, layer);
        if (!raw.head().notes().isEmpty() && entities.size() == number + 1) {
            notes.put(number, raw.head().notes());
        }
    }

    private void spend(long parts) {
        left -= parts;
        if (left < 0) {
            throw places.brokenAt(
                    place,
                    "with this the drawing has over " + limits.copies()
                            + " copies and chords; explode or delete what is no floor");
        }
    }

    private void place(Raw raw, Placement at, String layer) {
        if (raw instanceof Raw.Line line) {
            line(line, at, layer);
        } else if (raw instanceof Raw.Poly poly) {
            polyline(poly, at.times(poly.plane()), layer);
        } else if (raw instanceof Raw.Round round) {
            round(round, at, layer);
        } else if (raw instanceof Raw.Oval oval) {
            conic(oval.head().type(), oval(oval, at), layer);
        } else if (raw instanceof Raw.Spline spline) {
            spline(spline, at, layer);
        } else if (raw instanceof Raw.Through through) {
            through(through, at, layer);
        } else if (raw instanceof Raw.Spot s) {
            entities.add(new DxfEntity.Spot(layer, at.x(s.x(), s.y(), s.z()), at.y(s.x(), s.y(), s.z())));
        } else if (raw instanceof Raw.Words words) {
            words(words, at.times(words.plane()), layer);
        } else if (raw instanceof Raw.Insert insert) {
            insert(insert, at, layer);
        } else if (raw instanceof Raw.Area area) {
            area(area, at, layer);
        } else {
            ignore(raw.head().type());
        }
    }

    private void ignore(String what) {
        ignored.merge(what.isEmpty() ? "nameless entity" : what, 1, Integer::sum);
    }

    private void line(Raw.Line l, Placement at, String layer) {
        double x1 = at.x(l.x1(), l.y1(), l.z1());
        double y1 = at.y(l.x1(), l.y1(), l.z1());
        double x2 = at.x(l.x2(), l.y2(), l.z2());
        double y2 = at.y(l.x2(), l.y2(), l.z2());
        if (x1 == x2 && y1 == y2) {
            ignore("LINE of no length");
        } else {
            entities.add(new DxfEntity.Line(layer, x1, y1, x2, y2));
        }
    }

    private void round(Raw.Round r, Placement outer, String layer) {
        if (outer == Placement.IDENTITY && r.plane() == Placement.IDENTITY) {
            entities.add(
                    r.isWhole()
                            ? new DxfEntity.Circle(layer, r.x(), r.y(), r.radius())
                            : new DxfEntity.Arc(layer, r.x(), r.y(), r.radius(), r.start(), r.sweep()));
            return;
        }
        Placement at = outer.times(r.plane());
        double radius = r.radius();
        Conic conic = new Conic(
                at.x(r.x(), r.y(), r.z()),
                at.y(r.x(), r.y(), r.z()),
                at.dx(radius, 0, 0),
                at.dy(radius, 0, 0),
                at.dx(0, radius, 0),
                at.dy(0, radius, 0),
                Math.toRadians(r.start()),
                Math.toRadians(r.sweep()));
        conic(r.head().type(), conic, layer);
    }

    private static Conic oval(Raw.Oval o, Placement at) {
        double[] c = o.centre().values();
        double[] u = o.u().values();
        double[] v = o.v().values();
        return new Conic(
                at.x(c[0], c[1], c[2]),
                at.y(c[0], c[1], c[2]),
                at.dx(u[0], u[1], u[2]),
                at.dy(u[0], u[1], u[2]),
                at.dx(v[0], v[1], v[2]),
                at.dy(v[0], v[1], v[2]),
                o.start(),
                o.sweep());
    }

    private void conic(String type, Conic conic, String layer) {
        if (conic.isFlat()) {
            ignore(type + " seen from its side");
            return;
        }
        conic.round(layer).ifPresentOrElse(entities::add, () -> {
            List<DxfVertex> chords = conic.chords(tolerance(conic.longerHalfAxis()));
            spend(chords.size());
            entities.add(new DxfEntity.Curve(layer, type, chords, conic.isWhole()));
        });
    }

    private double tolerance(double size) {
        return Math.max(chord, CHORD_SHARE * size);
    }

    private void polyline(Raw.Poly p, Placement at, String layer) {
        spend(p.count());
        boolean similar = p.solid() || at == Placement.IDENTITY || at.isSimilar();
        double hand = p.solid() || at == Placement.IDENTITY || !at.isMirrored() ? 1 : -1;
        List<DxfVertex> vertices = new ArrayList<>(p.count());
        for (int i = 0; i < p.count(); i++) {
            double x = p.triples().at(3 * i);
            double y = p.triples().at(3 * i + 1);
            double third = p.triples().at(3 * i + 2);
            double z = p.solid() ? third : p.z();
            double bulge = p.solid() || third == 0 ? 0 : hand * third;
            vertices.add(
                    at == Placement.IDENTITY
                            ? new DxfVertex(x, y, bulge)
                            : new DxfVertex(at.x(x, y, z), at.y(x, y, z), bulge));
        }
        if (similar || vertices.stream().allMatch(v -> v.bulge() == 0)) {
            entities.add(new DxfEntity.Polyline(layer, vertices, p.closed()));
        } else {
            entities.add(new DxfEntity.Curve(layer, p.head().type(), squeezed(p, at), p.closed()));
        }
    }

    /** A polyline whose arcs have become parts of ellipses, as chords. */
    private List<DxfVertex> squeezed(Raw.Poly p, Placement at) {
        List<DxfVertex> out = new ArrayList<>();
        int n = p.count();
        for (int i = 0; i < (p.closed() ? n : n - 1); i++) {
            double x = p.triples().at(3 * i);
            double y = p.triples().at(3 * i + 1);
            int j = (i + 1) % n;
            out.add(new DxfVertex(at.x(x, y, p.z()), at.y(x, y, p.z()), 0));
            double bulge = p.triples().at(3 * i + 2);
            if (bulge != 0) {
                List<DxfVertex> chords =
                        squeezed(x, y, p.triples().at(3 * j), p.triples().at(3 * j + 1), bulge, p.z(), at);
                spend(chords.size());
                out.addAll(chords);
            }
        }
        if (!p.closed()) {
            double x = p.triples().at(3 * n - 3);
            double y = p.triples().at(3 * n - 2);
            out.add(new DxfVertex(at.x(x, y, p.z()), at.y(x, y, p.z()), 0));
        }
        return out;
    }

    /** The vertices between the ends of an arc. Centre = middle of the chord + left normal x (1 - b^2) / (4 b). */
    private List<DxfVertex> squeezed(double x1, double y1, double x2, double y2, double bulge, double z, Placement at) {
        double k = (1 - bulge * bulge) / (4 * bulge);
        double cx = (x1 + x2) / 2 - (y2 - y1) * k;
        double cy = (y1 + y2) / 2 + (x2 - x1) * k;
        double ux = x1 - cx;
        double uy = y1 - cy;
        double hand = bulge > 0 ? 1 : -1;
        double sweep = 4 * StrictMath.atan(Math.abs(bulge));
        if (x1 == x2 && y1 == y2) {
            return List.of();
        }
        Conic conic = new Conic(
                at.x(cx, cy, z),
                at.y(cx, cy, z),
                at.dx(ux, uy, 0),
                at.dy(ux, uy, 0),
                at.dx(-hand * uy, hand * ux, 0),
                at.dy(-hand * uy, hand * ux, 0),
                0,
                sweep);
        List<DxfVertex> chords = conic.chords(tolerance(conic.longerHalfAxis()));
        return chords.size() < 3 ? List.of() : chords.subList(1, chords.size() - 1);
    }

    private void spline(Raw.Spline s, Placement at, String layer) {
        double[] xy = flat(s.triples().values(), at);
        SplineCurve curve =
                new SplineCurve(s.degree(), s.knots().values(), s.weights().values(), xy);
        List<DxfVertex> chords = new Chords(left);
        double[] start = curve.start();
        chords.add(new DxfVertex(start[0], start[1], 0));
        curve.flatten(new Flattening(tolerance(size(xy)), chords));
        curve(s.head().type(), chords, s.closed(), layer);
    }

    private void through(Raw.Through t, Placement at, String layer) {
        double[] xy = distinct(flat(t.triples().values(), at), t.closed());
        if (xy.length < 4) {
            ignore(t.head().type() + " of no length");
            return;
        }
        ThroughCurve curve = new ThroughCurve(xy, flatVector(t.startTangent(), at), flatVector(t.endTangent(), at));
        List<DxfVertex> chords = new Chords(left);
        chords.add(new DxfVertex(xy[0], xy[1], 0));
        curve.flatten(new Flattening(tolerance(size(xy)), chords));
        curve(t.head().type(), chords, t.closed(), layer);
    }

    private void curve(String type, List<DxfVertex> chords, boolean closed, String layer) {
        spend(chords.size());
        DxfVertex first = chords.get(0);
        DxfVertex last = chords.get(chords.size() - 1);
        double size = Math.max(Math.abs(first.x()), Math.abs(first.y()));
        boolean meets = Math.abs(first.x() - last.x()) + Math.abs(first.y() - last.y()) <= SAME * (1 + size);
        boolean sound = chords.stream().allMatch(v -> Double.isFinite(v.x()) && Double.isFinite(v.y()));
        if (!sound || chords.size() < 2) {
            ignore(type + " of no shape");
            return;
        }
        boolean drop = meets && chords.size() > 3;
        entities.add(
                new DxfEntity.Curve(layer, type, drop ? chords.subList(0, chords.size() - 1) : chords, closed || drop));
    }

    private static double[] flat(double[] triples, Placement at) {
        int n = triples.length / 3;
        double[] xy = new double[2 * n];
        for (int i = 0; i < n; i++) {
            xy[2 * i] = at.x(triples[3 * i], triples[3 * i + 1], triples[3 * i + 2]);
            xy[2 * i + 1] = at.y(triples[3 * i], triples[3 * i + 1], triples[3 * i + 2]);
        }
        return xy;
    }

    private static double[] flatVector(Reals v, Placement at) {
        return v.size() == 0
                ? new double[0]
                : new double[] {at.dx(v.at(0), v.at(1), v.at(2)), at.dy(v.at(0), v.at(1), v.at(2))};
    }

    /** Points without repetitions; a closed curve comes back to its first point. */
    private static double[] distinct(double[] xy, boolean closed) {
        double[] out = new double[xy.length + 2];
        int n = 0;
        for (int i = 0; i < xy.length + (closed ? 2 : 0); i += 2) {
            double x = xy[i % xy.length];
            double y = xy[i % xy.length + 1];
            if (n == 0 || out[n - 2] != x || out[n - 1] != y) {
                out[n++] = x;
                out[n++] = y;
            }
        }
        return Arrays.copyOf(out, n);
    }

    private static double size(double[] xy) {
        double size = 0;
        for (int i = 2; i < xy.length; i++) {
            size = Math.max(size, Math.abs(xy[i] - xy[i % 2]));
        }
        return size;
    }

    private void words(Raw.Words w, Placement at, String layer) {
        double height = w.height() * Math.sqrt(square(at.dx(0, 1, 0)) + square(at.dy(0, 1, 0)));
        double c = Placement.cosine(w.angle());
        double s = Placement.cosine(w.angle() - 90);
        double angle =
                at == Placement.IDENTITY ? w.angle() : Math.toDegrees(StrictMath.atan2(at.dy(c, s, 0), at.dx(c, s, 0)));
        entities.add(new DxfEntity.Text(
                layer,
                at.x(w.x(), w.y(), w.z()),
                at.y(w.x(), w.y(), w.z()),
                height,
                angle,
                w.column(),
                w.row(),
                w.content()));
    }

    private static double square(double v) {
        return v * v;
    }

    /** The edges of an area are placed like any other entity, and kept together. */
    private void area(Raw.Area area, Placement at, String layer) {
        List<List<DxfEntity>> edges = new ArrayList<>();
        int before = entities.size();
        for (List<Raw> edge : area.edges()) {
            for (Raw part : edge) {
                spend(1);
                place(part, at, layer);
            }
            List<DxfEntity> placed = entities.subList(before, entities.size());
            edges.add(List.copyOf(placed));
            placed.clear();
        }
        entities.add(new DxfEntity.Area(layer, edges));
    }

    private void insert(Raw.Insert insert, Placement at, String layer) {
        String key = Parsed.key(insert.block());
        Parsed.Block block = parsed.blocks.get(key);
        if (block == null || block.foreign()) {
            missing.add(insert.block());
            ignore(block == null ? "INSERT of a missing block" : "INSERT of another file");
            return;
        }
        checkNesting(insert, key);
        long copies = (long) insert.columns() * insert.rows();
        if (copies > limits.copies()) {
            throw places.brokenAt(
                    place,
                    "block " + DxfFault.quoted(insert.block()) + " is inserted " + copies + " times, at most "
                            + limits.copies() + " copies are possible");
        }
        open.push(key);
        Placement base = Placement.moved(-block.x(), -block.y(), -block.z());
        for (int row = 0; row < insert.rows(); row++) {
            for (int column = 0; column < insert.columns(); column++) {
                copy(
                        block,
                        at.times(insert.place())
                                .times(step(insert, column, row))
                                .times(base),
                        layer);
            }
        }
        open.pop();
    }

    private static Placement step(Raw.Insert insert, int column, int row) {
        return column == 0 && row == 0
                ? Placement.IDENTITY
                : Placement.moved(column * insert.dx(), row * insert.dy(), 0);
    }

    private void copy(Parsed.Block block, Placement at, String layer) {
        spend(1);
        if (!at.isSound()) {
            throw places.brokenAt(
                    place, "block " + DxfFault.quoted(block.name()) + " is inserted too large or too far off");
        }
        for (Raw raw : block.content()) {
            add(raw, at, layer);
        }
    }

    private void checkNesting(Raw.Insert insert, String key) {
        if (open.contains(key)) {
            throw places.brokenAt(place, "block " + DxfFault.quoted(insert.block()) + " inserts itself");
        }
        if (open.size() >= limits.depth()) {
            throw places.brokenAt(
                    place,
                    "block " + DxfFault.quoted(insert.block()) + " lies over " + limits.depth() + " blocks deep");
        }
    }

    /** A list that stops before it fills the memory. */
    private final class Chords extends AbstractList<DxfVertex> {
        private final List<DxfVertex> inner = new ArrayList<>();
        private final long most;

        Chords(long most) {
            this.most = most;
        }

        @Override
        public boolean add(DxfVertex v) {
            if (inner.size() >= most) {
                spend(most + 1);
            }
            return inner.add(v);
        }

        @Override
        public DxfVertex get(int i) {
            return inner.get(i);
        }

        @Override
        public int size() {
            return inner.size();
        }
    }
}
