/** Rectangles cut from the fewest stock boards of one size: two-dimensional bin packing, with proved bounds. */
package org.runbend.optimizer.boards.nesting;
