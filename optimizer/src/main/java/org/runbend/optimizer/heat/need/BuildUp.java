package org.runbend.optimizer.heat.need;

import java.util.List;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A wall, roof, floor or window from inside to outside: one section, or several side by side with the same number of layers.
 *
 * @param flow which way heat goes
 * @param sections sections whose shares add up to 1
 * @param outer resistance to the air outside, m2 K/W
 */
public record BuildUp(HeatFlow flow, List<Section> sections, double outer) {
    /** Which way heat goes through it. */
    public enum HeatFlow {
        /** A roof. */
        UP,
        /** A wall. */
        SIDEWAYS,
        /** A floor. */
        DOWN
    }

    /**
     * A part of the area.
     *
     * @param share of the area, over 0 up to 1
     * @param layers from inside to outside
     */
    public record Section(double share, List<BuildUpLayer> layers) {
        /** Checks the share. */
        public Section {
            layers = List.copyOf(layers);
            Within.range("share of a section", share, 1e-6, 1, "");
        }
    }

    /** Checks that the sections belong together. */
    public BuildUp {
        sections = List.copyOf(sections);
        Within.range("resistance to the air outside", outer, 0, 50, "m2 K/W");
        Within.rule(!sections.isEmpty(), "a build-up needs a section");
        double sum = sections.stream().mapToDouble(Section::share).sum();
        Within.rule(Math.abs(sum - 1) < 1e-6, "shares of a build-up's sections add up to %.4f, not to 1", sum);
        int layers = sections.get(0).layers().size();
        Within.rule(
                sections.stream().allMatch(s -> s.layers().size() == layers),
                "sections of a build-up must have the same number of layers");
    }

    /** Layers over the whole area. */
    public static BuildUp plain(HeatFlow flow, double outer, BuildUpLayer... layers) {
        return new BuildUp(flow, List.of(new Section(1, List.of(layers))), outer);
    }
}
