/** How a job file is read: each key to its record, each fault to one line with its place. */
package org.runbend.optimizer.job.read;
