package org.runbend.optimizer.job;

import java.util.List;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.Sha256;

/**
 * A floor in one line of text and its digest. Numbers count to a thousandth of a millimetre: far below what a tape can say,
 * far above what an inch turned into millimetres can be off.
 */
final class FloorFingerprint {
    private final StringBuilder text = new StringBuilder();

    private FloorFingerprint() {}

    static String of(Job.FloorPlan floor) {
        FloorFingerprint print = new FloorFingerprint();
        print.floor(floor);
        return Sha256.of(print.text.toString());
    }

    private void floor(Job.FloorPlan floor) {
        points("outline", floor.outline());
        floor.marks().forEach(m -> {
            name("mark", m.text());
            points("at", List.of(m.at()));
        });
        floor.keepOuts().forEach(this::keepOut);
        floor.unheated().forEach(u -> {
            name("unheated", u.name());
            points("polygon", u.region().corners());
        });
        floor.supports().forEach(s -> {
            name("support " + s.cross(), s.name());
            points("line", List.of(s.from(), s.to()));
            number("width", s.width());
        });
        floor.below().forEach(b -> {
            name("below", b.name());
            points("polygon", b.region().corners());
        });
        points("port " + floor.port().turn(), List.of(floor.port().at()));
        number("reach", floor.port().reach());
        floor.port().holes().forEach(h -> points("holes", List.of(h.flow(), h.back())));
    }

    private void keepOut(KeepOut k) {
        name("keepOut " + k.kind(), k.name());
        if (k.bare() instanceof Shape.Circle c) {
            points("centre", List.of(c.centre()));
            number("radius", c.radius());
        } else if (k.bare() instanceof Shape.Polygon p) {
            points("polygon", p.corners());
        } else {
            points("point", List.of(((Shape.Spot) k.bare()).at()));
        }
        number("clearance", k.clearance());
    }

    /** The length before the name keeps two names from reading like another pair. */
    private void name(String what, String name) {
        text.append(what)
                .append(' ')
                .append(name.length())
                .append(' ')
                .append(name)
                .append('\n');
    }

    private void number(String what, double value) {
        text.append(what).append(' ').append(Plain.number(value)).append('\n');
    }

    private void points(String what, List<Point> points) {
        text.append(what);
        points.forEach(
                p -> text.append(' ').append(Plain.number(p.x())).append(',').append(Plain.number(p.y())));
        text.append('\n');
    }
}
