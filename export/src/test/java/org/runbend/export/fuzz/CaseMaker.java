package org.runbend.export.fuzz;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Makes the case of a number: a generated job, sound or spoiled, or a file that was spoiled as text. */
final class CaseMaker {
    private static final String CATALOG = "workshop.yaml";
    private static final List<Integer> FEW = List.of(1, 1, 1, 2, 2, 3, 5, 9);

    private final Map<String, String> examples = new TreeMap<>();
    private final String catalog;

    /** A maker on the examples of a folder. */
    CaseMaker(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder, 2)) {
            for (Path f :
                    files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
                String text = Files.readString(f);
                if (f.endsWith(CATALOG) || text.contains(CATALOG) || text.contains("\nextends:")) {
                    examples.put(
                            f.getFileName().toString(), text.replaceAll("(?m)^catalog: .*$", "catalog: ../" + CATALOG));
                }
            }
        }
        this.catalog = examples.remove(CATALOG);
    }

    FuzzCase make(long number) {
        Dice dice = new Dice(number);
        int kind = dice.whole(0, 99);
        if (kind < 7) {
            return sound(number, dice);
        }
        if (kind < 30) {
            return spoiled(number, dice);
        }
        if (kind < 58) {
            return textual(number, dice);
        }
        if (kind < 80) {
            return example(number, dice);
        }
        if (kind < 95) {
            return kind < 88 ? catalog(number, dice) : shelf(number, dice);
        }
        return drawing(number, dice);
    }

    private static FuzzCase drawing(long number, Dice dice) {
        String text = new DrawingMaker(dice).drawing();
        byte[] bytes = dice.percent(30) ? text.getBytes(StandardCharsets.UTF_8) : mutatedDrawing(text, dice);
        List<String> options = dice.percent(70)
                ? List.of()
                : dice.of(List.of(
                        List.of("--drawing-units", "m"),
                        List.of("--drawing-units", "in"),
                        List.of("--layer", "WALLS"),
                        List.of("--tolerance", "30")));
        Map<String, byte[]> files = new LinkedHashMap<>(Map.of(FuzzCase.DRAWING, bytes));
        return new FuzzCase(number, "drawing", "outline", options, files, FuzzCase.Before.NOTHING, Optional.empty());
    }

    private static byte[] mutatedDrawing(String text, Dice dice) {
        return new FileMutator(dice).mutated(text, dice.of(FEW));
    }

    private FuzzCase sound(long number, Dice dice) {
        MadeJob job = new JobMaker(dice).job();
        Map<String, byte[]> files =
                dice.percent(10) ? split(job.tree(), dice) : files(new YamlText(dice).of(job.tree()));
        if (dice.percent(10)) {
            files.put(FuzzCase.SHELF, bytes(ShelfMaker.shelf(dice)));
        }
        int command = dice.whole(0, 99);
        String name = command < 60 ? "plan" : command < 84 ? "check" : command < 92 ? "loop" : "confirm";
        FuzzCase.Before before =
                dice.percent(80) ? FuzzCase.Before.NOTHING : dice.of(List.of(FuzzCase.Before.values()));
        return new FuzzCase(
                number,
                "sound job",
                name,
                name.equals("plan") ? options(dice) : List.of(),
                files,
                before,
                job.drawn() ? Optional.empty() : Optional.of(job.facts()));
    }

    private static List<String> options(Dice dice) {
        return dice.percent(80)
                ? List.of()
                : dice.of(List.of(
                        List.of("--dxf", "r12"),
                        List.of("--channel", "centre"),
                        List.of("--quiet"),
                        List.of("--alternatives"),
                        List.of("--take", "2"),
                        List.of("--dxf", "x")));
    }

    /** The tree over two files, one extending the other. */
    private static Map<String, byte[]> split(Map<String, Object> tree, Dice dice) {
        Map<String, Object> base = new LinkedHashMap<>();
        Map<String, Object> own = new LinkedHashMap<>();
        own.put("extends", "base.yaml");
        tree.forEach((k, v) -> {
            boolean both = k.equals("units");
            if (both || dice.percent(60)) {
                base.put(k, v);
            }
            if (both || !base.containsKey(k)) {
                own.put(k, v);
            }
        });
        Map<String, byte[]> files = files(new YamlText(dice).of(own));
        files.put("base.yaml", bytes(base.isEmpty() ? "revision: A\n" : new YamlText(dice).of(base)));
        return files;
    }

    private FuzzCase spoiled(long number, Dice dice) {
        MadeJob job = new JobMaker(dice).job();
        Map<String, Object> tree = new TreeSpoiler(dice).spoiled(job.tree(), dice.of(FEW));
        return bad(number, "spoiled job", dice, files(new YamlText(dice).of(tree)));
    }

    private FuzzCase textual(long number, Dice dice) {
        if (dice.percent(0.5)) {
            return bad(number, "attack", dice, files(attack(dice)));
        }
        String text = new YamlText(dice).of(new JobMaker(dice).job().tree());
        byte[] mutated = new FileMutator(dice).mutated(text, dice.of(FEW));
        return bad(number, "mutated job", dice, files(mutated));
    }

    /** An example that stays sound takes a second or more, so most get several faults. */
    private FuzzCase example(long number, Dice dice) {
        String name = dice.of(List.copyOf(examples.keySet()));
        int times = dice.percent(2) ? 1 : dice.whole(4, 16);
        byte[] mutated = new FileMutator(dice).mutated(examples.get(name), times);
        return bad(number, "mutated " + name, dice, files(mutated));
    }

    private FuzzCase catalog(long number, Dice dice) {
        Map<String, Object> tree = new JobMaker(dice).job().tree();
        tree.put("catalog", "shop.yaml");
        Map<String, byte[]> files = files(new YamlText(dice).of(tree));
        files.put("shop.yaml", new FileMutator(dice).mutated(catalog, dice.of(FEW)));
        return bad(number, "mutated catalog", dice, files);
    }

    private FuzzCase shelf(long number, Dice dice) {
        Map<String, byte[]> files =
                files(new YamlText(dice).of(new JobMaker(dice).job().tree()));
        files.put(FuzzCase.SHELF, new FileMutator(dice).mutated(ShelfMaker.shelf(dice), dice.of(FEW)));
        return bad(number, "mutated shelf", dice, files);
    }

    private static FuzzCase bad(long number, String what, Dice dice, Map<String, byte[]> files) {
        String command = dice.percent(25) ? "plan" : dice.percent(92) ? "check" : dice.of(List.of("loop", "confirm"));
        FuzzCase.Before before =
                dice.percent(90) ? FuzzCase.Before.NOTHING : dice.of(List.of(FuzzCase.Before.values()));
        return new FuzzCase(number, what, command, List.of(), files, before, Optional.empty());
    }

    /** Files that are made to break a reader of YAML. */
    private static String attack(Dice dice) {
        return switch (dice.whole(0, 6)) {
            case 0 -> "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\njob: *c\n";
            case 1 -> "job: " + "[".repeat(dice.whole(10, 50_000));
            case 2 -> "job: " + "{a: ".repeat(dice.whole(10, 50_000));
            case 3 -> "- ".repeat(dice.whole(10, 20_000));
            case 4 -> "job: !!javax.script.ScriptEngineManager [!!java.net.URLClassLoader [[]]]\n";
            case 5 -> "? ".repeat(dice.whole(10, 5000)) + "a";
            default -> "job: \"" + "x".repeat(dice.of(List.of(1000, 300_000, 2_100_000)));
        };
    }

    private static Map<String, byte[]> files(String job) {
        return files(bytes(job));
    }

    private static Map<String, byte[]> files(byte[] job) {
        return new LinkedHashMap<>(Map.of(FuzzCase.JOB, job));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Names of the examples, for those who check that there are some. */
    List<String> examples() {
        return new ArrayList<>(examples.keySet());
    }
}
