package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
import org.runbend.export.drawing.ShadedFloor;
import org.runbend.export.papers.HeatPaper;
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
        Files.write(file, HeatPaper.bytes(plan.job(), problem, new HeatReckoning().solve(problem), ""));
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
        double coolant = number(flat, "coolant (-?[0-9.]+) degrees C in the mean");
        double alpha = number(flat, "surface = room \\+ q / ([0-9.]+)");
        double sum = 0;
        int rows = 0;
        Matcher row = Pattern.compile(
                        "(?:pipe in a plate|pipe without a plate|bends|floor left bare|unheated floor) +([0-9.]+) +([0-9.]+) +([0-9.]+)"
                                + " +([0-9.]+) +(-?[0-9.]+) +(-?[0-9.]+) +(-?[0-9.]+)")
                .matcher(text);
        while (row.find()) {
            double flux = Double.parseDouble(row.group(2)) * (coolant - room)
                    + Double.parseDouble(row.group(4)) * (outside - room);
            // Two decimals of a conductance are worth 0.005 x 40 K and 0.005 x 40 K.
            assertEquals(flux, Double.parseDouble(row.group(5)), 0.45, row::group);
            assertEquals(room + Double.parseDouble(row.group(5)) / alpha, Double.parseDouble(row.group(6)), 0.06);
            assertTrue(Double.parseDouble(row.group(7)) >= Double.parseDouble(row.group(6)));
            sum += Double.parseDouble(row.group(1)) * Double.parseDouble(row.group(5));
            rows++;
        }
        assertTrue(rows >= 3, text);
        double upward = number(flat, "gives ([0-9.]+) W into a room");
        assertEquals(upward, sum, 0.02 * upward);
        flowFollows(text, flat);
    }

    /** Velocity from flow and bore, Reynolds from viscosity, pressure from the friction factor, drop from heat and flow. */
    private static void flowFollows(String text, String flat) {
        double density = number(flat, "mean: ([0-9.]+) kg/m3");
        double capacity = number(flat, "kg/m3, ([0-9.]+) J");
        double viscosity = number(flat, "J/\\(kg K\\), ([0-9.]+) mPa s") / 1000;
        double bore = number(flat, "bore of ([0-9.]+) mm") / 1000;
        double straight = number(flat, "loop A: ([0-9.]+) m straight");
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
                        + number(flat, "kPa, bends ([0-9.]+)")
                        + number(flat, "fittings ([0-9]+\\.[0-9]+)"),
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
        for (String key : List.of(
                "upward",
                "downward",
                "surfaceMean",
                "surfacePeak",
                "supply",
                "return",
                "volumeFlow",
                "velocity",
                "reynolds",
                "pressureDrop",
                "pumpHead",
                "highestSupply",
                "volume",
                "expansion",
                "warmUp",
                "minute",
                "surface",
                "sensor",
                "coolant",
                "loops")) {
            assertTrue(json.contains("\"" + key + "\""), key);
        }
        assertTrue(!json.contains("null") && !json.contains("NaN"), json);
        JsonIn.read(file);
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
        }
        Path svg = Files.write(folder.resolve("temperatures.svg"), ShadedSvg.bytes(shaded));
        OutsideReader.run(
                "rsvg-convert",
                "-w",
                "400",
                svg.toString(),
                "-o",
                folder.resolve("t.png").toString());
        Path pdf = Files.write(folder.resolve("temperatures.pdf"), ShadedPdf.bytes(shaded, "order", ""));
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
