package org.runbend.optimizer.plates;

import java.util.List;
import org.runbend.catalog.product.Catalog;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/** The rectangle of floor that a piece of plate covers. */
public final class PlateBody {
    private PlateBody() {}

    /**
     * Its four corners, mm: along its run, or midway between its two runs.
     *
     * @param loops the loops of the plan
     * @param catalog where its product stands
     * @param piece the piece
     */
    public static List<Point> corners(List<Breakdown> loops, Catalog catalog, PlatePiece piece) {
        double half = catalog.findPlate(piece.product()).orElseThrow().width() / 2;
        List<Point> line = centreLine(loops, piece);
        Point a = line.get(0);
        Point b = line.get(1);
        double left = Math.toDegrees(StrictMath.atan2(b.y() - a.y(), b.x() - a.x())) + 90;
        return List.of(off(a, -half, left), off(b, -half, left), off(b, half, left), off(a, half, left));
    }

    private static Point off(Point from, double distance, double angle) {
        double radians = Math.toRadians(angle);
        return new Point(from.x() + distance * StrictMath.cos(radians), from.y() + distance * StrictMath.sin(radians));
    }

    /** Where its middle line begins and ends, mm: on its run, or midway between its two runs. */
    public static List<Point> centreLine(List<Breakdown> loops, PlatePiece piece) {
        List<Point> first = groove(loops, piece, 0);
        if (piece.places().size() == 1) {
            return first;
        }
        List<Point> second = groove(loops, piece, 1);
        Point a = first.get(0);
        boolean against = a.distance(second.get(0)) > a.distance(second.get(1));
        return List.of(middle(a, second.get(against ? 1 : 0)), middle(first.get(1), second.get(against ? 0 : 1)));
    }

    private static List<Point> groove(List<Breakdown> loops, PlatePiece piece, int groove) {
        PlatePiece.Place place = piece.places().get(groove);
        Element.Run run = (Element.Run) loops.get(place.loop()).elements().get(place.element());
        return List.of(run.along(place.from()), run.along(place.from() + piece.length()));
    }

    private static Point middle(Point a, Point b) {
        return new Point(a.x() + 0.5 * (b.x() - a.x()), a.y() + 0.5 * (b.y() - a.y()));
    }
}
