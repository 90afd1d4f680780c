/** Spreader plates on the straight runs: which stretches can take them, which pieces lie where, what is cut from what. */
package org.runbend.optimizer.plates;
