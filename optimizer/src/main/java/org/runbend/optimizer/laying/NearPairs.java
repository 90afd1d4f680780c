package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.LoopPathVerifier;

/**
 * Thins out findings about pipe that is too near to pipe: where two strands meet, their neighbours along the pipe are too
 * near as well, and one place is told once, by its nearest pair.
 */
final class NearPairs {
    /** Two elements a and b, a the earlier, that are so far apart, mm. */
    private record Pair(Finding finding, int a, int b, double distance) {
        static Optional<Pair> of(Finding finding) {
            List<Finding.Place> places = finding.places();
            if (places.size() != 2) {
                return Optional.empty();
            }
            int a = places.get(0).element();
            int b = places.get(1).element();
            return Optional.of(new Pair(
                    finding, Math.min(a, b), Math.max(a, b), finding.numbers().get(0)));
        }

        boolean isBeside(Pair o) {
            return Math.abs(a - o.a) <= 1 && Math.abs(b - o.b) <= 1;
        }

        /** Nearer, as far as it is told; of equally near ones two runs say more than a run and a bend. */
        boolean isWorseThan(Pair o) {
            long own = Math.round(100 * distance);
            long other = Math.round(100 * o.distance);
            return own < other || (own == other && LoopPathVerifier.isOfParallelRuns(finding));
        }
    }

    private NearPairs() {}

    /** The findings that are left, in their order. */
    static List<Finding> thinned(List<Finding> findings) {
        List<Pair> pairs = new ArrayList<>();
        findings.forEach(f -> Pair.of(f).ifPresent(pairs::add));
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
        List<Finding> kept = left.stream().map(Pair::finding).toList();
        return findings.stream()
                .filter(f -> kept.contains(f) || Pair.of(f).isEmpty())
                .toList();
    }
}
