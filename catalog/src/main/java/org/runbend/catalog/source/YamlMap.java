package org.runbend.catalog.source;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * A mapping of a file. The keys that a reader asks for are the known ones; {@link #make} ends the reading of the
 * mapping, refuses every other key and makes a record of what was read.
 */
public final class YamlMap {
    private final YamlValue self;
    private final boolean broken;
    private final Reading reading;
    private final int faultsBefore;
    private final Map<String, Node> keys = new LinkedHashMap<>();
    private final Map<String, Node> values = new LinkedHashMap<>();
    private final Set<String> known = new LinkedHashSet<>();

    YamlMap(YamlValue self, MappingNode node, Reading reading) {
        this.self = self;
        this.broken = node == null;
        this.reading = reading;
        this.faultsBefore = reading.faults().count();
        if (node != null) {
            node.getValue().forEach(this::enter);
        }
    }

    private YamlMap(YamlMap other, Unit unit) {
        this.self = other.self.in(unit);
        this.broken = other.broken;
        this.reading = new Reading(other.reading.file(), other.reading.faults(), unit);
        this.faultsBefore = other.faultsBefore;
        this.keys.putAll(other.keys);
        this.values.putAll(other.values);
        this.known.addAll(other.known);
    }

    private void enter(NodeTuple tuple) {
        Node key = tuple.getKeyNode();
        String name = key instanceof ScalarNode s ? s.getValue() : "";
        if (name.isBlank()) {
            faultAt(key, self.path(), "a key must be a word");
        } else if (keys.containsKey(name)) {
            int first = keys.get(name).getStartMark().map(m -> m.getLine() + 1).orElse(0);
            faultAt(key, pathOf(name), "key stands twice, first in line " + first);
        } else {
            keys.put(name, key);
            values.put(name, tuple.getValueNode());
        }
    }

    private void faultAt(Node where, String path, String message) {
        reading.faults().add(self.faultAt(where, path, message));
    }

    private String pathOf(String key) {
        String shown = key.length() <= 40 && key.matches("[\\p{Alnum}_.-]+") ? key : Plain.quoted(key);
        return self.path().isEmpty() ? shown : self.path() + "." + shown;
    }

    private YamlMap in(Unit unit) {
        return new YamlMap(this, unit);
    }

    /** The same mapping in the unit that its key {@code units} names, mm if it names none. Ask further keys of the copy only. */
    public YamlMap inOwnUnit() {
        return in(get("units", v -> v.oneOf(Unit.class), Unit.MM));
    }

    /** The mapping as a value, for faults of the whole. */
    public YamlValue self() {
        return self;
    }

    /** The value of a key that must be there. */
    public YamlValue require(String key, String wanted) {
        Optional<YamlValue> value = find(key);
        if (value.isEmpty() && !broken) {
            reading.faults().add(missing(key, wanted));
        }
        return value.orElseGet(() -> new YamlValue(null, pathOf(key), reading));
    }

    private Fault missing(String key, String wanted) {
        return self.faultHere(pathOf(key), "is missing, " + wanted + " is wanted");
    }

    /** The value of a key that may be there. */
    public Optional<YamlValue> find(String key) {
        known.add(key);
        return Optional.ofNullable(values.get(key)).map(v -> new YamlValue(v, pathOf(key), reading));
    }

    /** What is read from the value of a key, or the default if it is not there. */
    public <T> T get(String key, Function<YamlValue, T> read, T otherwise) {
        return find(key).map(read).orElse(otherwise);
    }

    /** The mapping of a key that may be there; an empty one with all its defaults if it is not. */
    public Optional<YamlMap> findMap(String key) {
        return find(key).map(YamlValue::map);
    }

    /** The entries of a list that may be there; each that is faulty is left out, its fault noted. */
    public <T> List<T> each(String key, int most, String wanted, Function<YamlValue, Optional<T>> read) {
        List<T> made = new ArrayList<>();
        find(key).ifPresent(list -> list.list(0, most, wanted)
                .forEach(v -> read.apply(v).ifPresent(made::add)));
        return List.copyOf(made);
    }

    /**
     * Ends the reading: notes keys that nobody asked for, and makes a record unless a fault was noted in this mapping. What the
     * record refuses is noted at the mapping's place.
     */
    public <T> Optional<T> make(Supplier<T> maker) {
        keys.forEach((key, node) -> {
            if (!known.contains(key)) {
                String nearest = Nearest.of(key, known)
                        .map(k -> ", the nearest known key is '" + k + "'")
                        .orElse("");
                faultAt(node, pathOf(key), "unknown key" + nearest);
            }
        });
        if (broken || reading.faults().count() > faultsBefore) {
            return Optional.empty();
        }
        return self.make(maker);
    }
}
