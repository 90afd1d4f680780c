package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.runbend.catalog.product.Board;
import org.runbend.catalog.product.Coolant;
import org.runbend.catalog.product.InsulationStack;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.heat.BareFloor;
import org.runbend.optimizer.heat.FloorBuild;
import org.runbend.optimizer.heat.FlowRequest;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatRequest;
import org.runbend.optimizer.heat.HeatedLoop;
import org.runbend.optimizer.heat.PipeStrip;
import org.runbend.optimizer.heat.Supply;
import org.runbend.optimizer.heat.Surroundings;
import org.runbend.optimizer.heat.circuit.FloorMass;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.coolant.Mixture;
import org.runbend.optimizer.heat.flow.Bend;
import org.runbend.optimizer.heat.flow.LoopPath;
import org.runbend.optimizer.heat.flow.PumpCurve;
import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.Side;
import org.runbend.optimizer.heat.output.Stack;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * Turns a finished plan into what heat and flow need: lengths of pipe in each plate, without, in bends; areas; layers; coolant and pump.
 * Widths are scaled so that the strips of pipe have the area of the floor beside pipe, neither more nor less.
 */
public final class HeatPart {
    /** Insulation whose catalog knows none, W/(m K): extruded foam, EN ISO 10456. */
    private static final double FOAM = 0.034;

    /** Two elbows and two couplings, over the velocity head (common practice). */
    private static final double FITTINGS = 4;

    /** From cold: a vehicle or hut kept free of frost (our choice), degrees C. */
    private static final double COLD = 10;

    private static final double WOOD = 1600;

    /** 30 mm of foam, 12 mm of ply, no finish (common practice). */
    private static final Job.Build USUAL_BUILD = new Job.Build(30, 12, "", 0, Optional.empty());

    /** Slivers that come of areas cut out of each other, m2. */
    private static final double LEAST_AREA = 0.005;

    private static final double LEAST_SCALE = 0.3;
    private static final double MOST_SCALE = 2;

    private final Job job;
    private final List<KitPlan.LoopPlan> loops;
    private final PlatePlan plates;
    private final HeatRequest request;

    private HeatPart(Job job, List<KitPlan.LoopPlan> loops, PlatePlan plates, HeatRequest request) {
        this.job = job;
        this.loops = loops;
        this.plates = plates;
        this.request = request;
    }

    /** The problem, where the job says what the floor is built of and what heats it. */
    public static Optional<HeatProblem> problem(Job job, List<KitPlan.LoopPlan> loops, PlatePlan plates) {
        return problem(
                job, loops, plates, job.heating().map(Job.Heating::request).orElse(HeatRequest.NONE));
    }

    /** The same with what else the job says of heat. */
    public static Optional<HeatProblem> problem(
            Job job, List<KitPlan.LoopPlan> loops, PlatePlan plates, HeatRequest request) {
        if (job.build().isEmpty() || job.heating().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new HeatPart(job, loops, plates, request).problem());
    }

    private HeatProblem problem() {
        List<Breakdown> pipes = loops.stream().map(KitPlan.LoopPlan::breakdown).toList();
        HeatAreas areas = HeatAreas.of(job, pipes);
        List<List<PipeStrip>> strips = new ArrayList<>();
        for (int i = 0; i < loops.size(); i++) {
            strips.add(strips(i));
        }
        double nominal = strips.stream()
                .flatMap(List::stream)
                .mapToDouble(PipeStrip::area)
                .sum();
        double scale = Math.max(LEAST_SCALE, Math.min(MOST_SCALE, areas.besidePipe() / nominal));
        List<HeatedLoop> heated = new ArrayList<>();
        for (int i = 0; i < loops.size(); i++) {
            List<PipeStrip> scaled =
                    strips.get(i).stream().map(s -> scaled(s, scale)).toList();
            heated.add(loop(loops.get(i), scaled));
        }
        Job.Heating heating = job.heating().orElseThrow();
        return new HeatProblem(
                build(job, request),
                heated,
                Stream.of(
                                new BareFloor(FloorZone.Kind.BARE, areas.bare(), areas.bareEdge()),
                                new BareFloor(FloorZone.Kind.UNHEATED, areas.unheated(), areas.unheatedEdge()))
                        .filter(b -> b.area() >= LEAST_AREA)
                        .toList(),
                supply(heating),
                new Surroundings(
                        heating.room(),
                        heating.outside(),
                        request.start().orElse(Math.min(COLD, heating.room())),
                        request.space(),
                        request.humidity(),
                        request.bath(),
                        request.sleeping(),
                        request.metalUnder()),
                request.circuit());
    }

