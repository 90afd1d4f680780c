package org.runbend.export.dxf.read;

/** A drawing that cannot be used. The message is one line: where, what was found, what would be right. */
public final class DxfFault extends RuntimeException {
    DxfFault(String message) {
        super(message);
    }

    /** A piece of a foreign value, short and on one line. */
    static String quoted(String foreign) {
        String line = foreign.replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}]+", " ").strip();
        return "'" + (line.length() > 40 ? line.substring(0, 40) + "..." : line) + "'";
    }
}
