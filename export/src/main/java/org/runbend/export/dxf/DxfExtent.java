package org.runbend.export.dxf;

/** The box of a drawing, mm. */
record DxfExtent(double minX, double minY, double maxX, double maxY) {}
