package org.runbend.optimizer.job.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.SourceFile;
import org.runbend.optimizer.heat.HeatRequest;
import org.runbend.optimizer.job.DrawnLoop;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

class JobReaderTest {
    @TempDir
    Path folder;

    /** The word for the price that the program chooses is its default too. */
    @Test
    void leftOutPriceIsAuto() throws IOException {
        Job auto = Jobs.read(folder, Jobs.GOOD.replace("{spacing: 150}", "{spacing: 150, leftOutPrice: auto}"));
        assertEquals(PlacePrice.turns(1), auto.layout().leftOutPrice());
    }

    @Test
    void whatIsNotGivenHasTheDocumentedDefault() throws IOException {
        Job job = Jobs.read(folder, Jobs.GOOD.replace("layout: {spacing: 150}\n", ""));
        assertEquals(
                new Job.Layout(Job.Grid.free(150, 75), new Job.Aim(PlacePrice.turns(1), Job.Prefer.LONG_RUNS)),
                job.layout());
        assertEquals(330, job.floor().port().reach(), 1e-9);
        assertEquals("PX-16", job.pipe().product().sku());
        assertEquals(0, job.pipe().flowTail());
        assertEquals(0, job.pipe().returnTail());
        assertEquals(0.02, job.pipe().allowance());
        assertEquals(OptionalDouble.empty(), job.pipe().loopLimit());
        Job.PlateRequest p = job.plates();
        assertEquals(
                List.of(100.0, 5.0, 150.0, 0.85, 5.0),
                List.of(p.bendClearance(), p.gap(), p.minPiece(), p.coverage(), p.plateClearance()));
        assertEquals(Optional.empty(), job.build());
        assertEquals(Optional.empty(), job.heating());
        assertEquals(Optional.empty(), job.customer());
        assertEquals(List.of(), job.floor().marks());
        Job bare = Jobs.read(folder, Jobs.GOOD.replace(", clearance: 60", "") + "build: {}\nheating: {}\n");
        assertEquals(20, bare.floor().keepOuts().get(0).clearance(), "half a groove of 20 mm and 10 mm of air");
        assertEquals(KeepOut.Kind.OTHER, bare.floor().keepOuts().get(0).kind());
        assertEquals(Optional.of(new Job.Build(30, 12, "birch-ply", 0.02, Optional.empty())), bare.build());
        assertEquals(
                Optional.of(new Job.Heating(
                        "propylene-glycol-40",
                        60,
                        20,
                        -10,
                        OptionalDouble.empty(),
                        Optional.empty(),
                        false,
                        HeatRequest.NONE)),
                bare.heating());
    }

    /** Of a wooden board nothing insulates; what stays of foam is the insulation where none is given (sums by hand). */
    @ParameterizedTest
    @CsvSource({
        "birch-ply, 21, , 30, 30, 34.5",
        "birch-ply, 21, 20, 20, 20, 24.5",
        "foam-300, 40, , 23.5, 0, 23.5",
        "foam-300, 40, 50, 50, 26.5, 50",
    })
    void aBoardForTheGroove(String material, double thickness, Double insulation, double all, double laid, double under)
            throws IOException {
        String given = insulation == null ? "" : ", insulation: " + insulation;
        String board = "{board: {material: " + material + ", thickness: " + thickness + "}" + given + "}";
        Job.Build build =
                Jobs.read(folder, Jobs.GOOD + "build: " + board + "\n").build().orElseThrow();
        assertEquals(thickness - 16.5, build.board().orElseThrow().rest(), 1e-9);
        assertEquals(List.of(all, laid, under), List.of(build.insulation(), build.laidUnder(), build.under()));
    }

    @Test
    void everyKeyIsKept() throws IOException {
        Job job = JobReader.read(Jobs.EXAMPLES.resolve("camper.yaml"), Optional.empty());
        assertEquals("Camper of the Orla family", job.title());
        assertEquals(Optional.of("12 March"), job.date());
        assertEquals(Optional.of("B"), job.revision());
        assertEquals(12, job.floor().outline().size());
        assertEquals(new Point(2700, 0), job.floor().outline().get(5));
        assertEquals(
                new Job.FloorMark("cab", new Point(2700, 800), 5),
                job.floor().marks().get(0));
        assertEquals(
                new Job.FloorMark("rear doors", new Point(0, 800), 11),
                job.floor().marks().get(1));
        assertEquals(
                new Job.FloorMark("sliding door", new Point(2250, 0), -1),
                job.floor().marks().get(2));
        assertEquals(
                new KeepOut("shower drain", KeepOut.Kind.DRAIN, new Shape.Circle(new Point(420, 330), 40), 60),
                job.floor().keepOuts().get(0));
        assertEquals(
                new KeepOut("seat bolt left", KeepOut.Kind.BOLT, new Shape.Spot(new Point(2400, 1050), 15), 35),
                job.floor().keepOuts().get(1));
        assertEquals("step", job.floor().unheated().get(0).name());
        assertEquals(900, job.pipe().flowTail());
        assertEquals(1100, job.pipe().returnTail());
        Job.Heating heating = job.heating().orElseThrow();
        assertEquals("propylene-glycol-40", heating.coolant());
        assertEquals(41, heating.flow());
        assertEquals(20, heating.room());
        assertEquals(-10, heating.outside());
        assertEquals(OptionalDouble.of(-15), heating.coldest());
        assertEquals(Optional.of("CP-12"), heating.pump());
        assertEquals(OptionalDouble.of(65), heating.request().source());
    }

