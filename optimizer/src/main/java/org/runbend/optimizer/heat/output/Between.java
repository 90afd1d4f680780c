package org.runbend.optimizer.heat.output;

/** Straight lines between the entries of a table; the value of the nearest end outside. */
final class Between {
    private Between() {}

    static double line(double[] keys, double[] values, double key) {
        if (key <= keys[0]) {
            return values[0];
        }
        for (int i = 1; i < keys.length; i++) {
            if (key <= keys[i]) {
                double share = (key - keys[i - 1]) / (keys[i] - keys[i - 1]);
                return values[i - 1] + share * (values[i] - values[i - 1]);
            }
        }
        return values[values.length - 1];
    }
}
