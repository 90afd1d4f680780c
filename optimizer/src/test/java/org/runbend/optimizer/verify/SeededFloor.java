package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsPlan.Spot;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Filling;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.FixingProblem;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Filleting;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.channel.SensorProblem;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/**
 * A small floor with a loop, made from a number alone: rows to and fro and back along a wall, the floor mirrored or on its side;
 * bolts, a tank below, boards, battens and plates where chance wants them.
 */
final class SeededFloor {
    private final Random chance;
    private final double spacing;
    private final int rows;
    private final double width;
    private final double height;
    private final UnaryOperator<Point> way;
    private final Breakdown loop;

    SeededFloor(int number) {
        chance = new Random(number);
        spacing = List.of(100.0, 120.0, 150.0).get(chance.nextInt(3));
        rows = 2 * (1 + chance.nextInt(2));
        height = rows * spacing;
        width = spacing * (5 + chance.nextInt(3));
        boolean mirrored = chance.nextBoolean();
        boolean lying = chance.nextBoolean();
        way = p -> {
            double x = mirrored ? width - p.x() : p.x();
            return lying ? new Point(p.y(), x) : new Point(x, p.y());
        };
        loop = loop();
    }

    private List<Point> turned(List<Point> points) {
        return points.stream().map(way).toList();
    }

    private Breakdown loop() {
        double e = spacing / 2;
        List<Point> corners = new ArrayList<>(List.of(new Point(e, e)));
        for (int k = 0; k < rows; k++) {
            double y = e + k * spacing;
            Point left = new Point(k == rows - 1 ? e : e + spacing, y);
            Point right = new Point(width - e, y);
            if (k > 0 || !left.equals(right)) {
                corners.add(k % 2 == 0 ? (k == 0 ? right : left) : right);
            }
            if (k > 0) {
                corners.add(k % 2 == 0 ? right : left);
            }
        }
        if (rows > 2) {
            corners.add(new Point(e, e + spacing));
        }
        Breakdown bare = new Filleting().breakDown(turned(corners), spacing / 2);
        Element first = bare.elements().get(0);
        Element last = bare.elements().get(bare.elements().size() - 1);
        return bare.with(List.of(slot(first.from(), first.to()), slot(last.to(), last.from())));
    }

    private static Slot slot(Point hole, Point towards) {
        double length = Math.min(50, hole.distance(towards));
        return new Slot(hole, new Element.Run(hole, towards).along(length), 20);
    }

    private List<Point> box(double x, double y, double w, double h) {
        return turned(List.of(new Point(x, y), new Point(x + w, y), new Point(x + w, y + h), new Point(x, y + h)));
    }

    /** Boards side by side, a millimetre apart, 8 mm off the walls. */
    private List<Part> boards(String code, int many) {
        List<Part> parts = new ArrayList<>();
        double each = (width - 16) / many;
        for (int i = 0; i < many; i++) {
            List<Point> edge = box(8 + i * each, 8, each - (i == many - 1 ? 0 : 1), height - 16);
            parts.add(new Part(code + (i + 1), edge, List.of(), List.of(), List.of(), List.of(), new Spot(0, 0, 0, 0)));
        }
        return parts;
    }

    private double share(double from, double to) {
        return from + (to - from) * chance.nextDouble();
    }

    private List<List<Point>> below() {
        return List.of(box(share(0, 0.6) * width, share(0, 0.6) * height, 0.3 * width, 0.3 * height));
    }

    /** The cover on wood, or on battens beside foam. */
    FixingProblem fixing(List<Point> conduit) {
        boolean wood = chance.nextBoolean();
        List<Support> battens = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            double x = share(0.1, 0.9) * width;
            battens.add(new Support(
                    "batten",
                    way.apply(new Point(x, 0)),
                    way.apply(new Point(x, height)),
                    share(15, 60),
                    Support.Crossing.SQUARE));
        }
        List<Point> thing = box(share(0, 0.8) * width, share(0, 0.8) * height, 40, 40);
        return new FixingProblem(
                boards("C", 1 + chance.nextInt(2)),
                wood ? boards("R", 1 + chance.nextInt(2)) : List.of(),
                battens,
                List.of(new Cutout("vent", thing, Optional.empty(), Set.of(Role.values()), 10, Filling.OPEN)),
                List.of(loop),
                below(),
                conduit,
                new FixingProblem.Size(12, wood ? 21 : 51, share(150, 350), List.of(20.0, 25.0, 30.0, 50.0)));
    }

    /** Plates of 120 mm, or as wide as the spacing lets them, on the rows; a bolt anywhere. */
    SensorProblem sensor() {
        List<SensorProblem.Plate> plates = new ArrayList<>();
        for (Element e : loop.elements()) {
            if (e instanceof Element.Run run && run.length() > 300) {
                Point a = run.along(60);
                Point b = run.along(run.length() - 60);
                double half = Math.min(120, spacing - 10) / 2;
                double ux = (b.x() - a.x()) / a.distance(b);
                double uy = (b.y() - a.y()) / a.distance(b);
                plates.add(new SensorProblem.Plate(
                        List.of(
                                new Point(a.x() + half * uy, a.y() - half * ux),
                                new Point(b.x() + half * uy, b.y() - half * ux),
                                new Point(b.x() - half * uy, b.y() + half * ux),
                                new Point(a.x() - half * uy, a.y() + half * ux)),
                        a,
                        b,
                        1));
            }
        }
        Point bolt = way.apply(new Point(share(0, 1) * width, share(0, 1) * height));
        Point flow = loop.slots().get(0).from();
        Point back = loop.slots().get(1).from();
        return new SensorProblem(
                box(0, 0, width, height),
                List.of(new KeepOut("bolt", KeepOut.Kind.BOLT, new Shape.Spot(bolt, 15), 30)),
                below(),
                List.of(loop),
                plates,
                new Point((flow.x() + back.x()) / 2, (flow.y() + back.y()) / 2),
                new SensorProblem.Size(spacing, 10, 10, Double.POSITIVE_INFINITY));
    }

    /** The straight pipe. */
    List<Element.Run> runs() {
        return loop.elements().stream()
                .filter(Element.Run.class::isInstance)
                .map(Element.Run.class::cast)
                .toList();
    }
}
