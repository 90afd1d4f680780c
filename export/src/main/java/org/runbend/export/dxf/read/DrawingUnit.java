package org.runbend.export.dxf.read;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Units of length a drawing may be in, with their number in the header variable $INSUNITS (DXF reference). */
public enum DrawingUnit {
    /** Inch. */
    IN(1, 25.4),
    /** Foot. */
    FT(2, 304.8),
    /** Mile. */
    MI(3, 1_609_344),
    /** Millimetre. */
    MM(4, 1),
    /** Centimetre. */
    CM(5, 10),
    /** Metre. */
    M(6, 1000),
    /** Kilometre. */
    KM(7, 1e6),
    /** Microinch. */
    MICROINCH(8, 25.4e-6),
    /** Thousandth of an inch. */
    MIL(9, 25.4e-3),
    /** Yard. */
    YD(10, 914.4),
    /** Angstrom. */
    ANGSTROM(11, 1e-7),
    /** Nanometre. */
    NM(12, 1e-6),
    /** Micrometre. */
    MICRON(13, 1e-3),
    /** Decimetre. */
    DM(14, 100),
    /** Decametre. */
    DAM(15, 1e4),
    /** Hectometre. */
    HM(16, 1e5),
    /** Gigametre. */
    GM(17, 1e12),
    /** Astronomical unit. */
    AU(18, 1.495978707e14),
    /** Light year. */
    LIGHT_YEAR(19, 9.4607304725808e18),
    /** Parsec. */
    PARSEC(20, 3.085677581491367E+19),
    /** Foot of the survey of the United States, 1200/3937 m. */
    US_FT(21, 1200_000.0 / 3937),
    /** Inch of that foot. */
    US_IN(22, 100_000.0 / 3937),
    /** Yard of that foot. */
    US_YD(23, 3_600_000.0 / 3937),
    /** Mile of that foot. */
    US_MI(24, 6_336_000_000.0 / 3937);

    private final int code;
    private final double mm;

    DrawingUnit(int code, double mm) {
        this.code = code;
        this.mm = mm;
    }

    /** Millimetres in one unit. */
    public double mm() {
        return mm;
    }

    /** What a person types for it. */
    public String symbol() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The unit of a header, empty for 0 (none) and numbers that are unknown. */
    static Optional<DrawingUnit> ofCode(int code) {
        return Arrays.stream(values()).filter(u -> u.code == code).findFirst();
    }
}
