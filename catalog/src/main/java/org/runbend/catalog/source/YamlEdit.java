package org.runbend.catalog.source;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * Changes values of a file and leaves the rest of its text as it is, remarks too.
 *
 * <p>Method: old and new tree are walked together; what differs is written anew in its place, what is gone loses its lines, what
 * is new gets lines after its neighbours. The new text is read again: where it does not give the new tree, the file is
 * written from the tree alone, so that at worst remarks are lost and never a value.
 */
public final class YamlEdit {
    private final SourceFile file;
    private final String text;
    private final String newline;
    /** Replacements by where they begin: end and new text; they never overlap. */
    private final TreeMap<Integer, Change> changes = new TreeMap<>();

    private record Change(int end, String with) {}

    private YamlEdit(SourceFile file) {
        this.file = file;
        this.text = file.text();
        this.newline = text.contains("\r\n") ? "\r\n" : "\n";
    }

    /**
     * The text of a file with the values of another tree.
     *
     * @param file a file that {@link YamlTree#of} reads
     * @param tree maps, lists and texts
     */
    public static String edited(SourceFile file, Map<String, Object> tree) {
        String made;
        try {
            made = new YamlEdit(file).walk(tree);
            if (YamlTree.of(again(file, made)).equals(tree)) {
                return made;
            }
        } catch (BadInput | IndexOutOfBoundsException e) {
            // the text has a form that is not known here: it is written anew
        }
        return YamlWords.file(tree);
    }

    /** The text of a file that holds a tree and nothing else. */
    public static String written(Map<String, Object> tree) {
        return YamlWords.file(tree);
    }

    private static SourceFile again(SourceFile file, String made) {
        return SourceFile.sent(file.path(), made.getBytes(StandardCharsets.UTF_8), file.path());
    }

    private String walk(Map<String, Object> tree) {
        edit(YamlDocument.node(file), tree, 0);
        StringBuilder made = new StringBuilder(text);
        changes.descendingMap().forEach((from, change) -> made.replace(from, change.end(), change.with()));
        return made.toString();
    }

    private void edit(Node node, Object value, int indent) {
        if (YamlTree.of(node, file).equals(value)) {
            return;
        }
        if (node instanceof MappingNode map && value instanceof Map<?, ?> other && !other.isEmpty() && isBlock(map)) {
            mapping(map, other);
        } else if (node instanceof MappingNode map && value instanceof Map<?, ?> other && sameKeys(map, other)) {
            map.getValue().forEach(t -> edit(t.getValueNode(), other.get(name(t)), indent));
        } else if (node instanceof SequenceNode list
                && value instanceof List<?> other
                && list.getValue().size() == other.size()) {
            for (int i = 0; i < other.size(); i++) {
                edit(list.getValue().get(i), other.get(i), indent);
            }
        } else if (node instanceof SequenceNode list && value instanceof List<?> other && isDashed(list, other)) {
            dashed(list, other);
        } else if (node instanceof CollectionNode<?> c && isBlock(c)) {
            throw new IndexOutOfBoundsException("a block that changes its kind is written behind its key");
        } else {
            change(start(node), end(node), kept(node, value));
        }
    }

    /** In one line; values that stay keep their writing. */
    private String kept(Node node, Object value) {
        if (node instanceof MappingNode map && value instanceof Map<?, ?> other) {
            Map<String, Node> old = new LinkedHashMap<>();
            map.getValue().forEach(t -> old.put(name(t), t.getValueNode()));
            List<String> parts = new ArrayList<>();
            other.forEach((key, v) -> {
                String entry = YamlWords.flow(Map.of(key, ""));
                String word = entry.substring(1, entry.length() - ": ''}".length());
                Node was = old.get(String.valueOf(key));
                parts.add(word + ": " + (was == null ? YamlWords.flow(v) : sliceOr(was, v)));
            });
            return "{" + String.join(", ", parts) + "}";
        }
        if (node instanceof SequenceNode list && value instanceof List<?> other) {
            List<Node> left = new ArrayList<>(list.getValue());
            List<String> parts = new ArrayList<>();
            for (Object v : other) {
                Node same = left.stream()
                        .filter(n -> YamlTree.of(n, file).equals(v))
                        .findFirst()
                        .orElse(null);
                left.remove(same);
                parts.add(same == null ? YamlWords.flow(v) : sliceOr(same, v));
            }
            return "[" + String.join(", ", parts) + "]";
        }
        return YamlWords.flow(value);
    }

    /** What is written for a value that stays, if it stands in one line; else the value anew. */
    private String sliceOr(Node node, Object value) {
        String slice = text.substring(start(node), end(node));
        boolean stays = YamlTree.of(node, file).equals(value);
        return stays && slice.indexOf('\n') < 0 ? slice : kept(node, value);
    }

    private void mapping(MappingNode map, Map<?, ?> other) {
        List<NodeTuple> tuples = map.getValue();
        int indent = column(start(tuples.get(0).getKeyNode()));
        for (NodeTuple tuple : tuples) {
            String key = name(tuple);
            if (!other.containsKey(key)) {
                int from = lineStart(start(tuple.getKeyNode()));
                if (!text.substring(from, start(tuple.getKeyNode())).isBlank()) {
                    throw new IndexOutOfBoundsException("the key does not begin its line");
                }
                change(from, lineEnd(end(tuple.getValueNode())), "");
            } else {
                value(tuple, other.get(key), indent);
            }
        }
        StringBuilder fresh = new StringBuilder();
        List<String> old = tuples.stream().map(YamlEdit::name).toList();
        for (Map.Entry<?, ?> entry : other.entrySet()) {
            if (!old.contains(String.valueOf(entry.getKey()))) {
                fresh.append(" ".repeat(indent))
                        .append(YamlWords.entry(entry, indent, newline))
                        .append(newline);
            }
        }
        if (fresh.length() > 0) {
            insert(lineEnd(end(tuples.get(tuples.size() - 1).getValueNode())), fresh.toString());
        }
    }

