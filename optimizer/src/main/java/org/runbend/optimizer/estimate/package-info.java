/** What a kit may cost before anybody has measured the floor: two sizes, planned in a few sensible variants. */
package org.runbend.optimizer.estimate;
