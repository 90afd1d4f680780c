package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.locationtech.jts.operation.valid.IsSimpleOp;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;

/**
 * The rules that hold pipe against pipe: no crossing, and spacing kept. Sizes in mm. A tree of bounding boxes finds the
 * pairs, so the work grows with the number of neighbours, not with the square of the number of elements.
 */
final class NearnessRules {
    /** The rule of two runs beside each other. */
    static final String PARALLEL_RUNS = "%s and %s: parallel runs lie %.2f mm apart, %.2f mm asked%s";

    private static final double PARALLEL_SINE = 0.02;
    private static final double SIDE_BY_SIDE = 1;
    private static final double RUNS = 0.97;
    private static final double ANY = 0.9;
    private static final double ALONG = 2.2;
    private static final double FORGIVEN = 0.05;

    private final double spacing;
    private final double leadApart;
    private final Findings findings;
    private final List<Laid> laid = new ArrayList<>();
    private final List<LineString> paths = new ArrayList<>();

    /** An element in its place along the pipe. */
    private record Laid(
            int index,
            int loop,
            int element,
            boolean lead,
            double start,
            Element what,
            LineString chords,
            Finding.Place name) {
        double end() {
            return start + chords.getLength();
        }
    }

    NearnessRules(double spacing, double leadApart, Findings findings) {
        this.spacing = spacing;
        this.leadApart = leadApart;
        this.findings = findings;
    }

    void add(int number, Breakdown loop) {
        double along = 0;
        for (int i = 0; i < loop.elements().size(); i++) {
            Element e = loop.elements().get(i);
            LineString chords = Chords.of(e);
            laid.add(new Laid(
                    laid.size(), paths.size(), i, loop.isLead(i), along, e, chords, new Finding.Place(number, i)));
            along += chords.getLength();
        }
        LineString path = Chords.of(loop);
        IsSimpleOp simple = new IsSimpleOp(path);
        if (!simple.isSimple()) {
            var at = simple.getNonSimpleLocation();
            findings.unless(
                    false, "%s: the pipe crosses itself at (%.2f, %.2f)", new Finding.Place(number, -1), at.x, at.y);
        }
        paths.add(path);
    }

    void check() {
        STRtree tree = new STRtree();
        laid.forEach(e -> tree.insert(e.chords().getEnvelopeInternal(), e));
        tree.build();
        for (Laid a : laid) {
            Envelope near = a.chords().getEnvelopeInternal();
            near = new Envelope(near);
            near.expandBy(spacing);
            List<Laid> later = new ArrayList<>();
            tree.query(near, b -> later.add((Laid) b));
            later.removeIf(b -> b.index() <= a.index() || isNext(a, b));
            later.sort((p, q) -> Integer.compare(p.index(), q.index()));
            checkNeighbours(a, later);
        }
    }

    private void checkNeighbours(Laid a, List<Laid> later) {
        IndexedFacetDistance from = new IndexedFacetDistance(a.chords());
        for (Laid b : later) {
            double distance = from.distance(b.chords());
            Object place = distance < spacing ? Findings.at(a.chords(), b.chords()) : "";
            if (a.loop() != b.loop()) {
                findings.unless(
                        distance > 0,
                        "%s and %s: the loops cross, %.2f mm between them, %.2f mm asked",
                        a.name(),
                        b.name(),
                        distance,
                        spacing);
            }
            if (a.lead() || b.lead()) {
                findings.unless(
                        (a.loop() == b.loop() && b.start() - a.end() < spacing) || distance >= leadApart - FORGIVEN,
                        "%s and %s: a lead-in comes within %.2f mm, %.2f mm asked%s",
                        a.name(),
                        b.name(),
                        distance,
                        leadApart,
                        place);
            } else if (sideBySide(a.what(), b.what()) > SIDE_BY_SIDE) {
                findings.unless(
                        distance >= RUNS * spacing, PARALLEL_RUNS, a.name(), b.name(), distance, RUNS * spacing, place);
            } else if (a.loop() != b.loop() || b.start() - a.end() > ALONG * spacing) {
                findings.unless(
                        distance >= ANY * spacing,
                        "%s and %s: come within %.2f mm, %.2f mm asked%s",
                        a.name(),
                        b.name(),
                        distance,
                        ANY * spacing,
                        place);
            }
        }
    }

    private static boolean isNext(Laid a, Laid b) {
        return a.loop() == b.loop() && b.element() == a.element() + 1;
    }

    /** Length over which two parallel runs lie side by side; 0 or less where they do not or are not parallel. */
    private static double sideBySide(Element a, Element b) {
        if (!(a instanceof Element.Run && b instanceof Element.Run)) {
            return 0;
        }
        double ux = a.to().x() - a.from().x();
        double uy = a.to().y() - a.from().y();
        double length = Math.sqrt(ux * ux + uy * uy);
        double vx = b.to().x() - b.from().x();
        double vy = b.to().y() - b.from().y();
        if (Math.abs(ux * vy - uy * vx) > PARALLEL_SINE * length * Math.sqrt(vx * vx + vy * vy)) {
            return 0;
        }
        double s =
                ((b.from().x() - a.from().x()) * ux + (b.from().y() - a.from().y()) * uy) / length;
        double t = ((b.to().x() - a.from().x()) * ux + (b.to().y() - a.from().y()) * uy) / length;
        return Math.min(Math.max(s, t), length) - Math.max(Math.min(s, t), 0);
    }
}
