package org.runbend.export.dxf.read;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;

/**
 * How bytes of a file become letters.
 *
 * @param page code page of the drawing
 * @param unicode whether UTF-8 is tried first, as the format wants it from AC1021 on
 */
record Letters(Charset page, boolean unicode) {
    private static final Charset WESTERN = Charset.forName("windows-1252");

    /** Values of $DWGCODEPAGE that do not end with the number of a Windows code page (names from the DXF reference). */
    private static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("ANSI_874", "x-windows-874"),
            Map.entry("ANSI_932", "windows-31j"),
            Map.entry("ANSI_936", "GBK"),
            Map.entry("ANSI_949", "x-windows-949"),
            Map.entry("ANSI_950", "x-windows-950"),
            Map.entry("ANSI_1361", "x-Johab"),
            Map.entry("DOS932", "windows-31j"),
            Map.entry("MACINTOSH", "x-MacRoman"),
            Map.entry("MAC-ROMAN", "x-MacRoman"),
            Map.entry("UTF-8", "UTF-8"),
            Map.entry("UTF8", "UTF-8"),
            Map.entry("ASCII", "windows-1252"));

    /** The code page of a header value such as ANSI_1250, DOS850 or ISO8859-1; western Windows if it is unknown. */
    static Charset page(String header) {
        String name = header.strip().toUpperCase(Locale.ROOT);
        String java = NAMES.getOrDefault(name, guessed(name));
        try {
            return Charset.isSupported(java) ? Charset.forName(java) : WESTERN;
        } catch (IllegalArgumentException e) {
            return WESTERN;
        }
    }

    private static String guessed(String name) {
        if (name.startsWith("ANSI_")) {
            return "windows-" + name.substring(5);
        }
        if (name.startsWith("DOS")) {
            return "IBM" + name.substring(3);
        }
        return name.startsWith("ISO8859-") ? "ISO-8859-" + name.substring(8) : "windows-1252";
    }

    /** The letters; bytes that are not valid UTF-8 are taken for letters of the code page. */
    String decoded(byte[] data, int from, int to) {
        if (isAscii(data, from, to)) {
            return new String(data, from, to - from, StandardCharsets.ISO_8859_1);
        }
        if (unicode) {
            try {
                return StandardCharsets.UTF_8
                        .newDecoder()
                        .decode(ByteBuffer.wrap(data, from, to - from))
                        .toString();
            } catch (CharacterCodingException e) {
                return new String(data, from, to - from, page.equals(StandardCharsets.UTF_8) ? WESTERN : page);
            }
        }
        return new String(data, from, to - from, page);
    }

    private static boolean isAscii(byte[] data, int from, int to) {
        for (int i = from; i < to; i++) {
            if (data[i] < 0) {
                return false;
            }
        }
        return true;
    }
}
