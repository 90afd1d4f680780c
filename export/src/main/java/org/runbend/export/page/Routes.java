package org.runbend.export.page;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.runbend.catalog.source.BadInput;

/** What can be asked of the server. */
final class Routes {
    static final String HOUSE = "/api/house";
    private static final Map<String, String> TYPES = Map.of(
            "json", "application/json",
            "svg", "image/svg+xml",
            "pdf", "application/pdf",
            "csv", "text/csv",
            "dxf", "image/vnd.dxf");

    private final Gate gate;
    private final StartFolder folder;
    private final Drafts drafts;
    private final JobSheet sheet;
    private final PlanQueue queue;
    private final EventLog house;
    private final Optional<StockRoutes> stock;

    Routes(
            Gate gate,
            StartFolder folder,
            Drafts drafts,
            JobSheet sheet,
            PlanQueue queue,
            EventLog house,
            Optional<StockRoutes> stock) {
        this.stock = stock;
        this.gate = gate;
        this.folder = folder;
        this.drafts = drafts;
        this.sheet = sheet;
        this.queue = queue;
        this.house = house;
    }

    void answer(Call call) throws IOException {
        switch (call.method()) {
            case "GET", "HEAD" -> get(call);
            case "POST" -> post(call);
            default -> throw new Refused(405, "this is not something to ask here");
        }
    }

    private void get(Call call) throws IOException {
        String path = call.path();
        if (path.equals("/")) {
            asset(call, gate.isIn(call) ? "index.html" : "enter.html");
            return;
        }
        if (path.startsWith("/page/")) {
            asset(call, path.substring("/page/".length()));
            return;
        }
        gate.checkRead(call);
        switch (path) {
            case "/api/session" -> call.answer(session());
            case HOUSE -> house.follow(0, call.stream("text/event-stream"));
            case "/api/job" -> call.answer(opened(call.query("name")));
            case "/api/draft" -> call.answer(drafts.open(call.query("id")));
            default -> {
                if (stock.isEmpty() || !stock.get().get(call)) {
                    plan(call, path.split("/", -1));
                }
            }
        }
    }

    private static void asset(Call call, String name) throws IOException {
        String type = Assets.type(name).orElseThrow(() -> new Refused(404, "there is no such part of the page"));
        call.send(200, type, Assets.bytes(name), Call.OWN);
    }

    private Map<String, Object> session() {
        Map<String, Object> session = new LinkedHashMap<>();
        session.put("token", gate.header());
        session.put("folder", String.valueOf(folder.path().getFileName()));
        stock.ifPresent(s -> session.put("stock", s.title()));
        session.put("drafts", drafts.listing());
        session.putAll(folder.listing());
        return session;
    }

    private Map<String, Object> opened(String name) {
        Map<String, Object> read = sheet.read(name, folder.open(name));
        read.put("name", name);
        return read;
    }

    /** {@code /api/plans/ID/events}, {@code .../kit.zip}, {@code .../files/NAME} and {@code .../files/boards/NAME}. */
    private void plan(Call call, String[] path) throws IOException {
        if (path.length < 5 || !path[1].equals("api") || !path[2].equals("plans")) {
            throw new Refused(404, "there is nothing here");
        }
        PlanRun run = queue.find(path[3]);
        String what = String.join("/", List.of(path).subList(4, path.length));
        if (what.equals("events")) {
            run.events().follow(from(call), call.stream("text/event-stream"));
        } else if (what.equals("kit.zip") && !run.files().isEmpty()) {
            call.keepAs("kit.zip");
            try (OutputStream out = call.stream("application/zip")) {
                KitZip.write(run.folder(), run.files(), out);
            }
        } else if (what.startsWith("files/") && run.files().contains(what.substring("files/".length()))) {
            file(call, run, what.substring("files/".length()));
        } else {
            throw new Refused(404, "this plan has no such file");
        }
    }

    static int from(Call call) {
        List<String> last = call.headers("Last-Event-ID");
        return last.size() == 1 && last.get(0).matches("\\d{1,8}") ? Integer.parseInt(last.get(0)) + 1 : 0;
    }

    private static void file(Call call, PlanRun run, String name) throws IOException {
        String type = TYPES.getOrDefault(name.substring(name.lastIndexOf('.') + 1), "application/octet-stream");
        if (call.query("keep").equals("yes")) {
            call.keepAs(name.substring(name.lastIndexOf('/') + 1));
        }
        call.send(200, type, Files.readAllBytes(run.folder().resolve(name)), Call.INERT);
    }

    private void post(Call call) throws IOException {
        String path = call.path();
        if (path.equals("/enter")) {
            enter(call);
            return;
        }
        gate.checkChange(call);
        if (path.equals("/api/drawing")) {
            String name = DrawingSheet.plain(call.query("name"));
            call.answer(
                    DrawingSheet.read(name, call.body(Limits.MOST_DRAWING), call.query("contour"), call.query("unit")));
            return;
        }
        Map<String, Object> asked = call.json();
        switch (path) {
            case "/api/read" -> call.answer(read(asked));
            case "/api/save" -> {
                folder.save(text(asked, "name"), text(asked, "text"), text(asked, "known"));
                call.answer(Map.of("saved", text(asked, "name")));
            }
            case "/api/catalog" -> call.answer(Map.of("catalog", folder.addDemoCatalog()));
            case "/api/draft/forget" -> {
                drafts.forget(text(asked, "id"));
                call.answer(Map.of());
            }
            case "/api/plans" ->
                call.answer(Map.of(
                        "plan", "" + queue.ask(PlanRequest.of(checked(asked))).id()));
            default -> {
                if (stock.isEmpty() || !stock.get().post(call, asked)) {
                    cancel(call, path.split("/", -1));
                }
            }
        }
    }

    /** The name of a job is looked at before a process is. */
    private Map<String, Object> checked(Map<String, Object> asked) {
        folder.place(text(asked, "name"));
        return asked;
    }

    private void enter(Call call) throws IOException {
        call.cookie(gate.enter(call, call.form().getOrDefault("token", "")));
        asset(call, "entered.html");
    }

    private Map<String, Object> read(Map<String, Object> asked) {
        String name = text(asked, "name");
        String text = text(asked, "text");
        if (asked.get("doc") instanceof Map<?, ?> tree) {
            Map<String, Object> wanted = new LinkedHashMap<>();
            tree.forEach((key, value) -> wanted.put(String.valueOf(key), value));
            try {
                text = sheet.edited(name, text, wanted);
            } catch (BadInput e) {
                throw new Refused(400, folder.shortened(e.getMessage()));
            }
        }
        String id = text(asked, "draft");
        if (!id.isEmpty()) {
            Map<String, Object> draft = new LinkedHashMap<>();
            draft.put("name", name);
            draft.put("title", text(asked, "title"));
            draft.put("known", text(asked, "known"));
            draft.put("text", text);
            drafts.keep(id, draft);
        }
        return text.getBytes(StandardCharsets.UTF_8).length == 0
                ? Map.of("text", "", "faults", List.of())
                : sheet.read(name, text);
    }

    private void cancel(Call call, String[] path) throws IOException {
        if (path.length != 5 || !path[2].equals("plans") || !path[4].equals("cancel")) {
            throw new Refused(404, "there is nothing here");
        }
        queue.find(path[3]).end("Stopped.");
        call.answer(Map.of());
    }

    private static String text(Map<String, Object> asked, String key) {
        return String.valueOf(asked.getOrDefault(key, ""));
    }
}
