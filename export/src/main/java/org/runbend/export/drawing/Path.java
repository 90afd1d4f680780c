package org.runbend.export.drawing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines and arcs one after the other, open or closed. A closed path does not repeat its first vertex. A vertex less than
 * 0.000002 mm from the next one is left out, so no part is of zero length in any file; at least two must remain.
 */
public record Path(List<Vertex> vertices, boolean closed) implements Shape {
    /** Twice the last decimal written to files: nearer vertices could become the same text. */
    private static final double SAME_PLACE = 2e-6;

    /** Cleans and checks. */
    public Path {
        vertices = cleaned(vertices, closed);
        if (vertices.size() < 2) {
            throw new IllegalArgumentException("path needs two different vertices, has " + vertices);
        }
    }

    /** Starts a path that grows part by part. */
    public static PathBuilder from(Point start) {
        return new PathBuilder(start);
    }

    /** A closed path of straight lines. */
    public static Path polygon(List<Point> corners) {
        return new Path(corners.stream().map(Vertex::straight).toList(), true);
    }

    /** An open path of straight lines. */
    public static Path polyline(List<Point> corners) {
        return new Path(corners.stream().map(Vertex::straight).toList(), false);
    }

    /** A closed rectangle along the axes. */
    public static Path rectangle(Extent box) {
        return polygon(List.of(
                new Point(box.minX(), box.minY()),
                new Point(box.maxX(), box.minY()),
                new Point(box.maxX(), box.maxY()),
                new Point(box.minX(), box.maxY())));
    }

    /** The parts in order, each a {@link Segment} or an {@link Arc}. */
    public List<Shape> parts() {
        List<Shape> parts = new ArrayList<>();
        for (int i = 0; i < partCount(); i++) {
            Vertex v = vertices.get(i);
            Point b = end(i);
            parts.add(v.bulge() == 0 ? new Segment(v.point(), b) : Arc.between(v.point(), b, v.bulge()));
        }
        return parts;
    }

    /** How many parts there are: one a vertex when closed, else one less. */
    public int partCount() {
        return closed ? vertices.size() : vertices.size() - 1;
    }

    /** Where part i ends: the next vertex, exactly. */
    public Point end(int i) {
        return vertices.get((i + 1) % vertices.size()).point();
    }

    @Override
    public Extent extent() {
        return parts().stream().map(Shape::extent).reduce(Extent::union).orElseThrow();
    }

    @Override
    public void drawOn(Backend backend, Layer layer) throws IOException {
        backend.path(layer, this);
    }

    private static List<Vertex> cleaned(List<Vertex> vertices, boolean closed) {
        List<Vertex> kept = new ArrayList<>();
        for (Vertex v : vertices) {
            if (!kept.isEmpty() && samePlace(kept.get(kept.size() - 1), v)) {
                kept.remove(kept.size() - 1);
            }
            kept.add(v);
        }
        if (closed && kept.size() > 1 && samePlace(kept.get(kept.size() - 1), kept.get(0))) {
            kept.remove(kept.size() - 1);
        }
        return List.copyOf(kept);
    }

    private static boolean samePlace(Vertex a, Vertex b) {
        return Math.abs(a.x() - b.x()) < SAME_PLACE && Math.abs(a.y() - b.y()) < SAME_PLACE;
    }
}
