/** What flows in the loop: properties of water and glycol, how much of it, how it freezes, boils and expands. */
package org.runbend.optimizer.heat.coolant;
