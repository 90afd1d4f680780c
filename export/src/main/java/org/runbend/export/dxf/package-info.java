/** Writes DXF (R2000, ASCII, mm). {@link org.runbend.export.dxf.DxfDocument} knows no floor and can be used by itself. */
package org.runbend.export.dxf;
