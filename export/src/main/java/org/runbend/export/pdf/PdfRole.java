package org.runbend.export.pdf;

/** What a part of a document is: the standard structure types of ISO 32000-1, 14.8.4. */
public enum PdfRole {
    /** A part with a heading. */
    SECTION("Sect"),
    /** The name of the paper. */
    TITLE("H1"),
    /** A heading. */
    HEADING("H2"),
    /** Running text. */
    PARAGRAPH("P"),
    /** A list. */
    LIST("L"),
    /** An item of a list. */
    ITEM("LI"),
    /** The mark of an item. */
    MARK("Lbl"),
    /** The words of an item. */
    WORDS("LBody"),
    /** A table. */
    TABLE("Table"),
    /** A row of a table. */
    ROW("TR"),
    /** A cell of its head. */
    HEAD_CELL("TH"),
    /** Any other cell. */
    CELL("TD"),
    /** A drawing. */
    FIGURE("Figure");

    private final String type;

    PdfRole(String type) {
        this.type = type;
    }

    String type() {
        return type;
    }
}
