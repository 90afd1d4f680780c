/**
 * Cutting in one dimension, what is asked and what came of it: lengths, costs and counts; it knows no pipe and no plate.
 *
 * <p>All lengths are whole hundredths of a millimetre, all costs whole minor units of one currency.
 */
package org.runbend.optimizer.cutting;
