package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.export.data.HeatJson;
import org.runbend.export.drafting.TemperatureDrafting;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.ShadedFloor;
import org.runbend.export.papers.HeatPaper;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.ShadedPdf;
import org.runbend.export.svg.ShadedSvg;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatReckoning;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.field.ConductionField;
import org.runbend.optimizer.heat.field.FieldSolution;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.HeatPart;
import org.runbend.optimizer.planning.TemperaturePart;

/** The heat report of a camper, a boat and a hut, worked through again from the figures that it prints. */
@ExtendWith(PlannedKits.Supply.class)
class HeatReportTest {
    @TempDir
    Path folder;

    private final PlannedKits kits;

    HeatReportTest(PlannedKits kits) {
        this.kits = kits;
    }

    private KitPlan plan(String name) {
        return kits.plan(PlannedKits.EXAMPLES.resolve(name + ".yaml"));
    }

    private static HeatProblem problem(KitPlan plan) {
        return HeatPart.problem(plan.job(), plan.loops(), plan.plates()).orElseThrow();
    }

    private String text(String name) throws IOException {
        KitPlan plan = plan(name);
        HeatProblem problem = problem(plan);
        Path file = folder.resolve(name + ".pdf");
        Files.write(file, HeatPaper.bytes(plan.job(), problem, new HeatReckoning().solve(problem), "", Paper.A4));
        String word = OutsideReader.run("qpdf", "--check", file.toString());
        assertTrue(word.contains("No syntax or stream encoding errors found"), word);
        return OutsideReader.run("pdftotext", "-layout", file.toString(), "-");
    }

    @ParameterizedTest
    @ValueSource(strings = {"camper", "cabin-boat", "sauna-rest"})
    void everyFigureFollowsFromThosePrinted(String name) throws IOException {
        String text = text(name);
        String flat = text.replaceAll("\\s+", " ");
        double room = number(flat, "into a room of (-?[0-9.]+) degrees");
        double outside = number(flat, "outside at (-?[0-9.]+) degrees");
        double alpha = number(flat, "surface ([0-9.]+) W/\\(m2 K\\), finish");
        double sum = 0;
        int rows = 0;
        Matcher row = Pattern.compile(
                        "(?:pipe in a plate \\S+|pipe without a plate|bends|floor left bare|unheated floor)"
                                + " +(-?[0-9.]+)".repeat(8))
                .matcher(text);
        while (row.find()) {
            double flux = figure(row, 3) * (figure(row, 2) - room) + figure(row, 5) * (outside - room);
            // Two decimals of a conductance are worth 0.005 x 40 K and 0.005 x 40 K.
            assertEquals(flux, figure(row, 6), 0.45, row::group);
            assertEquals(room + figure(row, 6) / alpha, figure(row, 7), 0.06);
            assertTrue(figure(row, 8) >= figure(row, 7));
            sum += figure(row, 1) * figure(row, 6);
            rows++;
        }
        assertTrue(rows >= 3, text);
        double upward = number(flat, "gives ([0-9.]+) W into a room");
        assertEquals(upward, sum, 0.02 * upward);
        layersFollow(flat);
        hottestFollows(flat, room, outside);
        flowFollows(text, flat);
    }

    private static double figure(Matcher row, int group) {
        return Double.parseDouble(row.group(group));
    }

    /** Resistances in a row. */
    private static void layersFollow(String flat) {
        double up = 1 / number(flat, "Layers: surface ([0-9.]+)")
                + number(flat, "finish ([0-9.]+) m2K/W")
                + number(flat, "cover ([0-9.]+) mm of") / 1000 / number(flat, "cover [0-9.]+ mm of ([0-9.]+)");
        assertEquals(1 / up, number(flat, "So ([0-9.]+) W"), 0.002);
        double down = number(flat, "under the pipe, ([0-9.]+) m2K/W")
                + (number(flat, "foam ([0-9.]+) mm of") + number(flat, "Pipe ([0-9.]+) x"))
                        / 1000
                        / number(flat, "foam [0-9.]+ mm of ([0-9.]+)");
        assertEquals(1 / down, number(flat, "plates up and ([0-9.]+) down"), 0.002);
    }

