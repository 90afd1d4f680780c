package org.runbend.optimizer.channel;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.index.strtree.STRtree;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/**
 * How near channels come to each other. All of a channel is taken to be as wide as at bends, and its ends
 * as wide as pads, so that what is said is never more than what is there. Arcs go as chords of two degrees; what they lack
 * is taken off.
 */
final class ChannelRoom {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double STEP = 2;

    /** Channels further apart than this, mm, have all the material between them that anybody could want: own choice. */
    private static final double NEAR = 350;

    /** Parts of a pipe nearer along it than this share of a half circle cannot turn back on each other. */
    private static final double TURN_BACK = 0.9 * Math.PI;

    private final ChannelProblem problem;
    private final List<Part> parts = new ArrayList<>();
    private final double half;
    private double slack;

    /** A part of a pipe: its loop, where along it begins and ends, half the width of its channel, and its line. */
    private record Part(int loop, double start, double end, double half, LineString line) {}

    ChannelRoom(ChannelProblem problem) {
        this.problem = problem;
        half = problem.size().bendWidth() / 2;
        for (int i = 0; i < problem.loops().size(); i++) {
            add(i, problem.loops().get(i).elements());
        }
    }

    double leastWeb() {
        STRtree tree = new STRtree();
        parts.forEach(p -> tree.insert(p.line().getEnvelopeInternal(), p));
        double least = Double.POSITIVE_INFINITY;
        double reach = TURN_BACK * leastRadius();
        for (Part a : parts) {
            Envelope near = new Envelope(a.line().getEnvelopeInternal());
            near.expandBy(NEAR);
            for (Object o : tree.query(near)) {
                Part b = (Part) o;
                boolean turnedBack = b.loop() == a.loop() && b.start() - a.end() > reach;
                if (b.loop() > a.loop() || turnedBack) {
                    least = Math.min(least, a.line().distance(b.line()) - a.half() - b.half());
                }
            }
        }
        return least - 2 * slack;
    }

    private double leastRadius() {
        return problem.loops().stream()
                .flatMap(l -> l.elements().stream())
                .filter(Element.Bend.class::isInstance)
                .mapToDouble(e -> ((Element.Bend) e).radius())
                .min()
                .orElse(0);
    }

    private void add(int loop, List<Element> elements) {
        double along = 0;
        for (Element e : elements) {
            parts.add(new Part(loop, along, along + e.length(), half, line(e)));
            along += e.length();
        }
        double pad = Math.max(half, problem.size().pad() / 2);
        Point first = elements.get(0).from();
        Point last = elements.get(elements.size() - 1).to();
        parts.add(new Part(
                loop, 0, 0, pad, FACTORY.createLineString(new Coordinate[] {coordinate(first), coordinate(first)})));
        parts.add(new Part(
                loop, along, along, pad, FACTORY.createLineString(new Coordinate[] {coordinate(last), coordinate(last)
                })));
    }

    private LineString line(Element e) {
        List<Coordinate> line = new ArrayList<>();
        line.add(coordinate(e.from()));
        if (e instanceof Element.Bend bend) {
            int steps = (int) Math.ceil(Math.abs(bend.turn()) / STEP);
            slack = Math.max(slack, bend.radius() * (1 - Math.cos(Math.toRadians(STEP / 2))));
            double start = StrictMath.atan2(
                    e.from().y() - bend.centre().y(),
                    e.from().x() - bend.centre().x());
            for (int i = 1; i < steps; i++) {
                double angle = start + Math.toRadians(bend.turn()) * i / steps;
                line.add(new Coordinate(
                        bend.centre().x() + bend.radius() * StrictMath.cos(angle),
                        bend.centre().y() + bend.radius() * StrictMath.sin(angle)));
            }
        }
        line.add(coordinate(e.to()));
        return FACTORY.createLineString(line.toArray(Coordinate[]::new));
    }

    private static Coordinate coordinate(Point p) {
        return new Coordinate(p.x(), p.y());
    }
}