    private Supply supply(Job.Heating heating) {
        Coolant coolant = job.catalog().findCoolant(heating.coolant()).orElseThrow();
        return new Supply(
                Mixture.ofVolume(coolant.base(), coolant.share()),
                heating.flow(),
                highestOfSource(),
                heating.coldest().isPresent() ? Optional.of(heating.coldest().getAsDouble()) : Optional.empty(),
                flow(heating));
    }

    /** As given, or the highest that the circuit's source can bring. */
    private Optional<Double> highestOfSource() {
        if (request.source().isPresent()) {
            return Optional.of(request.source().getAsDouble());
        }
        return request.circuit().source().filter(HeatSource::reachesFloor).map(HeatSource::highest);
    }

    private FlowRequest flow(Job.Heating heating) {
        if (request.volumeFlow().isPresent()) {
            return new FlowRequest.ByVolume(request.volumeFlow().getAsDouble());
        }
        Optional<FlowRequest> pump = heating.pump()
                .flatMap(p -> job.catalog().findPump(p))
                .map(p -> new FlowRequest.ByPump(PumpCurve.of(p)));
        return pump.orElseGet(() -> request.spread().isPresent()
                ? new FlowRequest.BySpread(request.spread().getAsDouble())
                : FlowRequest.BySpread.USUAL);
    }

    /** What a job's floor is made of; a job that does not say so has the usual build-up. */
    static FloorBuild build(Job job, HeatRequest request) {
        return build(job, job.build().orElse(USUAL_BUILD), request);
    }

    /** The usual build-up round a job's pipe. */
    static FloorBuild usualBuild(Job job) {
        return build(job, USUAL_BUILD, HeatRequest.NONE);
    }

    private static FloorBuild build(Job job, Job.Build build, HeatRequest request) {
        Optional<Board> cover = job.catalog().boards().stream()
                .filter(b -> b.sku().equals(build.coverMaterial()))
                .findFirst();
        Optional<InsulationStack> foam = InsulationStack.of(job.catalog(), build.laidUnder());
        double laid = foam.map(InsulationStack::thickness).orElse(build.laidUnder());
        double stays = build.board().map(Job.RoutedBoard::insulating).orElse(0.0);
        Stack stack = Stack.of(
                build.coverThickness(),
                cover.map(Board::conductivity).orElse(0.13),
                build.finishResistance(),
                laid + stays,
                inSeries(
                        laid,
                        foam.map(f -> f.board().conductivity()).orElse(FOAM),
                        stays,
                        build.board().map(b -> b.board().conductivity()).orElse(FOAM)));
        Pipe pipe = job.pipe().product();
        return new FloorBuild(
                stack,
                wall(pipe),
                cover.map(b -> b.density() * WOOD).orElse(FloorMass.PLY),
                pipe.maxTemperature().isPresent()
                        ? Optional.of(pipe.maxTemperature().getAsDouble())
                        : Optional.empty(),
                request.timber());
    }

    /** Conductivity of two layers, one on the other, W/(m K); ISO 6946: their resistances add up. */
    private static double inSeries(double thickness, double conductivity, double thickness2, double conductivity2) {
        return thickness2 == 0
                ? conductivity
                : (thickness + thickness2) / (thickness / conductivity + thickness2 / conductivity2);
    }

    static PipeWall wall(Pipe pipe) {
        return new PipeWall(pipe.outer(), pipe.wall(), conductivity(pipe.material()));
    }

    private static double conductivity(String material) {
        String word = material.toLowerCase(Locale.ROOT);
        if (word.contains("al")) {
            return PipeWall.MULTILAYER;
        }
        if (word.contains("epdm") || word.contains("rubber")) {
            return PipeWall.RUBBER;
        }
        return word.contains("rt") ? PipeWall.PE_RT : PipeWall.PE_X;
    }

