package org.runbend.catalog.source;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds where a key stands in a file, for what is found out long after the file was read. */
public final class KeyPlace {
    private KeyPlace() {}

    /**
     * A fault at a key.
     *
     * @param file the file; a base that it extends is searched too
     * @param key path of mappings' keys, such as floor.port.at; where it is not written, the nearest key above it counts
     * @param message what is wrong
     */
    public static Fault fault(Path file, String key, String message) {
        try {
            return fault(SourceFile.read(file), key, message);
        } catch (BadInput e) {
            return new Fault(file.toString(), 0, 0, key, message); // it was read a moment ago, but files change
        }
    }

    /** The same for a file as it was read. */
    public static Fault fault(SourceFile file, String key, String message) {
        try {
            YamlMap root = ExtendedFile.open(file, new Faults(), new ArrayList<>());
            return nearest(root.self(), List.of(key.split("\\.", -1))).faultHere(key, message);
        } catch (BadInput e) {
            return new Fault(file.name(), 0, 0, key, message);
        }
    }

    private static YamlValue nearest(YamlValue root, List<String> names) {
        YamlValue place = root;
        for (String name : names) {
            Optional<YamlValue> below = place.isMap() ? place.map().find(name) : Optional.empty();
            if (below.isEmpty()) {
                return place;
            }
            place = below.get();
        }
        return place;
    }
}
