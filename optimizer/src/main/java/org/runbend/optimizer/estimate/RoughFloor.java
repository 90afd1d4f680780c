package org.runbend.optimizer.estimate;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.job.Point;

/**
 * A floor of which only two sizes are known, as somebody might measure it later.
 *
 * @param length of the longer side, mm, along x
 * @param width of the shorter side, mm
 * @param standing what stands on it
 * @param port where flow and return come up
 * @param coverage share of what can take plates that gets them, %
 */
record RoughFloor(double length, double width, Standing standing, Place port, int coverage) {
    /** Length of a notch over that of the floor; chosen: two wheel arches of a van are about so long. */
    static final double NOTCH_LENGTH = 0.3;
    /** Depth of a notch over the width of the floor; chosen likewise. Something along a whole side takes as much of the floor in all. */
    static final double NOTCH_DEPTH = 0.13;
    /** From the port to the valves, each way, mm; chosen. */
    static final int TAIL = 1000;
    /** Centreline to outline, mm: that of a job that names none. */
    static final double EDGE = 75;

    /** What stands on a floor. */
    enum Standing {
        /** Nothing. */
        NOTHING,
        /** Something against the middle of both long sides. */
        NOTCHES,
        /** Something along a whole long side. */
        STRIP
    }

    /** Where flow and return come up. */
    enum Place {
        /** In the middle of a short side. */
        SHORT_SIDE,
        /** In a corner. */
        CORNER,
        /** At a wall, at the ends of a plain loop that is not searched for. */
        COMB
    }

    /** What is the same for all floors of a range. */
    record Products(String catalog, String pipe, List<String> plates, double spacing) {}

    /** Depth of what stands along a whole side, mm. */
    static double strip(double width) {
        return Math.rint(2 * NOTCH_LENGTH * NOTCH_DEPTH * width);
    }

    /** The floor as a job file; what it does not say is as in any job. */
    String job(Products products) {
        double free = standing == Standing.STRIP ? width - strip(width) : width;
        Comb comb = new Comb(length, free, products.spacing, EDGE);
        Point at =
                switch (port) {
                    case SHORT_SIDE -> new Point(0, free / 2);
                    case CORNER -> new Point(0, free);
                    case COMB -> comb.port();
                };
        String loops = port == Place.COMB
                ? "loop: [" + comb.corners().stream().map(RoughFloor::point).collect(Collectors.joining(", ")) + "]"
                : "loops: auto";
        return "job: " + quoted("Floor of " + mm(length) + " x " + mm(width) + " mm") + "\n"
                + "order: estimate\n"
                + "catalog: " + quoted(products.catalog) + "\n"
                + "floor:\n"
                + "  outline: [" + outline(free) + "]\n"
                + "  port: {at: " + point(at) + "}\n"
                + "layout: {spacing: " + mm(products.spacing) + ", edge: " + mm(EDGE) + ", " + loops + "}\n"
                + "pipe: {product: " + quoted(products.pipe) + ", tails: [" + TAIL + ", " + TAIL + "]}\n"
                + "plates: {product: ["
                + products.plates.stream().map(RoughFloor::quoted).collect(Collectors.joining(", "))
                + "], coverage: " + coverage + "%}\n";
    }

    private String outline(double free) {
        if (standing != Standing.NOTCHES) {
            return points(0, 0, length, 0, length, free, 0, free);
        }
        double from = Math.rint(length * (1 - NOTCH_LENGTH) / 2);
        double to = length - from;
        double depth = Math.rint(free * NOTCH_DEPTH);
        double top = free - depth;
        return points(0, 0, from, 0, from, depth, to, depth, to, 0, length, 0)
                + ", "
                + points(length, free, to, free, to, top, from, top, from, free, 0, free);
    }

    private static String points(double... xy) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < xy.length; i += 2) {
            text.append(i == 0 ? "" : ", ").append(point(new Point(xy[i], xy[i + 1])));
        }
        return text.toString();
    }

    private static String point(Point p) {
        return String.format(Locale.ROOT, "[%.3f, %.3f]", p.x(), p.y());
    }

    private static String mm(double value) {
        return Plain.number(value);
    }

    private static String quoted(String text) {
        return "'" + text.replace("'", "''") + "'";
    }
}
