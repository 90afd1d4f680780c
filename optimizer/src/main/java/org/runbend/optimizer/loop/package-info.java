/**
 * Lays one closed pipe loop on a lattice of nodes: fewest turns and fewest nodes left out. The package sees a graph of
 * nodes and links only; floor, keep-outs and products are translated into it elsewhere.
 */
package org.runbend.optimizer.loop;
