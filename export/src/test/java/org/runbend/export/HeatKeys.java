package org.runbend.export;

import java.util.List;

/** What heat says in {@code kit.json} and {@code heat.json}, as it was promised to those who read them. */
public final class HeatKeys {
    /** Keys that are single numbers wherever heat is reckoned. */
    public static final List<String> NUMBERS = List.of(
            "upward",
            "upwardLeast",
            "upwardMost",
            "downward",
            "surfaceMean",
            "surfacePeak",
            "supply",
            "return",
            "volumeFlow",
            "velocity",
            "reynolds",
            "pressureDrop",
            "pumpHead",
            "highestSupply",
            "volume",
            "expansion",
            "boiling");

    private HeatKeys() {}
}
