package org.runbend.export.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/** What must hold of every run, however foolish its input: code, lines, and what lies in the folder afterwards. */
final class CaseRules {
    private static final Pattern TRACE = Pattern.compile(
            "\\bat (org|java|com|picocli)\\.|\\b(org|java|com|picocli)\\.[a-z.]+\\.[A-Z]\\w+|(Exception|Error)\\b(?! Exception)");
    private static final Pattern REPORT = Pattern.compile("please send (\\S+runbend-fault-\\S+\\.txt)");
    private static final int LONGEST_LINE = 3000;

    private final FuzzCase fuzz;
    private final CommandRun run;
    private final Map<String, String> before;
    private final Map<String, String> after;
    private final Path folder;
    private final List<String> broken = new ArrayList<>();

    CaseRules(FuzzCase fuzz, CommandRun run, Map<String, String> before, Map<String, String> after, Path folder) {
        this.fuzz = fuzz;
        this.run = run;
        this.before = before;
        this.after = after;
        this.folder = folder;
    }

    /** What is broken; empty if nothing is. */
    List<String> broken() throws IOException {
        if (run.code() < 0 || run.code() > 2) {
            broken.add("code " + run.code() + ": " + run.err() + report());
        } else if (run.code() == 2) {
            refused();
        } else {
            done();
        }
        rule(!fuzz.isRefusedUnread() || run.code() == 2, "a folder that is not ours was not refused");
        rule(!TRACE.matcher(withoutInput(run.err() + run.out())).find(), "a trace is told: " + run.err());
        return broken;
    }

    /** Words of the input stand quoted in messages; what is in quotes says nothing of us. */
    private static String withoutInput(String text) {
        return text.replaceAll("'[^'\\n]*'|\"[^\"\\n]*\"", "")
                .replaceAll("\\S*ScriptEngineManager\\S*|\\S*java\\.net\\S*", "");
    }

    private void refused() {
        List<String> lines = run.err().lines().toList();
        rule(!lines.isEmpty(), "refused without a word");
        rule(lines.size() == 1 || fuzz.command().equals("check"), "more than one line: " + run.err());
        rule(run.out().isEmpty() || fuzz.command().equals("check"), "refused, but printed: " + run.out());
        for (String line : lines) {
            rule(!line.isBlank(), "an empty line is told");
            rule(line.length() <= LONGEST_LINE, "a line of " + line.length() + " letters: " + line);
            rule(line.chars().noneMatch(Character::isISOControl), "a control letter is told: " + line);
        }
        Map<String, String> rest = new TreeMap<>(after);
        // where a person has to choose among closed lines, a picture numbers them, and the message names it
        rest.keySet().removeIf(f -> !before.containsKey(f) && run.err().contains("; " + f + " shows their numbers"));
        rule(before.equals(rest), "refused, but the folder changed: " + before.keySet() + " to " + after.keySet());
    }

    private void done() throws IOException {
        rule(run.err().isEmpty(), "done, but with errors: " + run.err());
        rule(!run.out().isBlank() || fuzz.options().contains("--quiet"), "done without a word");
        Map<String, String> rest = new TreeMap<>(after);
        for (String name : fuzz.writes()) {
            rule(rest.remove(name) != null, name + " was not written");
        }
        if (!fuzz.command().equals("plan")) {
            rule(rest.equals(before), "files were written: " + after.keySet());
            return;
        }
        Path kit = folder.resolve("kit");
        Set<String> expected = new TreeSet<>();
        if (!fuzz.before().equals(FuzzCase.Before.NOTHING) && !fuzz.before().equals(FuzzCase.Before.EMPTY_FOLDER)) {
            expected.add("notes.txt");
        }
        for (JsonIn name : JsonIn.read(kit.resolve("kit.json")).at("files").list()) {
            expected.add(name.text());
            rule(Files.size(kit.resolve(name.text())) > 50, name.text() + " is empty");
        }
        rule(CaseRunner.names(kit).equals(expected), "files " + CaseRunner.names(kit) + ", told " + expected);
        Set<String> beside = CaseRunner.names(folder);
        beside.removeAll(fuzz.files().keySet());
        rule(beside.equals(new TreeSet<>(List.of("kit"))), "left beside the folder: " + beside);
    }

    private String report() throws IOException {
        Matcher m = REPORT.matcher(run.err());
        if (!m.find() || !Files.exists(Path.of(m.group(1)))) {
            return "";
        }
        Path file = Path.of(m.group(1));
        List<String> lines = Files.readAllLines(file);
        Files.delete(file);
        return lines.stream().limit(25).toList().toString();
    }

    private void rule(boolean holds, String text) {
        if (!holds) {
            broken.add(text);
        }
    }
}
