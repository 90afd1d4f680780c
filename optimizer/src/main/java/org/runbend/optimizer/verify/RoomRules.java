package org.runbend.optimizer.verify;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** The rules that hold each element against the floor: outline, edge and keep-outs. Sizes in mm. */
final class RoomRules {
    private static final double FORGIVEN = 0.05;

    private final Polygon floor;
    private final PreparedGeometry inside;
    private final List<KeepOut> keepOuts;
    private final Findings findings;
    private double forgiven = FORGIVEN;

    RoomRules(List<Point> outline, List<KeepOut> keepOuts, Findings findings) {
        this.floor = Chords.region(outline);
        // a drawn edge of 0 lets pipe lie on the outline itself, where rounding decides which side it is on
        this.inside = PreparedGeometryFactory.prepare(floor.buffer(FORGIVEN));
        this.keepOuts = keepOuts;
        this.findings = findings;
    }

    /** Forgives so much where pipe comes near outline and keep-outs. */
    void forgive(double more) {
        forgiven = more;
    }

    /** Holds pipe against the floor; the edge is the least distance from the outline. */
    void check(Finding.Place name, LineString pipe, double edge) {
        findings.unless(
                inside.covers(pipe),
                "%s: leaves the outline, %.2f mm of its %.2f mm lie outside%s",
                name,
                OverlayNGRobust.overlay(pipe, floor, OverlayNG.DIFFERENCE).getLength(),
                pipe.getLength(),
                inside.covers(pipe) ? "" : Findings.at(pipe, floor.getExteriorRing()));
        double margin = pipe.distance(floor.getExteriorRing());
        findings.unless(
                margin >= edge - forgiven,
                "%s: comes within %.2f mm of the outline, %.2f mm asked%s",
                name,
                margin,
                edge,
                margin < edge ? Findings.at(pipe, floor.getExteriorRing()) : "");
        for (KeepOut k : keepOuts) {
            checkKeepOut(name, pipe, k);
        }
    }

    private void checkKeepOut(Finding.Place name, LineString pipe, KeepOut keepOut) {
        // of a point a clearance counts from the point, and so do the words
        double own = keepOut.bare() instanceof Shape.Spot spot ? spot.radius() : 0;
        if (boxesApart(pipe, keepOut.bare()) >= keepOut.clearance() + own + FORGIVEN) {
            return;
        }
        double off = off(pipe, keepOut.bare()) + own;
        String sentence = off < -FORGIVEN
                ? "%s: goes %.2f mm into keep-out '%s', %.2f mm of clearance asked%s"
                : "%s: comes within %.2f mm of keep-out '%s', %.2f mm asked%s";
        findings.unless(
                off >= keepOut.clearance() + own - forgiven,
                sentence,
                name,
                Math.abs(off),
                keepOut.name(),
                keepOut.clearance() + own,
                off < keepOut.clearance() + own ? Findings.at(pipe, shape(keepOut.bare())) : "");
    }

    /** No more than the distance of pipe from a region, less a disc's radius: that of the boxes around them. */
    private static double boxesApart(LineString pipe, Shape bare) {
        double radius = bare instanceof Shape.Circle circle ? circle.radius() : 0;
        return pipe.getEnvelopeInternal().distance(shape(bare).getEnvelopeInternal()) - radius;
    }

    private static Geometry shape(Shape bare) {
        if (bare instanceof Shape.Polygon polygon) {
            return Chords.region(polygon.corners());
        }
        return Chords.spot(bare instanceof Shape.Circle circle ? circle.centre() : ((Shape.Spot) bare).at());
    }

    /** Distance of pipe from a bare region; negative by how deep it goes where it enters. */
    private static double off(LineString pipe, Shape bare) {
        if (bare instanceof Shape.Circle circle) {
            return pipe.distance(Chords.spot(circle.centre())) - circle.radius();
        }
        if (bare instanceof Shape.Spot spot) {
            return pipe.distance(Chords.spot(spot.at())) - spot.radius();
        }
        Polygon region = Chords.region(((Shape.Polygon) bare).corners());
        double distance = pipe.distance(region);
        return distance > 0 ? distance : -depth(pipe, region);
    }

    private static double depth(LineString pipe, Polygon region) {
        Geometry part = OverlayNGRobust.overlay(pipe, region, OverlayNG.INTERSECTION);
        double deepest = 0;
        for (var c : part.getCoordinates()) {
            deepest = Math.max(
                    deepest,
                    region.getExteriorRing().distance(region.getFactory().createPoint(c)));
        }
        for (int i = 0; i < part.getNumGeometries(); i++) {
            deepest = Math.max(
                    deepest,
                    region.getExteriorRing().distance(part.getGeometryN(i).getCentroid()));
        }
        return deepest;
    }
}
