package org.runbend.optimizer.heat.need;

import java.util.List;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * How a space loses heat, without the heated floor itself.
 *
 * @param surfaces walls, roof, windows, unheated floor
 * @param volume of air, m3
 * @param airChanges each hour
 * @param bridges linear and point losses, W/K
 */
public record SpaceLoss(List<Surface> surfaces, double volume, double airChanges, double bridges) {
    /** Heat that a cubic metre of air holds, Wh/(m3 K) at 20 degrees C. */
    private static final double AIR = 0.34;

    /**
     * A part of the shell.
     *
     * @param name for a paper
     * @param area m2
     * @param transmittance W/(m2 K)
     * @param bridged whether metal goes through its insulation, so that the transmittance says too little
     */
    public record Surface(String name, double area, double transmittance, boolean bridged) {
        /** A surface whose transmittance is known. */
        public Surface(String name, double area, double transmittance) {
            this(name, area, transmittance, false);
        }

        /** Checks ranges. */
        public Surface {
            Within.range("area of " + name, area, 0, 10_000, "m2");
            Within.range("transmittance of " + name, transmittance, 0, 100, "W/(m2 K)");
        }
    }

    /** Checks ranges. */
    public SpaceLoss {
        surfaces = List.copyOf(surfaces);
        Within.range("volume of the space", volume, 0, 10_000, "m3");
        Within.range("air changes", airChanges, 0, 100, "1/h");
        Within.range("loss of bridges", bridges, 0, 10_000, "W/K");
    }

    /** A space of which one figure is known, W/K. */
    public static SpaceLoss plain(double loss) {
        return new SpaceLoss(List.of(), 0, 0, loss);
    }

    /** Loss for each degree, W/K. */
    public double perKelvin() {
        return surfaces.stream().mapToDouble(s -> s.area() * s.transmittance()).sum()
                + AIR * airChanges * volume
                + bridges;
    }
}
