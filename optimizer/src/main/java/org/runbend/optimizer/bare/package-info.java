/** Heated floor that stays bare: where, why, and which change of the job would free it. Lays no loop. */
package org.runbend.optimizer.bare;
