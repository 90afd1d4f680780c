package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.export.drawing.Decimals;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/**
 * What a drawing says to programs, so that {@code outline} finds again what a job had: names, kinds, clearances, port. The
 * shapes themselves are those drawn; {@code outline.OwnDrawing} reads these lines.
 */
final class ReadBack {
    private ReadBack() {}

    /** Of the outline: title and order, port and products. */
    static List<String> floor(Job job) {
        List<String> notes = new ArrayList<>(List.of("is=floor", "unit=mm"));
        notes.add("job=" + job.title());
        notes.add("order=" + job.order());
        job.customer().ifPresent(c -> notes.add("customer=" + c));
        job.date().ifPresent(d -> notes.add("date=" + d));
        job.revision().ifPresent(r -> notes.add("revision=" + r));
        notes.add("port=" + xy(job.floor().port().at()));
        notes.add("reach=" + n(job.floor().port().reach()));
        notes.add("turn=" + job.floor().port().turn().name().toLowerCase(Locale.ROOT));
        if (!job.floor().port().holes().isEmpty()) {
            notes.add("holes="
                    + job.floor().port().holes().stream()
                            .map(h -> xy(h.flow()) + " " + xy(h.back()))
                            .collect(Collectors.joining(" ")));
        }
        for (int i = 0; i < job.floor().below().size(); i++) {
            Job.Below below = job.floor().below().get(i);
            notes.add("below" + i + "="
                    + below.region().corners().stream().map(ReadBack::xy).collect(Collectors.joining(" ")) + "|"
                    + below.name());
        }
        notes.add("spacing=" + n(job.layout().spacing()));
        notes.add("edge=" + n(job.layout().edge()));
        notes.add("pipe=" + job.pipe().product().sku());
        notes.add("plates="
                + job.plates().products().stream().map(SpreaderPlate::sku).collect(Collectors.joining(", ")));
        return notes;
    }

    /** Of the bare shape of a keep-out, or of the cross of one without a size. */
    static List<String> keepOut(KeepOut k, int number) {
        return List.of(
                "is=keepOut",
                "number=" + number,
                "name=" + k.name(),
                "kind=" + k.kind().name().toLowerCase(Locale.ROOT),
                "clearance=" + n(k.clearance() + ofPoint(k)));
    }

    /** The clearance of a point counts from the point itself, not from the disc that stands for the thing. */
    private static double ofPoint(KeepOut k) {
        return k.bare() instanceof Shape.Spot s ? s.radius() : 0;
    }

    static List<String> unheated(Job.Unheated cold) {
        return List.of("is=unheated", "name=" + cold.name());
    }

    static List<String> mark(Job.FloorMark mark) {
        return List.of("is=mark", "text=" + mark.text(), (mark.edge() < 0 ? "at=" : "side=") + xy(mark.at()));
    }

    static List<String> support(Support s) {
        return List.of(
                "is=support",
                "name=" + s.name(),
                "line=" + xy(s.from()) + " " + xy(s.to()),
                "width=" + n(s.width()),
                "cross=" + s.cross().name().toLowerCase(Locale.ROOT));
    }

    private static String xy(Point p) {
        return n(p.x()) + " " + n(p.y());
    }

    private static String n(double value) {
        return Decimals.of(value, 3);
    }
}
