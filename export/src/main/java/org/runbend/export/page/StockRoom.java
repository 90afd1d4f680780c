package org.runbend.export.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Days;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.Movement;
import org.runbend.catalog.ledger.MovementKind;
import org.runbend.catalog.ledger.OrderRecord;
import org.runbend.catalog.ledger.OrderState;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.Request;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.catalog.source.BadInput;
import org.runbend.export.data.DeliveryNote;
import org.runbend.export.data.KitUses;
import org.runbend.export.data.LedgerLists;
import org.runbend.export.data.Listing;
import org.runbend.export.folder.OutputFolder;
import org.runbend.export.folder.OutputRefused;
import org.runbend.export.stock.KitMoves;
import org.runbend.export.stock.Told;

/** Orders and shelf: what the ledger says, for the page, and what the page moves in it. Its only clock is the ledger's. */
final class StockRoom {
    /** So many movements are shown, the last ones. */
    private static final int SHOWN = 60;

    private final StockAccess access;
    private final StartFolder folder;
    private final KitsAtHand kits;

    StockRoom(StockAccess access, StartFolder folder) {
        this.access = access;
        this.folder = folder;
        this.kits = new KitsAtHand(folder.path(), access.keeping());
    }

    String title() {
        return access.place().title();
    }

    /** Orders, shelf and the last movements, as they are at one moment. */
    Map<String, Object> shown() {
        return ledger(ledger -> ledger.look(this::shown));
    }

    private Map<String, Object> shown(Books books) {
        List<Movement> movements = books.movements();
        List<Movement> last = movements.subList(Math.max(0, movements.size() - SHOWN), movements.size());
        Map<String, Object> shown = new LinkedHashMap<>();
        shown.put("orders", orders(books, movements));
        shown.put("shelf", shelf(books));
        shown.put("reorder", rows(LedgerLists.reorder(books).forPeople()));
        shown.put("history", history(books, last));
        shown.put("movements", movements.size());
        return shown;
    }

    private List<Object> orders(Books books, List<Movement> movements) {
        Map<String, String> since = new HashMap<>();
        movements.forEach(m -> since.put(m.order(), m.at()));
        List<Object> orders = new ArrayList<>();
        for (OrderRecord order : books.orders()) {
            Optional<KitsAtHand.Kit> kit = kits.of(order);
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("order", text(order.order()));
            one.put("state", order.state().word());
            one.put("since", since.getOrDefault(order.order(), ""));
            one.put("kit", text(kit.map(k -> name(k.folder())).orElse("")));
            Optional<String> day = Days.dayOf(books, order);
            boolean isDay = !Days.orders(books, order.order()).isEmpty();
            one.put("day", text(day.orElse("")));
            one.put("over", isOver(order, isDay));
            one.put(
                    "cuts",
                    isSpoilable(order, isDay)
                            ? rows(LedgerLists.cuts(books, order.order()).forPeople())
                            : List.of());
            one.put("acts", day.isPresent() || isOver(order, isDay) ? List.of() : acts(order, kit.isPresent()));
            orders.add(one);
        }
        return orders;
    }

    /** Whether nothing is left to do: the orders of a day that is cut go on one by one. */
    private static boolean isOver(OrderRecord order, boolean isDay) {
        return switch (order.state()) {
            case CUT, PACKED -> isDay;
            case QUOTED, CONFIRMED -> false;
            case SENT, RETURNED, UNKNOWN -> true;
        };
    }

    /** Whether pieces of it may turn out to be cut wrong, and can be cut again. */
    private boolean isSpoilable(OrderRecord order, boolean isDay) {
        boolean isCut = order.state() == OrderState.CUT || order.state() == OrderState.PACKED;
        return isCut && !isDay && kits.cutBy(order).isPresent();
    }

