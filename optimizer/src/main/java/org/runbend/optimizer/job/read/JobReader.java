package org.runbend.optimizer.job.read;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.CatalogReader;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.catalog.shelf.ShelfReader;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.ExtendedFile;
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.Faults;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.Unit;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.heat.CircuitParts;
import org.runbend.optimizer.heat.need.SpaceLoss;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Job;

/**
 * Reads a job file with what it extends, the catalog that it names and the shelf, and checks them against each other. A job that comes out is
 * one that can be laid, so far as this can be told without laying it.
 */
public final class JobReader {
    private final Faults faults = new Faults();
    private final List<SourceFile> read = new ArrayList<>();

    private final SourceFile file;
    private final LoopReader loops;
    private String shelfName = "";

    private JobReader(SourceFile file, LoopDrawings drawings) {
        this.file = file;
        loops = new LoopReader(file, drawings, read);
    }

    /**
     * Reads a job of a caller that has no drawings.
     *
     * @param jobFile the job file
     * @param shelfFile the shelf, if there is one
     * @throws BadInput with every fault that was found in the files
     */
    public static Job read(Path jobFile, Optional<Path> shelfFile) {
        return read(jobFile, shelfFile, LoopDrawings.NONE);
    }

    /**
     * Reads a job.
     *
     * @param jobFile the job file
     * @param shelfFile the shelf, if there is one
     * @param drawings what brings a loop out of a drawing
     * @throws BadInput with every fault that was found in the files
     */
    public static Job read(Path jobFile, Optional<Path> shelfFile, LoopDrawings drawings) {
        return read(SourceFile.read(jobFile), shelfFile, drawings);
    }

    /** The same for a job file that is at hand; what it names is read as {@link SourceFile#named} allows. */
    public static Job read(SourceFile jobFile, Optional<Path> shelfFile, LoopDrawings drawings) {
        return new JobReader(jobFile, drawings).job(shelfFile.map(f -> () -> SourceFile.read(f)));
    }

    /** Reads a job with a shelf whose text comes from elsewhere; otherwise as {@link #read(Path, Optional, LoopDrawings)}. */
    public static Job read(Path jobFile, SourceFile shelf, LoopDrawings drawings) {
        return read(SourceFile.read(jobFile), shelf, drawings);
    }

    /** The same for a job file that is at hand, with a shelf whose text comes from elsewhere. */
    public static Job read(SourceFile jobFile, SourceFile shelf, LoopDrawings drawings) {
        return new JobReader(jobFile, drawings).job(Optional.of(() -> shelf));
    }

    /**
     * Every file that reading a job reads, the job file first.
     *
     * @throws BadInput as {@link #read(Path, Optional, LoopDrawings)}
     */
    public static List<SourceFile> files(Path jobFile, LoopDrawings drawings) {
        JobReader reader = new JobReader(SourceFile.read(jobFile), drawings);
        reader.job(Optional.empty());
        return List.copyOf(reader.read);
    }

    private Job job(Optional<Supplier<SourceFile>> shelfFile) {
        YamlMap root = ExtendedFile.open(file, faults, read).inOwnUnit();
        Optional<Catalog> catalog = catalog(root.require("catalog", "the path of a catalog file"));
        Shelf shelf = shelfFile.flatMap(this::shelf).orElse(Shelf.EMPTY);
        catalog.ifPresent(c -> checkOffcuts(c, shelf));
        Optional<Job> job = job(root, catalog, shelf);
        faults.throwIfAny();
        return job.orElseThrow();
    }

    private Optional<Job> job(YamlMap root, Optional<Catalog> catalog, Shelf shelf) {
        String title = root.require("job", "a title").text();
        String order = root.require("order", "an order number").text();
        Optional<String> customer = root.find("customer").map(YamlValue::text);
        Optional<String> date = root.find("date").map(YamlValue::text);
        Optional<String> revision = root.find("revision").map(YamlValue::text);
        ProductsReader products = new ProductsReader(catalog);
        Optional<Job.PipeRequest> pipe =
                products.pipe(root.require("pipe", "a mapping with product").map());
        LayoutReader layoutReader = new LayoutReader(pipe.map(Job.PipeRequest::product), loops);
        Optional<Job.Layout> asked = layoutReader.layout(root.findMap("layout"));
        Optional<Job.PlateRequest> plates =
                products.plates(root.require("plates", "a mapping with product").map(), pipe, asked);
        Optional<Groove> groove = groove(pipe, plates, catalog);
        FloorReader floorReader = new FloorReader(layoutReader.spacing(), groove.orElse(Groove.USUAL));
        YamlMap floorMap =
                root.require("floor", "a mapping with outline and port").map();
        Optional<Job.FloorPlan> floor = floorReader.floor(floorMap);
        floor.ifPresent(f -> loops.holdAgainst(f.outline()));
        if (floor.isPresent() && groove.isPresent()) {
            new HoleRules(floor.get(), groove.get()).check(floorMap);
        }
        Optional<Job.Layout> layout =
                asked.map(l -> floor.map(f -> loopsForHoles(l, f.port(), root)).orElse(l));
        Optional<Job.Build> build = root.findMap("build").flatMap(m -> products.build(m, groove));
        Optional<Job.Heating> heating = heating(root, products);
        heatAsked(root, plates);
        return root.make(() -> new Job(
                new Job.Heading(title, order, customer, date, revision),
                new Job.Supply(catalog.orElseThrow(), shelf),
                floor.orElseThrow(),
                layout.orElseThrow(),
                pipe.orElseThrow(),
                plates.orElseThrow(),
                build,
                heating,
                new Job.Source(
                        SourceFile.fingerprint(read),
                        warnings(
                                Stream.concat(
                                                floorReader.warnings().stream(),
                                                ShelfCheck.words(shelf, catalog.orElseThrow()).stream())
                                        .toList(),
                                floor.orElseThrow(),
                                layout.orElseThrow(),
                                pipe.orElseThrow()),
                        floorReader.measured(),
                        new Job.Written(
                                root.get("units", v -> v.oneOf(Unit.class), Unit.MM),
                                floorReader.cornerNames(),
                                Assumptions.of(root, floor.orElseThrow(), layout.orElseThrow(), pipe.orElseThrow()),
                                root.findMap("layout")
                                        .flatMap(l -> l.find("leftOutPrice"))
                                        .map(v -> v.isText("auto"))
                                        .orElse(true)))));
    }

