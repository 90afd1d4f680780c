package org.runbend.optimizer.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Filleting;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.job.Point;

/** The contour is held against polygon operations of JTS: what a cutter leaves of it, and the pipe swept as a disc. */
class ChannelMakerTest {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final ChannelSize SIZE = new ChannelSize(17.5, 20, 16.5, 32, 12);
    private static final int FINE = 64;
    /** Flow up, over, back and down again, with a return bend, quarter bends and a short straight between two bends. */
    private static final List<Point> WAY = List.of(
            new Point(0, 0),
            new Point(0, 450),
            new Point(600, 450),
            new Point(600, 300),
            new Point(300, 300),
            new Point(300, 150),
            new Point(450, 150),
            new Point(450, 0),
            new Point(150, 0));

    private final Breakdown loop = new Filleting().breakDown(WAY, 75);

    private ChannelPlan made(ChannelSize size) {
        return new ChannelMaker().make(new ChannelProblem(size, List.of(loop)));
    }

    /** A disc of 16 mm swept along the pipe stays in what a cutter of 12 mm leaves (opening of the contour). */
    @Test
    void pipeLiesInWhatTheCutterLeaves() {
        Geometry channel = polygon(made(SIZE).contours().get(0));
        assertTrue(channel.isValid());
        Geometry cut = grown(grown(channel, -6), 6);
        Geometry pipe = grown(centreline(loop), 8);
        assertEquals(0, pipe.difference(cut.buffer(0.01)).getArea(), 1e-6);
        // One right-angled inside corner would keep (1 - pi / 4) x 6^2 = 7.7 mm2; what is left is the noise of chords.
        assertTrue(
                channel.difference(cut).getArea() < 3,
                () -> "left by the cutter: " + channel.difference(cut).getArea() + " mm2");
    }

    /** On a straight 17.5 mm, in a bend 20 mm: the widths of the contour measured across the pipe. */
    @Test
    void isAsWideAsAsked() {
        Geometry channel = polygon(made(SIZE).contours().get(0));
        assertEquals(17.5, across(channel, new Point(0, 225), 1, 0), 1e-6);
        double diagonal = Math.sqrt(0.5);
        Point middleOfBend = new Point(75 - 75 * diagonal, 375 + 75 * diagonal);
        assertEquals(20, across(channel, middleOfBend, -diagonal, diagonal), 0.01);
    }

    /** Pads of 32 mm reach 16 mm beyond the ends; without them the ends are half circles of 8.75 mm. */
    @Test
    void endsInPads() {
        Geometry channel = polygon(made(SIZE).contours().get(0));
        assertEquals(-16, channel.getEnvelopeInternal().getMinY(), 0.01);
        Geometry bare =
                polygon(made(new ChannelSize(17.5, 20, 16.5, 0, 12)).contours().get(0));
        assertEquals(-10, bare.getEnvelopeInternal().getMinY(), 0.01); // the edge of the run along y = 0 near its bend
        assertEquals(-8.75, across(bare, new Point(0, 0.001), 0, 1, -1), 0.01);
    }

    /** Runs 150 mm apart with channels of 20 mm leave 130 mm; pads 150 apart leave 150 - 32 = 118 mm. */
    @Test
    void saysWhatStaysBetweenChannels() {
        assertEquals(118, made(SIZE).leastWeb(), 0.1);
        assertEquals(130, made(new ChannelSize(17.5, 20, 16.5, 0, 12)).leastWeb(), 0.1);
    }

    /** Every contour is tangent all the way but for the four mouths of its two pads. */
    @Test
    void isTangentButAtThePads() {
        List<Corner> corners = made(SIZE).contours().get(0);
        int breaks = 0;
        for (int i = 0; i < corners.size(); i++) {
            Corner a = corners.get(i);
            Corner b = corners.get((i + 1) % corners.size());
            Corner c = corners.get((i + 2) % corners.size());
            double arrives = chord(a.at(), b.at()) + 2 * Math.atan(a.bulge());
            double leaves = chord(b.at(), c.at()) - 2 * Math.atan(b.bulge());
            if (Math.abs(Math.IEEEremainder(arrives - leaves, 2 * Math.PI)) > 1e-6) {
                breaks++;
            }
        }
        assertEquals(4, breaks);
    }

    @Test
    void refusesACutterThatDoesNotGoIn() {
        assertThrows(IllegalArgumentException.class, () -> new ChannelSize(11.5, 14, 10.5, 32, 12));
    }

    /** A buffer without the simplification that JTS does by default (0.01 of the distance). */
    private static Geometry grown(Geometry g, double by) {
        BufferParameters fine = new BufferParameters(FINE);
        fine.setSimplifyFactor(1e-6);
        return BufferOp.bufferOp(g, by, fine);
    }

    private static double chord(Point a, Point b) {
        return Math.atan2(b.y() - a.y(), b.x() - a.x());
    }

    /** Width across a point in a direction. */
    private static double across(Geometry channel, Point p, double ux, double uy) {
        Geometry ray = line(p.x() - 15 * ux, p.y() - 15 * uy, p.x() + 15 * ux, p.y() + 15 * uy);
        return ray.intersection(channel).getLength();
    }

    /** How far the channel reaches from a point in a direction, with its sign. */
    private static double across(Geometry channel, Point p, double ux, double uy, int sign) {
        Geometry ray = line(p.x(), p.y(), p.x() + sign * 50 * ux, p.y() + sign * 50 * uy);
        return sign * ray.intersection(channel).getLength();
    }

    private static LineString line(double x1, double y1, double x2, double y2) {
        return FACTORY.createLineString(new Coordinate[] {new Coordinate(x1, y1), new Coordinate(x2, y2)});
    }

    /** The contour with arcs as fine chords, by bulge alone: chord c, sagitta c x bulge / 2. */
    private static Geometry polygon(List<Corner> corners) {
        List<Coordinate> ring = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            chords(corners.get(i), corners.get((i + 1) % corners.size()).at(), ring);
        }
        ring.add(ring.get(0));
        return FACTORY.createPolygon(ring.toArray(Coordinate[]::new));
    }

    private static void chords(Corner from, Point to, List<Coordinate> ring) {
        ring.add(new Coordinate(from.at().x(), from.at().y()));
        double b = from.bulge();
        if (b == 0) {
            return;
        }
        double sweep = 4 * Math.atan(b);
        double k = (1 - b * b) / (4 * b);
        double cx = (from.at().x() + to.x()) / 2 - (to.y() - from.at().y()) * k;
        double cy = (from.at().y() + to.y()) / 2 + (to.x() - from.at().x()) * k;
        double dx = from.at().x() - cx;
        double dy = from.at().y() - cy;
        for (int i = 1; i < 90; i++) {
            double t = sweep * i / 90;
            ring.add(
                    new Coordinate(cx + dx * Math.cos(t) - dy * Math.sin(t), cy + dx * Math.sin(t) + dy * Math.cos(t)));
        }
    }

    private static LineString centreline(Breakdown loop) {
        List<Coordinate> line = new ArrayList<>();
        for (Element e : loop.elements()) {
            if (e instanceof Element.Bend b) {
                chords(new Corner(b.from(), Math.tan(Math.toRadians(b.turn()) / 4)), b.to(), line);
            } else {
                line.add(new Coordinate(e.from().x(), e.from().y()));
            }
        }
        Point end = loop.elements().get(loop.elements().size() - 1).to();
        line.add(new Coordinate(end.x(), end.y()));
        return FACTORY.createLineString(line.toArray(Coordinate[]::new));
    }
}
