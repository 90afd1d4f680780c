package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/** What lies in an outline: holes, bolts and the words beside them. Clearances and sizes are common practice. */
final class FloorContent {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** A job file holds no more keep-outs. */
    private static final int MOST = 200;

    private static final int MOST_LOOKED_AT = 20_000;
    private static final int MOST_WORDS = 2000;
    private static final double LEAST_DIAMETER = 0.22;
    private static final double LEAST_ROUND = 1;
    private static final double BOLT_DIAMETER = 20;
    private static final double DRAIN_DIAMETER = 100;
    private static final double BOLT_CLEARANCE = 50;
    private static final double DRAIN_CLEARANCE = 60;
    private static final double OTHER_CLEARANCE = 40;
    /** A closed line within the outline of more than this share of it is another outline, not a hole. */
    private static final double OTHER_OUTLINE = 0.5;

    private final Contour outline;
    private final Point shift;
    private final OutlineRequest request;
    private final List<Bends.Found> bends;
    private final List<String> leftOut;
    private final boolean ours;
    private final PreparedGeometry floor;
    private final List<Obstacle> obstacles = new ArrayList<>();
    private final List<Obstacle> unheated = new ArrayList<>();
    private final Naming naming;

    /** What lies in an outline that is to stay exactly as it is. */
    static FloorContent exact(
            Contour outline,
            DrawnShapes figures,
            List<Contour> contours,
            OutlineRequest request,
            List<String> guesses,
            List<String> leftOut) {
        return new FloorContent(outline, new Point(0, 0), true, figures, contours, request, guesses, leftOut);
    }

    /** What lies in an outline that was found, everything moved by {@code shift}. */
    FloorContent(
            Contour found,
            Point shift,
            DrawnShapes figures,
            List<Contour> contours,
            OutlineRequest request,
            List<String> guesses,
            List<String> leftOut) {
        this(found, shift, false, figures, contours, request, guesses, leftOut);
    }

    private FloorContent(
            Contour found,
            Point shift,
            boolean exact,
            DrawnShapes figures,
            List<Contour> contours,
            OutlineRequest request,
            List<String> guesses,
            List<String> leftOut) {
        this.shift = shift;
        this.request = request;
        this.bends = figures.bends;
        this.leftOut = leftOut;
        ours = figures.ours;
        floor = PreparedGeometryFactory.prepare(found.polygon());
        outline = exact ? found : moved(tidied(found, guesses));
        JobForm.faultOf(outline).ifPresent(f -> {
            throw new NoOutline("the outline (layer " + FloorReading.shown(found.layer()) + ") " + f
                    + " once its places are rounded to a thousandth of a millimetre; draw it simpler");
        });
        holes(found, contours);
        bolts(figures.spots);
        limit();
        say(figures.words.size() - MOST_WORDS, "words too many to look at");
        naming = new Naming(outline, obstacles, unheated, ours);
        naming.name(figures.words.stream()
                .limit(MOST_WORDS)
                .map(w -> w.moved(shift))
                .toList());
        say(naming.numbers(), "words that are numbers");
        say(naming.untold(), "words elsewhere");
    }

    private Contour tidied(Contour found, List<String> guesses) {
        Contour rounded = Bends.fitted(turnedToStart(found), request.tolerance(), JobForm.LEAST_RADIUS, bends);
        return turnedToStart(new Tidying(guesses).tidied(turnedToStart(rounded)));
    }

    Contour outline() {
        return outline;
    }

    List<Obstacle> obstacles() {
        return naming.obstacles();
    }

    List<Obstacle> unheated() {
        return naming.unheated();
    }

    List<FloorSketch.Mark> marks() {
        return naming.marks();
    }

    List<FloorSketch.Remark> remarks() {
        return naming.remarks();
    }

