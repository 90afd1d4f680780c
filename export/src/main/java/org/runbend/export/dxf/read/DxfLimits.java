package org.runbend.export.dxf.read;

/**
 * What a drawing may cost.
 *
 * @param bytes size of the file
 * @param copies entities, vertices and chords that inserting blocks and splitting curves may add
 * @param depth blocks in blocks
 */
public record DxfLimits(int bytes, int copies, int depth) {
    /** Every limit is over 0. */
    public DxfLimits {
        if (bytes <= 0 || copies <= 0 || depth <= 0) {
            throw new IllegalArgumentException(
                    "limits (" + bytes + " bytes, " + copies + " copies, depth " + depth + ") must be over 0");
        }
    }

    /** Far over any floor, and within 1 GiB of memory: 200 MB, two million copies, 32 deep. */
    public static DxfLimits standard() {
        return new DxfLimits(200_000_000, 2_000_000, 32);
    }
}
