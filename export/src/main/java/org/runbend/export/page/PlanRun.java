package org.runbend.export.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** One plan that somebody asked for, from the queue to its files. */
final class PlanRun {
    private final String id = Secrets.fresh();
    private final PlanRequest request;
    private final Path folder;
    private final EventLog events = new EventLog();
    private List<String> files = List.of();
    private PlanProcess process;
    private String ended = "";

    PlanRun(PlanRequest request, Path folder) {
        this.request = request;
        this.folder = folder.resolve(id);
    }

    String id() {
        return id;
    }

    PlanRequest request() {
        return request;
    }

    Path folder() {
        return folder;
    }

    EventLog events() {
        return events;
    }

    /** The names of its files; empty before they are written. */
    synchronized List<String> files() {
        return files;
    }

    boolean isOver() {
        return events.isClosed();
    }

    /** Goes on in a process; false if it was ended while it waited. */
    synchronized boolean begin(PlanProcess made) {
        if (!ended.isEmpty()) {
            made.end();
            return false;
        }
        process = made;
        return true;
    }

    /** Talks with its process until that ends. */
    void follow(PlanProcess made) {
        int code;
        try {
            Map<String, Object> message = new HashMap<>(request.tree());
            message.put("out", folder.toString());
            code = made.converse(message, this::heard);
        } catch (IOException e) {
            code = -1;
        }
        over(code);
    }

    private void heard(String line) {
        int from = "{\"event\":\"".length();
        String kind = line.substring(from, line.indexOf('"', from));
        if (kind.equals("files")) {
            Map<String, Object> told = Json.read(line.getBytes(StandardCharsets.UTF_8));
            List<String> names = new ArrayList<>();
            ((List<?>) told.get("files")).forEach(n -> names.add(String.valueOf(n)));
            synchronized (this) {
                files = List.copyOf(names);
            }
        }
        events.add(kind, line);
    }

    private synchronized void over(int code) {
        process = null;
        String words = ended;
        if (words.isEmpty() && code == PlanProcess.NO_MEMORY) {
            words = "This floor takes more memory than a plan may use.";
        } else if (words.isEmpty() && code != 0) {
            words = "A fault of our own: the planner ended without an answer. Your floor is kept.";
        }
        events.add("over", Map.of("words", words));
        events.close();
    }

    /** Ends it, be it waiting or at work; whoever listens is free at once. */
    synchronized void end(String words) {
        if (isOver() || !ended.isEmpty()) {
            return;
        }
        ended = words;
        if (process != null) {
            process.end();
        }
        events.add("over", Map.of("words", words));
        events.close();
    }
}
