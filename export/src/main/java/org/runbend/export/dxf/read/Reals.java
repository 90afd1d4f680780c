package org.runbend.export.dxf.read;

/** Many numbers, millions at times, so kept as they are and not one by one. Nobody changes them once they are in here. */
final class Reals {
    private final double[] values;

    /** Takes the array over. */
    Reals(double... values) {
        this.values = values;
    }

    int size() {
        return values.length;
    }

    double at(int i) {
        return values[i];
    }

    /** The numbers themselves, for reading. */
    double[] values() {
        return values;
    }
}
