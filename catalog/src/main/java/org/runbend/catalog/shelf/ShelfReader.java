package org.runbend.catalog.shelf;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.runbend.catalog.source.Faults;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.YamlDocument;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;

/** Reads a shelf file: {@code remnants: [{id, product, length}]}, or the bare list of them. */
public final class ShelfReader {
    private static final int MOST = 5000;
    private static final String WANTED = "a list of remnants {id, product, length}";

    private final Set<String> ids = new HashSet<>();

    private ShelfReader() {}

    /**
     * Reads a shelf.
     *
     * @throws org.runbend.catalog.source.BadInput with every fault that was found
     */
    public static Shelf read(Path file) {
        return read(SourceFile.read(file));
    }

    /** Reads a shelf from a file that is in memory already. Errors as with {@link #read(Path)}. */
    public static Shelf read(SourceFile file) {
        Faults faults = new Faults();
        YamlValue root = YamlDocument.root(file, faults);
        Optional<Shelf> shelf = new ShelfReader().shelf(root);
        faults.throwIfAny();
        return shelf.orElseThrow();
    }

    private Optional<Shelf> shelf(YamlValue root) {
        return root.isList() ? ofList(root) : ofMap(root.map().inOwnUnit());
    }

    private Optional<Shelf> ofMap(YamlMap map) {
        List<Remnant> remnants = map.each("remnants", MOST, WANTED, this::remnant);
        return map.make(() -> new Shelf(remnants));
    }

    private Optional<Shelf> ofList(YamlValue list) {
        List<Remnant> remnants = list.list(0, MOST, WANTED).stream()
                .flatMap(v -> remnant(v).stream())
                .toList();
        return list.make(() -> new Shelf(remnants));
    }

    private Optional<Remnant> remnant(YamlValue value) {
        YamlMap m = value.map();
        String id = id(m.require("id", "what is written on it"));
        String product = m.require("product", "a part number").text();
        double length = m.require("length", "its length").length(0, 1_000_000);
        return m.make(() -> new Remnant(id, product, length));
    }

    private String id(YamlValue value) {
        String id = value.text();
        if (!id.isEmpty() && !ids.add(id)) {
            value.fault("id " + Plain.quoted(id) + " stands twice on the shelf");
        }
        return id;
    }
}
