package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * What a kind of floor does with the heat of its coolant, as three conductances between coolant, room and outside, and how uneven
 * its surface is. Up: q = up (coolant - room) + exchange (outside - room). Down: q = down (coolant - outside) + exchange
 * (room - outside).
 *
 * @param up W/(m2 K)
 * @param down W/(m2 K)
 * @param exchange W/(m2 K)
 * @param peak hottest excess of the surface over the room, against the mean one
 * @param least coldest excess of the surface over the room, against the mean one
 * @param plane mean excess of the plane of the plates, against the coolant's, room and outside alike
 */
public record StripOutput(double up, double down, double exchange, double peak, double least, double plane) {
    /** Floor that gets nothing. */
    static StripOutput cold(double up, double down) {
        return new StripOutput(0, 0, up * down / (up + down), 1, 1, 0);
    }

    /** Checks that each is a number of its range. */
    public StripOutput {
        Within.range("conductance up", up, 0, 1e4, "W/(m2 K)");
        Within.range("conductance down", down, 0, 1e4, "W/(m2 K)");
        Within.range("conductance through the floor", exchange, 0, 1e4, "W/(m2 K)");
        Within.range("peak over mean", peak, 1, 1e6, "");
        Within.range("least over mean", least, 0, 1, "");
        Within.range("excess of the plane", plane, 0, 1, "");
    }

    /** Flux into the room, W/m2, negative where the floor cools it. All in degrees C. */
    public double upward(double coolant, double room, double outside) {
        return up * (coolant - room) + exchange * (outside - room);
    }

    /** Flux to the outside, W/m2. All in degrees C. */
    public double downward(double coolant, double room, double outside) {
        return down * (coolant - outside) + exchange * (room - outside);
    }

    /** What this strip takes from its coolant, W/(m2 K). */
    public double total() {
        return up + down;
    }

    /** From the coolant to the plane of the plates, m2 K/W; infinite where no pipe is. */
    public double toPlane() {
        return total() == 0 ? Double.POSITIVE_INFINITY : (1 - plane) / total();
    }
}
