package org.runbend.optimizer.heat.output;

/**
 * Tables of EN 1264-2 and ISO 11855-2 for type B, straight between their entries: aT (A.9), bu (A.10), aWL (A.11 to A.15). One public
 * code is the only source at hand; two of its entries break their rows and stand as they are found.
 */
final class En1264TypeBTables {
    private static final double[] COVERS = {0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.10, 0.15, 0.18};
    private static final double[] A_T = {1.103, 1.100, 1.097, 1.094, 1.091, 1.088, 1.082, 1.075, 1.064, 1.059};
    private static final double[] SPACINGS = {0.05, 0.075, 0.10, 0.15, 0.20, 0.225, 0.30, 0.375, 0.45};
    private static final double[] B_U = {1, 1, 1, 0.7, 0.5, 0.43, 0.25, 0.1, 0};
    private static final double[] PIPES = {14, 16, 18, 20, 22};
    private static final double[] PLATES = {0, 0.1, 0.2, 0.3, 0.4};

    /** For each KWL a row for each spacing with a value for each pipe. */
    private static final double[][][] A_WL = {
        {
            {.82, .86, .90, .93, .96},
            {.59, .644, .70, .754, .80},
            {.488, .533, .576, .617, .658},
            {.387, .415, .444, .47, .505},
            {.337, .357, .379, .40, .422},
            {.32, .34, .357, .376, .396},
            {.288, .30, .315, .33, .344},
            {.266, .278, .29, .30, .312},
            {.25, .264, .28, .29, .30}
        },
        {
            {.88, .905, .93, .955, .975},
            {.74, .776, .812, .836, .859},
            {.66, .693, .726, .76, .77},
            {.561, .58, .60, .621, .642},
            {.49, .51, .53, .55, .57},
            {.467, .485, .504, .522, .54},
            {.435, .444, .453, .462, .472},
            {.411, .421, .434, .446, .46},
            {.41, .42, .43, .44, .45}
        },
        {
            {.92, .937, .955, .97, .985},
            {.845, .865, .885, .893, .902},
            {.81, .821, .832, .843, .855},
            {.735, .745, .755, .765, .775},
            {.68, .688, .695, .703, .71},
            {.655, .663, .67, .678, .685},
            {.585, .592, .60, .608, .615},
            {.55, .558, .565, .573, .58},
            {.55, .555, .56, .565, .57}
        },
        {
            {.95, .96, .97, .98, .99},
            {.92, .925, .93, .935, .94},
            {.90, .905, .91, .915, .92},
            {.855, .855, .855, .855, .855},
            {.80, .80, .80, .80, .80},
            {.79, .79, .79, .79, .79},
            {.72, .72, .72, .72, .72},
            {.69, .69, .69, .69, .69},
            {.68, .68, .68, .68, .68}
        },
        {
            {.97, .978, .985, .99, .995},
            {.965, .964, .963, .962, .96},
            {.94, .94, .94, .94, .94},
            {.895, .895, .895, .895, .895},
            {.86, .86, .86, .86, .86},
            {.84, .84, .84, .84, .84},
            {.78, .78, .78, .78, .78},
            {.76, .76, .76, .76, .76},
            {.75, .75, .75, .75, .75}
        }
    };

    private En1264TypeBTables() {}

    /** Spacing factor for a cover's resistance, m2 K/W; that of the nearest end outside the table. */
    static double aT(double cover) {
        return Between.line(COVERS, A_T, cover);
    }

    /** Share of the cover for a spacing in m. */
    static double bU(double spacing) {
        return Between.line(SPACINGS, B_U, spacing);
    }

    /** Plate factor for a spacing in m, a pipe in mm and a KWL of 0 to 0.4. */
    static double aWL(double spacing, double pipe, double kwl) {
        double[] byPlate = new double[PLATES.length];
        for (int k = 0; k < PLATES.length; k++) {
            double[] bySpacing = new double[SPACINGS.length];
            for (int t = 0; t < SPACINGS.length; t++) {
                bySpacing[t] = Between.line(PIPES, A_WL[k][t], pipe);
            }
            byPlate[k] = Between.line(SPACINGS, bySpacing, spacing);
        }
        return Between.line(PLATES, byPlate, kwl);
    }
}
