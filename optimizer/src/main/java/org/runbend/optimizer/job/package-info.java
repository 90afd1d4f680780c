/** The job: what the customer asked for. */
package org.runbend.optimizer.job;