    /** The same contour, beginning at its lowest corner, the leftmost of several. */
    private static Contour turnedToStart(Contour c) {
        List<Vertex> v = c.path().vertices();
        int first = 0;
        for (int i = 1; i < v.size(); i++) {
            double lower = v.get(first).y() - v.get(i).y();
            if (lower > Contour.SAME
                    || (lower >= -Contour.SAME && v.get(i).x() < v.get(first).x())) {
                first = i;
            }
        }
        List<Vertex> turned = new ArrayList<>(v.subList(first, v.size()));
        turned.addAll(v.subList(0, first));
        return Contour.of(c.layer(), turned, c.curved()).orElse(c);
    }

    private Contour moved(Contour c) {
        List<Vertex> v = c.path().vertices().stream()
                .map(p -> new Vertex(p.x() + shift.x(), p.y() + shift.y(), p.bulge()))
                .toList();
        return Contour.of(c.layer(), v, c.curved()).orElse(c);
    }

    /** Contours come largest first, so what is not looked at is small. */
    private void holes(Contour found, List<Contour> contours) {
        int outside = 0;
        int nested = 0;
        int large = 0;
        List<Taken> taken = new ArrayList<>();
        int looked = 0;
        for (Contour c : contours) {
            boolean around = c.area() > found.area() && c.boxCovers(found);
            if (c.equals(found) || around) {
                continue;
            }
            if (++looked > MOST_LOOKED_AT || taken.size() > MOST) {
                continue;
            }
            if (isOutside(c, found)) {
                outside++;
            } else if (taken.stream().anyMatch(t -> t.covers(c))) {
                nested++;
                taken.stream().filter(t -> ours && t.covers(c)).findFirst().ifPresent(t -> bare(t, c));
            } else if (c.area() > OTHER_OUTLINE * found.area()) {
                sayLarge(c, ++large);
            } else {
                taken.add(Taken.of(c, obstacles.size()));
                take(c, floor.covers(c.polygon().convexHull()));
            }
        }
        say(outside, "closed lines outside of the outline");
        say(nested, "closed lines within keep-outs");
        say(looked - outside - nested - large - taken.size(), "closed lines too many to look at");
    }

    private void sayLarge(Contour c, int number) {
        if (number <= 5) {
            leftOut.add("a closed line of " + FloorReading.metres(c) + " on layer "
                    + FloorReading.shown(c.layer())
                    + " over the outline, too large for a hole; if it is the floor, name its layer");
        }
    }

    private boolean isOutside(Contour c, Contour found) {
        if (!c.boxMeets(found)) {
            return true;
        }
        Geometry region = c.crossing().isEmpty() ? c.polygon() : c.polygon().convexHull();
        return !floor.intersects(region) || floor.getGeometry().touches(region);
    }

    /** Our own drawings show a keep-out within its clearance: the bare thing takes the place of both. */
    private void bare(Taken grown, Contour c) {
        double across = (grown.contour.box().width() - c.box().width()) / 2;
        double up = (grown.contour.box().height() - c.box().height()) / 2;
        boolean even = across > 0.5 && Math.abs(across - up) < 0.1;
        boolean sameLayer = c.layer().equalsIgnoreCase(grown.contour.layer());
        if (!even || !sameLayer || grown.number >= obstacles.size() || request.isUnheated(c.layer())) {
            return;
        }
        String where = "layer " + FloorReading.shown(c.layer()) + ", the line round it is its clearance";
        Optional<Obstacle> thing = c.round().isPresent()
                ? Optional.of(hole(c.round().get(), where))
                : region(c, "", 0, "closed line, " + where);
        double clearance = Math.rint(1000 * across) / 1000;
        thing.ifPresent(o -> obstacles.set(
                grown.number,
                new Obstacle(o.name(), o.kind(), o.centre(), o.radius(), o.contour(), clearance, o.why())));
    }

    /** A keep-out, made ready for many questions, and where it stands in the list. */
    private record Taken(Contour contour, PreparedGeometry hull, int number) {
        static Taken of(Contour c, int number) {
            return new Taken(c, PreparedGeometryFactory.prepare(c.polygon().convexHull()), number);
        }

        boolean covers(Contour c) {
            return contour.boxCovers(c) && hull.covers(c.polygon());
        }
    }

