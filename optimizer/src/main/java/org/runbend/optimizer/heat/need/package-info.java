/** What a room needs: transmittances, loss, the share that the floor covers, and damp under it. */
package org.runbend.optimizer.heat.need;
