/**
 * The one-dimensional cutting engine: lengths, costs and counts; it knows no pipe and no plate.
 *
 * <p>All lengths are whole hundredths of a millimetre, all costs whole minor units of one currency.
 */
package org.runbend.optimizer.cutting;