    /** What lies there in people's words; {@code as} is what a stock-take names it by. */
    private static List<Map<String, Object>> shelf(Books books) {
        LedgerLists.Both both = LedgerLists.stock(books);
        List<Map<String, Object>> shelf = rows(both.forPeople());
        List<Map<String, Object>> exact = rows(both.forPrograms());
        for (int i = 0; i < shelf.size(); i++) {
            Map<String, Object> as = exact.get(i);
            as.keySet().retainAll(List.of("kind", "id", "product", "length", "batch", "label"));
            shelf.get(i).put("as", as);
        }
        return shelf;
    }

    /** What may be done with an order next. */
    private static List<String> acts(OrderRecord order, boolean hasKit) {
        return switch (order.state()) {
            case QUOTED -> hasKit ? List.of("reserve") : List.of();
            case CONFIRMED -> {
                boolean more = hasKit && KitsAtHand.isShelfAlone(order);
                yield !hasKit
                        ? List.of("release")
                        : more ? List.of("confirm", "reserve", "release") : List.of("confirm", "release");
            }
            case CUT -> List.of("pack", "return");
            case PACKED -> List.of("send", "return");
            case SENT -> List.of("return");
            case UNKNOWN, RETURNED -> List.of();
        };
    }

    private List<Object> history(Books books, List<Movement> last) {
        List<Map<String, Object>> rows =
                rows(LedgerLists.history(books, "", last).forPeople());
        List<Object> newestFirst = new ArrayList<>();
        for (int i = rows.size() - 1; i >= 0; i--) {
            Movement m = last.get(i);
            rows.get(i).put("undoable", m.isLive() && m.kind() != MovementKind.UNDO);
            newestFirst.add(rows.get(i));
        }
        return newestFirst;
    }

    private static List<Map<String, Object>> rows(Listing listing) {
        List<Map<String, Object>> rows = new ArrayList<>();
        for (List<Object> cells : listing.rows()) {
            Map<String, Object> row = new LinkedHashMap<>();
            for (int c = 0; c < cells.size(); c++) {
                Object cell = cells.get(c);
                row.put(listing.columns().get(c).key(), cell instanceof Number ? cell : text(cell.toString()));
            }
            rows.add(row);
        }
        return rows;
    }

    /** A text that stays one: an order may be called 1042. */
    private static Json.Raw text(String text) {
        return new Json.Raw(Json.quoted(text));
    }

    private String name(Path path) {
        return folder.path().relativize(path).toString().replace('\\', '/');
    }

    /**
     * Moves something.
     *
     * @param asked {@code act}, {@code request}, and {@code order}, the {@code movement} to be undone or what {@link Goods} reads
     * @param run the plan on the screen, where it is to be kept for its order
     */
    Map<String, Object> act(Map<String, Object> asked, Optional<PlanRun> run) {
        if (run.isPresent() && !"true".equals(asked.get("anew"))) {
            Optional<String> question = otherPlan(run.get());
            if (question.isPresent()) {
                return Map.of("asks", question.get());
            }
        }
        String order = word(asked, "order");
        Request request = new Request(id(word(asked, "request")), Told.user(), "");
        Outcome outcome = ledger(ledger -> switch (word(asked, "act")) {
            case "keep" -> keep(ledger, request, run.orElseThrow(() -> new Refused(400, "which plan?")));
            case "reserve" -> KitMoves.reserve(ledger, request, kit(ledger, order));
            case "confirm" -> ledger.confirm(request, kit(ledger, order).use());
            case "release" -> ledger.release(request, order);
            case "pack" -> ledger.pack(request, order);
            case "send" -> ledger.send(request, order);
            case "return" -> ledger.takeBack(request, order, access.keeping());
            case "receive" -> ledger.receive(request, List.of(Goods.received(asked)));
            case "count" -> ledger.count(request, List.of(Goods.counted(asked)));
            case "note" -> note(ledger, asked);
            case "spoil" ->
                Goods.spoiling(asked, cutBy(ledger, order), access.keeping()).move(ledger, request);
            case "undo" -> ledger.undo(request, number(word(asked, "movement")));
            default -> throw new Refused(400, "this is nothing that a ledger does");
        });
        List<String> notes = new ArrayList<>(outcome.notes());
        run.ifPresent(r -> notes.add(written(r)));
        return Map.of(
                "movement", outcome.movement().number(),
                "order", text(outcome.movement().order()),
                "title", text(Told.title(outcome.movement())),
                "changed", outcome.isNew(),
                "labels", Told.labels(outcome),
                "notes", notes);
    }

