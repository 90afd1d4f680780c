package org.runbend.export.data;

/** What stands on every drawing and paper of a plan that fails a check. */
public final class Stamp {
    /** Nothing may be cut. */
    public static final String DO_NOT_CUT = "DO NOT CUT";

    private Stamp() {}
}