    private void say(int n, String what) {
        if (n > 0) {
            leftOut.add(what + ": " + n);
        }
    }

    private void take(Contour drawn, boolean within) {
        Contour c = drawn.crossing().isPresent() ? drawn : Bends.fitted(drawn, request.tolerance(), LEAST_ROUND, bends);
        String layer = "layer " + FloorReading.shown(c.layer());
        String where =
                layer + (within ? "" : ", reaches over the outline") + (ours ? ", drawn with its clearance" : "");
        if (c.crossing().isPresent()) {
            leftOut.add("a closed line on " + layer + " that crosses itself near "
                    + FloorReading.shown(moved(c.crossing().get())));
        } else if (request.isUnheated(c.layer())) {
            region(c, "unheated", 0, "closed line, " + layer).ifPresent(unheated::add);
        } else if (c.round().isPresent()) {
            obstacles.add(hole(c.round().get(), where));
        } else {
            region(c, "", ours ? 0 : OTHER_CLEARANCE, "closed line, " + where).ifPresent(obstacles::add);
        }
    }

    private Obstacle hole(Arc round, String where) {
        double d = 2 * round.radius();
        String kind = d <= BOLT_DIAMETER ? "bolt" : d <= DRAIN_DIAMETER ? "drain" : "other";
        double clearance =
                kind.equals("bolt") ? BOLT_CLEARANCE : kind.equals("drain") ? DRAIN_CLEARANCE : OTHER_CLEARANCE;
        String why = "circle of " + FloorReading.n(d) + " mm, " + where;
        // a job file holds no circle that nobody can see
        double radius = d < LEAST_DIAMETER ? 0 : round.radius();
        return new Obstacle("", kind, moved(round.centre()), radius, Optional.empty(), ours ? 0 : clearance, why);
    }

    /** A region as a job file can hold it; one that it cannot is said to be left out. */
    private Optional<Obstacle> region(Contour c, String name, double clearance, String why) {
        Optional<Contour> form = JobForm.region(moved(c));
        if (form.isEmpty()) {
            leftOut.add("a closed line on layer " + FloorReading.shown(c.layer()) + " without area to speak of near "
                    + FloorReading.shown(moved(c.path().vertices().get(0).point())));
        }
        return form.map(f -> {
            Coordinate middle = f.polygon().getCentroid().getCoordinate();
            Point centre = new Point(middle.x, middle.y);
            return new Obstacle(name, "other", centre, 0, Optional.of(f), clearance, why);
        });
    }

    private Point moved(Point p) {
        return p.plus(shift.x(), shift.y());
    }

    private void bolts(List<DrawnShapes.Spot> spots) {
        int outside = 0;
        List<PreparedGeometry> regions = obstacles.stream()
                .flatMap(o -> o.contour().stream())
                .map(c -> PreparedGeometryFactory.prepare(c.polygon()))
                .toList();
        say(spots.size() - MOST_LOOKED_AT, "points too many to look at");
        for (DrawnShapes.Spot s : spots.subList(0, Math.min(MOST_LOOKED_AT, spots.size()))) {
            Point at = moved(s.at());
            boolean marksHole = obstacles.stream().anyMatch(o -> o.centre().distance(at) < Math.max(1, o.radius()))
                    || regions.stream().anyMatch(r -> r.covers(point(at)));
            if (!floor.covers(point(s.at()))) {
                outside++;
            } else if (!marksHole && obstacles.size() <= MOST) {
                obstacles.add(new Obstacle(
                        "",
                        "bolt",
                        at,
                        0,
                        Optional.empty(),
                        BOLT_CLEARANCE,
                        "point, layer " + FloorReading.shown(s.layer())));
            }
        }
        say(outside, "points outside of the outline");
    }

    private void limit() {
        if (obstacles.size() > MOST) {
            say(obstacles.size() - MOST, "smallest holes and bolts, as a job file holds " + MOST);
            obstacles.subList(MOST, obstacles.size()).clear();
        }
    }

    private static Geometry point(Point p) {
        return GEOMETRY.createPoint(new Coordinate(p.x(), p.y()));
    }
}
