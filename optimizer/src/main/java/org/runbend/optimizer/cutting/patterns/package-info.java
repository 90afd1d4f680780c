/** Pieces of given lengths from stock at least cost: patterns by column generation, then integer programs and branching. */
package org.runbend.optimizer.cutting.patterns;
