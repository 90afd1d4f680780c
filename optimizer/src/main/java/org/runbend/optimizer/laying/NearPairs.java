package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Thins out sentences about pipe that is too near to pipe: where two strands meet, their neighbours along the pipe are too
 * near as well, and one place is told once, by its nearest pair.
 */
final class NearPairs {
    private static final Pattern PAIR =
            Pattern.compile("loop A element (\\d+) and loop A element (\\d+): \\D+([0-9.]+) mm.*");

    /** A sentence about elements a and b. */
    private record Pair(String sentence, int a, int b, double distance) {
        boolean isBeside(Pair o) {
            return Math.abs(a - o.a) <= 1 && Math.abs(b - o.b) <= 1;
        }

        /** Nearer; of equally near ones two runs say more than a run and a bend. */
        boolean isWorseThan(Pair o) {
            return distance < o.distance || (distance == o.distance && sentence.contains("parallel"));
        }
    }

    private NearPairs() {}

    /** The sentences that are left, in their order. */
    static List<String> thinned(List<String> sentences) {
        List<Pair> pairs = new ArrayList<>();
        for (String sentence : sentences) {
            Matcher m = PAIR.matcher(sentence);
            if (m.matches()) {
                int a = Integer.parseInt(m.group(1));
                int b = Integer.parseInt(m.group(2));
                pairs.add(new Pair(sentence, Math.min(a, b), Math.max(a, b), Double.parseDouble(m.group(3))));
            }
        }
        List<Pair> left = new ArrayList<>(pairs);
        while (!pairs.isEmpty()) {
            List<Pair> place = new ArrayList<>(List.of(pairs.remove(0)));
            for (int i = 0; i < place.size(); i++) {
                Pair at = place.get(i);
                List<Pair> beside = pairs.stream().filter(at::isBeside).toList();
                place.addAll(beside);
                pairs.removeAll(beside);
            }
            Pair nearest = place.get(0);
            for (Pair p : place) {
                nearest = p.isWorseThan(nearest) ? p : nearest;
            }
            place.remove(nearest);
            left.removeAll(place);
        }
        List<String> kept = left.stream().map(Pair::sentence).toList();
        return sentences.stream()
                .filter(s -> kept.contains(s) || !PAIR.matcher(s).matches())
                .toList();
    }
}
