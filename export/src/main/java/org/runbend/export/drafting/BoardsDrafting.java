package org.runbend.export.drafting;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.runbend.catalog.product.Operation;
import org.runbend.catalog.source.Plain;
import org.runbend.export.data.BoardFiles;
import org.runbend.export.data.Stamp;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.ArcFitting;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.export.drawing.Vertex;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Making;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.FixingPlan;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Draws each stock board for a machine, its lower left corner at 0, 0: outlines, grooves as pockets, holes, labels in single
 * strokes, one note and nothing else; and an overview of where each part goes.
 */
public final class BoardsDrafting {
    private static final double LABEL = 18;
    private static final double LEAST_LABEL = 6;
    private static final double NOTE = 12;

    /** Radius of a screw's head as drawn. */
    private static final double SCREW_HEAD = 5;

    /** Chords of 3 degrees on radii up to 130 mm are out by 0.045 mm. */
    private static final ArcFitting.Limits CHORDS = new ArcFitting.Limits(0.002, 0.05, 7, 3, 2, 4);

    private BoardsDrafting() {}

    /**
     * The drawing of a stock board.
     *
     * @param sheet what is cut
     * @param layers how its layers are called
     */
    public record Board(Sheet sheet, MachineLayers layers) {}

    /** The boards of a plan by the names of their files, see {@link BoardFiles}. */
    public static Map<String, Board> boards(KitPlan plan) {
        Map<String, Board> all = new LinkedHashMap<>();
        plan.boards().ifPresent(p -> {
            List<List<String>> names = BoardFiles.names(p);
            for (int l = 0; l < p.layers().size(); l++) {
                for (int b = 0; b < p.layers().get(l).boards(); b++) {
                    String name = names.get(l).get(b);
                    all.put(name, board(plan, p.layers().get(l), b, name));
                }
            }
        });
        return all;
    }

    private static Board board(KitPlan plan, LayerPlan layer, int number, String name) {
        Making making = plan.boards().orElseThrow().problem().making();
        SheetBuilder sheet = new SheetBuilder(name);
        List<Part> parts = layer.on(number);
        boolean holes = false;
        boolean pockets = false;
        boolean ramps = false;
        for (Part part : parts) {
            for (List<org.runbend.optimizer.job.Point> pocket : part.pockets()) {
                sheet.add(Layer.CHANNEL, milled(part.onBoard(pocket)));
                pockets = true;
            }
            for (List<org.runbend.optimizer.job.Point> ramp : part.ramps()) {
                sheet.add(Layer.SLOT, milled(part.onBoard(ramp)));
                ramps = true;
            }
            for (List<org.runbend.optimizer.job.Point> opening : part.openings()) {
                sheet.add(Layer.HOLE, TrueArcs.of(Smooth.ring(Places.all(part.onBoard(opening)))));
                holes = true;
            }
            for (var round : part.rounds()) {
                sheet.add(Layer.HOLE, new Circle(Places.at(part.onBoard(round.centre())), round.radius()));
                holes = true;
            }
            sheet.add(Layer.FLOOR, TrueArcs.of(Smooth.ring(Places.all(part.onBoard(part.edge())))));
            label(sheet, part);
        }
        sheet.add(Layer.NOTE, new Paragraph(new Point(0, -20), NOTE, new BoardNote(plan, layer, number).lines(name)));
        double thick = layer.layer().thickness();
        MachineLayers names = new MachineLayers(plan.job().catalog().layers());
        names.with(Layer.TITLE, Operation.LABEL, 0, 0);
        if (pockets) {
            names.with(Layer.CHANNEL, Operation.POCKET, making.tool(), making.depth());
        }
        if (ramps) {
            names.with(Layer.SLOT, Operation.RAMP, making.tool(), thick);
        }
        if (holes) {
            names.with(Layer.HOLE, Operation.HOLE, making.tool(), thick);
        }
        names.with(Layer.FLOOR, Operation.CUT, making.tool(), thick).with(Layer.NOTE, Operation.NOTE, 0, 0);
        return new Board(sheet.build(), names);
    }

    /** A closed line whose arcs come as chords of 3 degrees, as true arcs again; flat corners beside joints stay corners. */
    private static Path milled(List<org.runbend.optimizer.job.Point> ring) {
        List<Vertex> corners =
                Smooth.ring(Places.all(ring)).stream().map(Vertex::straight).toList();
        return new Path(ArcFitting.fit(corners, true, CHORDS).vertices(), true);
    }

