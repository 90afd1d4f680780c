package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * The layers over and under the plane in which the plates lie.
 *
 * @param cover thickness over the plates, mm
 * @param coverConductivity W/(m K)
 * @param finish resistance of the floor covering, m2 K/W
 * @param surface heat transfer to the room, radiation included, W/(m2 K)
 * @param foam thickness under the pipe, mm
 * @param foamConductivity W/(m K)
 * @param outer resistance from the foam to the air outside, m2 K/W
 */
public record Stack(
        double cover,
        double coverConductivity,
        double finish,
        double surface,
        double foam,
        double foamConductivity,
        double outer) {
    /** Floor to room, EN 1264-2 and ISO 11855-2: 1/alpha with alpha = 10.8 W/(m2 K). */
    public static final double FLOOR_SURFACE = 10.8;

    /** Outside air under a floor at rest, m2 K/W: EN ISO 6946 (from memory). */
    public static final double OUTER_AIR = 0.04;

    /** Checks ranges. */
    public Stack {
        Within.range("cover", cover, 0, 200, "mm");
        Within.range("conductivity of the cover", coverConductivity, 0.01, 500, "W/(m K)");
        Within.range("resistance of the finish", finish, 0, 5, "m2 K/W");
        Within.range("heat transfer of the surface", surface, 0.1, 100, "W/(m2 K)");
        Within.range("foam under the pipe", foam, 0, 1000, "mm");
        Within.range("conductivity of the foam", foamConductivity, 0.005, 500, "W/(m K)");
        Within.range("resistance to the air outside", outer, 0, 50, "m2 K/W");
    }

    /** Still air of a room over, outside air under the floor. */
    public static Stack of(
            double cover, double coverConductivity, double finish, double foam, double foamConductivity) {
        return new Stack(cover, coverConductivity, finish, FLOOR_SURFACE, foam, foamConductivity, OUTER_AIR);
    }

    /** The same floor with something more lying on it, m2 K/W. */
    public Stack under(double resistance) {
        return new Stack(cover, coverConductivity, finish + resistance, surface, foam, foamConductivity, outer);
    }

    /** From the plane of the plates to the room, W/(m2 K). */
    public double up() {
        return 1 / (1 / surface + finish + cover / 1000 / coverConductivity);
    }

    /** From the plane of the plates to the outside, through foam beside and under a pipe of an outer size in mm, W/(m2 K). */
    public double down(double pipe) {
        return 1 / (outer + (pipe + foam) / 1000 / foamConductivity);
    }

    /** What the cover carries sideways, W/K. */
    public double sideways() {
        return coverConductivity * cover / 1000;
    }
}
