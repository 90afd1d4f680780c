/** The floor: where pipe may lie, and the lattice of places and links that a loop can use. Knows no loop. */
package org.runbend.optimizer.floor;
