package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.heat.FlowWish;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.LoopHeat;
import org.runbend.optimizer.heat.circuit.WarmUp;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.flow.BalanceSolution;
import org.runbend.optimizer.heat.flow.LoopLosses;
import org.runbend.optimizer.heat.flow.LoopPath;
import org.runbend.optimizer.heat.flow.PumpCurve;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.heat.output.FloorOutput;
import org.runbend.optimizer.heat.output.Stack;
import org.runbend.optimizer.heat.output.StripOutput;
import org.runbend.optimizer.job.Job;

/**
 * The heat report of a floor: what it gives, flow and pump, limits, warm-up, what was assumed. Every figure can be followed from those
 * printed with it.
 */
public final class HeatPaper {
    private static final double CURVE_HEIGHT = 58;

    private static final List<String> CAUTIONS = List.of(
            "These are figures of a floor as it is drawn; a floor badly built is colder, or hotter in places.",
            "Coolant gets hot: let the system cool down before you open it.",
            "Work on the heater, on gas, fuel and mains is for licensed people.",
            "Local codes and the instructions of the makers go before this paper.");

    private final Job job;
    private final HeatProblem problem;
    private final HeatSolution heat;
    private final String warning;

    private HeatPaper(Job job, HeatProblem problem, HeatSolution heat, String warning) {
        this.job = job;
        this.problem = problem;
        this.heat = heat;
        this.warning = warning;
    }

    /** The paper, a PDF; {@code warning} stands over every page, may be empty. */
    public static byte[] bytes(Job job, HeatProblem problem, HeatSolution heat, String warning) {
        return new HeatPaper(job, problem, heat, warning).bytes();
    }

    private byte[] bytes() {
        String name = "Heat report " + job.order();
        try (PdfDocument document = new PdfDocument(name + ": " + job.title(), "en", PageFormat.A4)) {
            document.footer("order " + job.order() + ", " + job.title()
                    + job.revision().map(r -> ", revision " + r).orElse(""));
            document.warning(warning);
            PdfFlow flow = new PdfFlow(document);
            flow.title(name).paragraph(job.title() + ", from " + job.catalog().workshop());
            output(flow);
            flowOf(flow);
            limits(flow);
            warmUp(flow);
            list(flow, "What a fitter must know", heat.notes());
            list(flow, "What was assumed", heat.assumptions());
            list(flow, "Take care", CAUTIONS);
            return document.toBytes();
        }
    }

    private void output(PdfFlow flow) {
        HeatSolution.Output o = heat.output();
        flow.heading("What the floor gives")
                .paragraph(String.format(
                        Locale.ROOT,
                        "%s W into a room of %s degrees C (%s to %s W for 0.2 to 0 mm of air between pipe and plate), %s W to the"
                                + " outside at %s degrees C. Surface %s degrees C in the mean, %s at its hottest where the loop begins.",
                        three(o.upward()),
                        one(problem.surroundings().room()),
                        three(o.upwardLeast()),
                        three(o.upwardMost()),
                        three(o.downward()),
                        one(problem.surroundings().outside()),
                        one(o.surfaceMean()),
                        one(o.surfacePeak())));
        heat.need()
                .ifPresent(n -> flow.paragraph(String.format(
                        Locale.ROOT,
                        "The room needs %s W; the floor covers %.0f %%, %s W remain for air heating.",
                        three(n.need()),
                        100 * n.share(),
                        three(n.remaining()))));
        PdfTable table = new PdfTable(
                Column.left("floor", 4),
                Column.right("m2", 2),
                Column.right("up W/m2K", 2.4),
                Column.right("down W/m2K", 2.6),
                Column.right("through W/m2K", 2.9),
                Column.right("up W/m2", 2.2),
                Column.right("mean \u00b0C", 2),
                Column.right("peak \u00b0C", 2));
        for (FloorOutput.ZoneOutput z : o.zones()) {
            StripOutput s = z.zone().output();
            table.row(
                    z.zone().kind().words(),
                    two(z.zone().area()),
                    two(s.up()),
                    two(s.down()),
                    two(s.exchange()),
                    one(z.upward()),
                    one(z.surfaceMean()),
                    one(z.surfacePeak()));
        }
        flow.table(table);
        Stack k = problem.build().stack();
        flow.paragraph(
                String.format(
                        Locale.ROOT,
                        "q up = up x (coolant - room) + through x (outside - room); surface = room + q / %s; coolant %s degrees C"
                                + " in the mean. Cover %s mm of %s W/(m K), finish %s m2K/W, foam %s mm of %s W/(m K) under the"
                                + " pipe. Method of fins (Hottel, Whillier, Bliss), fitted to finite elements.",
                        one(k.surface()),
                        one(heat.loops().get(0).mean()),
                        one(k.cover()),
                        two(k.coverConductivity()),
                        two(k.finish()),
                        one(k.foam()),
                        String.format(Locale.ROOT, "%.3f", k.foamConductivity())),
                TextStyle.SMALL);
        o.standard()
                .ifPresent(b -> flow.paragraph(
                        String.format(
                                Locale.ROOT,
                                "EN 1264-2 type B for the plated floor: %s W/m2 for each kelvin of the logarithmic mean%s%s.",
                                two(b.up()),
                                b.valid() ? "" : ", out of the range of the standard",
                                b.extrapolated() ? ", beyond its tables" : ""),
                        TextStyle.SMALL));
    }

