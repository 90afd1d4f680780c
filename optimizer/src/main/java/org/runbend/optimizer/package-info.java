/** Room {@code optimizer} of Runbend. */
package org.runbend.optimizer;
