package org.runbend.optimizer.verify;

import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/** The rules of a loop that need no floor: each element by itself, and each joint. Sizes in mm. */
final class JointRules {
    private static final double SAME_PLACE = 0.05;
    private static final double KINK = 0.1;
    private static final double NO_LENGTH = 0.01;

    private final double leastRadius;
    private final Findings findings;

    JointRules(double leastRadius, Findings findings) {
        this.leastRadius = leastRadius;
        this.findings = findings;
    }

    void check(int loop, Breakdown breakdown) {
        List<Element> elements = breakdown.elements();
        for (int i = 0; i < elements.size(); i++) {
            Finding.Place name = new Finding.Place(loop, i);
            checkElement(name, elements.get(i));
            if (i > 0) {
                boolean border = breakdown.isLead(i - 1) != breakdown.isLead(i);
                checkJoint(name, elements.get(i - 1), elements.get(i), border);
            }
        }
    }

    private void checkElement(Finding.Place name, Element element) {
        if (element instanceof Element.Bend bend) {
            checkBend(name, bend);
        } else {
            double length = gap(element.from(), element.to());
            findings.unless(
                    length > NO_LENGTH,
                    "%s: a run of %.3f mm has no length, over %.2f mm asked",
                    name,
                    length,
                    NO_LENGTH);
        }
    }

    private void checkBend(Finding.Place name, Element.Bend bend) {
        double start = gap(bend.from(), bend.centre());
        double end = gap(bend.to(), bend.centre());
        findings.unless(
                Math.abs(start - bend.radius()) <= SAME_PLACE && Math.abs(end - bend.radius()) <= SAME_PLACE,
                "%s: the bend's ends lie %.2f and %.2f mm from its centre, its radius is %.2f mm",
                name,
                start,
                end,
                bend.radius());
        double off = gap(turned(bend), bend.to());
        findings.unless(
                off <= SAME_PLACE,
                "%s: a turn of %.2f degrees misses the bend's end by %.2f mm, %.2f mm allowed",
                name,
                bend.turn(),
                off,
                SAME_PLACE);
        double sweep = Math.abs(bend.turn());
        findings.unless(
                sweep > 0 && sweep < 360,
                "%s: a bend turns by more than 0 and less than 360 degrees, not by %.2f",
                name,
                bend.turn());
        findings.unless(
                bend.radius() >= leastRadius - NO_LENGTH,
                "%s: radius %.2f mm is under the pipe's least radius %.2f mm",
                name,
                bend.radius(),
                leastRadius);
    }

    private void checkJoint(Finding.Place name, Element before, Element element, boolean border) {
        double hole = gap(before.to(), element.from());
        findings.unless(
                hole <= SAME_PLACE,
                "%s: starts %.2f mm from where the element before ends, %.2f mm allowed",
                name,
                hole,
                SAME_PLACE);
        findings.unless(
                border || before instanceof Element.Bend || element instanceof Element.Bend,
                "%s: a run follows a run, %.2f mm after %.2f mm",
                name,
                element.length(),
                before.length());
        double kink = Math.IEEEremainder(heading(element, element.from()) - heading(before, before.to()), 360);
        findings.unless(
                Math.abs(kink) <= KINK, "%s: a kink of %.2f degrees at its start, %.2f allowed", name, kink, KINK);
        if (before instanceof Element.Bend a && element instanceof Element.Bend b) {
            findings.unless(
                    a.turn() * b.turn() < 0,
                    "%s: equal-handed bends of %.1f and %.1f degrees without a straight between are one bend",
                    name,
                    a.turn(),
                    b.turn());
        }
    }

    /** Direction of flow at an end of an element, degrees. */
    private static double heading(Element element, Point at) {
        if (element instanceof Element.Bend bend) {
            double spoke = Math.atan2(
                    at.y() - bend.centre().y(), at.x() - bend.centre().x());
            return Math.toDegrees(spoke) + Math.copySign(90, bend.turn());
        }
        return Math.toDegrees(Math.atan2(
                element.to().y() - element.from().y(),
                element.to().x() - element.from().x()));
    }

    private static Point turned(Element.Bend bend) {
        double c = Math.cos(Math.toRadians(bend.turn()));
        double s = Math.sin(Math.toRadians(bend.turn()));
        double dx = bend.from().x() - bend.centre().x();
        double dy = bend.from().y() - bend.centre().y();
        return new Point(bend.centre().x() + c * dx - s * dy, bend.centre().y() + s * dx + c * dy);
    }

    private static double gap(Point a, Point b) {
        return Math.sqrt((a.x() - b.x()) * (a.x() - b.x()) + (a.y() - b.y()) * (a.y() - b.y()));
    }
}
