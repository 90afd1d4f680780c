package org.runbend.optimizer.job.read;

/** Units that a drawing's numbers may be said to be in. */
public enum DrawingUnits {
    /** Millimetre. */
    MM(1),
    /** Centimetre. */
    CM(10),
    /** Decimetre. */
    DM(100),
    /** Metre. */
    M(1000),
    /** Inch. */
    IN(25.4),
    /** Foot. */
    FT(304.8),
    /** Yard. */
    YD(914.4);

    private final double mm;

    DrawingUnits(double mm) {
        this.mm = mm;
    }

    /** Millimetres in one unit. */
    public double mm() {
        return mm;
    }
}
