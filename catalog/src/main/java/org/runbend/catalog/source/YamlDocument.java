package org.runbend.catalog.source;

import java.util.Locale;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlVersionException;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Makes one tree of nodes from a file. A job needs no alias, anchor or tag, no deep nesting and no second document; all
 * of them are refused from the stream of events, before a tree exists that they could blow up.
 */
public final class YamlDocument {
    private static final int DEEPEST = 20;

    private YamlDocument() {}

    /** The root of the file's only document, which must be a mapping. Errors as with {@link #root}. */
    public static YamlMap open(SourceFile file, Faults faults) {
        return root(file, faults).map();
    }

    /**
     * The root of the file's only document.
     *
     * @param file the file
     * @param faults where everything that is wrong below the root will be noted
     * @throws BadInput if the file is not YAML, or uses what is refused
     */
    public static YamlValue root(SourceFile file, Faults faults) {
        return new YamlValue(node(file), "", new Reading(file.name(), faults, Unit.MM));
    }

    /** The node of the file's only document. Errors as with {@link #root}. */
    static Node node(SourceFile file) {
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file.name())
                .setCodePointLimit(SourceFile.LIMIT + 1)
                .build();
        try {
            guard(file, settings);
            Optional<Node> root = new Compose(settings).composeReader(new WholeLetters(file.text()));
            return root.orElseThrow(() -> new BadInput(Fault.ofFile(file.name(), "is empty")));
        } catch (MarkedYamlEngineException e) {
            throw at(
                    file,
                    e.getProblemMark().or(e::getContextMark),
                    "not YAML: " + plain(firstLine(e.getProblem())) + begun(e));
        } catch (ReaderException e) {
            throw at(file, e.getCodePoint());
        } catch (YamlVersionException e) {
            throw new BadInput(Fault.ofFile(file.name(), "not YAML 1.2: leave the line with %YAML out"));
        } catch (YamlEngineException e) {
            throw new BadInput(Fault.ofFile(file.name(), "not YAML: " + firstLine(e.getMessage())));
        } catch (IllegalArgumentException e) {
            // the scanner takes what follows a backslash and x, u or U for a number of a letter without a look at it
            throw new BadInput(Fault.ofFile(
                    file.name(), "not YAML: a text in double quotes holds a \\x, \\u or \\U with no letter's number"));
        }
    }

    /** A quote or a bracket that stays open is found at the end of the file; where it was opened helps more. */
    private static String begun(MarkedYamlEngineException e) {
        int found = e.getProblemMark().map(Mark::getLine).orElse(0);
        int begun = e.getContextMark().map(Mark::getLine).orElse(found);
        return begun == found ? "" : ", begun in line " + (begun + 1);
    }

    /** The first place of a character that YAML does not allow. */
    private static BadInput at(SourceFile file, int character) {
        String before = file.text().substring(0, Math.max(0, file.text().indexOf(character)));
        int line = (int) before.lines().count() + (before.isEmpty() || before.endsWith("\n") ? 1 : 0);
        int column = before.length() - before.lastIndexOf('\n');
        String message = String.format(
                Locale.ROOT, "not YAML: the control character U+%04X is not allowed, a blank would be", character);
        return new BadInput(new Fault(file.name(), line, column, "", message));
    }

    /** Deep nesting and a second document end the reading at once; each anchor, alias and tag is told. */
    private static void guard(SourceFile file, LoadSettings settings) {
        Faults refused = new Faults();
        int depth = 0;
        int documents = 0;
        for (Event event : new Parse(settings).parseReader(new WholeLetters(file.text()))) {
            if (event instanceof CollectionStartEvent && ++depth > DEEPEST) {
                throw at(file, event.getStartMark(), "nested deeper than " + DEEPEST + " levels");
            }
            if (event instanceof CollectionEndEvent) {
                depth--;
            }
            if (event instanceof DocumentStartEvent && ++documents > 1) {
                throw at(file, event.getStartMark(), "a second document begins, one is wanted");
            }
            refusal(event).ifPresent(r -> refused.addAll(at(file, event.getStartMark(), r)));
        }
        refused.throwIfAny();
    }

    private static Optional<String> refusal(Event event) {
        if (event instanceof AliasEvent
                || (event instanceof NodeEvent n && n.getAnchor().isPresent())) {
            return Optional.of("anchors and aliases (& and *) are not allowed; quote a text that begins so");
        }
        boolean tagged = (event instanceof ScalarEvent s && s.getTag().isPresent())
                || (event instanceof CollectionStartEvent c && c.getTag().isPresent());
        return tagged ? Optional.of("tags (!) are not allowed; quote a text that begins so") : Optional.empty();
    }

    private static BadInput at(SourceFile file, Optional<Mark> mark, String message) {
        return new BadInput(mark.map(m -> new Fault(file.name(), m.getLine() + 1, m.getColumn() + 1, "", message))
                .orElseGet(() -> Fault.ofFile(file.name(), message)));
    }

    /** The reader's words in plain ones. */
    private static String plain(String problem) {
        return problem.replace("the node content", "a value");
    }

    private static String firstLine(String text) {
        String line = text == null ? "unreadable" : text.lines().findFirst().orElse("unreadable");
        return line.strip().replaceAll("[\\s\\p{Cntrl}]+", " ");
    }
}
