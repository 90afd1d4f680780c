package org.runbend.export.data;

import java.io.IOException;
import java.util.List;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.tape.TapeSheet;

/** The floor in kit.json: what its confirmation says of it. */
final class FloorJson {
    private FloorJson() {}

    static void write(JsonOut out, Job job, TapeSheet tape) throws IOException {
        out.open("floor").text("fingerprint", job.floor().fingerprint());
        out.number("width", tape.width()).number("height", tape.height());
        out.list("corners", tape.corners(), c -> out.text("name", c.name()).point("at", c.at()));
        out.list("sides", tape.sides(), s -> out.text("from", s.from())
                .text("to", s.to())
                .number("length", s.length())
                .number("rise", s.rise()));
        out.list("diagonals", tape.diagonals(), d -> out.text("from", d.from())
                .text("to", d.to())
                .number("length", d.length()));
        if (!job.measured().isEmpty()) {
            measured(out, job.measured());
        }
        out.open("port");
        thing(out, tape.port());
        out.close();
        out.list("keepOuts", tape.keepOuts(), t -> thing(out, t));
        out.list("unheated", tape.unheated(), t -> thing(out, t));
        out.list("below", tape.below(), t -> thing(out, t));
        out.list("supports", tape.supports(), t -> thing(out, t));
        out.list("marks", tape.marks(), t -> thing(out, t));
        out.texts("assumptions", job.written().assumptions()).close();
    }

    private static void measured(JsonOut out, List<Job.MeasuredLength> lengths) throws IOException {
        out.list("measured", lengths, m -> out.text("from", m.from())
                .text("to", m.to())
                .number("length", m.length())
                .number("adjusted", m.adjusted())
                .number("residual", m.residual()));
    }

    private static void thing(JsonOut out, TapeSheet.Thing thing) throws IOException {
        out.text("name", thing.name());
        out.list("ties", thing.ties(), t -> {
            out.text("from", t.from());
            if (t.isFromSide()) {
                out.text("to", t.to());
            }
            out.number("distance", t.distance());
        });
    }
}
