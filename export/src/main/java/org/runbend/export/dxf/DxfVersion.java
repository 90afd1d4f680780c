package org.runbend.export.dxf;

/** The forms of DXF that can be written. */
public enum DxfVersion {
    /**
     * AC1009, for old controllers: no markers and owners, polylines as chains of vertices, dimensions as lines and text,
     * paragraphs as single lines, letters beyond ASCII by their nearest ones; no hatch, no paper space, no unit.
     */
    R12("AC1009", false),
    /** AC1015 with every table, handle and owner: the one form that every reader tried took. */
    R2000("AC1015", true);

    private final String code;
    private final boolean markers;

    DxfVersion(String code, boolean markers) {
        this.code = code;
        this.markers = markers;
    }

    /** What the file says of itself. */
    String code() {
        return code;
    }

    /** Whether entities carry subclass markers and owners. */
    boolean hasMarkers() {
        return markers;
    }
}
