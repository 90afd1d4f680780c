/**
 * Writes PDF: sheets to scale, text, tables. PDFBox types stay inside; a page is measured in mm from its lower left
 * corner, letters in points.
 */
package org.runbend.export.pdf;
