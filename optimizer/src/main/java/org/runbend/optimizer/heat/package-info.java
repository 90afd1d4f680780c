/** Will it heat, and can the pump push it: puts the published methods of the packages below together for one floor. */
package org.runbend.optimizer.heat;
