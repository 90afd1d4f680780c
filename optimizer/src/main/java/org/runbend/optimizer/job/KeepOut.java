package org.runbend.optimizer.job;

/**
 * What no pipe may touch.
 *
 * @param name what a person calls it
 * @param kind what it is
 * @param bare its region without clearance; a point is a disc
 * @param clearance distance that the pipe's centreline keeps from the bare region, mm, half the groove included
 */
public record KeepOut(String name, Kind kind, Shape bare, double clearance) {
    /** The air that is left between the edge of the groove and the thing, mm. */
    public double air(Groove groove) {
        return clearance - groove.half();
    }

    /** Kinds of keep-outs, each with the air that a groove keeps from it and the size of one given as a point. */
    public enum Kind {
        /** Air vent. */
        VENT(20, 5),
        /** Drain. */
        DRAIN(20, 5),
        /** Bolt with its head and washer. */
        BOLT(10, 15),
        /** Anchor point with its plate. */
        ANCHOR(25, 40),
        /** Pillar. */
        PILLAR(10, 5),
        /** Hatch. */
        HATCH(15, 5),
        /** Anything else. */
        OTHER(10, 5);

        private final double air;
        private final double pointRadius;

        Kind(double air, double pointRadius) {
            this.air = air;
            this.pointRadius = pointRadius;
        }

        /** Air between the edge of the groove and such a thing where the job says nothing, mm: common practice. */
        public double air() {
            return air;
        }

        /** Radius of such a thing of which only the middle is known, mm: common practice. */
        public double pointRadius() {
            return pointRadius;
        }
    }
}
