/** Packs a kit: in which order parts are taken from the shelves, and into which cartons they go. */
package org.runbend.optimizer.packing;
