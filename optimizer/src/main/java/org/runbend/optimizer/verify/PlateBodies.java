package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.verify.StretchReckoning.Span;

/** The rules of pieces in their places: on runs, clear of bends and of each other, bodies on free heated floor. */
final class PlateBodies {
    private static final double FORGIVEN = 0.05;

    private static final double OUTSIDE = 1;
    private static final double COLD = 1;
    private static final double GROOVE = 1;

    private final Job.PlateRequest request;
    private final List<KeepOut> keepOuts;
    private final Geometry floor;
    private final List<Polygon> cold;
    private final StretchReckoning reckoning;
    private final List<Breakdown> loops;
    private final List<Geometry> slots;
    private final Findings findings;

    /** A body and the piece that it belongs to. */
    private record Body(String name, Polygon region) {}

    PlateBodies(
            Job.PlateRequest request,
            List<Point> outline,
            List<KeepOut> keepOuts,
            List<Shape.Polygon> unheated,
            StretchReckoning reckoning,
            List<Breakdown> loops,
            Findings findings) {
        this.request = request;
        this.keepOuts = keepOuts;
        this.floor = GroundShapes.region(outline).buffer(OUTSIDE);
        this.cold = unheated.stream().map(u -> GroundShapes.region(u.corners())).toList();
        this.reckoning = reckoning;
        this.loops = loops;
        this.slots = loops.stream()
                .flatMap(l -> l.slots().stream())
                .map(GroundShapes::slot)
                .toList();
        this.findings = findings;
    }

