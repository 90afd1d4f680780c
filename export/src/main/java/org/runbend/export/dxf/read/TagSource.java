package org.runbend.export.dxf.read;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Pairs of group code and value, one after the other. Values are decoded only when they are asked for. */
abstract class TagSource {
    /** No drawing of a floor has a number beyond this; calculations stay finite below it. */
    static final double LARGEST = 1e12;

    private static final int NAMES = 1024;

    final byte[] data;
    private final byte[][] nameBytes = new byte[NAMES][];
    private final String[] nameTexts = new String[NAMES];
    private Letters letters = new Letters(StandardCharsets.UTF_8, true);
    private int code;

    TagSource(byte[] data) {
        this.data = data;
    }

    /** Goes to the next pair; false behind the last one. */
    abstract boolean next();

    /** The value as a number of any size, but a number. */
    abstract double number();

    /** Where the pair stands: number of a line, or of a byte. */
    abstract int place();

    /** What {@link #place} counts. */
    abstract String placeWord();

    /** First byte of the value as text. */
    abstract int from();

    /** Behind the last byte of the value as text. */
    abstract int to();

    final int code() {
        return code;
    }

    /** The value as a number no larger than {@link #LARGEST}. */
    final double real() {
        double value = number();
        if (!(Math.abs(value) <= LARGEST)) {
            throw broken("group " + code + " is " + value + ", a number up to 1e12 is wanted");
        }
        return value;
    }

    final void code(int value) {
        code = value;
    }

    /** From now on text is decoded like this. */
    final void letters(Charset charset, boolean unicode) {
        letters = new Letters(charset, unicode);
        Arrays.fill(nameBytes, null);
    }

    /** The value as text, escapes as they are. */
    final String text() {
        return letters.decoded(data, from(), to());
    }

    /** The value as a name: without blanks around it, escapes resolved; equal ones are one string. */
    final String name() {
        int from = from();
        int to = to();
        int hash = 1;
        for (int i = from; i < to; i++) {
            hash = 31 * hash + data[i];
        }
        int slot = (hash ^ (hash >>> 16)) & (NAMES - 1);
        if (nameBytes[slot] == null || !Arrays.equals(nameBytes[slot], 0, nameBytes[slot].length, data, from, to)) {
            nameBytes[slot] = Arrays.copyOfRange(data, from, to);
            nameTexts[slot] = Escapes.unicode(letters.decoded(data, from, to)).strip();
        }
        return nameTexts[slot];
    }

    /** The value as a whole number. */
    final int whole() {
        double value = real();
        if (value != Math.rint(value) || Math.abs(value) > Integer.MAX_VALUE) {
            throw broken("group " + code + " is " + value + ", a whole number is wanted");
        }
        return (int) value;
    }

    final DxfFault broken(String what) {
        return brokenAt(place(), what);
    }

    final DxfFault brokenAt(int place, String what) {
        return new DxfFault(placeWord() + " " + place + ": " + what);
    }
}
