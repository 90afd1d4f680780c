package org.runbend.optimizer.heat.coolant;

import org.runbend.catalog.product.Coolant;

/**
 * Density, heat capacity, conductivity and viscosity of water and glycol: Melinder 2010, Properties of Secondary Working
 * Fluids (IIR), polynomials in temperature and mass fraction. Against the ASHRAE data of 2001: density 0.9 %, heat capacity
 * 2 %, conductivity 1.9 %, viscosity 6 % (11 % cold and lean).
 */
public final class Melinder2010 {
    /** The data end at 100 degrees C; engine coolant goes a little beyond, where the value of this end is used. */
    public static final double HOTTEST = 110;

    /** Properties at a temperature; below freezing and above {@link #HOTTEST} those of that end. */
    public CoolantProperties at(Mixture mixture, double celsius) {
        double t = Math.max(new FreezingPoint().of(mixture), Math.min(HOTTEST, celsius));
        MelinderPolynomial p = mixture.base() == Coolant.Base.PROPYLENE_GLYCOL
                ? MelinderPolynomial.PROPYLENE
                : MelinderPolynomial.ETHYLENE;
        return p.at(t, mixture.massShare());
    }
}
