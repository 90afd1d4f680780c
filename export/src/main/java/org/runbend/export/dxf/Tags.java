package org.runbend.export.dxf;

import java.util.Locale;
import org.runbend.export.drawing.Decimals;

/** Pairs of group code and value, one line each. All numbers go through here, so equal numbers are equal text. */
final class Tags {
    /** Decimals of a coordinate: a nanometre, far below every joining tolerance. */
    static final int COORDINATE_DIGITS = 6;

    /** Decimals of a bulge or an angle: six would already move an arc of r = 3000 mm by 0.003 mm. */
    static final int SHAPE_DIGITS = 12;

    private final StringBuilder out = new StringBuilder();
    private final DxfVersion version;

    Tags(DxfVersion version) {
        this.version = version;
    }

    /** A subclass marker, where the version has them. */
    Tags marker(String subclass) {
        return version.hasMarkers() ? put(100, subclass) : this;
    }

    /** The handle of the owner, where the version has owners. */
    Tags owner(long handle) {
        return version.hasMarkers() ? handle(330, handle) : this;
    }

    /** A tag that came later than R12. */
    Tags since2000(int code, String value) {
        return version.hasMarkers() ? put(code, value) : this;
    }

    Tags put(int code, String value) {
        out.append(code).append('\n').append(value).append('\n');
        return this;
    }

    Tags put(int code, long value) {
        return put(code, Long.toString(value));
    }

    Tags handle(int code, long handle) {
        return put(code, hex(handle));
    }

    Tags coordinate(int code, double value) {
        return put(code, coordinate(value));
    }

    Tags shape(int code, double value) {
        return put(code, withPoint(Decimals.of(value, SHAPE_DIGITS)));
    }

    /** x, y and, as z, zero under {@code code}, {@code code + 10} and {@code code + 20}. */
    Tags point(int code, double x, double y) {
        return coordinate(code, x).coordinate(code + 10, y).coordinate(code + 20, 0);
    }

    Tags add(Tags other) {
        out.append(other.out);
        return this;
    }

    @Override
    public String toString() {
        return out.toString();
    }

    static String hex(long handle) {
        return Long.toHexString(handle).toUpperCase(Locale.ROOT);
    }

    static String coordinate(double value) {
        return withPoint(Decimals.of(value, COORDINATE_DIGITS));
    }

    private static String withPoint(String number) {
        return number.indexOf('.') < 0 ? number + ".0" : number;
    }
}