    static Plate sheet(SpreaderPlate plate) {
        boolean steel = plate.material().toLowerCase(Locale.ROOT).contains("steel");
        return new Plate(plate.thickness(), steel ? Plate.STEEL : Plate.ALUMINIUM);
    }

    /** The sides of a pipe in a plate; those of a twin-groove plate differ. */
    static List<Side> sides(SpreaderPlate plate, double spacing) {
        double reach = spacing / 2;
        if (plate.grooves() == 1) {
            Side side = Side.of(plate.width(), spacing);
            return List.of(side, side);
        }
        double inner = plate.centres() / 2;
        return List.of(
                new Side(Math.min(inner, reach), reach),
                new Side(Math.min((plate.width() - plate.centres()) / 2, reach), reach));
    }

    private List<PipeStrip> strips(int loop) {
        Breakdown pipe = loops.get(loop).breakdown();
        double spacing = job.layout().spacing();
        Map<String, Double> byProduct = new TreeMap<>();
        for (PlatePiece piece : plates.pieces()) {
            long here = piece.places().stream().filter(p -> p.loop() == loop).count();
            byProduct.merge(piece.product(), here * piece.length(), Double::sum);
        }
        List<PipeStrip> strips = new ArrayList<>();
        double plated = 0;
        for (Map.Entry<String, Double> e : byProduct.entrySet()) {
            plated += e.getValue();
            if (e.getValue() > 0) {
                strips.add(strip(product(e.getKey()), e.getValue(), spacing));
            }
        }
        double bends = bendLength(pipe);
        strips.add(PipeStrip.bare(FloorZone.Kind.GROOVE, Math.max(0, pipe.floorLength() - bends - plated), spacing));
        strips.add(PipeStrip.bare(FloorZone.Kind.BEND, bends, spacing));
        return strips;
    }

    /** So many mm of pipe in a plate, at a spacing in mm. */
    static PipeStrip strip(SpreaderPlate plate, double length, double spacing) {
        List<Side> sides = sides(plate, spacing);
        return new PipeStrip(
                FloorZone.Kind.PLATED, length, Optional.of(sheet(plate)), sides.get(0), sides.get(1), plate.sku());
    }

    private SpreaderPlate product(String sku) {
        return job.catalog().plates().stream()
                .filter(p -> p.sku().equals(sku))
                .findFirst()
                .orElseThrow();
    }

    private static PipeStrip scaled(PipeStrip strip, double scale) {
        return new PipeStrip(
                strip.kind(),
                strip.length(),
                strip.plate(),
                scaled(strip.left(), scale),
                scaled(strip.right(), scale),
                strip.name());
    }

    private static Side scaled(Side side, double scale) {
        double reach = side.reach() * scale;
        return new Side(Math.min(side.plate(), reach), reach);
    }

    private static double bendLength(Breakdown pipe) {
        return pipe.elements().stream()
                .filter(Element.Bend.class::isInstance)
                .mapToDouble(Element::length)
                .sum();
    }

    private HeatedLoop loop(KitPlan.LoopPlan loop, List<PipeStrip> strips) {
        Breakdown pipe = loop.breakdown();
        double tails = job.pipe().flowTail() + job.pipe().returnTail() + CutLength.outside(job, pipe);
        double straight = pipe.floorLength() - bendLength(pipe) + tails;
        Map<String, Bend> bends = new TreeMap<>();
        for (Element e : pipe.elements()) {
            if (e instanceof Element.Bend b) {
                String key = String.format(Locale.ROOT, "%.3f %.3f", b.radius(), Math.abs(b.turn()));
                Bend one = new Bend(b.radius(), Math.abs(b.turn()), 1);
                bends.merge(key, one, (x, y) -> new Bend(x.radius(), x.angle(), x.count() + 1));
            }
        }
        LoopPath path = new LoopPath(
                job.pipe().product().bore(),
                LoopPath.PLASTIC,
                Math.max(0, straight),
                List.copyOf(bends.values()),
                FITTINGS,
                LoopPath.NO_VALVE);
        return new HeatedLoop("loop " + loop.name(), strips, path, Math.min(tails, path.length()));
    }
}
