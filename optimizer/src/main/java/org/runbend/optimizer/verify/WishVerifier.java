package org.runbend.optimizer.verify;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;

/**
 * Holds laid loops against supports and rules for pipe, from records and plain geometry alone; it shares no line with what lays a
 * loop. Sizes in mm, angles in degrees.
 *
 * <p>Rules: a bend's groove touches no support; a run's groove crosses one from side to side within 2 degrees of square,
 * or not at all where it may not; bends stay out of the circles without bends, all pipe out of the regions without pipe;
 * one run covers each line to run along, within 0.5 mm, and pipe each part to be kept. 0.05 mm are forgiven, far over rounding.
 */
public final class WishVerifier {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final double FORGIVEN = 0.05;
    private static final double SQUARE = 2.01;
    private static final double ON_LINE = 0.55;
    private static final double LEAST = 1;

    private final List<Support> supports;
    private final List<PipeRule> pipeRules;
    private final double groove;

    /**
     * What loops are held against.
     *
     * @param supports what pipe crosses square or not at all
     * @param pipeRules where pipe may not, or must, go
     * @param groove width of the groove
     */
    public WishVerifier(List<Support> supports, List<PipeRule> pipeRules, double groove) {
        this.supports = List.copyOf(supports);
        this.pipeRules = List.copyOf(pipeRules);
        this.groove = groove;
    }

    /** One sentence for each rule broken, naming loop and element; empty for sound loops. */
    public List<Finding> verify(List<Breakdown> loops) {
        Findings findings = new Findings();
        for (int i = 0; i < loops.size(); i++) {
            List<Element> elements = loops.get(i).elements();
            for (int j = 0; j < elements.size(); j++) {
                check(new Finding.Place(i, j), elements.get(j), findings);
            }
        }
        for (PipeRule veto : pipeRules) {
            if (veto instanceof PipeRule.MustRun run) {
                findings.unless(isRunAlong(run, loops), "no run covers the line of %s", run.key());
            } else if (veto instanceof PipeRule.Kept part) {
                double off = new KeptTrack(part.points()).bare(loops, ON_LINE);
                findings.unless(off <= LEAST, "%.2f mm of %s are not followed by pipe", off, part.key());
            }
        }
        return findings.all();
    }

    private void check(Finding.Place name, Element element, Findings findings) {
        LineString pipe = Chords.of(element);
        for (Support support : supports) {
            checkSupport(name, element, pipe, support, findings);
        }
        for (PipeRule veto : pipeRules) {
            if (veto instanceof PipeRule.NoBend circle && element instanceof Element.Bend) {
                double off = pipe.distance(Chords.spot(circle.at()));
                findings.unless(
                        off >= circle.radius() - FORGIVEN,
                        "%s: a bend comes within %.2f mm of the middle of %s, %.2f mm asked",
                        name,
                        off,
                        circle.key(),
                        circle.radius());
            } else if (veto instanceof PipeRule.NoPipe region) {
                Geometry core = Chords.region(region.region().corners()).buffer(-FORGIVEN);
                double inside = OverlayNGRobust.overlay(pipe, core, OverlayNG.INTERSECTION)
                        .getLength();
                findings.unless(inside == 0, "%s: %.2f mm of it lie in %s", name, inside, region.key());
            }
        }
    }

    private void checkSupport(
            Finding.Place name, Element element, LineString pipe, Support support, Findings findings) {
        Geometry body = strip(support.from(), support.to(), support.width() + groove - 2 * FORGIVEN);
        if (!body.intersects(pipe)) {
            return;
        }
        findings.unless(
                element instanceof Element.Run, "%s: a bend lies on support '%s', none may", name, support.name());
        findings.unless(
                support.cross() == Support.Crossing.SQUARE,
                "%s: crosses support '%s', no pipe may",
                name,
                support.name());
        double off = Math.abs(90 - between(element.from(), element.to(), support.from(), support.to()));
        findings.unless(
                off <= SQUARE,
                "%s: crosses support '%s' %.2f degrees off square, %.2f allowed",
                name,
                support.name(),
                off,
                SQUARE);
        boolean across = !body.contains(Chords.spot(element.from())) && !body.contains(Chords.spot(element.to()));
        findings.unless(across, "%s: begins or ends on support '%s'", name, support.name());
    }

    /** Angle between two lines, 0 to 90 degrees, by the law of cosines. */
    private static double between(Point a, Point b, Point c, Point d) {
        double ux = b.x() - a.x();
        double uy = b.y() - a.y();
        double vx = d.x() - c.x();
        double vy = d.y() - c.y();
        double cosine = (ux * vx + uy * vy) / Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
        return Math.toDegrees(Math.acos(Math.min(1, Math.abs(cosine))));
    }

    private static boolean isRunAlong(PipeRule.MustRun line, List<Breakdown> loops) {
        LineString wanted = line(line.from(), line.to());
        return loops.stream()
                .flatMap(l -> l.elements().stream())
                .filter(Element.Run.class::isInstance)
                .anyMatch(e -> line(e.from(), e.to()).buffer(ON_LINE).covers(wanted));
    }

    private static LineString line(Point a, Point b) {
        return FACTORY.createLineString(new Coordinate[] {new Coordinate(a.x(), a.y()), new Coordinate(b.x(), b.y())});
    }

    private static Geometry strip(Point a, Point b, double width) {
        BufferParameters flat = new BufferParameters(8, BufferParameters.CAP_FLAT);
        return BufferOp.bufferOp(line(a, b), width / 2, flat);
    }
}
