package org.runbend.optimizer.heat.limits;

import java.util.Optional;
import org.runbend.optimizer.heat.coolant.FreezingPoint;
import org.runbend.optimizer.heat.coolant.Mixture;

/** Holds a coolant's freezing point against the coldest that it will stand. */
public final class FrostProtection {
    private static final String SOURCE = "freezing point by Melinder 2010 (IIR)";

    /** The finding; where the coldest is not known it warns, with the outside temperature in its place. */
    public Finding judge(Mixture mixture, Optional<Double> coldest, double outside) {
        double freezes = new FreezingPoint().of(mixture);
        if (coldest.isEmpty()) {
            return new Finding(
                    "freezing point of the coolant, with no coldest temperature given",
                    freezes,
                    Finding.Side.AT_MOST,
                    outside,
                    "degrees C",
                    Finding.Verdict.WARN,
                    SOURCE + "; give heating.coldest");
        }
        return Finding.atMost(
                "freezing point of the coolant at most the coldest temperature",
                freezes,
                coldest.get(),
                "degrees C",
                Finding.Verdict.FAIL,
                SOURCE);
    }
}
