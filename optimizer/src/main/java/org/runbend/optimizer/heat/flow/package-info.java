/** What the coolant does in the pipe: friction, bends, fittings, film, pump, and several loops side by side. */
package org.runbend.optimizer.heat.flow;
