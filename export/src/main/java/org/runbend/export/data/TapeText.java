package org.runbend.export.data;

import org.runbend.catalog.source.Unit;
import org.runbend.export.drawing.Decimals;
import org.runbend.optimizer.job.Job;

/** Lengths as a person reads them off a tape: whole millimetres, or inches and sixteenths for a job in inches. */
public final class TapeText {
    private static final double INCH = 25.4;
    private static final int SIXTEENTHS = 16;
    private static final int LONGEST_NAME = 26;
    private static final int MOST_NAMES = 12;

    private final Unit unit;

    /** Lengths in the unit of the job. */
    public TapeText(Job job) {
        this.unit = job.written().unit();
    }

    /** The length, such as 2700 or 106 5/16". */
    public String of(double mm) {
        return unit == Unit.MM ? Decimals.of(mm, 0) : inches(mm);
    }

    /** The length in both units where the tape is in inches. */
    public String full(double mm) {
        return unit == Unit.MM ? of(mm) : of(mm) + " (" + Decimals.of(mm, 0) + ")";
    }

    /** What the lengths are written in. */
    public String unitWords() {
        return unit == Unit.MM ? "mm" : "inches; mm in brackets";
    }

    private static String inches(double mm) {
        long parts = Math.round(Math.abs(mm) / INCH * SIXTEENTHS);
        long whole = parts / SIXTEENTHS;
        long rest = parts % SIXTEENTHS;
        long under = SIXTEENTHS;
        while (rest > 0 && rest % 2 == 0) {
            rest /= 2;
            under /= 2;
        }
        String fraction = rest == 0 ? "" : rest + "/" + under;
        String number = whole == 0 && rest > 0 ? fraction : (whole + " " + fraction).strip();
        return (mm < 0 && parts > 0 ? "-" : "") + number + "\"";
    }

    /** What a keep-out is called on a drawing with too many for names; empty if there are few. */
    public static String number(Job job, int keepOut) {
        return job.floor().keepOuts().size() > MOST_NAMES ? Integer.toString(keepOut + 1) : "";
    }

    /** A name that has room on a drawing: one line, shortened if it is long. */
    public static String shortName(String name) {
        String line = name.strip().replaceAll("[\\s\\p{Cntrl}]+", " ");
        boolean fits = line.codePointCount(0, line.length()) <= LONGEST_NAME;
        return fits
                ? line
                : line.substring(0, line.offsetByCodePoints(0, LONGEST_NAME - 1))
                                .strip() + "\u2026";
    }

    /** A side or a diagonal, by its corners. */
    public static String between(String from, String to) {
        return shortName(from) + "\u2013" + shortName(to);
    }
}
