package org.runbend.optimizer.job;

/**
 * What no pipe may touch.
 *
 * @param name what a person calls it
 * @param kind what it is
 * @param bare its region without clearance
 * @param clearance distance that the pipe's centreline keeps from the bare region, mm
 */
public record KeepOut(String name, Kind kind, Shape bare, double clearance) {
    /** Kinds of keep-outs. */
    public enum Kind {
        /** Air vent. */
        VENT,
        /** Drain. */
        DRAIN,
        /** Bolt. */
        BOLT,
        /** Anchor point. */
        ANCHOR,
        /** Pillar. */
        PILLAR,
        /** Hatch. */
        HATCH,
        /** Anything else. */
        OTHER
    }
}