    /** A run has no front: 180 degrees are 0, and what is steeper than 90 degrees runs along the lattice's other axis. */
    @ParameterizedTest
    @CsvSource({
        "free, , FREE",
        "x, 0, X",
        "y, 0, Y",
        "0, 0, X",
        "90, 0, Y",
        "30, 30, X",
        "120, 30, Y",
        "180, 0, X",
        "-30, 60, Y",
        "12.5, 12.5, X"
    })
    void directionOfTheRuns(String along, Double angle, Job.RunAxis axis) throws IOException {
        Job job = Jobs.read(folder, Jobs.GOOD.replace("spacing: 150", "along: " + along));
        assertEquals(axis, job.layout().axis());
        assertEquals(
                angle == null ? OptionalDouble.empty() : OptionalDouble.of(angle),
                job.layout().along());
    }

    @ParameterizedTest
    @CsvSource({"100, 330", "330, 330", "500, 500"})
    void reachIsNeverUnderItsDefault(double given, double reach) throws IOException {
        Job job = Jobs.read(folder, Jobs.GOOD.replace("at: [0, 75]", "at: [0, 75], reach: " + given));
        assertEquals(reach, job.floor().port().reach(), 1e-9);
    }

    /** 63.5 in x 4 ft 2 3/8 in is 1612.9 x 1279.525 mm (25.4 mm to the inch). */
    @Test
    void inchesAndMillimetresGiveTheSameFloor() throws IOException {
        String bare = Jobs.GOOD.replaceAll("(?m)^  (outline|keepOut|  -|unheated|port).*\n", "");
        Job mm = Jobs.read(
                folder,
                bare.replace(
                        "layout:",
                        "  outline: [[0, 0], [1612.9, 0], [1612.9, 1279.525], [0, 1279.525]]\n"
                                + "  port: {at: [0, 76.2]}\nlayout:"));
        Job inches = Jobs.read(
                folder,
                "units: in\n"
                        + bare.replace("spacing: 150", "spacing: 150mm")
                                .replace(
                                        "layout:",
                                        "  outline: [[0, 0], [63.5, 0], [63 1/2, 4ft 2 3/8in], [0, 50 3/8]]\n"
                                                + "  port: {at: [0, 3]}\nlayout:"));
        assertEquals(mm.floor(), inches.floor());
        assertEquals(mm.layout(), inches.layout());
        assertNotEquals(mm.fingerprint(), inches.fingerprint());
    }

    @Test
    void aRepeatedFirstCornerSaysNothingNew() throws IOException {
        Job job = Jobs.read(folder, Jobs.GOOD.replace("[0, 1500]]", "[0, 1500], [0, 0]]"));
        assertEquals(4, job.floor().outline().size());
    }

    @Test
    void fingerprintIsTheDigestOfTheFilesAsRead() throws Exception {
        Jobs.read(folder, Jobs.GOOD);
        Path shelf = Files.writeString(folder.resolve("shelf.yaml"), "- {id: C7, product: PX-16, length: 18 m}\n");
        Job job = JobReader.read(folder.resolve("job.yaml"), Optional.of(shelf));
        assertEquals(List.of(new Remnant("C7", "PX-16", 18_000)), job.shelf().remnants());
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        for (String name : List.of("job.yaml", "workshop.yaml", "shelf.yaml")) {
            digest.update(Files.readAllBytes(folder.resolve(name)));
        }
        assertEquals(HexFormat.of().formatHex(digest.digest()), job.fingerprint());
    }

    /** Drawings are read elsewhere; what comes of one is a loop of any kind on the floor. */
    private static LoopDrawings.Found somebodysLoop(SourceFile file, String layer, Optional<DrawingUnits> unit) {
        List<Point> points =
                List.of(new Point(75, 100), new Point(1000, 100), new Point(1000, 250), new Point(75, 250));
        return new LoopDrawings.Found(new DrawnLoop(points, List.of(0.0, 1.0, 0.0)), 1, List.of());
    }

    @Test
    void everyExampleIsGood() throws IOException {
        List<Path> jobs = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Jobs.EXAMPLES, 2)) {
            files.filter(f -> f.toString().endsWith(".yaml"))
                    .filter(f -> !Set.of("workshop.yaml", "catalog-yen.yaml")
                            .contains(f.getFileName().toString()))
                    .sorted()
                    .forEach(jobs::add);
        }
        for (Path file : jobs) {
            try {
                Job job = JobReader.read(file, Optional.empty(), JobReaderTest::somebodysLoop);
                assertEquals(false, job.floor().marks().isEmpty(), file + " has marks");
                assertEquals(
                        true, job.build().isPresent() && job.heating().isPresent(), file + " has build and heating");
            } catch (BadInput e) {
                throw new AssertionError(file + ": " + e.getMessage(), e);
            }
        }
        assertEquals(true, jobs.size() >= 5, "examples seen: " + jobs);
    }
}
