package org.runbend.optimizer.heat.coolant;

/** P(T, x) = sum of c_ij (T - Tb)^i (x - xb)^j; temperatures in K, x by mass; the viscosity as the logarithm of mPa s. */
final class MelinderPolynomial {
    /** Aqueous ethylene glycol: Melinder 2010, Properties of Secondary Working Fluids (IIR), as CoolProp keeps it (MEG). */
    static final MelinderPolynomial ETHYLENE = new MelinderPolynomial(
            304.878,
            0.308462,
            new double[][] {
                {1034, 131.1, .749, -106.2, -96.23, 489.1},
                {-.4781, -.6876, .7855, 1.229, -7.211},
                {-2.692e-3, 4.805e-3, -3.995e-3, -1.153e-2},
                {4.725e-6, 1.69e-6, 4.982e-5}
            },
            new double[][] {
                {3737, -1799, -993.3, 2610, 1537, -16180},
                {2.93, 10.46, 3.516, -1.189, -42.72},
                {-4.675e-3, -4.147e-2, 5.109e-2, -.1643},
                {-1.389e-5, 1.847e-5, -7.138e-4}
            },
            new double[][] {
                {.472, -.4286, .1747, .03017, -.1322, .2678},
                {8.903e-4, -1.473e-3, 6.814e-4, -2.412e-3, 2.555e-3},
                {-1.058e-6, 1.059e-5, -3.612e-5, 4.004e-5},
                {-2.789e-9, -1.142e-8, 2.365e-8}
            },
            new double[][] {
                {.4705, 2.471, .03328, 1.659, 3.089, -18.65},
                {-2.55e-2, -1.171e-2, 1.086e-2, 3.157e-3, 1.831e-2},
                {1.782e-4, 1.052e-4, 1.051e-4, 4.063e-4},
                {-7.669e-7, -1.634e-6, -6.475e-6}
            },
            new double[] {257.9, -80.8, -133.4, -72.93, 100.6, 11.4});

    /** Aqueous propylene glycol: the same source (MPG). */
    static final MelinderPolynomial PROPYLENE = new MelinderPolynomial(
            305.8583,
            0.307031,
            new double[][] {
                {1018, 76.04, -24.98, -155, -113.1, 234.2},
                {-.5406, -.945, .27, 2.829, -2.221},
                {-2.666e-3, 5.541e-3, -4.018e-3, -7.175e-3},
                {1.347e-5, -1.343e-5, 3.376e-5}
            },
            new double[][] {
                {3882, -1304, -1598, 353.9, 5000, -4959},
                {2.699, 5.07, .9534, 31.02, -71.35},
                {-1.659e-3, -4.752e-3, .1167, -.295},
                {-1.032e-5, 1.522e-4, -4.87e-4}
            },
            new double[][] {
                {.4513, -.4795, .2076, -.09083, -.05952, .2104},
                {7.955e-4, -1.678e-3, 1.563e-3, -2.518e-3, -3.605e-3},
                {3.482e-8, 8.941e-6, -4.615e-5, 6.543e-5},
                {-5.966e-9, 1.493e-8, 9.897e-8}
            },
            new double[][] {
                {.6837, 3.328, .5453, -3.9, -1.587, 35.64},
                {-3.045e-2, -3.984e-2, -8.6e-4, .1054, 4.475e-2},
                {2.525e-4, 4.332e-4, -1.593e-4, -1.589e-3},
                {-1.399e-6, -1.86e-6, -4.465e-7}
            },
            new double[] {259.9, -66.31, -109.4, -228.3, -340.9, 146.5});

    private static final double ZERO = 273.15;

    private final double baseTemperature;
    private final double baseShare;
    private final double[][] density;
    private final double[][] heatCapacity;
    private final double[][] conductivity;
    private final double[][] logViscosity;
    /** K, over the share alone. */
    private final double[] freezing;

    private MelinderPolynomial(
            double baseTemperature,
            double baseShare,
            double[][] density,
            double[][] heatCapacity,
            double[][] conductivity,
            double[][] logViscosity,
            double[] freezing) {
        this.baseTemperature = baseTemperature;
        this.baseShare = baseShare;
        this.density = density;
        this.heatCapacity = heatCapacity;
        this.conductivity = conductivity;
        this.logViscosity = logViscosity;
        this.freezing = freezing;
    }

    CoolantProperties at(double celsius, double share) {
        double t = celsius + ZERO - baseTemperature;
        double x = share - baseShare;
        return new CoolantProperties(
                sum(density, t, x),
                sum(heatCapacity, t, x),
                sum(conductivity, t, x),
                Math.exp(sum(logViscosity, t, x)) / 1000);
    }

    double freezesAt(double share) {
        return horner(freezing, share - baseShare) - ZERO;
    }

    private static double sum(double[][] c, double t, double x) {
        double sum = 0;
        for (int i = c.length - 1; i >= 0; i--) {
            sum = sum * t + horner(c[i], x);
        }
        return sum;
    }

    private static double horner(double[] c, double x) {
        double sum = 0;
        for (int j = c.length - 1; j >= 0; j--) {
            sum = sum * x + c[j];
        }
        return sum;
    }
}
