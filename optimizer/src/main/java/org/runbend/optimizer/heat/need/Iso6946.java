package org.runbend.optimizer.heat.need;

import java.util.List;

/**
 * Thermal transmittance by EN ISO 6946 (constants from memory): inner resistance 0.10, 0.13, 0.17 m2 K/W up, sideways, down; outer
 * 0.04; several sections as the mean of the upper and the lower limit. Metal through insulation is outside its scope (EN ISO 10211).
 */
public final class Iso6946 {
    /** Outer resistance in still weather, m2 K/W. */
    public static final double OUTER = 0.04;

    private static final double UP = 0.10;
    private static final double SIDEWAYS = 0.13;
    private static final double DOWN = 0.17;

    private static final double METAL = 10;

    /** Resistance inside, m2 K/W. */
    public static double inner(BuildUp.HeatFlow flow) {
        return flow == BuildUp.HeatFlow.UP ? UP : flow == BuildUp.HeatFlow.DOWN ? DOWN : SIDEWAYS;
    }

    /** Transmittance, W/(m2 K). */
    public double transmittance(BuildUp buildUp) {
        double ends = inner(buildUp.flow()) + buildUp.outer();
        double parallel = 0;
        for (BuildUp.Section s : buildUp.sections()) {
            parallel += s.share()
                    / (ends
                            + s.layers().stream()
                                    .mapToDouble(BuildUpLayer::resistance)
                                    .sum());
        }
        double lower = ends;
        for (int i = 0; i < buildUp.sections().get(0).layers().size(); i++) {
            lower += sideBySide(buildUp.sections(), i);
        }
        return 2 / (1 / parallel + lower);
    }

    /** Whether metal goes through insulation somewhere, where the standard does not hold and says too little. */
    public boolean isBridged(BuildUp buildUp) {
        for (int i = 0; i < buildUp.sections().get(0).layers().size(); i++) {
            int layer = i;
            boolean metal = buildUp.sections().stream()
                    .anyMatch(s -> s.layers().get(layer).conductivity() > METAL);
            boolean other = buildUp.sections().stream()
                    .anyMatch(s -> s.layers().get(layer).conductivity() < 1);
            if (metal && other) {
                return true;
            }
        }
        return false;
    }

    private static double sideBySide(List<BuildUp.Section> sections, int layer) {
        double sum = 0;
        for (BuildUp.Section s : sections) {
            double resistance = s.layers().get(layer).resistance();
            if (resistance == 0) {
                return 0;
            }
            sum += s.share() / resistance;
        }
        return 1 / sum;
    }
}
