package org.runbend.export.dxf;

/**
 * A layer: its name (ASCII letters, digits, {@code _ - $}), colour index 1..255, line type by name and line weight in
 * hundredths of a mm (one of the weights CAD programs know).
 */
public record DxfLayer(String name, int colourIndex, String lineType, int lineWeight) {
    /** Checks name and colour. */
    public DxfLayer {
        DxfNames.check(name);
        if (colourIndex < 1 || colourIndex > 255) {
            throw new IllegalArgumentException(
                    "layer " + name + ": colour index (" + colourIndex + ") must be from 1 to 255");
        }
    }
}
