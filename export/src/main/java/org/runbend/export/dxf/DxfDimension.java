package org.runbend.export.dxf;

/**
 * A linear dimension: measured points 1 and 2, a point of the dimension line, the middle of the text, direction in degrees,
 * height of the digits in mm and the text. {@code textMoved}: the text does not stand where the program would put it.
 */
public record DxfDimension(
        double x1,
        double y1,
        double x2,
        double y2,
        double lineX,
        double lineY,
        double textX,
        double textY,
        double angle,
        double height,
        String text,
        boolean textMoved) {}
