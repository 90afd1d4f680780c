package org.runbend.export.dxf;

/** A vertex of a polyline: place in mm, bulge of the way to the next one (tangent of a quarter of the sweep). */
public record DxfVertex(double x, double y, double bulge) {}
