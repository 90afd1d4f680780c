package org.runbend.optimizer.heat.output;

/**
 * Output by the standard's product of powers.
 *
 * @param up q over the logarithmic mean excess, W/(m2 K)
 * @param valid whether each input lies in the range of the tables
 * @param extrapolated whether the plates conduct better than the tables reach (KWL over 0.4)
 * @param aT spacing factor
 * @param mT its power
 * @param aU cover factor
 * @param aWL plate factor
 * @param aB covering factor
 * @param bU share of the cover that counts as plate
 * @param kwl characteristic of the plates
 */
public record TypeBSolution(
        double up,
        boolean valid,
        boolean extrapolated,
        double aT,
        double mT,
        double aU,
        double aWL,
        double aB,
        double bU,
        double kwl) {}
