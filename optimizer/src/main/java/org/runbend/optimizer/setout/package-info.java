/** Marks a floor out: two lines to measure from, where each run and bend lies from them, and how far a run may be out. */
package org.runbend.optimizer.setout;
