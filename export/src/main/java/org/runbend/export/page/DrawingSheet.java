package org.runbend.export.page;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.catalog.source.BadInput;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfFault;
import org.runbend.export.dxf.read.DxfReader;
import org.runbend.export.outline.Candidate;
import org.runbend.export.outline.FloorReading;
import org.runbend.export.outline.FloorSketch;
import org.runbend.export.outline.JobDraft;
import org.runbend.export.outline.NoOutline;
import org.runbend.export.outline.OutlineRequest;

/** Begins a job from a drawing that was dropped on the page; where several lines could be the floor the page asks. */
final class DrawingSheet {
    private static final double GAP = 0.5;
    private static final List<DrawingUnit> UNITS = List.of(DrawingUnit.values());

    private DrawingSheet() {}

    /**
     * What the page shows of a drawing: the text of a job, or closed lines to choose from with words that say why.
     *
     * @param name name of the drawing
     * @param bytes the drawing
     * @param contour number of the line that is the floor; empty: not said
     * @param unit symbol of the unit; empty: the drawing's own
     */
    static Map<String, Object> read(String name, byte[] bytes, String contour, String unit) {
        Optional<DrawingUnit> wished =
                UNITS.stream().filter(u -> u.symbol().equals(unit)).findFirst();
        OutlineRequest request = new OutlineRequest(
                wished,
                Optional.empty(),
                GAP,
                contour.matches("\\d{1,6}") ? OptionalInt.of(Integer.parseInt(contour)) : OptionalInt.empty(),
                Optional.empty(),
                Optional.empty());
        Map<String, Object> shown = new LinkedHashMap<>();
        try {
            FloorSketch sketch = FloorReading.read(name, new DxfReader().read(bytes, wished), request);
            shown.put("text", JobDraft.text(sketch, name));
            shown.put("guesses", sketch.guesses());
            shown.put("leftOut", sketch.leftOut());
        } catch (DxfFault e) {
            throw new Refused(400, name + ": " + e.reason());
        } catch (NoOutline e) {
            shown.put("words", name + ": " + e.getMessage());
            shown.put(
                    "candidates",
                    e.candidates().stream().map(DrawingSheet::candidate).toList());
        } catch (BadInput e) {
            throw new Refused(400, e.getMessage());
        }
        return shown;
    }

    private static Map<String, Object> candidate(Candidate c) {
        List<Vertex> vertices = c.contour().path().vertices();
        return Map.of(
                "number", c.number(),
                "area", c.contour().area() / 1e6,
                "what", c.what(),
                "outline", vertices.stream().map(v -> List.of(v.x(), v.y())).toList());
    }

    /** Names of drawings are shown in messages. */
    static String plain(String name) {
        String text = new String(name.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8)
                .replaceAll("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]", " ");
        return text.isBlank() ? "drawing.dxf" : text.substring(0, Math.min(text.length(), 80));
    }
}
