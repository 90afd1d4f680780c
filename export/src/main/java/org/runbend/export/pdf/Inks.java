package org.runbend.export.pdf;

import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;

/** Colours of PDF from 0xRRGGBB. */
final class Inks {
    private Inks() {}

    static PDColor colour(int rgb) {
        float[] parts = {((rgb >> 16) & 255) / 255f, ((rgb >> 8) & 255) / 255f, (rgb & 255) / 255f};
        return new PDColor(parts, PDDeviceRGB.INSTANCE);
    }
}
