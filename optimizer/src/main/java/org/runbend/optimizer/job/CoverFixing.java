package org.runbend.optimizer.job;

/** How the cover is held to what lies under it. */
public enum CoverFixing {
    /** Not at all: it lies loose. */
    FLOAT,
    /** By glue. */
    GLUE,
    /** By screws. */
    SCREW;

    /** Greatest distance between screws where the job says nothing, mm: common practice for floors of panels. */
    public static final double USUAL_APART = 300;
}
