/** The floor's temperature place by place: steady conduction in the plane of the plates over a raster of cells. */
package org.runbend.optimizer.heat.field;