    /** The hottest place, and the supply that brings it to its limit. */
    private static void hottestFollows(String flat, double room, double outside) {
        double up = number(flat, "no film: up ([0-9.]+),");
        double through = number(flat, "no film: up [0-9.]+, through ([0-9.]+) W");
        double peak = number(flat, "peak ([0-9.]+) times");
        double supply = number(flat, "degrees C at ([0-9.]+)\\.");
        double alpha = number(flat, "outside - room\\)\\) / ([0-9.]+)");
        double hottest = room + (up * peak * (supply - room) + through * (outside - room)) / alpha;
        assertEquals(number(flat, "([0-9.]+) at its hottest"), hottest, 0.06);
        if (flat.contains("limit: surface of the floor") || flat.contains("degrees C (surface of the floor)")) {
            double highest = room + ((29 - room) * alpha - through * (outside - room)) / (up * peak);
            assertEquals(number(flat, "every limit: ([0-9.]+) degrees"), highest, 0.2);
        }
    }

    /** Velocity from flow and bore, Reynolds from viscosity, pressure from the friction factor, drop from heat and flow. */
    private static void flowFollows(String text, String flat) {
        double density = number(flat, "Coolant at its mean: ([0-9.]+) kg/m3");
        double capacity = number(flat, "kg/m3, ([0-9.]+) J");
        double viscosity = number(flat, "J/\\(kg K\\), ([0-9.]+) mPa s") / 1000;
        double bore = number(flat, "bore of ([0-9.]+) mm") / 1000;
        double straight = number(flat, "loop A: ([0-9.]+) m straight,");
        double friction = number(flat, "friction factor of ([0-9.]+)");
        Matcher row = Pattern.compile(
                        "loop A +([0-9.]+) +([0-9.]+) +([0-9.]+) +([0-9.]+) +([0-9.]+) +([0-9.]+) +([0-9.]+) +([0-9.]+)")
                .matcher(text);
        assertTrue(row.find(), text);
        double flow = Double.parseDouble(row.group(1)) / 60_000;
        double velocity = flow / (Math.PI / 4 * bore * bore);
        assertEquals(velocity, Double.parseDouble(row.group(2)), 0.006);
        double reynolds = density * velocity * bore / viscosity;
        assertEquals(reynolds, Double.parseDouble(row.group(3)), 0.01 * reynolds);
        double pressure = friction * straight / bore * density * velocity * velocity / 2 / 1000;
        assertEquals(number(flat, "take ([0-9.]+) kPa"), pressure, 0.01 * pressure);
        assertEquals(
                Double.parseDouble(row.group(6)),
                number(flat, "take ([0-9.]+) kPa")
                        + number(flat, "kPa; bends ([0-9.]+)")
                        + number(flat, "\\); fittings ([0-9]+\\.[0-9]+)"),
                0.07);
        double heat = Double.parseDouble(row.group(7)) + Double.parseDouble(row.group(8));
        double drop = heat / (density * capacity * flow);
        assertEquals(drop, Double.parseDouble(row.group(4)) - Double.parseDouble(row.group(5)), 0.12);
    }

    private static double number(String text, String pattern) {
        Matcher m = Pattern.compile(pattern).matcher(text);
        assertTrue(m.find(), () -> pattern + " is not in: " + text);
        return Double.parseDouble(m.group(1));
    }

    /** The object for kit.json holds the same figures and every key that was promised. */
    @ParameterizedTest
    @ValueSource(strings = {"camper"})
    void kitJsonSaysTheSame(String name) throws IOException {
        KitPlan plan = plan(name);
        HeatSolution heat = new HeatReckoning().solve(problem(plan));
        Path file = Files.write(folder.resolve("heat.json"), HeatJson.bytes(heat));
        String json = Files.readString(file);
        List<String> keys = new ArrayList<>(HeatKeys.NUMBERS);
        keys.addAll(List.of("warmUp", "minute", "surface", "sensor", "coolant", "loops"));
        for (String key : keys) {
            assertTrue(json.contains("\"" + key + "\""), key);
        }
        assertTrue(!json.contains("null") && !json.contains("NaN"), json);
        JsonIn.read(file);
    }

