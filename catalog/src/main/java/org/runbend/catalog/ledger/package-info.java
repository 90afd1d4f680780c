/**
 * The stock ledger: what is on the shelf, for whom it is kept, and every movement that made it so. Lengths are whole hundredths
 * of a millimetre, everything else is counted. What is on the shelf is the sum of all movements; a movement is never changed.
 */
package org.runbend.catalog.ledger;
