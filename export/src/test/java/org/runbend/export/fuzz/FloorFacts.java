package org.runbend.export.fuzz;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * What a generated job asked for, kept apart from its file, mm: enough to judge a plan by geometry alone.
 *
 * @param outline once round; arcs as fine chords
 * @param slack how far the product may see the outline elsewhere: chords of arcs, rounded tape measurements
 * @param keepOuts what no pipe may touch
 * @param edge least distance of the pipe from the outline
 * @param spacing centre to centre
 * @param port where flow and return come through
 * @param reach how far from it the loop may begin
 * @param tails sum of both
 * @param allowance share added to the cut
 * @param leastRadius of the pipe as fitted
 */
record FloorFacts(
        List<double[]> outline,
        double slack,
        List<Grown> keepOuts,
        double edge,
        double spacing,
        Coordinate port,
        double reach,
        double tails,
        double allowance,
        double leastRadius) {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /**
     * A keep-out: all within a distance of its core.
     *
     * @param core a point or a polygon
     * @param reach clearance, and the radius of a circle
     */
    record Grown(Geometry core, double reach) {}

    Polygon floor() {
        return polygon(outline);
    }

    static Polygon polygon(List<double[]> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            double[] c = corners.get(i % corners.size());
            ring[i] = new Coordinate(c[0], c[1]);
        }
        return GEOMETRY.createPolygon(ring);
    }

    static Geometry point(double[] p) {
        return GEOMETRY.createPoint(new Coordinate(p[0], p[1]));
    }

    static LineString line(List<Coordinate> path) {
        return GEOMETRY.createLineString(path.toArray(new Coordinate[0]));
    }
}