    /** CIE L* of a luminance of 0 to 255, gamma 2.2. */
    private static double lightness(double luminance) {
        return 116 * Math.cbrt(Math.pow(luminance / 255, 2.2)) - 16;
    }

    /** A number stands where the field has it: between the least and the most of the cells around. */
    private static void onItsLevel(FieldSolution field, Point at, double level) {
        int column =
                (int) Math.floor((at.x() - field.frame().x()) / field.frame().cell());
        int row = (int) Math.floor((at.y() - field.frame().y()) / field.frame().cell());
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int r = row - 1; r <= row + 1; r++) {
            for (int c = column - 1; c <= column + 1; c++) {
                least = Math.min(least, field.surface(c, r));
                most = Math.max(most, field.surface(c, r));
            }
        }
        assertTrue(least <= level && level <= most, level + " at " + at + ", where it is " + least + " to " + most);
    }

    /** Every cell's shade is that of its temperature, shades get darker, and the file is sound. */
    @ParameterizedTest
    @ValueSource(strings = {"camper"})
    void temperaturesAreDrawn(String name) throws IOException {
        KitPlan plan = plan(name);
        HeatProblem problem = problem(plan);
        FieldSolution field =
                new ConductionField().solve(TemperaturePart.problem(plan, problem, new HeatReckoning().solve(problem)));
        ShadedFloor shaded = TemperatureDrafting.draw(plan, field);
        double cells = shaded.boxes().stream()
                .mapToDouble(b -> b.box().width() * b.box().height())
                .sum();
        assertEquals(field.area(), cells * 1e-6, 0.01 * field.area());
        Map<Integer, Double> luminance = new TreeMap<>();
        for (int i = 0; i < shaded.steps().size(); i++) {
            int c = shaded.steps().get(i).colour();
            luminance.put(i, 0.2126 * (c >> 16 & 255) + 0.7152 * (c >> 8 & 255) + 0.0722 * (c & 255));
        }
        for (int i = 1; i < luminance.size(); i++) {
            assertTrue(luminance.get(i) < luminance.get(i - 1), "step " + i + " is not darker: it must read in grey");
            assertTrue(lightness(luminance.get(i)) > 30, "step " + i + " is too dark for lines and numbers on it");
        }
        int lines = shaded.lines().stream().mapToInt(l -> l.lines().size()).sum();
        int corners = shaded.lines().stream()
                .flatMap(l -> l.lines().stream())
                .mapToInt(p -> p.vertices().size())
                .sum();
        assertTrue(corners > 8 * lines, "lines of " + corners + " corners in " + lines + " pieces are not chained");
        shaded.lines().forEach(l -> l.labels().forEach(at -> onItsLevel(field, at, Double.parseDouble(l.words()))));
        assertTrue(shaded.lines().stream().filter(l -> !l.labels().isEmpty()).count()
                >= shaded.lines().size() / 2.0);
        Path svg = Files.write(folder.resolve("temperatures.svg"), ShadedSvg.bytes(shaded));
        OutsideReader.run(
                "rsvg-convert",
                "-w",
                "400",
                svg.toString(),
                "-o",
                folder.resolve("t.png").toString());
        Path pdf = Files.write(folder.resolve("temperatures.pdf"), ShadedPdf.bytes(shaded, "order", "", Paper.A4));
        assertTrue(OutsideReader.run("qpdf", "--check", pdf.toString())
                .contains("No syntax or stream encoding errors found"));
        assertTrue(OutsideReader.run("pdftotext", pdf.toString(), "-").contains("degrees C"));
        assertEquals(
                Files.readString(svg),
                new String(
                        ShadedSvg.bytes(TemperatureDrafting.draw(plan, field)),
                        java.nio.charset.StandardCharsets.UTF_8));
    }
}
