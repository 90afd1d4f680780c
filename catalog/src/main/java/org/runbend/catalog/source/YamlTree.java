package org.runbend.catalog.source;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * A file as a tree of plain values: a mapping is a {@code Map<String, Object>} in the order of the file, a list a {@code
 * List<Object>}, everything else its text. What a key means is not asked.
 */
public final class YamlTree {
    private YamlTree() {}

    /**
     * The tree of a file.
     *
     * @throws BadInput if it is not YAML, is no mapping, uses what is refused, or has a key twice or one that is no word
     */
    public static Map<String, Object> of(SourceFile file) {
        Node root = YamlDocument.node(file);
        if (root instanceof MappingNode map) {
            return map(map, file);
        }
        throw new BadInput(Fault.ofFile(file.name(), "a mapping of keys and values is wanted"));
    }

    static Object of(Node node, SourceFile file) {
        if (node instanceof MappingNode map) {
            return map(map, file);
        }
        if (node instanceof SequenceNode list) {
            List<Object> values = new ArrayList<>();
            list.getValue().forEach(v -> values.add(of(v, file)));
            return values;
        }
        return ((ScalarNode) node).getValue();
    }

    private static Map<String, Object> map(MappingNode map, SourceFile file) {
        Map<String, Object> values = new LinkedHashMap<>();
        for (NodeTuple tuple : map.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)
                    || key.getValue().isBlank()) {
                throw at(file, tuple.getKeyNode(), "a key must be a word");
            }
            if (values.containsKey(key.getValue())) {
                throw at(file, key, "key " + Plain.quoted(key.getValue()) + " stands twice");
            }
            values.put(key.getValue(), of(tuple.getValueNode(), file));
        }
        return values;
    }

    private static BadInput at(SourceFile file, Node node, String message) {
        return new BadInput(node.getStartMark()
                .map(m -> new Fault(file.name(), m.getLine() + 1, m.getColumn() + 1, "", message))
                .orElseGet(() -> Fault.ofFile(file.name(), message)));
    }
}
