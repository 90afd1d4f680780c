package org.runbend.export.dxf.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.OutsideReader;

/** Drawings that ezdxf writes, R12 to R2018, ASCII and binary: what is read has the lengths, boxes and words ezdxf reckons. */
class EzdxfDrawingsTest {
    @TempDir
    Path folder;

    @Test
    void allVersionsAndForms() throws IOException {
        Map<String, List<List<String>>> facts = written();
        assertEquals(14, facts.size());
        for (Map.Entry<String, List<List<String>>> file : facts.entrySet()) {
            DxfDrawing drawing = new DxfReader().read(folder.resolve(file.getKey()), Optional.of(DrawingUnit.CM));
            assertEquals(Map.of(), drawing.ignored(), file.getKey());
            compare(file.getKey(), file.getValue(), drawing);
        }
    }

    private void compare(String file, List<List<String>> facts, DxfDrawing drawing) {
        List<String> words = new ArrayList<>();
        int layers = 0;
        for (List<String> fact : facts) {
            switch (fact.get(1)) {
                case "text" -> words.add(fact.get(3));
                case "point" ->
                    assertTrue(drawing.entities()
                            .contains(new DxfEntity.Spot(fact.get(2), number(fact, 3), number(fact, 4))));
                case "unit" -> assertEquals(DrawingUnit.ofCode((int) number(fact, 2)), drawing.unit(), file);
                default -> {
                    layers++;
                    compareLayer(file + " " + fact.get(2), fact, drawing);
                }
            }
        }
        assertEquals(layers, layersWithLength(drawing), file);
        List<String> read = drawing.entities().stream()
                .filter(DxfEntity.Text.class::isInstance)
                .map(e -> ascii(((DxfEntity.Text) e).content()))
                .toList();
        assertEquals(words, read, file);
    }

    private static int layersWithLength(DxfDrawing drawing) {
        TreeSet<String> names = new TreeSet<>();
        drawing.entities().stream().filter(e -> Measure.length(e) > 0).forEach(e -> names.add(e.layer()));
        return names.size();
    }

    /**
     * Chords of curves may lie 0.1 mm, here 0.01 cm, off, and ezdxf's Bezier curves 0.03 % of the radius, here up to 150
     * cm. A curve given by points only is each program's own: those of two lie within a hundredth of its length.
     */
    private static void compareLayer(String what, List<String> fact, DxfDrawing drawing) {
        List<DxfEntity> all = drawing.entities().stream()
                .filter(e -> e.layer().equals(fact.get(2)))
                .toList();
        boolean free = fact.get(2).equals("THROUGH");
        double length = number(fact, 3);
        assertEquals(length, all.stream().mapToDouble(Measure::length).sum(), length * (free ? 1e-2 : 5e-4), what);
        boolean straight = fact.get(2).equals("LINES") || fact.get(2).equals("SOLID_POLY");
        double near = free ? 0.01 * length : straight ? 1e-9 : 0.06;
        List<double[]> points =
                all.stream().map(Measure::points).flatMap(Collection::stream).toList();
        assertEquals(
                number(fact, 4), points.stream().mapToDouble(p -> p[0]).min().orElseThrow(), near, what);
        assertEquals(
                number(fact, 5), points.stream().mapToDouble(p -> p[1]).min().orElseThrow(), near, what);
        assertEquals(
                number(fact, 6), points.stream().mapToDouble(p -> p[0]).max().orElseThrow(), near, what);
        assertEquals(
                number(fact, 7), points.stream().mapToDouble(p -> p[1]).max().orElseThrow(), near, what);
    }

    private static double number(List<String> fact, int i) {
        return Double.parseDouble(fact.get(i));
    }

    /** As Python's ascii() shows a string. */
    private static String ascii(String text) {
        return "'"
                + text.chars()
                        .mapToObj(c -> c == '\n'
                                ? "\\n"
                                : c < 128
                                        ? String.valueOf((char) c)
                                        : c < 256 ? "\\x" + Integer.toHexString(c) : "\\u0" + Integer.toHexString(c))
                        .collect(Collectors.joining())
                + "'";
    }

    private Map<String, List<List<String>>> written() throws IOException {
        Path script = folder.resolve("write.py");
        try (InputStream in = OutsideReader.class.getResourceAsStream("write_dxf.py")) {
            Files.write(script, in.readAllBytes());
        }
        String printed = OutsideReader.python(script, List.of("ezdxf"), folder.toString());
        Map<String, List<List<String>>> facts = new TreeMap<>();
        for (String line : printed.lines().toList()) {
            List<String> cells = List.of(line.split("\t", -1));
            facts.computeIfAbsent(cells.get(0), f -> new ArrayList<>()).add(cells);
        }
        return facts;
    }
}
