package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.runbend.export.dxf.read.DxfDrawing;

/** What to say of a drawing without a line that could be an outline: what is there instead, and what to do. */
final class Nothing {
    private static final Set<String> SOLIDS =
            Set.of("3DFACE", "3DSOLID", "BODY", "REGION", "SURFACE", "MESH", "POLYLINE mesh", "SOLID", "TRACE");

    private final DxfDrawing drawing;
    private final DrawnShapes figures;
    private final List<String> there = new ArrayList<>();
    private final Set<String> advice = new TreeSet<>();

    Nothing(DxfDrawing drawing, DrawnShapes figures) {
        this.drawing = drawing;
        this.figures = figures;
    }

    /** One line. */
    String words() {
        int hatches =
                figures.hatches.values().stream().mapToInt(Integer::intValue).sum();
        if (hatches > 0) {
            there.add("HATCH: " + hatches + " (layer "
                    + figures.hatches.keySet().stream()
                            .limit(5)
                            .map(FloorReading::shown)
                            .collect(Collectors.joining(", "))
                    + ")");
            advice.add("draw the edge of the hatched floor as a closed line");
        }
        for (Map.Entry<String, Integer> type : drawing.ignored().entrySet()) {
            there.add(FloorReading.shown(type.getKey()) + ": " + type.getValue());
            advise(type.getKey());
        }
        if (drawing.paper() > 0) {
            there.add("entities in paper space: " + drawing.paper());
            advice.add("save the drawing with the floor in model space");
        }
        drawing.remarks().forEach(r -> there.add(FloorReading.shown(r)));
        if (!figures.words.isEmpty() || !figures.spots.isEmpty()) {
            there.add("words and points: " + (figures.words.size() + figures.spots.size()));
        }
        if (there.isEmpty()) {
            return "nothing visible is drawn in model space";
        }
        if (advice.isEmpty()) {
            advice.add("draw the floor as a closed line");
        }
        return "nothing visible is drawn in model space that could be an outline, no line and no arc; there is "
                + there.stream().limit(8).collect(Collectors.joining(", ")) + "; " + String.join(", ", advice);
    }

    private void advise(String type) {
        String word = type.split(" ", -1)[0];
        if (SOLIDS.contains(word) || SOLIDS.contains(type)) {
            advice.add("save the floor's outline as flat lines, seen from above");
        } else if (word.equals("MLINE")) {
            advice.add("explode the multiline into lines");
        } else if (word.equals("INSERT")) {
            advice.add("bind the other file into the drawing, or send it along exploded");
        } else {
            advice.add("draw the floor as a closed line");
        }
    }
}
