package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.runbend.export.drawing.Point;

/** Numbers places: points within a distance of one that was there before have its number. */
final class Places {
    private final double same;
    private final Grid grid;
    private double[] xs = new double[64];
    private double[] ys = new double[64];
    private int size;

    Places(double same) {
        this.same = same;
        grid = new Grid(8 * same);
    }

    int size() {
        return size;
    }

    Point at(int place) {
        return new Point(xs[place], ys[place]);
    }

    int of(double x, double y) {
        // Cells are wide beside the distance, so that mostly one of them is looked at.
        long x0 = grid.cell(x - same);
        long x1 = grid.cell(x + same);
        long y0 = grid.cell(y - same);
        long y1 = grid.cell(y + same);
        for (long cx = x0; cx <= x1; cx++) {
            for (long cy = y0; cy <= y1; cy++) {
                for (int i = grid.first(cx, cy); i >= 0; i = grid.next(i)) {
                    if (distance2(i, x, y) <= same * same) {
                        return i;
                    }
                }
            }
        }
        if (size == xs.length) {
            xs = Arrays.copyOf(xs, 2 * size);
            ys = Arrays.copyOf(ys, 2 * size);
        }
        xs[size] = x;
        ys[size] = y;
        grid.add(grid.cell(x), grid.cell(y));
        return size++;
    }

    private double distance2(int i, double x, double y) {
        return (xs[i] - x) * (xs[i] - x) + (ys[i] - y) * (ys[i] - y);
    }

    /** Pairs of the places named that lie within a distance; in a crowd each one's first sixteen only. */
    List<int[]> pairsWithin(int[] some, double distance) {
        Grid wide = new Grid(Math.max(distance, same));
        for (int i : some) {
            wide.add(wide.cell(xs[i]), wide.cell(ys[i]));
        }
        List<int[]> pairs = new ArrayList<>();
        for (int k = 0; k < some.length; k++) {
            int i = some[k];
            int before = pairs.size();
            for (long cx = wide.cell(xs[i] - distance); cx <= wide.cell(xs[i] + distance); cx++) {
                for (long cy = wide.cell(ys[i] - distance); cy <= wide.cell(ys[i] + distance); cy++) {
                    for (int m = wide.first(cx, cy); m >= 0 && pairs.size() < before + 16; m = wide.next(m)) {
                        if (m > k && distance2(some[m], xs[i], ys[i]) <= distance * distance) {
                            pairs.add(new int[] {i, some[m]});
                        }
                    }
                }
            }
        }
        return pairs;
    }

    /** Chains of numbers by cell; cells of equal hash share a chain, which costs a look and no more. */
    private static final class Grid {
        private final double width;
        private int[] heads = new int[256];
        private int[] nexts = new int[128];
        private long[] hashes = new long[128];
        private int count;

        Grid(double width) {
            this.width = width;
            Arrays.fill(heads, -1);
        }

        long cell(double v) {
            return (long) Math.floor(v / width);
        }

        private static long hash(long x, long y) {
            long h = x * 0x9E3779B97F4A7C15L + y * 0xC2B2AE3D27D4EB4FL;
            return h ^ (h >>> 29);
        }

        int first(long x, long y) {
            return heads[(int) (hash(x, y) & (heads.length - 1))];
        }

        int next(int i) {
            return nexts[i];
        }

        void add(long x, long y) {
            if (count == nexts.length) {
                grow();
            }
            hashes[count] = hash(x, y);
            link(count++);
        }

        private void grow() {
            nexts = Arrays.copyOf(nexts, 2 * count);
            hashes = Arrays.copyOf(hashes, 2 * count);
            heads = new int[4 * count];
            Arrays.fill(heads, -1);
            for (int i = 0; i < count; i++) {
                link(i);
            }
        }

        private void link(int i) {
            int slot = (int) (hashes[i] & (heads.length - 1));
            nexts[i] = heads[slot];
            heads[slot] = i;
        }
    }
}
