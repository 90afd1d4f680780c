package org.runbend.catalog.source;

/**
 * One thing that is wrong with an input.
 *
 * @param file file as it was named
 * @param line from 1; 0 if the whole file is meant
 * @param column from 1, in characters; 0 if the whole file is meant
 * @param path path of the key, such as floor.keepOut[2].clearance; empty if none is meant
 * @param message what was found and what would be right, without line breaks
 */
public record Fault(String file, int line, int column, String path, String message) {
    /** A fault of a whole file. */
    public static Fault ofFile(String file, String message) {
        return new Fault(file, 0, 0, "", message);
    }

    /** The one line that a person sees: {@code file:line:column: path: message}. */
    public String text() {
        String place = line > 0 ? file + ":" + line + ":" + column : file;
        return place + ": " + (path.isEmpty() ? "" : path + ": ") + message;
    }
}
