package org.runbend.export.data;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsProblem.Making;
import org.runbend.optimizer.boards.FixingPlan;
import org.runbend.optimizer.job.Point;

/** The boards of a floor in {@code kit.json}: as they lie on the floor, and where each part lies on its stock board. */
final class BoardsJson {
    private BoardsJson() {}

    static void write(JsonOut out, BoardsPlan plan) throws IOException {
        Making making = plan.problem().making();
        out.open("boards")
                .number("height", plan.height())
                .number("weightPerSquareMetre", plan.weightPerSquareMetre())
                .number("jointGap", making.jointGap())
                .number("tolerance", making.tolerance())
                .number("kerf", making.kerf())
                .number("trim", making.trim())
                .list("layers", plan.layers(), layer -> layer(out, plan, layer))
                .list("packers", plan.problem().packers(), p -> {
                    out.text("under", p.name()).number("height", p.height());
                    ring(out, "edge", p.edge());
                });
        if (plan.fixing().isPresent()) {
            fixing(out, plan.fixing().get());
        }
        out.close();
    }

    private static void fixing(JsonOut out, FixingPlan fixing) throws IOException {
        out.open("fixing").text("kind", fixing.fixing().name().toLowerCase(Locale.ROOT));
        if (fixing.length().isPresent()) {
            out.number("screwLength", fixing.length().getAsDouble())
                    .number("screwsApart", fixing.problem().size().apart())
                    .number("farthest", fixing.farthest())
                    .list("screws", fixing.screws(), s -> out.text("board", s.board())
                            .point("at", s.at()));
        }
        out.list("noScrew", fixing.noScrew(), r -> ring(out, "edge", r)).close();
    }

    private static void layer(JsonOut out, BoardsPlan plan, BoardsPlan.LayerPlan layer) throws IOException {
        List<String> files = BoardFiles.names(plan).get(plan.layers().indexOf(layer)).stream()
                .map(BoardFiles::path)
                .toList();
        out.text("role", layer.layer().role().name().toLowerCase(Locale.ROOT))
                .text("material", layer.layer().material())
                .text("name", layer.layer().name())
                .number("thickness", layer.layer().thickness())
                .number("perimeterGap", layer.layer().perimeterGap())
                .open("stock")
                .number("length", layer.sheet().length())
                .number("width", layer.sheet().width())
                .whole("price", layer.sheet().price())
                .close()
                .whole("bought", layer.boards())
                .texts("files", files)
                .whole("bound", layer.bound())
                .whole("boundForJointsTried", layer.triedBound())
                .list("parts", layer.parts(), part -> part(out, part))
                .list("joints", layer.joints(), j -> out.point("from", j.from()).point("to", j.to()))
                .list("notKept", layer.breaches(), b -> out.text(
                                "wish", b.wish().name().toLowerCase(Locale.ROOT))
                        .point("at", b.at()));
    }

    private static void part(JsonOut out, BoardsPlan.Part part) throws IOException {
        out.text("label", part.label())
                .whole("board", part.spot().board())
                .point("at", new Point(part.spot().x(), part.spot().y()))
                .whole("quarterTurns", part.spot().quarters());
        ring(out, "edge", part.edge());
        out.list("openings", part.openings(), o -> ring(out, "edge", o))
                .list("rounds", part.rounds(), r -> out.point("centre", r.centre())
                        .number("radius", r.radius()))
                .list("pockets", part.pockets(), o -> ring(out, "edge", o))
                .list("ramps", part.ramps(), o -> ring(out, "edge", o));
    }

    private static void ring(JsonOut out, String key, List<Point> ring) throws IOException {
        out.points(key, ring);
    }
}
