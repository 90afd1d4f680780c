package org.runbend.export.drawing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Level lines of letters below each other; {@code at} is the upper left corner, {@code height} that of a capital, mm. */
public record Paragraph(Point at, double height, List<String> lines) implements Shape {
    /** From baseline to baseline by the height of a capital: what CAD programs take as single spacing (5/3). */
    public static final double PITCH = 5.0 / 3;

    /** Checks and copies. */
    public Paragraph {
        lines = List.copyOf(lines);
        if (lines.isEmpty() || !(height > 0)) {
            throw new IllegalArgumentException(
                    "paragraph needs a line and a height over 0, has " + lines.size() + " lines of " + height + " mm");
        }
    }

    /** The lines one by one. */
    public List<Text> texts() {
        List<Text> texts = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            texts.add(Text.level(at.plus(0, -i * PITCH * height), height, Anchor.TOP_LEFT, lines.get(i)));
        }
        return texts;
    }

    @Override
    public Extent extent() {
        return texts().stream().map(Text::extent).reduce(Extent::union).orElseThrow();
    }

    @Override
    public void drawOn(Backend backend, Layer layer) throws IOException {
        backend.paragraph(layer, this);
    }
}
