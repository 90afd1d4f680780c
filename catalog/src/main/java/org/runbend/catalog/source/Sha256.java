package org.runbend.catalog.source;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/** Check sums by SHA-256 (FIPS 180-4) in hexadecimal letters. */
public final class Sha256 {
    private Sha256() {}

    /** The sum of a text's UTF-8 bytes, 64 letters. */
    public static String of(String text) {
        return of(List.of(text.getBytes(StandardCharsets.UTF_8)));
    }

    /** The sum of parts one after the other, 64 letters. */
    public static String of(List<byte[]> parts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            parts.forEach(digest::update);
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
