/** The job: what the customer sent, read from its file. */
package org.runbend.optimizer.job;
