/** The graph that loops are laid on: places and links, which of them hang together, the pairs of places at the port. Knows no floor. */
package org.runbend.optimizer.lattice;
