package org.runbend.optimizer.guide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.product.GuideBush;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Keyhole;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.guide.GuidePlate.Kind;
import org.runbend.optimizer.guide.GuidePlate.Letters;
import org.runbend.optimizer.guide.GuidePlate.Mark;
import org.runbend.optimizer.guide.GuidePlate.Slot;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;

/**
 * Lays out a guide: a straight slot along the lower edge, above it a return bend and a quarter bend, and a round hole for the
 * pocket at the end of the pipe.
 *
 * <p>A bush of diameter B and a cutter of diameter C in it have one axis, so a slot must be wider than the channel by B - C:
 * the axis then comes as near to the edge of the channel as the cutter's radius (plane geometry). The thickest cutter that
 * goes into the channel is taken, and the thinnest bush that it turns in and whose collar does not reach through the
 * plate.
 */
public final class RouterGuide {
    /** Plate between a slot and the edge, so that the base of the router lies flat where the cutter is let in: own choice. */
    static final double MARGIN = 60;

    /** Plate between two slots: own choice, stiff enough in 12 mm. */
    static final double LEAST_PLATE = 15;

    /** Straight parts at the ends of a bend, to meet the runs by: own choice. */
    private static final double LEG = 70;

    /** The straight slot is this long, in spacings, within the limits below: own choice. */
    private static final double LONG = 4;

    private static final double SHORTEST = 500;
    private static final double LONGEST = 900;
    private static final double HAND_LONG = 110;
    private static final double HAND_WIDE = 34;
    private static final double MARK = 20;
    private static final double LETTER = 9;

    /** The guide. Throws {@link Unbuildable} where no cutter, no bush or no bend will do. */
    public GuidePlate lay(GuideProblem problem) {
        double cutter = cutter(problem);
        return new Draft(problem, cutter, bush(problem, cutter)).plate();
    }

    private static double cutter(GuideProblem p) {
        return p.cutters().stream()
                .mapToDouble(c -> c)
                .filter(c -> c <= p.groove().width() + 1e-9)
                .max()
                .orElseThrow(() -> new Unbuildable(
                        "catalog",
                        "no cutter of routing.cutters goes into a groove "
                                + mm(p.groove().width()) + " mm wide; one of at most that is needed"));
    }

    private static GuideBush bush(GuideProblem p, double cutter) {
        GuideBush bush = p.bushes().stream()
                .filter(b -> b.takes(cutter) && b.collar() < p.thickness() - 1e-9)
                .findFirst()
                .orElseThrow(() -> new Unbuildable(
                        "catalog",
                        "no guide bush of routing.bushes lets a cutter of " + mm(cutter)
                                + " mm turn and ends above the board under a guide " + mm(p.thickness())
                                + " mm thick; a bore of " + mm(cutter + 2 * GuideBush.AIR)
                                + " mm or more and a collar under "
                                + mm(p.thickness()) + " mm are needed"));
        double slot = p.groove().bendWidth() + bush.outer() - cutter;
        if (p.bendRadius() - slot / 2 < 2 || p.spacing() - slot < LEAST_PLATE) {
            throw new Unbuildable(
                    "layout.spacing",
                    "a guide for " + mm(p.spacing()) + " mm has no plate left between slots of " + mm(slot)
                            + " mm (channel and bush less cutter); a spacing of "
                            + mm(Math.ceil(Math.max(slot + LEAST_PLATE, slot + 4))) + " mm or more has");
        }
        return bush;
    }

    private static String mm(double size) {
        return Plain.number(size);
    }

    /** One plate while it is laid out. */
    private static final class Draft {
        private final GuideProblem p;
        private final double cutter;
        private final GuideBush bush;
        private final double more;
        private final double axis;
        private final List<Slot> slots = new ArrayList<>();
        private final List<Mark> marks = new ArrayList<>();
        private final List<Letters> letters = new ArrayList<>();

        Draft(GuideProblem problem, double cutter, GuideBush bush) {
            p = problem;
            this.cutter = cutter;
            this.bush = bush;
            more = bush.outer() - cutter;
            axis = axis();
        }

        /** The straight slot lies as far from the lower edge as the outer runs from the wall, where the plate allows it. */
        private double axis() {
            double least = MARGIN / 2 + (p.groove().width() + more) / 2;
            return Math.max(p.edge(), least);
        }

        GuidePlate plate() {
            double wide = p.groove().bendWidth() + more;
            double r = p.bendRadius();
            double low = axis + p.spacing();
            List<Element> quarter = quarter(new Point(MARGIN + wide / 2, low), r);
            double left = MARGIN + wide / 2 + LEG + r + wide + LEAST_PLATE;
            List<Element> turn = turn(left + wide / 2, low, r);
            double right = turn.stream().mapToDouble(Draft::reach).max().orElse(left) + wide / 2;
            double length = Math.min(LONGEST, Math.max(SHORTEST, LONG * p.spacing()));
            double width = Math.ceil(Math.max(right + MARGIN, length + 2 * MARGIN));
            double top = Math.max(low + p.spacing(), low + r + LEG) + wide / 2 + swing(r);
            double pocket = p.groove().pad() > 0 ? p.groove().pad() + more : 0;
            double band = Math.max(HAND_WIDE, pocket);
            double hands = top + LEAST_PLATE + band / 2;
            double height = Math.ceil(hands + band / 2 + MARGIN / 2);
            add(
                    Kind.STRAIGHT,
                    List.of(new Element.Run(
                            new Point(MARGIN + wide / 2, axis), new Point(width - MARGIN - wide / 2, axis))),
                    p.groove().width());
            if (!turn.isEmpty()) {
                add(Kind.RETURN_BEND, turn, p.groove().bendWidth());
            }
            add(Kind.QUARTER_BEND, quarter, p.groove().bendWidth());
            if (pocket > 0) {
                pocket(new Point(width / 2, hands), pocket);
            }
            steps(width, height);
            tangents(turn, wide);
            tangents(quarter, wide);
            words(wide);
            return new GuidePlate(
                    p,
                    cutter,
                    bush,
                    width,
                    height,
                    axis,
                    slots,
                    List.of(hand(width / 5, hands), hand(width * 4 / 5, hands)),
                    marks,
                    letters);
        }

