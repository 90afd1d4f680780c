package org.runbend.optimizer.bare;

import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.job.Point;

/**
 * A part of the heated floor that no loop serves, before anything was tried.
 *
 * @param reason why
 * @param places number of places, or its area over that of a place
 * @param spots number of separate spots
 * @param at a point on it
 * @param zone the region, mm
 * @param cause why, in words
 * @param known a remedy that needs no trial on the lattice
 */
record Part(Reason reason, int places, int spots, Point at, Geometry zone, String cause, List<Remedy> known) {
    /** Largest first. */
    static final Comparator<Part> LARGEST = Comparator.comparingInt((Part p) -> -p.places)
            .thenComparing(Part::reason)
            .thenComparingDouble(p -> p.at.x())
            .thenComparingDouble(p -> p.at.y());

    Part {
        known = List.copyOf(known);
    }

    /** Both as one, said to be where this one is. */
    Part with(Part other) {
        return new Part(
                reason,
                places + other.places,
                spots + other.spots,
                at,
                OverlayNGRobust.overlay(zone, other.zone, OverlayNG.UNION),
                reason == Reason.JOINED_BY_ONE ? UnreachedParts.JOINED : cause,
                known);
    }
}
