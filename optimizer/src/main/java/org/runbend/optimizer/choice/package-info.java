/** The choice that a fitter has: good plans of one floor, none dominated by another. */
package org.runbend.optimizer.choice;
