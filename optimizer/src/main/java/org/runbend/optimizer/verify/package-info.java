/**
 * Every verifier: each holds an answer against its problem from records and plain geometry alone. The room may use no class
 * of what it checks but the records of problem and answer, so a fault of a solver cannot hide in its verifier.
 */
package org.runbend.optimizer.verify;
