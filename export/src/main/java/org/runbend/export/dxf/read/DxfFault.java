package org.runbend.export.dxf.read;

/** A drawing that cannot be used. The message is one line: where, what was found, what would be right. */
public final class DxfFault extends RuntimeException {
    private final String reason;

    DxfFault(String reason) {
        super(reason);
        this.reason = reason;
    }

    private DxfFault(String file, DxfFault fault) {
        super(file + ": " + fault.reason, fault);
        reason = fault.reason;
    }

    /** The same fault with the file before it. */
    DxfFault in(String file) {
        return new DxfFault(file, this);
    }

    /** The message without the file. */
    public String reason() {
        return reason;
    }

    /** A piece of a foreign value, short and on one line. */
    static String quoted(String foreign) {
        String line = foreign.replaceAll("[\\p{Cc}\\p{Zl}\\p{Zp}]+", " ").strip();
        return "'" + (line.length() > 40 ? line.substring(0, 40) + "..." : line) + "'";
    }
}
