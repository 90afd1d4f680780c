package org.runbend.optimizer.cutting.cover;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.cutting.Require;

/** Which totals n pieces of some sizes can have, in steps: the bits of a whole number for each n. */
final class SizeSums {
    private final int[] sizes;
    private final List<BigInteger> sums = new ArrayList<>(List.of(BigInteger.ONE));

    SizeSums(int... sizes) {
        this.sizes = sizes.clone();
    }

    private BigInteger of(int n) {
        while (sums.size() <= n) {
            BigInteger next = BigInteger.ZERO;
            for (int u : sizes) {
                next = next.or(sums.get(sums.size() - 1).shiftLeft(u));
            }
            sums.add(next);
        }
        return sums.get(n);
    }

    /** Whether n pieces can have a total. */
    boolean makes(int n, int total) {
        return total >= 0 && of(n).testBit(total);
    }

    /** The greatest total of n pieces within a limit; -1 when there is none. */
    long greatest(int n, long limit) {
        if (limit < 0) {
            return -1;
        }
        BigInteger totals = of(n);
        long at = Math.min(limit, totals.bitLength() - 1L);
        while (at >= 0 && !totals.testBit((int) at)) {
            at--;
        }
        return at;
    }

    /** n sizes of a total that they can have, longest first. */
    List<Integer> parts(int n, int total) {
        List<Integer> parts = new ArrayList<>();
        int left = total;
        for (int k = n; k > 0; k--) {
            int part = 0;
            for (int u : sizes) {
                part = makes(k - 1, left - u) ? u : part;
            }
            Require.that(part > 0, "%d pieces have no total of %d", k, left);
            parts.add(part);
            left -= part;
        }
        return parts;
    }
}
