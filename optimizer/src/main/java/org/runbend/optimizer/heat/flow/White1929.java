package org.runbend.optimizer.heat.flow;

/**
 * Darcy friction factor of laminar flow in a curved pipe: White 1929, Streamline flow through curved pipes, Proc. Royal Society A
 * 123: f = (64/Re) / (1 - [1 - (11.6/De)^0.45]^(1/0.45)) for a Dean number De = Re sqrt(d / 2R) over 11.6.
 */
public final class White1929 {
    private static final double LEAST_DEAN = 11.6;
    private static final double POWER = 0.45;

    /**
     * Darcy friction factor along the bend's centreline.
     *
     * @param bore mm
     * @param radius of the centreline, mm
     */
    public double friction(double reynolds, double bore, double radius) {
        double straight = 64 / Math.max(reynolds, 1e-6);
        double dean = reynolds * Math.sqrt(bore / (2 * radius));
        if (dean <= LEAST_DEAN) {
            return straight;
        }
        return straight / (1 - Math.pow(1 - Math.pow(LEAST_DEAN / dean, POWER), 1 / POWER));
    }
}
