package org.runbend.export.data;

import java.util.Locale;
import java.util.regex.Pattern;
import org.runbend.catalog.source.Unit;
import org.runbend.export.drawing.Decimals;
import org.runbend.optimizer.job.Job;

/** Lengths as a person reads them off a tape: whole millimetres, or inches and sixteenths for a job in inches. */
public final class TapeText {
    private static final double INCH = 25.4;
    private static final double INCHES = 12;
    private static final String NUMBER = "(-?\\d+(?:\\.\\d+)?)";
    private static final Pattern KEYS =
            Pattern.compile("\\b(edge|clearance|spacing|a reach of the port of) " + NUMBER + " instead of " + NUMBER);
    private static final Pattern PLACE = Pattern.compile("\\[" + NUMBER + ", " + NUMBER + "\\]");
    private static final Pattern MILLIMETRES = Pattern.compile("(?<![\\w.(-])" + NUMBER + " mm\\b(?! \\()(?!\\))");
    private static final Pattern METRES = Pattern.compile("(?<![\\w.(-])" + NUMBER + " m\\b(?! \\()");
    private static final int SIXTEENTHS = 16;
    private static final int LONGEST_NAME = 26;
    private static final int MOST_NAMES = 12;

    /** What tenths of a mm show, mm. */
    private static final double LEAST = 0.15;

    private final Unit unit;

    /** Lengths in the unit of the job. */
    public TapeText(Job job) {
        this.unit = job.written().unit();
    }

    /** Lengths in a unit. */
    public TapeText(Unit unit) {
        this.unit = unit;
    }

    /** The length, such as 2700 or 106 5/16". */
    public String of(double mm) {
        return unit == Unit.MM ? Decimals.of(mm, 0) : inches(mm);
    }

    /** The length in the unit of the tape, mm with a tenth where there is one: what tables say of a mark. */
    public String mark(double mm) {
        return unit == Unit.MM ? Decimals.of(mm, 1) : inches(mm);
    }

    /** The length in both units where the tape is in inches. */
    public String full(double mm) {
        return unit == Unit.MM ? of(mm) : of(mm) + " (" + Decimals.of(mm, 0) + ")";
    }

    /** The length in mm with a tenth, and in inches beside it where the job is in inches: 1190 (46 7/8"). */
    public String beside(double mm) {
        return Decimals.of(mm, 1) + also(mm);
    }

    /** A size that a cutter is set to, in mm with a tenth, beside it hundredths of an inch where the job is in inches: 16.5 (0.65"). */
    public String fine(double mm) {
        return Decimals.of(mm, 1)
                + (unit == Unit.MM || !Double.isFinite(mm) ? "" : String.format(Locale.ROOT, " (%.2f\")", mm / INCH));
    }

    /** The length in mm with a tenth, and in inches under it where the job is in inches: a cell of a table. */
    public String cell(double mm) {
        return Decimals.of(mm, 1) + (unit == Unit.MM ? "" : "\n" + inches(mm).replace(' ', '\u00a0'));
    }

    /** What stands beside a length in mm where the job is in inches, such as (46 7/8"); else nothing. */
    public String also(double mm) {
        if (unit == Unit.MM || !Double.isFinite(mm)) {
            return "";
        }
        boolean fine =
                Math.abs(mm) >= LEAST && Math.abs(mm) < INCH / SIXTEENTHS / 2; // no mark of a tape, but not nothing
        return fine ? String.format(Locale.ROOT, " (%.2f\")", mm / INCH) : " (" + inches(mm) + ")";
    }

    /** A column of pipe in one unit: its head, metres or feet. */
    public String pipeUnit() {
        return unit == Unit.MM ? "m" : "ft";
    }

    /** Pipe in that unit alone. */
    public String pipe(double mm) {
        return unit == Unit.MM
                ? String.format(Locale.ROOT, "%.2f", mm / 1000)
                : String.format(Locale.ROOT, "%.1f", mm / INCH / INCHES);
    }

    /** Pipe in metres, and in feet beside it where the job is in inches. */
    public String metres(double mm) {
        String metres = String.format(Locale.ROOT, "%.2f m", mm / 1000);
        return unit == Unit.MM ? metres : metres + String.format(Locale.ROOT, " (%.1f ft)", mm / INCH / INCHES);
    }

    /** A sentence whose lengths, places and sizes of keys are told in inches too where the job is in inches. */
    public String note(String sentence) {
        if (unit == Unit.MM) {
            return sentence;
        }
        String keys = KEYS.matcher(sentence)
                .replaceAll(m -> m.group(1) + " " + key(m.group(2)) + " instead of " + key(m.group(3)));
        String places = PLACE.matcher(keys)
                .replaceAll(m -> m.group() + " mm (" + inches(m.group(1)) + ", " + inches(m.group(2)) + ")");
        String lengths = MILLIMETRES.matcher(places).replaceAll(m -> m.group() + " (" + inches(m.group(1)) + ")");
        return METRES.matcher(lengths)
                .replaceAll(m -> m.group()
                        + String.format(
                                Locale.ROOT, " (%.1f ft)", Double.parseDouble(m.group(1)) * 1000 / INCH / INCHES));
    }

    /** A size as the job file, whose numbers are inches, takes it. */
    private static String key(String mm) {
        return Decimals.of(Double.parseDouble(mm) / INCH, 3) + " in (" + mm + " mm)";
    }

    private static String inches(String mm) {
        return inches(Double.parseDouble(mm));
    }

    /** What lengths with {@link #beside} are written in. */
    public String papers() {
        return unit == Unit.MM ? "mm" : "mm, inches in brackets";
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