        private void add(Kind kind, List<Element> way, double channel) {
            slots.add(new Slot(
                    kind,
                    way,
                    channel,
                    SlotEdge.of(way, channel + more),
                    way.get(0).from()));
        }

        private void pocket(Point at, double diameter) {
            slots.add(new Slot(
                    Kind.POCKET,
                    List.of(new Element.Run(at, at)),
                    p.groove().pad(),
                    SlotEdge.circle(at, diameter),
                    at));
        }

        private double swing(double r) {
            return Math.max(0, r - p.spacing() / 2);
        }

        private static double reach(Element e) {
            return e instanceof Element.Bend b
                    ? b.centre().x() + b.radius()
                    : Math.max(e.from().x(), e.to().x());
        }

        private static List<Element> quarter(Point from, double r) {
            Point a = new Point(from.x() + LEG, from.y());
            Point centre = new Point(a.x(), a.y() + r);
            Point b = new Point(a.x() + r, a.y() + r);
            return List.of(
                    new Element.Run(from, a),
                    new Element.Bend(a, b, centre, r, 90),
                    new Element.Run(b, new Point(b.x(), b.y() + LEG)));
        }

        /** Two legs a spacing apart, joined on their right; none where the pipe is too stiff for it. */
        private List<Element> turn(double left, double low, double r) {
            double half = p.spacing() / 2;
            List<Element> turn = new ArrayList<>();
            if (r <= half + 1e-9) {
                Point a = new Point(left + LEG, low);
                Point b = new Point(left + LEG, low + 2 * half);
                turn.add(new Element.Run(new Point(left, low), a));
                turn.add(new Element.Bend(a, b, new Point(left + LEG, low + half), half, 180));
                turn.add(new Element.Run(b, new Point(left, low + 2 * half)));
                return turn;
            }
            if (!Keyhole.fitsBeside(p.spacing(), r)) {
                return turn;
            }
            double depth = new Keyhole(new Point(0, 0), new Point(0, 2 * half), new Point(-1, 0), r).depth();
            double x = left + LEG + depth;
            Keyhole bend = new Keyhole(new Point(x, low), new Point(x, low + 2 * half), new Point(-1, 0), r);
            List<Element.Bend> arcs = bend.arcs();
            turn.add(new Element.Run(new Point(left, low), arcs.get(0).from()));
            turn.addAll(arcs);
            turn.add(new Element.Run(arcs.get(2).to(), new Point(left, low + 2 * half)));
            return turn;
        }

        /** A rounded hole to hold the plate by. */
        private static List<Corner> hand(double x, double y) {
            double half = (HAND_LONG - HAND_WIDE) / 2;
            return SlotEdge.of(List.of(new Element.Run(new Point(x - half, y), new Point(x + half, y))), HAND_WIDE);
        }

        /** On both short edges: the line of the straight slot and those of its neighbours, for stepping from run to run. */
        private void steps(double width, double height) {
            for (double y = axis; y < height - LEAST_PLATE; y += p.spacing()) {
                marks.add(new Mark(new Point(0, y), new Point(MARK, y)));
                marks.add(new Mark(new Point(width - MARK, y), new Point(width, y)));
            }
        }

        /** Beside the slot, square to it, where its bend begins and ends. */
        private void tangents(List<Element> way, double wide) {
            for (int i = 1; i < way.size(); i++) {
                if (way.get(i - 1) instanceof Element.Run run) {
                    tick(run, run.to(), wide);
                } else if (way.get(i) instanceof Element.Run run) {
                    tick(run, run.from(), wide);
                }
            }
        }

        private void tick(Element.Run run, Point at, double wide) {
            double ux = (run.to().x() - run.from().x()) / run.length();
            double uy = (run.to().y() - run.from().y()) / run.length();
            for (int side : new int[] {-1, 1}) {
                double near = side * (wide / 2 + 2);
                double far = side * (wide / 2 + 10);
                marks.add(new Mark(
                        new Point(at.x() - near * uy, at.y() + near * ux),
                        new Point(at.x() - far * uy, at.y() + far * ux)));
            }
        }

        private void words(double wide) {
            double straight = (p.groove().width() + more) / 2;
            double room = p.spacing() - wide / 2 - straight;
            double height = Math.min(LETTER, room / 5);
            double y = axis + straight + (room - 2.6 * height) / 2;
            String facts = String.format(
                    Locale.ROOT, "SPACING %s  BUSH %s  CUTTER %s", mm(p.spacing()), mm(bush.outer()), mm(cutter));
            String more = String.format(
                    Locale.ROOT,
                    "BEND R %s  GROOVE %s/%s DEEP %s",
                    mm(p.bendRadius()),
                    mm(p.groove().width()),
                    mm(p.groove().bendWidth()),
                    mm(p.groove().depth()));
            double x = MARGIN + wide / 2 + 12;
            letters.add(new Letters(new Point(x, y + 1.6 * height), height, facts));
            letters.add(new Letters(new Point(x, y), height, more));
        }
    }
}
