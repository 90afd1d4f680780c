package org.runbend.export.dxf.read;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Tags of a binary file: group codes of one byte up to R12 (255 announces a longer one), of two bytes later; the kind of
 * a value follows from its code as the DXF reference says.
 */
final class BinaryTags extends TagSource {
    private static final byte[] SENTINEL = "AutoCAD Binary DXF\r\n\032\0".getBytes(StandardCharsets.US_ASCII);

    private enum Kind {
        TEXT,
        REAL,
        INT8,
        INT16,
        INT32,
        INT64,
        CHUNK
    }

    private final ByteBuffer buffer;
    private final boolean wideCodes;
    private int at = SENTINEL.length;
    private int begin;
    private int from;
    private int to;
    private Kind kind = Kind.TEXT;

    BinaryTags(byte[] data) {
        super(data);
        buffer = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
        wideCodes = hasWideCodes(data);
    }

    static boolean isBinary(byte[] data) {
        if (data.length < SENTINEL.length) {
            return false;
        }
        for (int i = 0; i < SENTINEL.length; i++) {
            if (data[i] != SENTINEL[i]) {
                return false;
            }
        }
        return true;
    }

    /** A file begins with group 0, or with a comment, group 999. */
    private static boolean hasWideCodes(byte[] data) {
        int n = SENTINEL.length;
        return data.length > n + 1 && (data[n + 1] == 0 || (data[n] == (byte) (999 & 255) && data[n + 1] == 999 >> 8));
    }

    @Override
    boolean next() {
        if (at >= data.length) {
            return false;
        }
        begin = at;
        code(nextCode());
        kind = kind(code());
        from = at;
        to = endOfValue();
        at = kind == Kind.TEXT ? to + 1 : to;
        return true;
    }

    private int nextCode() {
        if (wideCodes) {
            need(2);
            at += 2;
            return buffer.getShort(at - 2);
        }
        int code = data[at++] & 255;
        if (code < 255) {
            return code;
        }
        need(2);
        at += 2;
        return buffer.getShort(at - 2);
    }

    private int endOfValue() {
        switch (kind) {
            case TEXT -> {
                int i = at;
                while (i < data.length && data[i] != 0) {
                    i++;
                }
                need(i + 1 - at);
                return i;
            }
            case CHUNK -> {
                need(1);
                from = at + 1;
                int length = 1 + (data[at] & 255);
                need(length);
                return at + length;
            }
            default -> {
                int size = size(kind);
                need(size);
                return at + size;
            }
        }
    }

    private static int size(Kind kind) {
        return switch (kind) {
            case INT8 -> 1;
            case INT16 -> 2;
            case INT32 -> 4;
            default -> 8;
        };
    }

    private void need(int bytes) {
        if (bytes > data.length - at) {
            throw brokenAt(begin, "the file ends within a value; it was cut off");
        }
    }

    private Kind kind(int code) {
        if (code < 0) {
            throw brokenAt(begin, "group code " + code + " is unknown; the file is damaged");
        }
        if (code < 310 || code >= 1000) {
            return code >= 1000 ? extended(code) : low(code);
        }
        if (code < 320) {
            return Kind.CHUNK;
        }
        return high(code);
    }

    private Kind low(int code) {
        if (code < 10 || (code >= 100 && code < 110) || code >= 300) {
            return Kind.TEXT;
        }
        if (code < 60 || (code >= 110 && code < 150) || (code >= 210 && code < 240)) {
            return Kind.REAL;
        }
        if (code < 80 || (code >= 170 && code < 180) || (code >= 270 && code < 290)) {
            return Kind.INT16;
        }
        if (code >= 90 && code < 100) {
            return Kind.INT32;
        }
        if (code >= 160 && code < 170) {
            return Kind.INT64;
        }
        if (code >= 290) {
            return Kind.INT8;
        }
        throw unknown(code);
    }

    private Kind high(int code) {
        if (code < 370 || (code >= 390 && code < 400) || (code >= 410 && code < 420) || (code >= 430 && code < 440)) {
            return Kind.TEXT;
        }
        if (code < 410) {
            return Kind.INT16;
        }
        if (code < 460) {
            return Kind.INT32;
        }
        if (code < 470) {
            return Kind.REAL;
        }
        if (code < 482 || code == 999) {
            return Kind.TEXT;
        }
        throw unknown(code);
    }

    private Kind extended(int code) {
        if (code == 1004) {
            return Kind.CHUNK;
        }
        if (code < 1010) {
            return Kind.TEXT;
        }
        if (code < 1060) {
            return Kind.REAL;
        }
        if (code < 1071) {
            return Kind.INT16;
        }
        if (code == 1071) {
            return Kind.INT32;
        }
        throw unknown(code);
    }

    private DxfFault unknown(int code) {
        return brokenAt(begin, "group code " + code + " is unknown; the file is damaged");
    }

    @Override
    double number() {
        return switch (kind) {
            case REAL -> finite(buffer.getDouble(from));
            case INT8 -> data[from];
            case INT16 -> buffer.getShort(from);
            case INT32 -> buffer.getInt(from);
            case INT64 -> buffer.getLong(from);
            default -> throw broken("group " + code() + " is text, a number is wanted");
        };
    }

    private double finite(double value) {
        if (Double.isNaN(value)) {
            throw broken("group " + code() + " is no number");
        }
        return value;
    }

    @Override
    int place() {
        return begin;
    }

    @Override
    String placeWord() {
        return "byte";
    }

    @Override
    int from() {
        return kind == Kind.TEXT || kind == Kind.CHUNK ? from : to;
    }

    @Override
    int to() {
        return to;
    }
}
