/** A day's cuts of many orders, nested together from one shelf and what must be bought; lengths in hundredths of mm. */
package org.runbend.optimizer.day;
