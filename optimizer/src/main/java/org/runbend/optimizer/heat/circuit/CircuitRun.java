package org.runbend.optimizer.heat.circuit;

import java.util.List;
import java.util.OptionalInt;

/**
 * What happened in a circuit.
 *
 * @param points minute by minute
 * @param area plated floor that would take as much as the floor does, m2
 * @param duty share of the last third of the time in which the valve was open to the floor
 * @param swing of the surface within the last third, K
 * @param surface its mean within the last third, degrees C
 * @param plates mean of the plates within the last third, degrees C
 * @param source mean power of the source within the last third, W
 * @param floor mean power into the floor within the last third, W
 * @param cylinder mean power into the cylinder by its coil within the last third, W; negative where it gives
 * @param blowers mean power of the blowers within the last third, W
 * @param starts how often the source started within the last third
 * @param openings how often the valve opened to the floor within the last third
 */
public record CircuitRun(
        List<Point> points,
        double area,
        double duty,
        double swing,
        double surface,
        double plates,
        double source,
        double floor,
        double cylinder,
        double blowers,
        int starts,
        int openings) {
    /**
     * A minute.
     *
     * @param minute from the start
     * @param surface of the floor, degrees C
     * @param sensor at the plates, degrees C
     * @param coolant degrees C
     * @param cylinder water of the cylinder, degrees C; the coolant's where there is none
     * @param toFloor whether the valve is open to the floor
     */
    public record Point(int minute, double surface, double sensor, double coolant, double cylinder, boolean toFloor) {}

    /** Copies the list. */
    public CircuitRun {
        points = List.copyOf(points);
    }

    /** First minute in which the valve is open to the floor; nothing where it never is. */
    public OptionalInt firstOpen() {
        return points.stream().filter(Point::toFloor).mapToInt(Point::minute).findFirst();
    }

    /** Hottest of the surface, degrees C. */
    public double hottestSurface() {
        return points.stream().mapToDouble(Point::surface).max().orElse(0);
    }

    /** Hottest of the plates, degrees C. */
    public double hottestPlates() {
        return points.stream().mapToDouble(Point::sensor).max().orElse(0);
    }

    /** What the source gave and nobody took within the last third, W: the coolant's own heat. */
    public double kept() {
        return source - floor - cylinder - blowers;
    }

    /** The floor's share of what the source gives, 0 to 1. */
    public double floorShare() {
        return source <= 0 ? 0 : Math.max(0, Math.min(1, floor / source));
    }
}
