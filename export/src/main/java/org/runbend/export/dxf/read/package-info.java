/**
 * Reads DXF drawings of others, R9 to 2018, ASCII and binary: flat geometry in drawing units with blocks inserted, true
 * arcs kept, and a word on everything that was left out. It knows no floor; group codes and their meaning are those of
 * the published DXF reference.
 */
package org.runbend.export.dxf.read;
