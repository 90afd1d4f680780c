/** What was cut and routed before a floor changed. */
package org.runbend.optimizer.change;
