/** The loop in order of flow as straight runs and bends, with exact lengths. Knows no lattice and no plate. */
package org.runbend.optimizer.breakdown;
