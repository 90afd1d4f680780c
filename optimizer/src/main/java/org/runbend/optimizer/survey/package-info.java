/** Makes a floor of measured sides and diagonals by least squares, and finds the measurement that does not fit. Knows no file. */
package org.runbend.optimizer.survey;
