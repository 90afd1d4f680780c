package org.runbend.catalog.ledger.sql;

/** What went wrong in a database. */
final class Trouble extends RuntimeException {
    private final Kind kind;

    Trouble(Kind kind, Throwable cause) {
        super(String.valueOf(cause.getMessage()), cause);
        this.kind = kind;
    }

    Kind kind() {
        return kind;
    }

    enum Kind {
        /** Somebody else has it for longer than we wait. */
        BUSY,
        /** Another's change came between: the same again will do. */
        AGAIN,
        /** A constraint does not allow it. */
        RULE,
        /** The disk is full. */
        FULL,
        /** It cannot be written. */
        READ_ONLY,
        /** The disk or the file fails. */
        BROKEN,
        /** It is no database. */
        FOREIGN,
        /** It cannot be reached, or no longer. */
        GONE,
        /** User or password are refused. */
        DENIED,
        /** Anything else. */
        OTHER
    }

    /** By SQLite's primary result codes, https://sqlite.org/rescode.html. */
    static Kind ofSqlite(int code) {
        return switch (code & 0xFF) {
            case 5, 6 -> Kind.BUSY;
            case 8 -> Kind.READ_ONLY;
            case 10, 11 -> Kind.BROKEN;
            case 13 -> Kind.FULL;
            case 14 -> Kind.GONE;
            case 19 -> Kind.RULE;
            case 26 -> Kind.FOREIGN;
            default -> Kind.OTHER;
        };
    }

    /** By PostgreSQL's error codes, appendix A of its manual. */
    static Kind ofState(String state) {
        if (state == null) {
            return Kind.OTHER;
        }
        return switch (state) {
            case "40001", "40P01" -> Kind.AGAIN;
            case "55P03" -> Kind.BUSY;
            case "53100", "53200" -> Kind.FULL;
            case "25006", "42501" -> Kind.READ_ONLY;
            case "28000", "28P01", "08004" -> Kind.DENIED; // 08004: a password is wanted and none was given
            case "3D000" -> Kind.GONE;
            default -> ofClass(state);
        };
    }

    private static Kind ofClass(String state) {
        if (state.startsWith("23")) {
            return Kind.RULE;
        }
        if (state.startsWith("XX") || state.startsWith("58")) {
            return Kind.BROKEN;
        }
        return state.startsWith("08") || state.startsWith("57P") || state.startsWith("53") ? Kind.GONE : Kind.OTHER;
    }
}
