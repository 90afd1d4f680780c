package org.runbend.export.dxf.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.runbend.export.dxf.DxfNames;

/** The tags of one entity that geometry and words come from. One object serves one entity after the other. */
final class EntityTags {
    /** Beyond this only other programs' data follow. */
    private static final int EMBEDDED = 101;

    /** The application whose extended data is kept, see {@code DxfBackend}. */
    private static final String OWN = DxfNames.APPLICATION;

    /** The only type whose counts are wanted: they part its edges. */
    static final String HATCH = "HATCH";

    private static final int APPLICATION = 1001;
    private static final int EXTENDED_TEXT = 1000;
    private static final int MOST_NOTES = 64;

    String type = "";
    String layer = "0";
    String name = "";
    boolean paper;
    boolean invisible;
    int place;
    private int[] codes = new int[64];
    private double[] values = new double[64];
    private int size;
    private final StringBuilder words = new StringBuilder();
    private String lastWords = "";
    private boolean own;
    private List<String> notes = List.of();

    /** Reads the entity that the source stands at; afterwards the source stands at the next group 0, or its end. */
    boolean read(TagSource source, boolean needed) {
        clear();
        type = source.name();
        place = source.place();
        boolean embedded = false;
        while (source.next()) {
            int code = source.code();
            if (code == 0) {
                return true;
            }
            embedded |= code == EMBEDDED;
            if (!embedded) {
                take(source, code, needed);
            }
        }
        return false;
    }

    /** Goes back to the head of an entity of several parts. */
    void restore(Raw.Head head) {
        type = head.type();
        layer = head.layer();
        place = head.place();
        notes = head.notes();
    }

    private void clear() {
        layer = "0";
        name = "";
        paper = false;
        invisible = false;
        size = 0;
        words.setLength(0);
        lastWords = "";
        own = false;
        notes = List.of();
    }

    private void take(TagSource source, int code, boolean needed) {
        if (code == 8) {
            layer = source.name();
        } else if (code == 67) {
            paper = source.whole() == 1;
        } else if (code == 60) {
            invisible = source.whole() == 1;
        } else if (needed) {
            takeNeeded(source, code);
        }
    }

    /** Lines that Runbend wrote for itself; a drawing of others has none. */
    List<String> notes() {
        return notes;
    }

    /** A text that begins with a plus goes on with the one before. */
    private static List<String> with(List<String> notes, String text) {
        List<String> more = new ArrayList<>(notes);
        if (text.startsWith("+") && !more.isEmpty()) {
            more.set(more.size() - 1, more.get(more.size() - 1) + text.substring(1));
        } else {
            more.add(text);
        }
        return more;
    }

    private void takeExtended(TagSource source, int code) {
        if (code == APPLICATION) {
            own = source.name().equals(OWN);
        } else if (own && code == EXTENDED_TEXT && notes.size() < MOST_NOTES) {
            notes = with(notes, Escapes.unicode(source.text()));
        }
    }

    private void takeNeeded(TagSource source, int code) {
        if (code == 2) {
            name = source.name();
        } else if (code == 3) {
            words.append(source.text());
        } else if (code == 1) {
            lastWords = source.text();
        } else if (code >= EXTENDED_TEXT) {
            takeExtended(source, code);
        } else if ((code >= 10 && code < 80)
                || (code >= 210 && code < 240)
                || (code >= 90 && code < 100 && type.equals(HATCH))) {
            put(code, type.equals(HATCH) ? soft(source) : source.real());
        }
    }

    /** A number of what may as well be left out; NaN if it is none. */
    private static double soft(TagSource source) {
        try {
            return source.real();
        } catch (DxfFault e) {
            return Double.NaN;
        }
    }

    private void put(int code, double value) {
        if (size == codes.length) {
            codes = Arrays.copyOf(codes, 2 * size);
            values = Arrays.copyOf(values, 2 * size);
        }
        codes[size] = code;
        values[size++] = value;
    }

    int size() {
        return size;
    }

    int code(int i) {
        return codes[i];
    }

    double value(int i) {
        return values[i];
    }

    /** The pieces of long text and its end. */
    String words() {
        return words.append(lastWords).toString();
    }

    /** The only line of text. */
    String line() {
        return lastWords;
    }

    boolean has(int code) {
        return !Double.isNaN(get(code, Double.NaN));
    }

    /** The first value of a code. */
    double get(int code, double missing) {
        for (int i = 0; i < size; i++) {
            if (codes[i] == code) {
                return values[i];
            }
        }
        return missing;
    }

    int whole(int code, int missing) {
        double value = get(code, missing);
        return Math.abs(value) <= Integer.MAX_VALUE ? (int) value : missing;
    }

    boolean flag(int code, int bit) {
        return (whole(code, 0) & bit) != 0;
    }

    /** All values of a code in order. */
    double[] all(int code) {
        double[] found = new double[size];
        int n = 0;
        for (int i = 0; i < size; i++) {
            if (codes[i] == code) {
                found[n++] = values[i];
            }
        }
        return Arrays.copyOf(found, n);
    }

    /** The plane of the entity, {@link Placement#IDENTITY} if it is that of the world. */
    Placement plane() {
        double x = get(210, 0);
        double y = get(220, 0);
        double z = get(230, 1);
        return x == 0 && y == 0 && z > 0 ? Placement.IDENTITY : Placement.ofNormal(x, y, z);
    }
}
