/** What a floor gives for each degree of its coolant: plates, grooves, bends, bare floor, and the standard's method beside it. */
package org.runbend.optimizer.heat.output;
