package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Mark;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.Placement;

/** The shapes of every example's drawing: the same in all three formats, and a channel that a cutter can make. */
@ExtendWith(PlannedKits.Supply.class)
class DrawingShapesTest {
    private static final Set<Layer> GEOMETRY =
            EnumSet.of(Layer.FLOOR, Layer.KEEP_OUT, Layer.UNHEATED, Layer.PIPE, Layer.CHANNEL, Layer.PLATE);

    private static final int PIXELS = 2;

    /** Share of a picture's set pixels that may lie more than 2 px beside those of another, per cent. */
    private static final double FAR = 0.1;

    @TempDir
    Path scratch;

    private final PlannedKits kits;

    DrawingShapesTest(PlannedKits kits) {
        this.kits = kits;
    }

    static Stream<Path> jobs() throws IOException {
        return PlannedKits.jobs().stream();
    }

    /**
     * drawing.dxf as ezdxf and Pillow draw it, floor.svg as librsvg does, and the sheet as a PDF page in true size as poppler
     * does, at 2 px/mm: hardly a pixel of one lies more than 2 px from a set pixel of each other. Dashes and fills differ by
     * design, so they are taken off first; pens are a pixel wide.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void formatsShowTheSameShapes(Path job) throws IOException {
        Sheet shapes = shapesOf(new FloorDrafting().draw(kits.plan(job)));
        Extent extent = shapes.extent().grow(10);
        // Whole millimetres, so that pictures have whole pixels.
        Extent box = new Extent(
                Math.floor(extent.minX()),
                Math.floor(extent.minY()),
                Math.ceil(extent.maxX()),
                Math.ceil(extent.maxY()));
        Path svg = fromSvg(Files.readString(kits.folder(job).resolve("floor.svg")), box);
        Path pdf = fromPdf(shapes, box);
        String words = OutsideReader.python(
                OutsideReader.resource(scratch, "compare_pictures.py"),
                List.of("ezdxf", "numpy", "PIL"),
                kits.folder(job).resolve("drawing.dxf").toString(),
                GEOMETRY.stream().map(Layer::name).collect(Collectors.joining(",")),
                n(box.minX()),
                n(box.minY()),
                n(box.maxX()),
                n(box.maxY()),
                svg.toString(),
                pdf.toString());
        int pairs = 0;
        for (String line : words.lines().toList()) {
            String[] word = line.split(" ", -1);
            if (word[0].equals("set")) {
                assertTrue(Integer.parseInt(word[2]) > 1000, words);
            } else {
                pairs++;
                assertTrue(Double.parseDouble(word[3]) <= FAR, words);
            }
        }
        assertEquals(6, pairs, words);
    }

    /**
     * What the cutter of kit.json leaves of layer CHANNEL holds the pipe, swept as a disc, all the way, to 0.01 mm; the
     * cutter reaches all of it; nothing is cut outside the floor; and webs are as wide as the check says, or a little wider:
     * the check takes the whole channel to be as wide as at bends.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("jobs")
    void cutterMakesTheChannel(Path job) throws IOException {
        JsonIn kit = kits.kit(job);
        Map<String, String> facts = new TreeMap<>();
        OutsideReader.python(
                        OutsideReader.resource(scratch, "check_channel.py"),
                        List.of("ezdxf", "numpy", "scipy", "shapely"),
                        kits.folder(job).resolve("kit.json").toString(),
                        kits.folder(job).resolve("drawing.dxf").toString())
                .lines()
                .map(l -> l.split(" ", 2))
                .forEach(l -> facts.put(l[0], l[1]));
        int loops = kit.at("loops").list().size();
        assertEquals(loops + " valid True whole True", facts.get("grooves"), facts::toString);
        assertTrue(Double.parseDouble(facts.get("jut")) <= 0.01, facts::toString);
        assertTrue(Double.parseDouble(facts.get("unreached")) <= 0.01, facts::toString);
        assertEquals(0, Double.parseDouble(facts.get("outside")), 1e-6, facts::toString);
        double web = Double.parseDouble(facts.get("web").replace("inf", "Infinity"));
        Optional<JsonIn> check = kit.at("checks").list().stream()
                .filter(c -> c.at("name").text().equals("least web between channels"))
                .findFirst();
        if (check.isEmpty()) {
            assertTrue(web > 340, facts::toString);
            return;
        }
        double said = check.get().at("value").number();
        double play = kit.at("channel").at("bendWidth").number()
                - kit.at("channel").at("width").number();
        assertTrue(web >= said - 0.01, () -> said + " but " + facts);
        assertTrue(web <= said + play + 0.2, () -> said + " but " + facts);
        boolean thin = said < check.get().at("limit").number();
        assertEquals(thin ? "warn" : "ok", check.get().at("verdict").text());
    }

    /** floor.svg with geometry only and thin plain lines, drawn by librsvg. */
    private Path fromSvg(String svg, Extent box) throws IOException {
        StringBuilder plain =
                new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + n(PIXELS * box.width())
                        + "\" height=\"" + n(PIXELS * box.height()) + "\" viewBox=\"" + n(box.minX()) + " "
                        + n(-box.maxY()) + " "
                        + n(box.width()) + " " + n(box.height()) + "\">\n");
        boolean inside = false;
        for (String line : svg.lines().toList()) {
            if (line.startsWith("<g id=\"")) {
                inside = GEOMETRY.stream().anyMatch(l -> line.startsWith("<g id=\"" + l.name() + "\""));
                plain.append(
                        inside
                                ? "<g fill=\"none\" stroke=\"#000000\" stroke-width=\"0.5\" shape-rendering=\"crispEdges\">\n"
                                : "");
            } else if (inside) {
                // A group's end, or a shape without its fill.
                plain.append(line.replaceAll(" fill=\"[^\"]*\"", "")).append('\n');
                inside = !line.equals("</g>");
            }
        }
        Path file = Files.writeString(scratch.resolve("plain.svg"), plain.append("</svg>\n"));
        Path picture = scratch.resolve("svg.png");
        OutsideReader.run(
                "rsvg-convert", "--unlimited", "--background-color=white", "-o", picture.toString(), file.toString());
        return picture;
    }

    /** A page in true size with the shapes alone, drawn by poppler. */
    private Path fromPdf(Sheet shapes, Extent box) throws IOException {
        PageFormat format = new PageFormat(box.width(), box.height(), 0);
        Path file = scratch.resolve("page.pdf");
        try (PdfDocument document = new PdfDocument("shapes", "en", format)) {
            Box page = new Box(0, 0, box.width(), box.height());
            document.addPage().sheet(shapes, page, new Placement(1, -box.minX(), -box.minY()));
            Files.write(file, document.toBytes());
        }
        String stem = scratch.resolve("pdf").toString();
        // 2 px/mm are 50.8 px to the inch.
        OutsideReader.run("pdftoppm", "-r", "50.8", "-singlefile", "-gray", "-aaVector", "no", file.toString(), stem);
        return Path.of(stem + ".pgm");
    }

    /** The shapes of the geometry layers, all on a layer whose lines are neither dashed nor closed ones filled. */
    private static Sheet shapesOf(Sheet sheet) {
        return new Sheet(
                "shapes",
                sheet.marks().stream()
                        .filter(m -> GEOMETRY.contains(m.layer()))
                        .map(m -> new Mark(Layer.CHANNEL, m.shape()))
                        .toList());
    }

    private static String n(double value) {
        return String.format(Locale.ROOT, "%.0f", value);
    }
}
