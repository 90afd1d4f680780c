/** The plan as data: everything that leaves the house stands here, and nothing here decides. */
package org.runbend.optimizer.plan;
