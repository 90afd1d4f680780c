/** The solver's native libraries: unpacked once for each user, loaded once for each process. Knows no problem. */
package org.runbend.optimizer.natives;