    private void flowOf(PdfFlow flow) {
        flow.heading("Flow and pump");
        PdfTable table = new PdfTable(
                Column.left("loop", 2.5),
                Column.right("l/min", 2),
                Column.right("m/s", 2),
                Column.right("Reynolds", 2.9),
                Column.right("in \u00b0C", 2),
                Column.right("out \u00b0C", 2),
                Column.right("kPa", 2),
                Column.right("W up", 2),
                Column.right("W down", 2.2),
                Column.right("throttle kPa", 2.4),
                Column.right("Kv m3/h", 2.4));
        for (int i = 0; i < heat.loops().size(); i++) {
            LoopHeat l = heat.loops().get(i);
            int at = i;
            table.row(
                    l.name(),
                    two(l.losses().flow()),
                    two(l.losses().velocity()),
                    three(l.losses().reynolds()),
                    one(l.supply()),
                    one(l.back()),
                    one(l.losses().total()),
                    three(l.upward()),
                    three(l.downward()),
                    heat.balance()
                            .map(b -> one(b.settings().get(at).throttled()))
                            .orElse("-"),
                    heat.balance().map(b -> kv(b.settings().get(at))).orElse("-"));
        }
        flow.table(table);
        pressures(flow);
        flow.paragraph(String.format(
                Locale.ROOT,
                "Coolant: %s, %s l in all, %s l of glycol in it. It grows by %s l when warm; %s. Flush with %s l/min or more a loop.",
                problem.supply().mixture().words(),
                two(heat.filling().litres()),
                two(heat.filling().glycol()),
                two(heat.expansion().litres()),
                problem.circuit().closed()
                        ? "the vessel holds " + one(heat.expansion().room()) + " l or more"
                        : "the header tank needs " + two(heat.expansion().room()) + " l over its cold mark",
                one(heat.flow().flushing())));
        if (problem.supply().flow() instanceof FlowWish.ByPump pump) {
            flow.drawing(pumpCurve(pump.curve()), CURVE_HEIGHT);
        }
    }

    /** What the pressure of each loop is made of. */
    private void pressures(PdfFlow flow) {
        CoolantProperties c = heat.flow().coolant();
        StringBuilder words = new StringBuilder(String.format(
                Locale.ROOT,
                "Coolant at its mean: %.0f kg/m3, %.0f J/(kg K), %.3f mPa s.",
                c.density(),
                c.heatCapacity(),
                1000 * c.viscosity()));
        for (int i = 0; i < heat.loops().size(); i++) {
            LoopPath path = problem.loops().get(i).path();
            LoopLosses l = heat.loops().get(i).losses();
            words.append(String.format(
                    Locale.ROOT,
                    " %s: %.2f m straight, tails with it, in a bore of %.1f mm at a friction factor of %.4f take %.2f kPa, bends %.2f,"
                            + " fittings %.2f.",
                    heat.loops().get(i).name(),
                    path.straight() / 1000,
                    path.bore(),
                    l.friction(),
                    l.straights(),
                    l.bends(),
                    l.fittings()));
        }
        flow.paragraph(
                words.append(" Darcy and Weisbach; Churchill 1977, White 1929, Rennels 2012.")
                        .toString(),
                TextStyle.SMALL);
    }

