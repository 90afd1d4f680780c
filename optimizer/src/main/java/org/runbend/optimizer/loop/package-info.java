/**
 * One closed pipe loop on a lattice as a problem: fewest turns and fewest places left out; what is asked and what came of it.
 * The package sees a graph of places and links only; floor, keep-outs and products are translated into it elsewhere.
 */
package org.runbend.optimizer.loop;
