package org.runbend.export.fuzz;

import java.util.List;
import java.util.Random;

/** Chance with a seed: the same number gives the same throws on any machine, as the generator of {@link Random} is fixed. */
final class Dice {
    private final Random random;

    Dice(long seed) {
        this.random = new Random(scrambled(seed));
    }

    /** Neighbouring seeds would begin alike; the finish of a well-known hash (MurmurHash3, 64 bit) spreads them. */
    private static long scrambled(long seed) {
        long h = seed + 0x9e3779b97f4a7c15L;
        h = (h ^ (h >>> 33)) * 0xff51afd7ed558ccdL;
        h = (h ^ (h >>> 33)) * 0xc4ceb9fe1a85ec53L;
        return h ^ (h >>> 33);
    }

    /** True in so many of a hundred throws. */
    boolean percent(double share) {
        return random.nextDouble() * 100 < share;
    }

    /** A whole number, both ends included. */
    int whole(int low, int high) {
        return low + random.nextInt(high - low + 1);
    }

    /** A number, rounded to tenths. */
    double tenths(double low, double high) {
        return Math.rint((low + random.nextDouble() * (high - low)) * 10) / 10;
    }

    /** One of them. */
    <T> T of(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    /** So many random bytes. */
    byte[] bytes(int count) {
        byte[] bytes = new byte[count];
        random.nextBytes(bytes);
        return bytes;
    }
}
