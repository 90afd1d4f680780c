/** What a solver answers: one type for "found", "none, proved" and "not found in the work allowed". */
package org.runbend.optimizer.answer;
