package org.runbend.export.dxf;

import java.util.regex.Pattern;

/** What machines read is pure ASCII: names of layers, line types and blocks. */
public final class DxfNames {
    /** The application whose extended data is ours. */
    public static final String APPLICATION = "RUNBEND";

    private static final Pattern PLAIN = Pattern.compile("[A-Za-z0-9_$-]{1,31}");

    private DxfNames() {}

    static void check(String name) {
        if (!PLAIN.matcher(name).matches()) {
            throw new IllegalArgumentException("name (" + name + ") must be 1 to 31 ASCII letters, digits, or _ - $");
        }
    }
}
