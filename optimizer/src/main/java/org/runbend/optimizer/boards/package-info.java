/** The boards a floor is made of: where they meet, what is cut into them, and which stock boards they come from. */
package org.runbend.optimizer.boards;
