package org.runbend.export.page;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;

/** Words that cannot be guessed. */
final class Secrets {
    private static final int BYTES = 24;

    private Secrets() {}

    /** A new one of 192 random bits, in letters that stand in addresses. */
    static String fresh() {
        byte[] bytes = new byte[BYTES];
        new SecureRandom().nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** Whether both are the same, in a time that tells nothing of where they differ. */
    static boolean same(String one, String other) {
        return other != null
                && MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }
}
