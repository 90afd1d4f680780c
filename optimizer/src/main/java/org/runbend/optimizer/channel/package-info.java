/** The groove that the pipe lies in: its width, depth and finished edge, as a cutter leaves it. */
package org.runbend.optimizer.channel;
