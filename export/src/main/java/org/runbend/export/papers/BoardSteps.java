package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.export.data.TapeText;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.FixingPlan;
import org.runbend.optimizer.plan.KitPlan;

/** What changes on a fitting sheet where the floor comes as boards that are cut, and perhaps routed, beforehand. */
final class BoardSteps {
    private final Optional<BoardsPlan> boards;
    private final TapeText tape;

    BoardSteps(KitPlan plan) {
        boards = plan.boards();
        tape = new TapeText(plan.job());
    }

    /** Whether a machine routs the grooves before the boards come. */
    boolean areRouted() {
        return boards.map(BoardsPlan::areRouted).orElse(false);
    }

    /** How they lie. */
    void laid(Steps steps) {
        boards.ifPresent(plan -> {
            List<String> layers = new ArrayList<>();
            for (BoardsPlan.LayerPlan layer : plan.layers()) {
                layers.add(
                        layer.layer().name() + ", " + tape.beside(layer.layer().thickness()) + ", in "
                                + layer.parts().size() + (layer.parts().size() == 1 ? " part, " : " parts, ")
                                + tape.beside(layer.layer().perimeterGap()) + " off walls and things");
            }
            steps.step("Boards lie as boards.svg shows them, each part where its label stands, from below: "
                    + String.join("; ", layers) + "; "
                    + tape.beside(plan.problem().making().jointGap()) + " between parts.");
        });
    }

    /** How the cover is held. */
    Optional<String> held() {
        return boards.flatMap(BoardsPlan::fixing).map(this::held);
    }

    private String held(FixingPlan fixing) {
        return switch (fixing.fixing()) {
            case SCREW ->
                fixing.screws().size() + " screws of "
                        + tape.beside(fixing.length().orElse(0))
                        + " hold it, where boards.svg shows them and nowhere else.";
            case GLUE -> "It is glued; boards.svg shows where nobody may screw.";
            case FLOAT -> "It lies loose; boards.svg shows where nobody may screw.";
        };
    }
}
