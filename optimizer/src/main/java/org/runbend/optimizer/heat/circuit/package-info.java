/** The floor in its circuit over time: warm-up, heater, cylinder, diverter valve and floor sensor. */
package org.runbend.optimizer.heat.circuit;
