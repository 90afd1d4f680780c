package org.runbend.export.drafting;

/** What a drawing shows of the groove. */
public enum GrooveForm {
    /** Its finished edge, for programs that clear pockets. */
    EDGE,
    /** The ways of the cutter's middle beside the pipe, for cutters that follow lines. */
    CENTRE,
    /** Nothing. */
    NONE
}