    private void value(NodeTuple tuple, Object value, int indent) {
        Node node = tuple.getValueNode();
        if (YamlTree.of(node, file).equals(value)) {
            return;
        }
        boolean block = node instanceof CollectionNode<?> c && isBlock(c);
        boolean walked = (node instanceof MappingNode && value instanceof Map<?, ?> m && !m.isEmpty())
                || (node instanceof SequenceNode s
                        && value instanceof List<?> l
                        && (s.getValue().size() == l.size() || isDashed(s, l)));
        boolean one = node instanceof ScalarNode s
                && text.substring(start(s), end(s)).indexOf('\n') < 0
                && value instanceof String;
        if ((block && walked) || (one && start(node) < end(node))) {
            edit(node, value, indent);
        } else if (!block && start(node) < end(node) && isShort(node) && !(node instanceof ScalarNode)) {
            edit(node, value, indent);
        } else {
            int colon = text.indexOf(':', end(tuple.getKeyNode())) + 1;
            change(colon, Math.max(colon, end(node)), YamlWords.behind(value, indent, newline));
        }
    }

    private boolean isShort(Node node) {
        return text.substring(start(node), end(node)).indexOf('#') < 0;
    }

    /** Whether each entry of a list has a line of its own that begins with a dash, and one stays. */
    private boolean isDashed(SequenceNode list, List<?> other) {
        return isBlock(list)
                && !other.isEmpty()
                && list.getValue().stream().allMatch(n -> text.substring(lineStart(start(n)), start(n))
                        .matches(" *- +"));
    }

    private void dashed(SequenceNode list, List<?> other) {
        List<Node> old = list.getValue();
        int from = 0;
        while (from < Math.min(old.size(), other.size()) && same(old.get(from), other.get(from))) {
            from++;
        }
        int tail = 0;
        while (tail < Math.min(old.size(), other.size()) - from
                && same(old.get(old.size() - 1 - tail), other.get(other.size() - 1 - tail))) {
            tail++;
        }
        int oldEnd = old.size() - tail;
        int newEnd = other.size() - tail;
        String lead = text.substring(lineStart(start(old.get(0))), start(old.get(0)));
        for (int i = from; i < Math.min(oldEnd, newEnd); i++) {
            edit(old.get(i), other.get(i), lead.length());
        }
        for (int i = newEnd; i < oldEnd; i++) {
            change(lineStart(start(old.get(i))), lineEnd(end(old.get(i))), "");
        }
        StringBuilder fresh = new StringBuilder();
        for (int i = oldEnd; i < newEnd; i++) {
            fresh.append(lead).append(YamlWords.flow(other.get(i))).append(newline);
        }
        if (fresh.length() > 0) {
            int place = oldEnd == 0 ? lineStart(start(old.get(0))) : lineEnd(end(old.get(oldEnd - 1)));
            insert(place, fresh.toString());
        }
    }

    private boolean same(Node node, Object value) {
        return YamlTree.of(node, file).equals(value);
    }

    /** Whole lines, before what begins there; a last line without an end gets one. */
    private void insert(int place, String lines) {
        boolean open = place == text.length() && place > 0 && text.charAt(place - 1) != '\n';
        Change there = changes.get(place);
        String with = (open ? newline : "") + lines;
        if (there == null) {
            change(place, place, with);
        } else {
            changes.put(place, new Change(there.end(), with + there.with()));
        }
    }

    private void change(int from, int to, String with) {
        Map.Entry<Integer, Change> before = changes.floorEntry(from);
        if (before != null && (before.getValue().end() > from || Objects.equals(before.getKey(), from))) {
            throw new IndexOutOfBoundsException("changes overlap");
        }
        changes.put(from, new Change(to, with));
    }

    private static boolean isBlock(CollectionNode<?> node) {
        return node.getFlowStyle() == FlowStyle.BLOCK;
    }

    private static boolean sameKeys(MappingNode map, Map<?, ?> other) {
        return map.getValue().stream().map(YamlEdit::name).toList().equals(List.copyOf(other.keySet()));
    }

    private static String name(NodeTuple tuple) {
        return ((ScalarNode) tuple.getKeyNode()).getValue();
    }

    private int start(Node node) {
        return at(node.getStartMark().orElseThrow());
    }

    /** Where what is written of a node ends; the parser counts lines after a block as part of it. */
    private int end(Node node) {
        if (node instanceof CollectionNode<?> c && isBlock(c) && !c.getValue().isEmpty()) {
            Object last = c.getValue().get(c.getValue().size() - 1);
            return end(last instanceof NodeTuple t ? t.getValueNode() : (Node) last);
        }
        return at(node.getEndMark().orElseThrow());
    }

    /** The parser counts letters, and half ones of Java's texts as one. */
    private int at(Mark mark) {
        return text.offsetByCodePoints(0, mark.getIndex());
    }

    private int column(int place) {
        return place - lineStart(place);
    }

    private int lineStart(int place) {
        return text.lastIndexOf('\n', place - 1) + 1;
    }

    /** After the end of the line in which the character before a place stands. */
    private int lineEnd(int place) {
        int end = text.indexOf('\n', Math.max(0, place - 1));
        return end < 0 ? text.length() : end + 1;
    }
}