    /** What is asked before stock that is kept for another plan of the same order number is given back. */
    private Optional<String> otherPlan(PlanRun run) {
        KitUses uses = KitUses.read(run.folder(), access.keeping());
        OrderRecord now =
                ledger(ledger -> ledger.look(books -> books.order(uses.use().order())));
        boolean other = now.state() == OrderState.CONFIRMED
                && !now.fingerprint().equals(uses.use().fingerprint());
        return other
                ? Optional.of(
                        "For order " + now.order() + " stock is kept already, by another plan. Is it the same order?"
                                + " If not, give this job another order number under Pipe, heat.")
                : Optional.empty();
    }

    private Outcome keep(StockLedger ledger, Request request, PlanRun run) {
        return KitMoves.reserve(ledger, request, KitUses.read(run.folder(), access.keeping()));
    }

    /** Files of a plan that stock is kept for go into a folder of their own: the order is cut by them, perhaps tomorrow. */
    private String written(PlanRun run) {
        String order = KitUses.read(run.folder(), access.keeping()).use().order();
        Path place = kits.place(order);
        try {
            Map<String, byte[]> files = new TreeMap<>();
            for (String name : run.files()) {
                files.put(name, Files.readAllBytes(run.folder().resolve(name)));
            }
            OutputFolder out = new OutputFolder(place);
            out.checkOurs();
            out.write(files);
            return "its papers and drawings lie in " + name(place);
        } catch (IOException | OutputRefused e) {
            throw new Refused(
                    507,
                    "stock is kept for order " + order + ", but " + name(place)
                            + " cannot be written: make room there and press once more");
        }
    }

    private KitUses kit(StockLedger ledger, String order) {
        OrderRecord record = ledger.look(books -> books.order(order));
        if (record.state() == OrderState.UNKNOWN) {
            throw new Refused(404, "order " + order + " is not in the ledger");
        }
        return kits.of(record)
                .map(KitsAtHand.Kit::uses)
                .orElseThrow(() -> new Refused(
                        404,
                        "the kit of order " + order + " lies in no folder of this page: plan it anew, or see"
                                + " runbend stock --help for one that lies elsewhere"));
    }

    /** A note that comes twice came once, whoever brings it: its request is its own. */
    private Outcome note(StockLedger ledger, Map<String, Object> asked) {
        DeliveryNote.Lines lines = Goods.note(asked, folder.path());
        return ledger.receive(new Request("note-" + lines.mark(), Told.user(), ""), lines.received());
    }

    private KitUses cutBy(StockLedger ledger, String order) {
        return kits.cutBy(ledger.look(books -> books.order(order)))
                .map(KitsAtHand.Kit::uses)
                .orElseThrow(() ->
                        new Refused(404, "the kit that order " + order + " was cut by lies in no folder of this page"));
    }

    private <T> T ledger(Function<StockLedger, T> work) {
        try {
            return access.place().with(word -> {}, work);
        } catch (LedgerRefused e) {
            throw new Refused(409, folder.shortened(e.getMessage()));
        } catch (BadInput e) {
            throw new Refused(400, folder.shortened(e.getMessage()));
        }
    }

    private static String word(Map<String, Object> asked, String key) {
        return String.valueOf(asked.getOrDefault(key, ""));
    }

    private static String id(String request) {
        if (!request.matches("[A-Za-z0-9-]{8,60}")) {
            throw new Refused(400, "a request has an id of its own");
        }
        return request;
    }

    private static long number(String text) {
        if (!text.matches("\\d{1,15}")) {
            throw new Refused(400, "a movement has a number");
        }
        return Long.parseLong(text);
    }
}
