package org.runbend.export.papers;

import org.runbend.export.pdf.PdfFlow;

/** Numbered headings, steps to tick and cautions of a paper that is worked through from top to bottom. */
final class Steps {
    private static final double INDENT = 6;
    private static final String TICK = "\u2610";

    private final PdfFlow flow;
    private int part;

    Steps(PdfFlow flow) {
        this.flow = flow;
    }

    PdfFlow flow() {
        return flow;
    }

    /** A part of the work. */
    Steps part(String name) {
        part++;
        flow.heading(part + "  " + name);
        return this;
    }

    /** Something to do, ticked when it is done. */
    Steps step(String text) {
        flow.item(TICK, INDENT, text);
        return this;
    }

    /** A caution before the step that it belongs to. */
    Steps caution(String text) {
        flow.caution(text);
        return this;
    }

    /** What explains. */
    Steps words(String text) {
        flow.lead(text);
        return this;
    }
}
