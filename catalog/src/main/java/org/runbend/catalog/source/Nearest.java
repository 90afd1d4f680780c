package org.runbend.catalog.source;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds what a person most likely meant. */
public final class Nearest {
    private static final int LEAST_PART = 3;

    private Nearest() {}

    /** The end of a message about an unknown word: ", the nearest one is ..."; empty if there is no word. */
    public static String hint(String written, Collection<String> words) {
        return of(written, words).map(w -> ", the nearest one is " + w).orElse("");
    }

    /**
     * The word with the least edit distance without regard to case, the first of equals; a word that holds what was
     * written as a part of it counts as one letter off. Empty if there is no word.
     */
    public static Optional<String> of(String written, Collection<String> words) {
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String word : words) {
            String a = lower(written);
            String b = lower(word);
            int d = a.length() >= LEAST_PART && !a.equals(b) && b.contains(a) ? 1 : distance(a, b);
            if (d < least) {
                least = d;
                best = word;
            }
        }
        return Optional.ofNullable(best);
    }

    private static String lower(String s) {
        return s.substring(0, Math.min(s.length(), 100)).toLowerCase(Locale.ROOT);
    }

    /** Number of letters to insert, delete or replace (Levenshtein), by the textbook's table in two rows. */
    static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
