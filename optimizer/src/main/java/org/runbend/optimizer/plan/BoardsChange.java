package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.CutLayer;
import org.runbend.optimizer.boards.SameParts;

/**
 * What becomes of boards that were cut before a floor changed.
 *
 * @param parts one for each part of the plan, from the bottom layer up
 * @param gone parts of the kit before that serve for none of them
 */
public record BoardsChange(List<Fate> parts, List<Gone> gone) {
    private static final double SQUARE_METRE = 1e6;

    /** Copies the lists. */
    public BoardsChange {
        parts = List.copyOf(parts);
        gone = List.copyOf(gone);
    }

    /**
     * The board that a part is cut from.
     *
     * @param role what its layer is there for
     * @param material the board of the catalog
     * @param name what a person calls it
     * @param thickness mm
     */
    public record Of(Role role, String material, String name, double thickness) {}

    /**
     * A part of the plan.
     *
     * @param label what stands on it in the drawings of this plan
     * @param of its board
     * @param area within its edge and outside its openings, m2
     * @param was what stands on the part cut before that serves for it; empty if it is cut again
     */
    public record Fate(String label, Of of, double area, Optional<String> was) {
        /** Whether it is there already. */
        public boolean stays() {
            return was.isPresent();
        }
    }

    /**
     * A part that is thrown away.
     *
     * @param label what stands on it
     * @param of its board
     * @param area within its edge and outside its openings, m2
     */
    public record Gone(String label, Of of, double area) {}

    /** Compares the boards of a plan with those cut before; nothing where neither has some. */
    public static Optional<BoardsChange> of(List<CutLayer> before, Optional<BoardsPlan> plan) {
        if (before.isEmpty() && plan.isEmpty()) {
            return Optional.empty();
        }
        List<Fate> parts = new ArrayList<>();
        List<Part> used = new ArrayList<>();
        for (LayerPlan layer : plan.map(BoardsPlan::layers).orElse(List.of())) {
            Of of = new Of(
                    layer.layer().role(),
                    layer.layer().material(),
                    layer.layer().name(),
                    layer.layer().thickness());
            List<Optional<Part>> same = SameParts.of(plan.get().problem(), layer);
            for (int i = 0; i < layer.parts().size(); i++) {
                Part part = layer.parts().get(i);
                parts.add(new Fate(part.label(), of, area(part), same.get(i).map(Part::label)));
                same.get(i).ifPresent(used::add);
            }
        }
        List<Gone> gone = new ArrayList<>();
        for (CutLayer layer : before) {
            Of of = new Of(layer.role(), layer.material(), layer.name(), layer.thickness());
            for (Part part : layer.parts()) {
                if (!used.remove(part)) {
                    gone.add(new Gone(part.label(), of, area(part)));
                }
            }
        }
        return Optional.of(new BoardsChange(parts, gone));
    }

    private static double area(Part part) {
        return SameParts.area(part) / SQUARE_METRE;
    }

    /** Whether boards were cut before at all. */
    public boolean wasCut() {
        return stays() > 0 || !gone.isEmpty();
    }

    /** How many parts stay. */
    public long stays() {
        return parts.stream().filter(Fate::stays).count();
    }

    /** Area of what is thrown away, m2. */
    public double thrownAway() {
        return gone.stream().mapToDouble(Gone::area).sum();
    }

    /** What is done, in a sentence. */
    public String sentence() {
        if (parts.isEmpty()) {
            return String.format(
                    Locale.ROOT,
                    "The job asks for no boards any more: what was cut before, %s, is thrown away, %.2f m2.",
                    count(gone.size()),
                    thrownAway());
        }
        if (!wasCut()) {
            return "No boards were cut before: all of the floor is cut, " + count(parts.size()) + ".";
        }
        String thrown = gone.isEmpty()
                ? "nothing cut before is thrown away."
                : String.format(
                        Locale.ROOT, "thrown away of what was cut: %s, %.2f m2.", count(gone.size()), thrownAway());
        return String.format(
                Locale.ROOT,
                "Boards: of %s %d stay%s, %d %s cut again; %s",
                count(parts.size()),
                stays(),
                stays() == 1 ? "s" : "",
                parts.size() - stays(),
                parts.size() - stays() == 1 ? "is" : "are",
                thrown);
    }

    private static String count(int parts) {
        return parts == 1 ? "1 part" : parts + " parts";
    }
}
