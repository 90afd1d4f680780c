package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/**
 * An open line of the drawing, mm: vertices with bulges, the last one's without meaning.
 *
 * @param curved whether its chords stand for a curve that is no arc
 */
record Piece(String layer, List<Vertex> vertices, boolean curved) {
    /** Ends farther apart than this did not miss each other by a slip, mm. */
    private static final double SLIP = 1.5;

    Piece {
        vertices = List.copyOf(vertices);
    }

    Point start() {
        return vertices.get(0).point();
    }

    Point end() {
        return vertices.get(vertices.size() - 1).point();
    }

    double length() {
        double sum = 0;
        for (int i = 0; i + 1 < vertices.size(); i++) {
            double chord = vertices.get(i).point().distance(vertices.get(i + 1).point());
            double quarter = StrictMath.atan(Math.abs(vertices.get(i).bulge()));
            sum += quarter == 0 ? chord : chord * 2 * quarter / StrictMath.sin(2 * quarter);
        }
        return sum;
    }

    /** A point on it that tells it from another piece between the same ends. */
    Point middle() {
        int n = vertices.size();
        Vertex a = vertices.get((n - 1) / 2);
        Vertex b = vertices.get((n - 1) / 2 + 1);
        if (n % 2 == 1) {
            return a.point();
        }
        double x = (a.x() + b.x()) / 2 + (b.y() - a.y()) * a.bulge() / 2;
        double y = (a.y() + b.y()) / 2 - (b.x() - a.x()) * a.bulge() / 2;
        return new Point(x, y);
    }

    Piece reversed() {
        List<Vertex> turned = new ArrayList<>();
        for (int i = vertices.size() - 1; i >= 0; i--) {
            Vertex v = vertices.get(i);
            turned.add(new Vertex(v.x(), v.y(), i > 0 ? -vertices.get(i - 1).bulge() : 0));
        }
        return new Piece(layer, turned, curved);
    }

    /** The same with its end elsewhere. */
    Piece endingAt(Point end) {
        List<Vertex> moved = new ArrayList<>(vertices.subList(0, vertices.size() - 1));
        moved.add(new Vertex(end.x(), end.y(), 0));
        return new Piece(layer, moved, curved);
    }

    /** Direction in which it leaves its start, radians: the chord's, less half of the arc's sweep. */
    double heading() {
        Vertex a = vertices.get(0);
        Vertex b = vertices.get(1);
        return StrictMath.atan2(b.y() - a.y(), b.x() - a.x()) - 2 * StrictMath.atan(a.bulge());
    }

    /** The vertices of a ring of pieces; a gap too wide to be a slip is closed by a straight side. */
    static List<Vertex> ring(List<Piece> pieces) {
        List<Vertex> all = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = pieces.get(i);
            all.addAll(piece.vertices().subList(0, piece.vertices().size() - 1));
            Point next = pieces.get((i + 1) % pieces.size()).start();
            if (piece.end().distance(next) > SLIP) {
                all.add(Vertex.straight(piece.end()));
            }
        }
        return Collections.unmodifiableList(all);
    }

    /** The vertices of pieces that follow each other, each ending where the next begins. */
    static List<Vertex> joined(List<Piece> pieces) {
        List<Vertex> all = new ArrayList<>();
        for (Piece piece : pieces) {
            all.addAll(piece.vertices().subList(0, piece.vertices().size() - 1));
        }
        return Collections.unmodifiableList(all);
    }
}
