package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatReckoning;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.LoopHeat;
import org.runbend.optimizer.heat.field.Band;
import org.runbend.optimizer.heat.field.FieldProblem;
import org.runbend.optimizer.heat.field.PipeBand;
import org.runbend.optimizer.heat.field.Ring;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plates.PlatePiece;

/**
 * Turns a finished plan into the floor whose temperatures are reckoned: plates and pipe in their places, the coolant cooling along each
 * loop. Keep-outs with an area are no floor.
 */
public final class TemperaturePart {
    /** Cells of the raster, mm. */
    public static final double CELL = 10;

    private final KitPlan plan;
    private final HeatProblem heat;
    private final HeatSolution solution;

    private TemperaturePart(KitPlan plan, HeatProblem heat, HeatSolution solution) {
        this.plan = plan;
        this.heat = heat;
        this.solution = solution;
    }

    /** The floor of a plan with what its heat was reckoned to be. */
    public static FieldProblem problem(KitPlan plan, HeatProblem heat, HeatSolution solution) {
        return new TemperaturePart(plan, heat, solution).problem();
    }

    private FieldProblem problem() {
        Job job = plan.job();
        List<Ring> holes = job.floor().keepOuts().stream()
                .filter(k -> k.bare() instanceof Shape.Polygon)
                .map(TemperaturePart::ring)
                .toList();
        return new FieldProblem(
                CELL,
                ring(job.floor().outline()),
                holes,
                plates(),
                pipes(),
                heat.build().stack(),
                heat.build().pipe(),
                sheet(),
                new Contact(HeatReckoning.USUAL_GAP, solution.loops().get(0).film()),
                job.layout().spacing(),
                heat.surroundings().room(),
                heat.surroundings().outside());
    }

    private static Ring ring(KeepOut keepOut) {
        return ring(((Shape.Polygon) keepOut.bare()).corners());
    }

    private static Ring ring(List<Point> corners) {
        return new Ring(corners.stream().map(p -> new Ring.Corner(p.x(), p.y())).toList());
    }

    /** All plates count as of the sheet that most of the plated pipe lies in. */
    private Plate sheet() {
        return heat.loops().stream()
                .flatMap(l -> l.strips().stream())
                .filter(s -> s.plate().isPresent())
                .reduce((a, b) -> a.length() >= b.length() ? a : b)
                .flatMap(s -> s.plate())
                .orElse(new Plate(0.5, Plate.ALUMINIUM));
    }

    private List<Band> plates() {
        List<Band> bands = new ArrayList<>();
        for (PlatePiece piece : plan.plates().pieces()) {
            SpreaderPlate plate = product(piece.product());
            List<Element.Run> lines =
                    piece.places().stream().map(p -> part(p, piece.length())).toList();
            for (Element.Run line : lines) {
                bands.add(band(plate, line, lines));
            }
        }
        return bands;
    }

    private SpreaderPlate product(String sku) {
        return plan.job().catalog().plates().stream()
                .filter(p -> p.sku().equals(sku))
                .findFirst()
                .orElseThrow();
    }

    private Element.Run part(PlatePiece.Place place, double length) {
        Element.Run run = (Element.Run)
                plan.loops().get(place.loop()).breakdown().elements().get(place.element());
        return new Element.Run(run.along(place.from()), run.along(place.from() + length));
    }

    /** A groove of a twin plate has the other one on one side; each takes its half of what lies between. */
    private static Band band(SpreaderPlate plate, Element.Run line, List<Element.Run> all) {
        double outer = plate.grooves() == 1 ? plate.width() / 2 : (plate.width() - plate.centres()) / 2;
        double left = outer;
        double right = outer;
        for (Element.Run other : all) {
            double side = (line.to().x() - line.from().x())
                            * (other.from().y() - line.from().y())
                    - (line.to().y() - line.from().y())
                            * (other.from().x() - line.from().x());
            if (!other.equals(line) && side > 0) {
                left = plate.centres() / 2;
            } else if (!other.equals(line)) {
                right = plate.centres() / 2;
            }
        }
        return new Band(
                line.from().x(), line.from().y(), line.to().x(), line.to().y(), left, right);
    }

    private List<PipeBand> pipes() {
        List<PipeBand> bands = new ArrayList<>();
        for (int i = 0; i < plan.loops().size(); i++) {
            addLoop(i, bands);
        }
        return bands;
    }

    private void addLoop(int loop, List<PipeBand> bands) {
        Breakdown pipe = plan.loops().get(loop).breakdown();
        LoopHeat heats = solution.loops().get(loop);
        double whole = pipe.floorLength();
        double gone = 0;
        for (int e = 0; e < pipe.elements().size(); e++) {
            Element element = pipe.elements().get(e);
            List<Stretch> stretches = element instanceof Element.Run run ? split(loop, e, run) : chords(element);
            for (Stretch s : stretches) {
                double from = heats.supply() + gone / whole * (heats.back() - heats.supply());
                gone += s.from().distance(s.to());
                double to = heats.supply() + Math.min(1, gone / whole) * (heats.back() - heats.supply());
                bands.add(new PipeBand(s.from().x(), s.from().y(), s.to().x(), s.to().y(), s.plated(), from, to));
            }
        }
    }

    private record Stretch(Point from, Point to, boolean plated) {}

    private static List<Stretch> chords(Element element) {
        List<Stretch> stretches = new ArrayList<>();
        Point last = element.from();
        for (Point p : Centreline.onwards(element)) {
            stretches.add(new Stretch(last, p, false));
            last = p;
        }
        return stretches;
    }

    /** A run as stretches with plates and without. */
    private List<Stretch> split(int loop, int element, Element.Run run) {
        List<double[]> plated = new ArrayList<>();
        for (PlatePiece piece : plan.plates().pieces()) {
            for (PlatePiece.Place p : piece.places()) {
                if (p.loop() == loop && p.element() == element) {
                    plated.add(new double[] {p.from(), p.from() + piece.length()});
                }
            }
        }
        plated.sort((a, b) -> Double.compare(a[0], b[0]));
        List<Stretch> stretches = new ArrayList<>();
        double at = 0;
        for (double[] p : plated) {
            add(stretches, run, at, p[0], false);
            add(stretches, run, Math.max(at, p[0]), p[1], true);
            at = Math.max(at, p[1]);
        }
        add(stretches, run, at, run.length(), false);
        return stretches;
    }

    private static void add(List<Stretch> stretches, Element.Run run, double from, double to, boolean plated) {
        if (to - from > 1e-6) {
            stretches.add(new Stretch(run.along(from), run.along(to), plated));
        }
    }
}
