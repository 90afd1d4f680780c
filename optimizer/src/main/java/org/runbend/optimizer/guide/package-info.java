/** The guide for routing channels by hand: one plate whose slots lead the bush of a router. */
package org.runbend.optimizer.guide;
