package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.runbend.export.drawing.Point;

/** Numbers places: points within a distance of one that was there before have its number. */
final class Places {
    private final double same;
    private final List<Point> points = new ArrayList<>();
    private final Map<Cell, List<Integer>> cells = new HashMap<>();

    Places(double same) {
        this.same = same;
    }

    private record Cell(long x, long y) {
        static Cell of(Point p, double size) {
            return new Cell((long) Math.floor(p.x() / size), (long) Math.floor(p.y() / size));
        }
    }

    int size() {
        return points.size();
    }

    Point at(int place) {
        return points.get(place);
    }

    int of(Point p) {
        Cell cell = Cell.of(p, same);
        for (long x = cell.x - 1; x <= cell.x + 1; x++) {
            for (long y = cell.y - 1; y <= cell.y + 1; y++) {
                for (int i : cells.getOrDefault(new Cell(x, y), List.of())) {
                    if (points.get(i).distance(p) <= same) {
                        return i;
                    }
                }
            }
        }
        points.add(p);
        cells.computeIfAbsent(cell, c -> new ArrayList<>(1)).add(points.size() - 1);
        return points.size() - 1;
    }

    /** Pairs of the places named that lie within a distance; of a crowd only each one's few nearest cells are looked at. */
    List<int[]> pairsWithin(List<Integer> some, double distance) {
        double size = Math.max(distance, same);
        Map<Cell, List<Integer>> grid = new HashMap<>();
        some.forEach(i -> grid.computeIfAbsent(Cell.of(points.get(i), size), c -> new ArrayList<>())
                .add(i));
        List<int[]> pairs = new ArrayList<>();
        for (int i : some) {
            Cell cell = Cell.of(points.get(i), size);
            for (long x = cell.x - 1; x <= cell.x + 1; x++) {
                for (long y = cell.y - 1; y <= cell.y + 1; y++) {
                    addPairs(i, grid.getOrDefault(new Cell(x, y), List.of()), distance, pairs);
                }
            }
        }
        return pairs;
    }

    private void addPairs(int i, List<Integer> others, double distance, List<int[]> pairs) {
        int found = 0;
        for (int j : others) {
            if (j > i && points.get(i).distance(points.get(j)) <= distance) {
                pairs.add(new int[] {i, j});
                if (++found == 16) {
                    return;
                }
            }
        }
    }
}
