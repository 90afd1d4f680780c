package org.runbend.export.page;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What can be asked of orders and shelf, where there is a ledger; whoever calls has come through the gate. */
final class StockRoutes {
    private static final String STOCK = "/api/stock";
    private static final String DAYS = "/api/days";

    private final StockRoom room;
    private final DayRuns days;
    private final PlanQueue queue;

    StockRoutes(StockRoom room, DayRuns days, PlanQueue queue) {
        this.room = room;
        this.days = days;
        this.queue = queue;
    }

    String title() {
        return room.title();
    }

    /** Answers what is about orders and shelf; false if it is not. */
    boolean get(Call call) throws IOException {
        String path = call.path();
        if (path.equals(STOCK)) {
            Map<String, Object> shown = new LinkedHashMap<>(room.shown());
            shown.put("folders", days.folders());
            call.answer(shown);
            return true;
        }
        String[] parts = path.split("/", -1);
        if (path.startsWith(DAYS + "/") && parts.length == 5 && parts[4].equals("events")) {
            days.find(parts[3]).events().follow(Routes.from(call), call.stream("text/event-stream"));
            return true;
        }
        return false;
    }

    /** Does what is about orders and shelf; false if it is not. */
    boolean post(Call call, Map<String, Object> asked) throws IOException {
        String path = call.path();
        if (path.equals(STOCK)) {
            call.answer(room.act(asked, plan(asked)));
            return true;
        }
        if (path.equals(DAYS)) {
            DayRun run = days.begin(
                    String.valueOf(asked.getOrDefault("folder", "")),
                    String.valueOf(asked.getOrDefault("name", "")),
                    String.valueOf(asked.getOrDefault("request", "")));
            call.answer(Map.of("day", new Json.Raw(Json.quoted(run.id()))));
            return true;
        }
        String[] parts = path.split("/", -1);
        if (path.startsWith(DAYS + "/") && parts.length == 5 && parts[4].equals("cancel")) {
            days.find(parts[3]).stop();
            call.answer(Map.of());
            return true;
        }
        return false;
    }

    /** The plan that is to be kept for its order. */
    private Optional<PlanRun> plan(Map<String, Object> asked) {
        if (!"keep".equals(asked.get("act"))) {
            return Optional.empty();
        }
        PlanRun run = queue.find(String.valueOf(asked.getOrDefault("plan", "")));
        if (run.files().isEmpty()) {
            throw new Refused(409, "this plan is not whole yet");
        }
        return Optional.of(run);
    }
}
