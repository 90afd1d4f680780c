/** Draws sheets as SVG. */
package org.runbend.export.svg;