    /** The label where the part has most room around it, as large as goes. */
    private static void label(SheetBuilder sheet, Part part) {
        PartRoom room = PartRoom.of(part);
        Point best = Places.at(part.onBoard(
                new org.runbend.optimizer.job.Point(room.at().x(), room.at().y())));
        double reach = 1.1 * Math.hypot(StrokeLetters.width(part.label(), 1) / 2, 0.5);
        double height = Math.max(LEAST_LABEL, Math.min(LABEL, room.radius() / reach));
        double width = StrokeLetters.width(part.label(), height);
        for (Path stroke : StrokeLetters.of(best.plus(-width / 2, -height / 2), height, part.label())) {
            sheet.add(Layer.TITLE, stroke);
        }
    }

    /** Each layer of the floor beside the one below it, with the label of each part and the number of its board. */
    public static Sheet overview(KitPlan plan) {
        SheetBuilder sheet = new SheetBuilder("Boards " + plan.job().order());
        List<Point> outline = Places.all(plan.job().floor().outline());
        Extent floor = Extent.around(outline);
        double step = floor.width() * 1.15;
        double unit = Places.unit(floor);
        double letters = Math.max(25, 2.5 * unit);
        BoardsPlan boards = plan.boards().orElseThrow();
        for (int at = 0; at < boards.layers().size(); at++) {
            LayerPlan layer = boards.layers().get(at);
            List<String> files = BoardFiles.names(boards).get(at);
            double dx = at * step;
            new FloorMarks(sheet, new Labels(sheet), letters / 3)
                    .draw(moved(plan.job().floor(), dx));
            if (layer.layer().role() == Role.COVER) {
                plan.boards().flatMap(BoardsPlan::fixing).ifPresent(f -> fixing(sheet, f, dx));
            }
            for (Part part : layer.parts()) {
                sheet.add(Layer.BOARD, moved(Places.all(part.edge()), dx));
                part.openings().forEach(o -> sheet.add(Layer.HOLE, moved(Places.all(o), dx)));
                part.rounds()
                        .forEach(r -> sheet.add(
                                Layer.HOLE, new Circle(Places.at(r.centre()).plus(dx, 0), r.radius())));
                part.pockets().forEach(o -> sheet.add(Layer.CHANNEL, moved(Places.all(o), dx)));
                PartRoom room = PartRoom.of(part);
                sheet.add(
                        Layer.TITLE,
                        Text.level(
                                room.at().plus(dx, 0),
                                Math.min(letters, Math.max(letters / 2, room.radius() / 2)),
                                Anchor.MIDDLE_CENTRE,
                                part.label() + " ("
                                        + number(files.get(part.spot().board())) + ")"));
            }
            sheet.add(
                    Layer.NOTE,
                    new Paragraph(
                            new Point(floor.minX() + dx, floor.minY() - 3 * letters),
                            letters * 0.8,
                            List.of(
                                    layer.layer().name() + ", "
                                            + mm(layer.layer().thickness()) + " mm",
                                    layer.boards() + " x " + mm(layer.sheet().length()) + " x "
                                            + mm(layer.sheet().width()) + ": " + files.get(0)
                                            + (files.size() > 1 ? " to " + number(files.get(files.size() - 1)) : "")
                                            + "; in brackets: number of the file")));
        }
        sheet.add(
                Layer.TITLE,
                Text.level(
                        new Point(floor.minX(), floor.maxY() + 3 * letters),
                        letters,
                        Anchor.BOTTOM_LEFT,
                        "Boards from the bottom up, seen from above, order "
                                + plan.job().order() + (plan.isSound() ? "" : ": " + Stamp.DO_NOT_CUT)));
        return sheet.build();
    }

    /** The floor beside itself, with its marks and port and nothing on it. */
    private static Job.FloorPlan moved(Job.FloorPlan floor, double dx) {
        return new Job.FloorPlan(
                floor.outline().stream().map(p -> moved(p, dx)).toList(),
                floor.marks().stream()
                        .map(m -> new Job.FloorMark(m.text(), moved(m.at(), dx), m.edge()))
                        .toList(),
                List.of(),
                List.of(),
                new Job.Port(moved(floor.port().at(), dx), floor.port().reach()));
    }

    private static org.runbend.optimizer.job.Point moved(org.runbend.optimizer.job.Point p, double dx) {
        return new org.runbend.optimizer.job.Point(p.x() + dx, p.y());
    }

    private static String number(String file) {
        return file.substring(file.lastIndexOf('-') + 1);
    }

    /** Where screws go, and what no screw may go into. */
    private static void fixing(SheetBuilder sheet, FixingPlan fixing, double dx) {
        fixing.noScrew().forEach(r -> sheet.add(Layer.KEEP_OUT, moved(Places.all(r), dx)));
        fixing.screws()
                .forEach(
                        s -> sheet.add(Layer.SCREW, new Circle(Places.at(s.at()).plus(dx, 0), SCREW_HEAD)));
    }

    private static Path moved(List<Point> ring, double dx) {
        return TrueArcs.of(ring.stream().map(p -> p.plus(dx, 0)).toList());
    }

    private static String mm(double size) {
        return Plain.number(size);
    }
}
