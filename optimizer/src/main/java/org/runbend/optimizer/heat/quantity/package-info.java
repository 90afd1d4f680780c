/** Numbers that a person gave, held against what they can be. */
package org.runbend.optimizer.heat.quantity;
