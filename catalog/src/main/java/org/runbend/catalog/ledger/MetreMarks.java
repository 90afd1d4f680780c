package org.runbend.catalog.ledger;

/**
 * How far the remaining length of an opened coil can be trusted: it is the difference of two metre marks printed on the pipe.
 * Chosen: 0.5 % of the length, and at least 100 mm for reading the end (common tolerance of printed marks, from memory).
 */
final class MetreMarks {
    private static final long LEAST = 10_000;
    private static final long SHARE = 200;

    private MetreMarks() {}

    /** What a length may be short of, hundredths of mm; offcuts are measured with a tape and certain. */
    static long uncertainty(Kind kind, long length) {
        return kind == Kind.OPENED ? Math.min(length, Math.max(LEAST, (length + SHARE - 1) / SHARE)) : 0;
    }
}
