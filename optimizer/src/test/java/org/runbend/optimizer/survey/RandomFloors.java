package org.runbend.optimizer.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Seeded floors as people measure them: a bent star round a centre, all sides and some or all diagonals, a tape's error. */
final class RandomFloors {
    private final Random random;

    RandomFloors(long seed) {
        this.random = new Random(seed);
    }

    /** True corners, anticlockwise, the first at the origin and the second on the x axis. */
    List<Place> floor(int corners) {
        List<Place> round = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * (i + 0.5 * random.nextDouble()) / corners;
            double radius = 900 + 800 * random.nextDouble();
            round.add(new Place(1.6 * radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        return SurveyFrame.of(round, false);
    }

    /** All sides and that share of the diagonals, each with an error of so many mm (normal). */
    List<Measurement> lengths(List<Place> floor, double share, double error) {
        List<Measurement> lengths = new ArrayList<>();
        int n = floor.size();
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                boolean isSide = j == i + 1 || (i == 0 && j == n - 1);
                if (isSide || random.nextDouble() < share) {
                    double length = floor.get(i).distance(floor.get(j)) + error * random.nextGaussian();
                    lengths.add(new Measurement(i, j, Math.rint(length * 10) / 10));
                }
            }
        }
        return lengths;
    }

    /** A number under the limit. */
    int pick(int limit) {
        return random.nextInt(limit);
    }

    static List<String> names(int corners) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            names.add(String.valueOf((char) ('A' + i)));
        }
        return names;
    }
}
