package org.runbend.optimizer.cutting.patterns;

import java.util.Arrays;

/** Fills a stock piece as far as it goes: one longest cut, then the subset of the others that leaves least. */
final class SubsetFill {
    /** Cells up to which a table is worth its time: chosen, not measured. */
    private static final long TABLE = 3_000_000;

    private final CutUnits units;
    private final boolean worthwhile;
    private final int[] last;
    private final int[] uses;

    SubsetFill(CutUnits units) {
        this.units = units;
        worthwhile = work() <= TABLE;
        int cells = worthwhile ? (int) units.greatestCapacity() + 1 : 0;
        last = new int[cells];
        uses = new int[cells];
    }

    /** False where capacities are too long for a table. */
    boolean isWorthwhile() {
        return worthwhile;
    }

    /** Cells looked at for one filling. */
    long work() {
        return units.greatestCapacity() * units.sizeCount();
    }

    /** The pattern for a kind, with at least one cut of size {@code first}. */
    Pattern fill(int kind, int[] counts, int first) {
        int room = (int) (units.capacity(kind) - units.size(first));
        counts[first]--;
        int[] amounts = best(room, counts, first);
        counts[first]++;
        amounts[first]++;
        return Pattern.of(kind, amounts);
    }

    private int[] best(int room, int[] counts, int first) {
        Arrays.fill(last, 0, room + 1, -1);
        for (int i = first; i < counts.length && last[room] < 0; i++) {
            int size = units.size(i) > room ? 0 : (int) units.size(i);
            if (counts[i] > 0 && size > 0) {
                reach(i, size, counts[i], room);
            }
        }
        int fill = room;
        while (fill > 0 && last[fill] < 0) {
            fill--;
        }
        int[] amounts = new int[counts.length];
        while (fill > 0) {
            amounts[last[fill]]++;
            fill -= (int) units.size(last[fill]);
        }
        return amounts;
    }

    /** Sums that become possible with up to {@code count} more cuts of a size; the fewest of them are counted. */
    private void reach(int i, int size, int count, int room) {
        Arrays.fill(uses, 0, room + 1, 0);
        for (int sum = size; sum <= room; sum++) {
            boolean from = sum == size || last[sum - size] >= 0;
            if (last[sum] < 0 && from && uses[sum - size] < count) {
                last[sum] = i;
                uses[sum] = uses[sum - size] + 1;
            }
        }
    }
}
