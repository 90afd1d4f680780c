package org.runbend.optimizer.bare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.lattice.BiconnectedBlock;

/**
 * Finds the parts of the heated floor that stay bare, says why, and tries which change of the job would free them.
 *
 * <p>Every cause is a fact of the lattice or of the loop laid; every remedy was tried on the lattice and confirmed. That a
 * loop can reach a place is no promise that it will be served: that is for the loop's price to say.
 */
public final class BareFloorSearch {
    /** Parts of one reason that are told apart; the rest is told as one. */
    private static final int MOST_OF_A_REASON = 3;

    /** The parts, the largest first. */
    public List<BareFloor> find(BareProblem problem) {
        BiconnectedBlock block = BiconnectedBlock.ofLink(
                        problem.lattice().graph(),
                        problem.loop().port().from(),
                        problem.loop().port().to())
                .orElseThrow();
        Optional<Servable> servable =
                Servable.through(problem.lattice(), problem.loop().port());
        List<Part> parts = new ArrayList<>(new UnreachedParts(problem.lattice(), block).find());
        servable.ifPresent(s -> parts.addAll(new LeftOutParts(problem, block, s).find()));
        parts.addAll(new NoPlaceParts(problem.problem(), problem.lattice()).find());
        Landmarks landmarks = new Landmarks(problem.floor());
        Trials trials = new Trials(problem, servable.map(Servable::coverable).orElse(0));
        return merged(parts).stream()
                .map(p -> new BareFloor(
                        p.reason(),
                        p.places(),
                        p.zone().getArea() / 1e6,
                        p.spots(),
                        p.at(),
                        landmarks.words(p.at()),
                        p.cause(),
                        trials.remedies(p)))
                .toList();
    }

    private static List<Part> merged(List<Part> parts) {
        List<Part> sorted = parts.stream().sorted(Part.LARGEST).toList();
        List<Part> merged = new ArrayList<>();
        for (Reason reason : Reason.values()) {
            List<Part> same = sorted.stream().filter(p -> p.reason() == reason).toList();
            merged.addAll(same.subList(0, Math.min(MOST_OF_A_REASON - 1, same.size())));
            same.stream().skip(MOST_OF_A_REASON - 1).reduce(Part::with).ifPresent(merged::add);
        }
        return merged.stream().sorted(Part.LARGEST).toList();
    }
}
