package org.runbend.optimizer.heat.coolant;

import org.runbend.catalog.product.Coolant;

/** Where first crystals form: Melinder 2010 (IIR). */
public final class FreezingPoint {
    /** Degrees C; the polynomial misses 0 for water by less than 0.01 K, which is cut off. */
    public double of(Mixture mixture) {
        if (mixture.massShare() == 0) {
            return 0;
        }
        MelinderPolynomial p = mixture.base() == Coolant.Base.PROPYLENE_GLYCOL
                ? MelinderPolynomial.PROPYLENE
                : MelinderPolynomial.ETHYLENE;
        return Math.min(0, p.freezesAt(mixture.massShare()));
    }
}
