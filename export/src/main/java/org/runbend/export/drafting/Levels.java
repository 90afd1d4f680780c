package org.runbend.export.drafting;

/** Numbers that must not fall from one to the next. */
final class Levels {
    private Levels() {}

    /** The rising numbers nearest to given ones by least squares: neighbours that would fall are pooled at their mean. */
    static double[] rising(double[] own) {
        double[] mean = new double[own.length];
        int[] size = new int[own.length];
        int pools = 0;
        for (double value : own) {
            mean[pools] = value;
            size[pools] = 1;
            pools++;
            while (pools > 1 && mean[pools - 2] > mean[pools - 1]) {
                int both = size[pools - 2] + size[pools - 1];
                mean[pools - 2] = (mean[pools - 2] * size[pools - 2] + mean[pools - 1] * size[pools - 1]) / both;
                size[pools - 2] = both;
                pools--;
            }
        }
        double[] rising = new double[own.length];
        int at = 0;
        for (int p = 0; p < pools; p++) {
            for (int k = 0; k < size[p]; k++) {
                rising[at++] = mean[p];
            }
        }
        return rising;
    }
}
