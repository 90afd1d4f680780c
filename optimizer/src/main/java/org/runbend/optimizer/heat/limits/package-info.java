/** What must not get too hot, too cold or into drinking water, each limit with its source. */
package org.runbend.optimizer.heat.limits;
