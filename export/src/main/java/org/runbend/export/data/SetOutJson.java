package org.runbend.export.data;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.setout.Datum;
import org.runbend.optimizer.setout.SetOut;
import org.runbend.optimizer.tape.TapeSheet;

/**
 * How the floor is marked out, as JSON. Places are {@code [along, across]}: mm from the crossing of the two lines, which lies at
 * {@code datum.at} on the floor, along the base line and along the square line.
 */
final class SetOutJson {
    private SetOutJson() {}

    static void write(JsonOut out, SetOut marks) throws IOException {
        out.open("setOut");
        datum(out, marks.datum());
        out.list("lines", marks.lines(), line -> line(out, line));
        out.list("loops", marks.loops(), loop -> loop(out, loop));
        out.close();
    }

    private static void datum(JsonOut out, Datum datum) throws IOException {
        out.open("datum")
                .point("at", datum.frame().origin())
                .number("angle", datum.frame().angle())
                .numbers("base", List.of(datum.base().from(), datum.base().to()))
                .numbers("square", List.of(datum.square().from(), datum.square().to()))
                .open("check")
                .number("along", datum.check().along())
                .number("across", datum.check().across())
                .number("diagonal", datum.check().diagonal())
                .number("endToEnd", datum.check().endToEnd())
                .close()
                .list("marks", datum.marks(), mark -> mark(out, mark))
                .close();
    }

    private static void mark(JsonOut out, TapeSheet.Thing mark) throws IOException {
        out.text("name", mark.name()).point("at", mark.at()).list("ties", mark.ties(), tie -> {
            out.text("from", tie.from());
            if (tie.isFromSide()) {
                out.text("to", tie.to());
            }
            out.number("distance", tie.distance());
        });
    }

    private static void line(JsonOut out, SetOut.ChalkLine line) throws IOException {
        out.text("lie", line.lie().name().toLowerCase(Locale.ROOT))
                .number("offset", line.offset())
                .list("stops", line.stops(), stop -> out.text("loop", stop.loop())
                        .whole(stop.bends() ? "bend" : "run", stop.number())
                        .point("from", stop.from())
                        .point("to", stop.to()));
    }

    private static void loop(JsonOut out, SetOut.LoopMarks loop) throws IOException {
        out.text("name", loop.name())
                .point("flow", loop.flow())
                .point("return", loop.back())
                .list("runs", loop.runs(), run -> run(out, run))
                .list("bends", loop.bends(), bend -> bend(out, bend));
    }

    private static void run(JsonOut out, SetOut.RunMark run) throws IOException {
        out.whole("element", run.element())
                .whole("number", run.number())
                .text("lie", run.lie().name().toLowerCase(Locale.ROOT))
                .point("from", run.from())
                .point("to", run.to())
                .number("metre", run.metre());
        room(out, "left", run.left());
        room(out, "right", run.right());
    }

    private static void room(JsonOut out, String side, SetOut.Room room) throws IOException {
        if (Double.isFinite(room.distance())) {
            out.open(side)
                    .number("distance", room.distance())
                    .text("what", room.what())
                    .close();
        }
    }

    private static void bend(JsonOut out, SetOut.BendMark bend) throws IOException {
        out.whole("element", bend.element())
                .whole("number", bend.number())
                .point("centre", bend.centre())
                .number("radius", bend.radius())
                .number("turn", bend.turn())
                .point("from", bend.from())
                .point("to", bend.to())
                .number("metre", bend.metre())
                .number("endMetre", bend.endMetre());
    }
}
