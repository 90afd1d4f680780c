package org.runbend.export.page;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;

/** What the page is made of; names that stand here and no others. */
final class Assets {
    private static final Map<String, String> TYPES = Map.ofEntries(
            Map.entry("index.html", "text/html"),
            Map.entry("enter.html", "text/html"),
            Map.entry("entered.html", "text/html"),
            Map.entry("page.css", "text/css"),
            Map.entry("mark.svg", "image/svg+xml"),
            Map.entry("enter.js", "text/javascript"),
            Map.entry("app.js", "text/javascript"),
            Map.entry("ask.js", "text/javascript"),
            Map.entry("made.js", "text/javascript"),
            Map.entry("job.js", "text/javascript"),
            Map.entry("lengths.js", "text/javascript"),
            Map.entry("floors.js", "text/javascript"),
            Map.entry("drawing.js", "text/javascript"),
            Map.entry("forms.js", "text/javascript"),
            Map.entry("kit.js", "text/javascript"),
            Map.entry("goods.js", "text/javascript"),
            Map.entry("shop.js", "text/javascript"),
            Map.entry("start.js", "text/javascript"));

    private Assets() {}

    /** The type of a part, if there is such a part. */
    static Optional<String> type(String name) {
        return Optional.ofNullable(TYPES.get(name));
    }

    /** The bytes of a part that there is. */
    static byte[] bytes(String name) throws IOException {
        try (InputStream in = Assets.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        }
    }
}
