package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PortHole;

/**
 * Draws where pipe goes through the floor, and the slots in which it turns. Holes that the job gives lie on layers that are
 * cut; proposed ones on one that is not, so that nobody drills before looking underneath.
 */
final class HoleMarks {
    private HoleMarks() {}

    static void draw(SheetBuilder sheet, KitPlan plan) {
        things(plan.job()).forEach(k -> sheet.add(Layer.HOLE, circle(k)));
        if (plan.job().floor().port().turn() == Job.Turn.LEVEL) {
            return;
        }
        double radius = plan.job().groove().pad() / 2;
        for (PortHole hole : plan.holes()) {
            sheet.add(hole.given() ? Layer.SLOT : Layer.NOTE, slot(hole.slot()));
            if (radius > 0) {
                sheet.add(hole.given() ? Layer.HOLE : Layer.NOTE, new Circle(Places.at(hole.at()), radius));
            }
        }
    }

    /** Drains, vents and bolts that go through the floor, if their size is known. */
    private static List<KeepOut> things(Job job) {
        return job.floor().keepOuts().stream()
                .filter(HoleMarks::goesThrough)
                .filter(k -> k.bare() instanceof Shape.Circle)
                .toList();
    }

    /** Middles of the round things and points among them, in order of the job. */
    static List<Point> middles(Job job) {
        return job.floor().keepOuts().stream()
                .filter(HoleMarks::goesThrough)
                .flatMap(k -> k.bare() instanceof Shape.Circle c
                        ? Stream.of(Places.at(c.centre()))
                        : k.bare() instanceof Shape.Spot s ? Stream.of(Places.at(s.at())) : Stream.empty())
                .toList();
    }

    private static boolean goesThrough(KeepOut k) {
        return k.kind() == KeepOut.Kind.DRAIN || k.kind() == KeepOut.Kind.VENT || k.kind() == KeepOut.Kind.BOLT;
    }

    private static Circle circle(KeepOut k) {
        Shape.Circle c = (Shape.Circle) k.bare();
        return new Circle(Places.at(c.centre()), c.radius());
    }

    /** How large the holes on their layer are, in words. */
    static String sizes(KitPlan plan) {
        Map<String, Integer> sizes = new LinkedHashMap<>();
        double pad = plan.job().groove().pad();
        if (plan.job().floor().port().turn() != Job.Turn.LEVEL && pad > 0) {
            plan.holes().stream()
                    .filter(PortHole::given)
                    .forEach(h -> sizes.merge("pipe dia " + Decimals.of(pad, 1), 1, Integer::sum));
        }
        for (KeepOut k : things(plan.job())) {
            String size = Decimals.of(2 * circle(k).radius(), 1);
            sizes.merge(k.kind().name().toLowerCase(Locale.ROOT) + " dia " + size, 1, Integer::sum);
        }
        return sizes.entrySet().stream()
                .map(e -> e.getValue() + " x " + e.getKey())
                .collect(Collectors.joining(", "));
    }

    /** Which things go through the floor but have no cut, as their round size is not known. */
    static Optional<String> uncut(Job job) {
        List<String> names = job.floor().keepOuts().stream()
                .filter(HoleMarks::goesThrough)
                .filter(k -> !(k.bare() instanceof Shape.Circle))
                .map(k -> Wording.brief(k.name()))
                .toList();
        return names.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "no hole for " + String.join(", ", names) + ": no diameter is given, only the place is marked");
    }

    /** Which things may stand in the board: whether it is cut round them nobody can tell from the job. */
    static Optional<String> standing(Job job) {
        List<String> names = job.floor().keepOuts().stream()
                .filter(k -> k.kind() == KeepOut.Kind.PILLAR || k.kind() == KeepOut.Kind.HATCH)
                .map(k -> Wording.brief(k.name()))
                .toList();
        return names.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        "no cut for " + String.join(", ", names)
                                + ": where one goes through the board, cut along the inner line on KEEP_OUT, with the cut of FLOOR");
    }

    /** The strip of a slot with round ends, anticlockwise. */
    private static Path slot(Slot slot) {
        Point a = Places.at(slot.from());
        Point b = Places.at(slot.to());
        double half = slot.width() / 2;
        double side = a.angleTo(b) - 90;
        Point first = a.polar(half, side);
        Point second = b.polar(half, side);
        Point third = b.polar(-half, side);
        Point fourth = a.polar(-half, side);
        return new Path(
                List.of(
                        new Vertex(first.x(), first.y(), 0),
                        new Vertex(second.x(), second.y(), 1),
                        new Vertex(third.x(), third.y(), 0),
                        new Vertex(fourth.x(), fourth.y(), 1)),
                true);
    }

    /** What a person has to know of the holes, in parts of a sentence. */
    static List<String> words(KitPlan plan) {
        Job.Port port = plan.job().floor().port();
        String how =
                switch (port.turn()) {
                    case DOWN -> "down through the floor";
                    case UP -> "up through the cover";
                    case LEVEL -> "straight on through the wall";
                };
        boolean given = !port.holes().isEmpty();
        List<String> lines = new ArrayList<>();
        lines.add("pipe leaves " + how + "; middles of the holes from 0, 0:");
        List<PortHole> holes = plan.holes();
        for (int i = 0; i + 1 < holes.size(); i += 2) {
            lines.add(place(holes.get(i)) + "; " + place(holes.get(i + 1)));
        }
        String sizes = port.turn() == Job.Turn.LEVEL
                ? ""
                : "holes dia " + Decimals.of(plan.job().groove().pad(), 1) + ", slots "
                        + Decimals.of(plan.holes().get(0).slot().length(), 1) + " long from the hole's middle, "
                        + Decimals.of(plan.holes().get(0).slot().width(), 1) + " wide";
        String proposed = given ? "" : "PROPOSED: look underneath before you drill";
        Stream.of(sizes, proposed).filter(words -> !words.isEmpty()).forEach(lines::add);
        return lines;
    }

    private static String place(PortHole hole) {
        return hole.loop() + " " + hole.kind().name().toLowerCase(Locale.ROOT) + " x "
                + Decimals.of(hole.at().x(), 1) + ", y " + Decimals.of(hole.at().y(), 1);
    }
}
