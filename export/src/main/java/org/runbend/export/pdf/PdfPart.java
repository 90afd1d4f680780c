package org.runbend.export.pdf;

import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;

/** A part of a document's logical structure. Whatever is drawn while it is entered belongs to it. */
public final class PdfPart {
    private final PDStructureElement element;

    PdfPart(PDStructureElement element) {
        this.element = element;
    }

    PDStructureElement element() {
        return element;
    }

    /** A part within this one. */
    PdfPart part(PdfRole role) {
        PDStructureElement inner = new PDStructureElement(role.type(), element);
        element.appendKid(inner);
        return new PdfPart(inner);
    }

    /** What a drawing shows, in words, for whoever cannot see it. */
    PdfPart describe(String words) {
        element.setAlternateDescription(words);
        return this;
    }
}
