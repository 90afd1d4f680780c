package org.runbend.optimizer.heat.output;

import java.util.List;

/**
 * What a floor gives.
 *
 * @param upward into the room, W
 * @param downward to the outside, W
 * @param zones each zone by itself
 * @param surfaceMean mean of the surface over all zones, degrees C
 * @param surfacePeak hottest of the surface, degrees C
 */
public record FloorOutput(
        double upward, double downward, List<ZoneOutput> zones, double surfaceMean, double surfacePeak) {
    /**
     * What a zone gives.
     *
     * @param zone the zone
     * @param coolant mean of the coolant that warms it, degrees C
     * @param upward W/m2
     * @param downward W/m2
     * @param surfaceMean degrees C
     * @param surfacePeak degrees C
     */
    public record ZoneOutput(
            FloorZone zone, double coolant, double upward, double downward, double surfaceMean, double surfacePeak) {}

    /** Copies the list. */
    public FloorOutput {
        zones = List.copyOf(zones);
    }
}
