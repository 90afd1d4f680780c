package org.runbend.catalog.source;

/** The unit of lengths that are written without one. */
public enum Unit {
    /** Millimetre. */
    MM("mm"),
    /** Inch, 25.4 mm exactly (international yard and pound agreement of 1959). */
    IN("inches");

    private final String plural;

    Unit(String plural) {
        this.plural = plural;
    }

    /** The word that messages use. */
    public String plural() {
        return plural;
    }
}
