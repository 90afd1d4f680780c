package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.runbend.catalog.source.Plain;
import org.runbend.export.data.Stamp;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Making;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** The one note on the drawing of a stock board: what a shop that has this file alone must know. */
final class BoardNote {
    private final KitPlan plan;
    private final LayerPlan layer;
    private final int number;

    /** A note for a board of a layer, by its number from 0. */
    BoardNote(KitPlan plan, LayerPlan layer, int number) {
        this.plan = plan;
        this.layer = layer;
        this.number = number;
    }

    /** Its lines; {@code file} is the name of the file, without ending. */
    List<String> lines(String file) {
        List<String> lines = new ArrayList<>();
        if (!plan.isSound()) {
            lines.add(Stamp.DO_NOT_CUT);
        }
        lines.add(layer.layer().name() + ", " + mm(layer.layer().thickness()) + " mm thick, "
                + mm(layer.sheet().length()) + " x " + mm(layer.sheet().width()) + " mm: " + file + ", board "
                + (number + 1) + " of " + layer.boards() + ", cut 1");
        lines.add(parts());
        lines.addAll(operations());
        lines.add(gaps());
        Job job = plan.job();
        lines.add("order " + job.order()
                + job.revision().map(r -> ", revision " + r).orElse("") + ", fingerprint "
                + job.fingerprint().substring(0, 12) + "; 1:1, mm, 0,0 is the board's lower left corner");
        return lines.stream().map(l -> String.join(" ", Wording.lines(l))).toList();
    }

    private String parts() {
        List<Part> parts = layer.on(number);
        return parts.size() + (parts.size() == 1 ? " part: " : " parts: ")
                + parts.stream().map(Part::label).collect(Collectors.joining(", ")) + "; face up, none mirrored; "
                + (layer.layer().grain() ? "grain along x" : "no grain") + "; labels engraved or by pen";
    }

    private List<String> operations() {
        Making making = plan.boards().orElseThrow().problem().making();
        List<Part> parts = layer.on(number);
        List<String> lines = new ArrayList<>();
        String tool = "tool dia " + mm(making.tool());
        if (layer.layer().role() == Role.ROUTED) {
            boolean channels = parts.stream().anyMatch(p -> !p.pockets().isEmpty());
            lines.add("channel face up"
                    + (channels
                            ? ": channels " + mm(making.depth()) + " mm deep from the top, " + tool
                                    + ", inside; at joints they run out over the edge"
                            : "; no channels on this board"));
        }
        if (parts.stream().anyMatch(p -> !p.ramps().isEmpty())) {
            lines.add("ramps where pipe turns down: through, " + tool + ", inside");
        }
        boolean openings = parts.stream()
                .anyMatch(p -> !p.openings().isEmpty() || !p.rounds().isEmpty());
        lines.add((openings ? "openings through, " + tool + ", inside; " : "")
                + (making.saw()
                        ? "outlines sawn through from edge to edge, notches by " + tool
                        : "outlines through, " + tool + ", outside, last"));
        return lines;
    }

    private String gaps() {
        Making making = plan.boards().orElseThrow().problem().making();
        return "gaps are taken off already: joints " + mm(making.jointGap()) + ", walls "
                + mm(layer.layer().perimeterGap()) + " and " + mm(making.tolerance())
                + " for the tolerance of the measured floor; parts to +-0.3";
    }

    private static String mm(double size) {
        return Plain.number(size);
    }
}
