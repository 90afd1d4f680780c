/** What a person can check on a floor with a tape: sides, diagonals, and where things lie. */
package org.runbend.optimizer.tape;
