package org.runbend.optimizer.heat.limits;

/** How hot a floor's surface may be. */
public enum SurfaceLimit {
    /** Floor where people stay. */
    OCCUPIED(29, "EN 1264-2: floor where people stay"),
    /** Bath: 9 K over a room of 24. */
    BATH(33, "EN 1264-2: bath"),
    /** Edge zone that nobody stays on. */
    EDGE(35, "EN 1264-2: edge zone"),
    /** Timber on top. */
    TIMBER(27, "makers of timber floors agree on it; common practice");

    private final double celsius;
    private final String source;

    SurfaceLimit(double celsius, String source) {
        this.celsius = celsius;
        this.source = source;
    }

    /** Degrees C. */
    public double celsius() {
        return celsius;
    }

    /** Where it comes from. */
    public String source() {
        return source;
    }
}
