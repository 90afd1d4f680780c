/** The drawing model: what is on a sheet, in mm with y up. It knows no file format and no pipe. */
package org.runbend.export.drawing;