    private Sheet pumpCurve(PumpCurve curve) {
        List<Point> points =
                curve.points().stream().map(p -> new Point(p.flow(), p.head())).toList();
        double most =
                curve.points().stream().mapToDouble(PumpCurve.Point::head).max().orElse(1);
        Diagram diagram = new Diagram(
                "Pump curve",
                Diagram.Axis.over("flow, l/min", 0, curve.greatest()),
                Diagram.Axis.over("head, kPa", 0, Math.max(most, 1)));
        diagram.curve(Layer.PIPE, "pump", points);
        diagram.point(
                new Point(heat.flow().volume(), heat.flow().pumpHead()),
                two(heat.flow().volume()) + " l/min at " + one(heat.flow().pumpHead()) + " kPa");
        return diagram.sheet();
    }

    private void limits(PdfFlow flow) {
        PdfTable table = new PdfTable(
                Column.left("limit", 7.2),
                Column.right("found", 2.3),
                Column.right("limit", 2.3),
                Column.left("unit", 1.7),
                Column.left("verdict", 2),
                Column.left("limit from", 6.8));
        for (Finding f : heat.findings()) {
            table.row(
                    f.name(),
                    figure(f.value()),
                    figure(f.limit()),
                    f.unit().replace("degrees C", "\u00b0C"),
                    f.verdict().name().toLowerCase(Locale.ROOT),
                    f.source());
        }
        flow.heading("Limits").table(table);
        flow.paragraph(String.format(
                Locale.ROOT,
                "Highest supply that keeps every limit: %s degrees C (%s).",
                one(Math.floor(10 * heat.highestSupply().celsius()) / 10),
                heat.highestSupply().name()));
    }

    private void warmUp(PdfFlow flow) {
        List<WarmUp.Point> points = heat.warmUp().points();
        double least = points.stream()
                .mapToDouble(p -> Math.min(p.surface(), p.coolant()))
                .min()
                .orElse(0);
        double most = points.stream()
                .mapToDouble(p -> Math.max(p.surface(), p.coolant()))
                .max()
                .orElse(1);
        Diagram diagram = new Diagram(
                "Warm-up",
                Diagram.Axis.over("minutes", 0, points.size() - 1.0),
                Diagram.Axis.over("degrees C", least, Math.max(most, least + 1)));
        diagram.curve(Layer.PIPE, "coolant", curve(points, WarmUp.Point::coolant));
        diagram.curve(Layer.KEEP_OUT, "plate", curve(points, WarmUp.Point::sensor));
        diagram.curve(Layer.PLATE, "surface", curve(points, WarmUp.Point::surface));
        flow.heading("Warm-up").drawing(diagram.sheet(), CURVE_HEIGHT);
        PdfTable table = new PdfTable(
                Column.right("minute", 2),
                Column.right("coolant \u00b0C", 3),
                Column.right("plate \u00b0C", 3),
                Column.right("surface \u00b0C", 3));
        for (WarmUp.Point p : points) {
            if (p.minute() % 10 == 0) {
                table.row(Integer.toString(p.minute()), one(p.coolant()), one(p.sensor()), one(p.surface()));
            }
        }
        flow.table(table);
    }

    private interface Reading {
        double of(WarmUp.Point p);
    }

    private static List<Point> curve(List<WarmUp.Point> points, Reading reading) {
        List<Point> curve = new ArrayList<>();
        points.forEach(p -> curve.add(new Point(p.minute(), reading.of(p))));
        return curve;
    }

    private static void list(PdfFlow flow, String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            flow.heading(heading);
            lines.forEach(line -> flow.item("\u2022", 5, line));
        }
    }

    private static String kv(BalanceSolution.Setting setting) {
        return Double.isInfinite(setting.kv()) ? "open" : two(setting.kv());
    }

    /** Three figures. */
    static String three(double value) {
        if (value == 0 || !Double.isFinite(value)) {
            return "0";
        }
        double power = Math.pow(10, Math.floor(Math.log10(Math.abs(value))) - 2);
        double rounded = Math.rint(value / power) * power;
        return power >= 1
                ? String.format(Locale.ROOT, "%.0f", rounded)
                : Decimals.of(rounded, (int) Math.max(0, Math.min(6, -Math.log10(power))));
    }

    private static String figure(double value) {
        return Math.abs(value) >= 100 ? three(value) : one(value);
    }

    private static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    private static String two(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