    /** Checks all pieces; what lies on which run comes back, one span for each groove. */
    List<Span> check(List<PlatePiece> pieces) {
        List<Span> spans = new ArrayList<>();
        List<Body> bodies = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            PlatePiece piece = pieces.get(i);
            String name = "piece " + i + " of " + piece.product();
            Optional<SpreaderPlate> product = request.products().stream()
                    .filter(p -> p.sku().equals(piece.product()))
                    .findFirst();
            findings.unless(
                    piece.length() >= request.minPiece() - FORGIVEN,
                    "%s: %.2f mm is under the least piece of %.2f mm",
                    name,
                    piece.length(),
                    request.minPiece());
            findings.unless(
                    piece.length() <= request.maxPiece() + FORGIVEN,
                    "%s: %.2f mm is over the longest piece of %.2f mm",
                    name,
                    piece.length(),
                    request.maxPiece());
            boolean placed = checkPlaces(name, piece, spans);
            if (product.isEmpty()) {
                findings.unless(
                        false,
                        "%s: none of the %d products of the job",
                        name,
                        request.products().size());
            } else if (checkGrooves(name, piece, product.get()) && placed) {
                Body body = new Body(name, body(name, piece, product.get()));
                checkBody(body);
                bodies.add(body);
            }
        }
        checkOverlaps(bodies);
        return spans;
    }

    private boolean checkGrooves(String name, PlatePiece piece, SpreaderPlate product) {
        boolean right = piece.places().size() == product.grooves();
        findings.unless(
                right,
                "%s: lies on %d runs, it has %d grooves",
                name,
                piece.places().size(),
                product.grooves());
        return right;
    }

    private boolean checkPlaces(String name, PlatePiece piece, List<Span> spans) {
        boolean all = piece.length() > 0;
        for (PlatePiece.Place p : piece.places()) {
            String where = name + " on " + runName(p.loop(), p.element());
            Optional<Element.Run> run = findRun(p);
            findings.unless(run.isPresent(), "%s: that element is no run (0 found, 1 asked)", where);
            if (run.isEmpty()) {
                all = false;
                continue;
            }
            Span span = new Span(p.loop(), p.element(), p.from(), p.from() + piece.length());
            spans.add(span);
            checkPlace(where, run.get(), span);
        }
        return all;
    }

    private void checkPlace(String where, Element.Run run, Span span) {
        double length = GroundShapes.line(run.from(), run.to()).getLength();
        findings.unless(
                span.from() >= -FORGIVEN && span.to() <= length + FORGIVEN,
                "%s: from %.2f to %.2f mm leaves the run of %.2f mm",
                where,
                span.from(),
                span.to(),
                length);
        Span clear = reckoning.clear(loops.get(span.loop()).elements(), span.loop(), span.element());
        findings.unless(
                span.from() >= clear.from() - FORGIVEN && span.to() <= clear.to() + FORGIVEN,
                "%s: from %.2f to %.2f mm comes too near a bend, %.2f to %.2f mm is clear of bends",
                where,
                span.from(),
                span.to(),
                clear.from(),
                clear.to());
        LineString line = GroundShapes.line(
                GroundShapes.along(run.from(), run.to(), span.from()),
                GroundShapes.along(run.from(), run.to(), span.to()));
        for (Polygon c : cold) {
            double on = OverlayNGRobust.overlay(line, c, OverlayNG.INTERSECTION).getLength();
            findings.unless(on <= COLD, "%s: %.2f mm lie on unheated floor, %.2f mm allowed", where, on, COLD);
        }
    }

    private Optional<Element.Run> findRun(PlatePiece.Place p) {
        if (p.loop() < 0 || p.loop() >= loops.size()) {
            return Optional.empty();
        }
        List<Element> elements = loops.get(p.loop()).elements();
        return p.element() >= 0
                        && p.element() < elements.size()
                        && !loops.get(p.loop()).isLead(p.element())
                        && elements.get(p.element()) instanceof Element.Run run
                ? Optional.of(run)
                : Optional.empty();
    }

    private Polygon body(String name, PlatePiece piece, SpreaderPlate product) {
        Point[] a = ends(piece, 0);
        if (product.grooves() == 2) {
            Point[] b = ends(piece, 1);
            if (a[0].distance(b[0]) > a[0].distance(b[1])) {
                b = new Point[] {b[1], b[0]};
            }
            checkTwin(name, a, b, product);
            a = new Point[] {GroundShapes.middle(a[0], b[0]), GroundShapes.middle(a[1], b[1])};
        }
        return GroundShapes.strip(a[0], a[1], product.width());
    }

    private void checkTwin(String name, Point[] a, Point[] b, SpreaderPlate product) {
        Function<Point, Double> off = p -> GroundShapes.line(a[0], a[1]).distance(GroundShapes.line(p, p));
        double start = a[0].distance(b[0]);
        double end = a[1].distance(b[1]);
        double worst = Math.max(
                Math.max(Math.abs(start - product.centres()), Math.abs(end - product.centres())),
                Math.max(Math.abs(off.apply(b[0]) - product.centres()), Math.abs(off.apply(b[1]) - product.centres())));
        findings.unless(
                worst <= GROOVE,
                "%s: its ends lie %.2f and %.2f mm apart on the two runs, its groove centres are %.2f mm",
                name,
                start,
                end,
                product.centres());
    }

    private Point[] ends(PlatePiece piece, int groove) {
        PlatePiece.Place p = piece.places().get(groove);
        Element.Run run = findRun(p).orElseThrow();
        return new Point[] {
            GroundShapes.along(run.from(), run.to(), p.from()),
            GroundShapes.along(run.from(), run.to(), p.from() + piece.length())
        };
    }

    private void checkBody(Body body) {
        double outside = OverlayNGRobust.overlay(body.region(), floor, OverlayNG.DIFFERENCE)
                .getArea();
        findings.unless(
                floor.covers(body.region()),
                "%s: %.2f mm2 of its body lie outside the outline, %.2f mm2 allowed",
                body.name(),
                outside,
                0.0);
        for (Geometry slot : slots) {
            double over = OverlayNGRobust.overlay(body.region(), slot, OverlayNG.INTERSECTION)
                    .getArea();
            findings.unless(
                    over < StretchReckoning.SLIVER,
                    "%s: %.2f mm2 of its body lie over the slot of a hole, %.2f mm2 forgiven",
                    body.name(),
                    over,
                    StretchReckoning.SLIVER);
        }
        for (KeepOut k : keepOuts) {
            double air = body.region().distance(GroundShapes.grown(k.bare(), 0));
            findings.unless(
                    !StretchReckoning.deep(k.bare(), request.plateClearance() - FORGIVEN)
                            .intersects(body.region()),
                    "%s: its body comes within %.2f mm of keep-out '%s', %.2f mm asked",
                    body.name(),
                    Math.max(0, air),
                    k.name(),
                    request.plateClearance());
        }
    }

    private void checkOverlaps(List<Body> bodies) {
        for (int i = 0; i < bodies.size(); i++) {
            for (int j = i + 1; j < bodies.size(); j++) {
                Body a = bodies.get(i);
                Body b = bodies.get(j);
                if (a.region().getEnvelopeInternal().intersects(b.region().getEnvelopeInternal())) {
                    double shared = OverlayNGRobust.overlay(a.region(), b.region(), OverlayNG.INTERSECTION)
                            .getArea();
                    findings.unless(
                            shared < StretchReckoning.SLIVER,
                            "%s and %s: bodies overlap by %.2f mm2, %.2f mm2 forgiven",
                            a.name(),
                            b.name(),
                            shared,
                            StretchReckoning.SLIVER);
                }
            }
        }
    }

    /** What a person calls a run. */
    static String runName(int loop, int element) {
        return "loop " + (char) ('A' + loop) + " element " + element;
    }
}
