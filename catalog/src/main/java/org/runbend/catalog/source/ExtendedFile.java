package org.runbend.catalog.source;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * Opens a file that may say {@code extends: base.yaml}: it then holds what the base holds, with its own differences.
 * Mappings are merged key by key, everything else (lists too) is replaced. A base may extend another one. Each value keeps
 * the place where it was written, for faults and for paths of other files.
 */
public final class ExtendedFile {
    /** The key that names the base. */
    public static final String KEY = "extends";

    private static final String UNITS = "units";
    /** Longest chain of bases; nobody finds a number again in a longer one. */
    private static final int DEEPEST = 5;

    private final Faults faults;
    private final List<SourceFile> read;

    private ExtendedFile(Faults faults, List<SourceFile> read) {
        this.faults = faults;
        this.read = read;
    }

    /**
     * Opens a file and its bases.
     *
     * @param file the file
     * @param faults where everything that is wrong is noted, a base that cannot be read too
     * @param read gets the file and its bases, in order of reading
     * @throws BadInput if the file is not YAML, or uses what is refused
     */
    public static YamlMap open(SourceFile file, Faults faults, List<SourceFile> read) {
        Node node = new ExtendedFile(faults, read).node(file, List.of(real(file.path())));
        return new YamlValue(node, "", new Reading(file.name(), faults, Unit.MM)).map();
    }

    private Node node(SourceFile file, List<Path> chain) {
        read.add(file);
        Node node = YamlDocument.node(file);
        Optional<NodeTuple> key = node instanceof MappingNode m ? find(m, KEY) : Optional.empty();
        if (key.isEmpty()) {
            return node;
        }
        MappingNode own = (MappingNode) node;
        YamlValue value = new YamlValue(key.get().getValueNode(), KEY, new Reading(file.name(), faults, Unit.MM));
        MappingNode rest = with(own, without(own, key.get()));
        Optional<MappingNode> found = base(file, value, chain);
        if (found.isEmpty()) {
            faults.throwIfAny(); // whatever the base holds would only seem to be missing
        }
        return found.map(base -> {
                    checkUnits(base, rest, file);
                    return (Node) merged(base, rest);
                })
                .orElse(rest);
    }

    private Optional<MappingNode> base(SourceFile file, YamlValue value, List<Path> chain) {
        String name = value.text();
        if (name.isEmpty()) {
            return Optional.empty();
        }
        Path path;
        SourceFile source;
        try {
            path = file.path().resolveSibling(name);
            if (isRefused(value, real(path), chain)) {
                return Optional.empty();
            }
            source = file.named(path);
        } catch (InvalidPathException e) {
            value.wrong("the path of a file to start from");
            return Optional.empty();
        } catch (BadInput e) {
            value.fault(e.getMessage());
            return Optional.empty();
        }
        List<Path> longer = new ArrayList<>(chain);
        longer.add(real(path));
        Node node = node(source, longer);
        if (node instanceof MappingNode m) {
            return Optional.of(m);
        }
        value.fault(source.name() + " holds no mapping of keys and values");
        return Optional.empty();
    }

    private static boolean isRefused(YamlValue value, Path path, List<Path> chain) {
        if (chain.contains(path)) {
            value.fault("the files extend each other in a circle");
            return true;
        }
        if (chain.size() > DEEPEST) {
            value.fault("more than " + DEEPEST + " files extend each other in a row");
            return true;
        }
        return false;
    }

    /** The path without detours; links are not followed, the limit of the chain holds them. */
    private static Path real(Path path) {
        return path.toAbsolutePath().normalize();
    }

    /** A bare number means the unit of the file it stands in, so both files must mean the same one. */
    private void checkUnits(MappingNode base, MappingNode own, SourceFile file) {
        String bases = unit(base);
        find(own, UNITS)
                .filter(t -> t.getValueNode() instanceof ScalarNode s
                        && !s.getValue().strip().equals(bases))
                .ifPresent(t -> new YamlValue(t.getValueNode(), UNITS, new Reading(file.name(), faults, Unit.MM))
                        .fault("the base is in " + Plain.quoted(bases) + ": both files need one unit"));
    }

    private static String unit(MappingNode map) {
        return find(map, UNITS)
                .map(NodeTuple::getValueNode)
                .map(v -> v instanceof ScalarNode s ? s.getValue().strip() : "")
                .orElse("mm");
    }

    private static MappingNode merged(MappingNode base, MappingNode own) {
        List<NodeTuple> tuples = new ArrayList<>();
        List<NodeTuple> rest = new ArrayList<>(own.getValue());
        for (NodeTuple old : base.getValue()) {
            Optional<NodeTuple> mine = find(own, name(old)).filter(rest::contains);
            mine.ifPresent(rest::remove);
            tuples.add(mine.map(m -> merged(old, m)).orElse(old));
        }
        tuples.addAll(rest);
        return with(own, tuples);
    }

    private static NodeTuple merged(NodeTuple base, NodeTuple own) {
        return base.getValueNode() instanceof MappingNode b && own.getValueNode() instanceof MappingNode o
                ? new NodeTuple(own.getKeyNode(), merged(b, o))
                : own;
    }

    private static MappingNode with(MappingNode place, List<NodeTuple> tuples) {
        return new MappingNode(
                place.getTag(), true, tuples, place.getFlowStyle(), place.getStartMark(), place.getEndMark());
    }

    private static List<NodeTuple> without(MappingNode map, NodeTuple tuple) {
        return map.getValue().stream().filter(t -> t != tuple).toList();
    }

    private static Optional<NodeTuple> find(MappingNode map, String key) {
        return map.getValue().stream().filter(t -> name(t).equals(key)).findFirst();
    }

    /** The key's word; empty if it is none. */
    private static String name(NodeTuple tuple) {
        return tuple.getKeyNode() instanceof ScalarNode s ? s.getValue() : "";
    }
}
