/** Divides a lattice into parts, one for each of several loops: graphs only, no floor. */
package org.runbend.optimizer.division;
