package org.runbend.export.data;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.plan.BoardsChange;
import org.runbend.optimizer.plan.KitChange;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LoopChange;

/** What becomes of a kit that was cut before, as the object {@code changes} of {@code kit.json}. */
final class ChangeJson {
    private ChangeJson() {}

    static void write(JsonOut out, KitPlan plan, KitChange change) throws IOException {
        out.open("changes")
                .text("was", change.was().fingerprint())
                .flag("held", change.way().held())
                .text("way", change.how());
        out.open("pipe");
        pipe(out, change.pipe());
        out.close();
        List<String> names = change.was().loops().stream().map(l -> l.name()).toList();
        List<String> now = plan.loops().stream().map(KitPlan.LoopPlan::name).toList();
        out.list("gone", change.gone(), part -> part(out, names, part));
        out.list("added", change.added(), part -> part(out, now, part));
        out.list("plates", change.plates(), fate -> fate(out, fate));
        out.list("coils", change.pipes(), fate -> fate(out, fate));
        if (change.boards().isPresent()) {
            boards(out, change.boards().get());
        }
        if (change.afresh().isPresent()) {
            out.open("afresh");
            pipe(out, change.afresh().get());
            out.close();
        }
        out.texts("words", change.sentences());
        out.close();
    }

    private static void pipe(JsonOut out, LoopChange change) throws IOException {
        out.number("stays", change.stays())
                .number("goes", change.goes())
                .number("added", change.added())
                .number("thrownAway", KitChange.share(change));
        bends(out, "goneBends", change.goneBends());
        bends(out, "newBends", change.newBends());
    }

    private static void bends(JsonOut out, String key, BendCount bends) throws IOException {
        out.open(key)
                .whole("return", bends.returns())
                .whole("quarter", bends.quarters())
                .close();
    }

    private static void part(JsonOut out, List<String> names, KitChange.Part part) throws IOException {
        Element e = part.pipe();
        out.text("loop", names.get(part.loop()))
                .whole("element", part.element())
                .number("length", e.length())
                .point("from", e.from())
                .point("to", e.to());
        if (e instanceof Element.Bend bend) {
            out.point("centre", bend.centre()).number("radius", bend.radius()).number("turn", bend.turn());
        }
    }

    /** Areas in m2. */
    private static void boards(JsonOut out, BoardsChange boards) throws IOException {
        out.open("boards")
                .whole("stay", boards.stays())
                .whole("cutAgain", boards.parts().size() - boards.stays())
                .number("thrownAway", boards.thrownAway());
        out.list("parts", boards.parts(), part -> {
            out.text("label", part.label());
            board(out, part.of());
            out.number("area", part.area()).text("use", part.stays() ? "stays" : "cut-again");
            if (part.stays()) {
                out.text("was", part.was().orElseThrow());
            }
        });
        out.list("gone", boards.gone(), part -> {
            out.text("label", part.label());
            board(out, part.of());
            out.number("area", part.area());
        });
        out.close();
    }

    private static void board(JsonOut out, BoardsChange.Of of) throws IOException {
        out.text("role", of.role().name().toLowerCase(Locale.ROOT))
                .text("material", of.material())
                .number("thickness", of.thickness());
    }

    private static void fate(JsonOut out, KitChange.Fate fate) throws IOException {
        out.text("id", fate.id())
                .text("product", fate.product())
                .number("length", fate.length())
                .text("use", fate.use().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .numbers("cuts", fate.cuts())
                .number("left", fate.left());
    }
}