    private static Optional<Job.Heating> heating(YamlMap root, ProductsReader products) {
        HeatRequestReader reader = new HeatRequestReader();
        Optional<YamlMap> asked = root.findMap("heating");
        Optional<YamlMap> spaceMap = root.findMap("space");
        Optional<YamlMap> circuitMap = root.findMap("circuit");
        if (asked.isEmpty()) {
            spaceMap.ifPresent(m -> m.self().fault("space is reckoned with temperatures: give heating beside it"));
            circuitMap.ifPresent(m -> m.self().fault("circuit is reckoned with temperatures: give heating beside it"));
        }
        Optional<SpaceLoss> space = spaceMap.flatMap(reader::space);
        CircuitParts circuit = circuitMap.flatMap(reader::circuit).orElse(CircuitParts.NONE);
        return asked.flatMap(m -> products.heating(m, space, circuit));
    }

    /** Plates can be chosen by heat only where heat can be reckoned and somebody says how much is wanted. */
    private static void heatAsked(YamlMap root, Optional<Job.PlateRequest> plates) {
        boolean wanted = root.find("space").isPresent()
                || root.findMap("heating").flatMap(h -> h.find("wanted")).isPresent();
        boolean reckoned =
                root.find("build").isPresent() && root.find("heating").isPresent() && wanted;
        if (plates.filter(Job.PlateRequest::byHeat).isPresent() && !reckoned) {
            root.findMap("plates")
                    .flatMap(p -> p.find("coverage"))
                    .ifPresent(
                            v -> v.fault("auto chooses plates by heat: give build, heating, and heating.wanted in W or"
                                    + " space; or a share such as 85%"));
        }
    }

    private static Optional<Groove> groove(
            Optional<Job.PipeRequest> pipe, Optional<Job.PlateRequest> plates, Optional<Catalog> catalog) {
        return pipe.flatMap(
                p -> plates.flatMap(w -> catalog.map(c -> Groove.of(p.product(), w.products(), c.routing()))));
    }

    /** A pair of holes for each loop; where as few loops as possible are asked, the pairs say how many. */
    private static Job.Layout loopsForHoles(Job.Layout layout, Job.Port port, YamlMap root) {
        int pairs = port.holes().size();
        int loops = layout.loops().orElse(pairs);
        if (pairs > 0 && pairs != loops) {
            root.findMap("floor")
                    .flatMap(f -> f.findMap("port"))
                    .flatMap(p -> p.find("holes"))
                    .ifPresent(v -> v.fault("a pair of holes for each loop is wanted: " + pairs
                            + (pairs == 1 ? " pair" : " pairs") + " for " + loops + (loops == 1 ? " loop" : " loops")));
        }
        return pairs > 0 && layout.loops().isEmpty() ? layout.withLoops(pairs) : layout;
    }

    private List<String> warnings(List<String> ofFloor, Job.FloorPlan floor, Job.Layout layout, Job.PipeRequest pipe) {
        List<String> warnings = new ArrayList<>(ofFloor);
        warnings.addAll(loops.remarks());
        warnings.addAll(Plausibility.of(floor, layout, pipe));
        return warnings;
    }

    private Optional<Catalog> catalog(YamlValue value) {
        String name = value.text();
        if (name.isEmpty()) {
            return Optional.empty();
        }
        SourceFile named;
        try {
            named = file.named(Path.of(value.file()).resolveSibling(name));
        } catch (InvalidPathException e) {
            value.wrong("the path of a catalog file");
            return Optional.empty();
        } catch (BadInput e) {
            value.fault(e.getMessage());
            return Optional.empty();
        }
        return understood(named, () -> CatalogReader.read(named));
    }

    private void checkOffcuts(Catalog catalog, Shelf shelf) {
        for (SpreaderPlate plate : catalog.plates()) {
            shelf.of(plate.sku()).stream()
                    .filter(r -> r.length() > PlateStock.LONGEST)
                    .forEach(r -> faults.add(Fault.ofFile(
                            shelfName,
                            String.format(
                                    Locale.ROOT,
                                    "remnant %s: an offcut of plate %s of %.0f mm cannot be, plates are at most %.0f mm long",
                                    r.id(),
                                    plate.sku(),
                                    r.length(),
                                    PlateStock.LONGEST))));
        }
    }

    private Optional<Shelf> shelf(Supplier<SourceFile> source) {
        try {
            SourceFile file = source.get();
            shelfName = file.name();
            return understood(file, () -> ShelfReader.read(file));
        } catch (BadInput e) {
            faults.addAll(e);
            return Optional.empty();
        }
    }

    private <T> Optional<T> understood(SourceFile file, Supplier<T> reader) {
        read.add(file);
        try {
            return Optional.of(reader.get());
        } catch (BadInput e) {
            faults.addAll(e);
            return Optional.empty();
        }
    }
}
