package org.runbend.catalog.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** A bench that does one thing after another at random, sensible and senseless, on a ledger and on the model of it. */
final class RandomBench {
    private static final List<String> ORDERS = List.of("HF-1", "HF-2", "HF-3", "HF-4", "HF-5");
    private static final List<String> DAYS = List.of("monday", "tuesday");
    private static final List<String> NAMES =
            Stream.concat(ORDERS.stream(), DAYS.stream()).toList();
    private static final String OF_ORDERS = " of ";
    private static final List<String> PIPES = List.of("PX-16", "PX-12");
    private static final List<Long> COILS = List.of(2_500_000L, 5_000_000L);
    private static final Keeping KEEPING = Keeping.USUAL;

    private final Random dice;
    private final StockLedger ledger;
    private ModelShelf model = new ModelShelf();
    private int requests;
    private int plans;
    private KitUse lastUse;
    private KitUse lastDay;
    private Runnable lastAsked = () -> {};
    private String lastRequest = "";
    private int accepted;
    private int refused;
    private int repeated;
    private int days;

    RandomBench(long seed, StockLedger ledger) {
        this.dice = new Random(seed);
        this.ledger = ledger;
    }

    ModelShelf model() {
        return model;
    }

    int accepted() {
        return accepted;
    }

    int refused() {
        return refused;
    }

    int repeated() {
        return repeated;
    }

    /** Days of several orders that were reserved or cut. */
    int days() {
        return days;
    }

    /** What a step came to on the ledger. */
    private interface Asking {
        Outcome ask(Request request);
    }

    /** Does one thing on both and says what it was; they must agree on whether it can be done. */
    String step() {
        String order = dice.nextInt(9) == 0 ? one(DAYS) : one(ORDERS);
        int what = dice.nextInt(100);
        if (what < 16) {
            Received r = delivery();
            return both("receive", q -> ledger.receive(q, List.of(r)), () -> model.receive(r));
        } else if (what < 23) {
            Counted c = stockTake();
            return both("count", q -> ledger.count(q, List.of(c)), () -> model.count(c));
        } else if (what < 26) {
            String plan = "p" + plans++;
            return both("quote " + order, q -> ledger.quote(q, order, plan), () -> model.quote(order, plan));
        } else if (what < 46) {
            KitUse use = what < 38 ? use(order) : day();
            return both("reserve " + words(use), q -> ledger.reserve(q, use), () -> model.reserve(use));
        } else if (what < 50) {
            return both("release " + order, q -> ledger.release(q, order), () -> model.release(order));
        } else if (what < 61) {
            return confirm(lastUse != null && dice.nextBoolean() ? again(lastUse) : use(order));
        } else if (what < 67) {
            return confirm(lastDay != null && dice.nextInt(3) > 0 ? again(lastDay) : day());
        } else if (what < 73) {
            return spoil(order);
        }
        return later(what, order);
    }

    private String later(int what, String order) {
        if (what < 77) {
            return both(
                    "return " + order, q -> ledger.takeBack(q, order, KEEPING), () -> model.takeBack(order, KEEPING));
        } else if (what < 81) {
            return both("pack " + order, q -> ledger.pack(q, order), () -> model.go(order, "cut", "packed"));
        } else if (what < 83) {
            return both("send " + order, q -> ledger.send(q, order), () -> model.go(order, "packed", "sent"));
        } else if (what < 96 || lastRequest.isEmpty()) {
            int size = model.steps.size();
            long number = dice.nextInt(3) > 0 ? Math.max(1, size - dice.nextInt(4)) : 1 + dice.nextInt(size + 2);
            return both("undo " + number, q -> ledger.undo(q, number), () -> model.undo((int) number));
        }
        return repeat();
    }

    private String confirm(KitUse use) {
        return both("confirm " + words(use), q -> ledger.confirm(q, use), () -> model.confirm(use));
    }

    private static String words(KitUse use) {
        return use.order()
                + (use.orders().isEmpty() ? "" : OF_ORDERS + use.orders().keySet());
    }

    /** The plan that was reserved last, under its own fingerprint or another. */
    private KitUse again(KitUse use) {
        return dice.nextInt(3) == 0
                ? new KitUse(use.order(), "p" + plans++, use.stock(), use.items(), use.keeping(), use.orders())
                : use;
    }

    private String both(String what, Asking asking, Runnable modelled) {
        Request request = new Request("q" + requests++, "bench", "");
        ModelShelf before = model;
        model = before.copy();
        boolean right;
        try {
            model.step(modelled);
            right = true;
        } catch (ModelShelf.No no) {
            model = before;
            right = false;
        }
        return answer(what, request, asking, right, before);
    }

    private String answer(String what, Request request, Asking asking, boolean right, ModelShelf before) {
        try {
            Outcome outcome = asking.ask(request);
            if (!outcome.isNew()) { // the same plan again
                model = before;
                repeated++;
                return what + ": done before";
            }
            if (!right) {
                throw new AssertionError(what + " was done, the model refuses it");
            }
            accepted++;
            days += what.contains(OF_ORDERS) ? 1 : 0;
            lastRequest = request.id();
            lastAsked = () -> {
                Outcome same = asking.ask(request);
                if (same.isNew()
                        || same.movement().number() != outcome.movement().number()) {
                    throw new AssertionError("the same request changed something: " + what);
                }
            };
            return what;
        } catch (LedgerRefused e) {
            if (right) {
                throw new AssertionError(what + " was refused, the model does it: " + e.getMessage(), e);
            }
            refused++;
            return what + ": refused";
        }
    }

    /** The last request once more, or its id with other content: nothing happens. */
    private String repeat() {
        if (dice.nextBoolean()) {
            lastAsked.run();
            repeated++;
            return "repeat";
        }
        try {
            ledger.receive(
                    new Request(lastRequest, "bench", ""),
                    List.of(new Received(thing(Kind.ITEM, "never", 0), 77, Optional.empty())));
            throw new AssertionError("an id was taken for other content");
        } catch (LedgerRefused e) {
            return "other content: refused";
        }
    }

    private static Received.Thing thing(Kind kind, String product, long length) {
        return new Received.Thing(kind, Optional.empty(), product, length, "", "");
    }

    private <T> T one(List<T> of) {
        return of.get(dice.nextInt(of.size()));
    }

    private Received delivery() {
        int kind = dice.nextInt(6);
        String batch = dice.nextBoolean() ? "B1" : "B2";
        if (kind < 2) {
            Received.Thing coil = new Received.Thing(Kind.COIL, Optional.empty(), one(PIPES), one(COILS), batch, "");
            return new Received(coil, 1 + dice.nextInt(3), Optional.empty());
        } else if (kind == 2) {
            return new Received(thing(Kind.PLATE, "SP-1", 120_000), 1 + dice.nextInt(9), Optional.empty());
        } else if (kind == 3) {
            return new Received(thing(Kind.ITEM, "E" + dice.nextInt(2), 0), 1 + dice.nextInt(20), Optional.empty());
        } else if (kind == 4) {
            Optional<Long> doubt = dice.nextBoolean() ? Optional.of(500L) : Optional.empty();
            return new Received(thing(Kind.OPENED, one(PIPES), 0), 400_000 + dice.nextInt(3_000_000), doubt);
        }
        return new Received(thing(Kind.OFFCUT, "SP-1", 0), 20_000 + dice.nextInt(90_000), Optional.empty());
    }

    private Counted stockTake() {
        List<ModelShelf.Thing> all = model.things;
        if (all.isEmpty() || dice.nextInt(8) == 0) {
            return Counted.lot(Holding.Spec.lot(Kind.ITEM, "E" + dice.nextInt(3), 0, ""), dice.nextInt(9));
        }
        ModelShelf.Thing t = one(all);
        long amount =
                Math.max(0, t.amount + (t.kind.isPiece() ? dice.nextInt(400_000) - 300_000 : dice.nextInt(4) - 2));
        return t.kind.isPiece()
                ? Counted.piece(t.name, dice.nextInt(6) == 0 ? 0 : amount)
                : Counted.lot(Holding.Spec.lot(t.kind, t.product, t.length, t.batch), amount);
    }

    private KitUse use(String order) {
        List<KitUse.StockUse> stock = new ArrayList<>(stock(1 + dice.nextInt(3), List.of("")));
        List<KitUse.ItemUse> items = dice.nextBoolean()
                ? List.of(new KitUse.ItemUse(Kind.ITEM, "E" + dice.nextInt(3), 1 + dice.nextInt(9)))
                : List.of();
        lastUse = new KitUse(order, "p" + plans++, stock, items, KEEPING);
        return lastUse;
    }

    /** A day of a few orders; now and then it is called like an order, or an order like a day. */
    private KitUse day() {
        String day = dice.nextInt(8) == 0 ? one(ORDERS) : one(DAYS);
        SortedMap<String, String> orders = new TreeMap<>();
        for (int i = dice.nextInt(3); i >= 0; i--) {
            String order = dice.nextInt(12) == 0 ? one(DAYS) : one(ORDERS);
            boolean gone = Set.of("cut", "packed", "sent")
                    .contains(model.standing(order).state());
            if (!gone || dice.nextInt(8) == 0) {
                orders.put(order, "p" + plans++);
            }
        }
        orders.remove(day);
        List<String> members = orders.isEmpty() ? List.of("") : List.copyOf(orders.keySet());
        List<KitUse.ItemUse> items = new ArrayList<>();
        for (int i = dice.nextInt(2); i > 0; i--) {
            items.add(new KitUse.ItemUse(Kind.ITEM, "E" + dice.nextInt(3), 1 + dice.nextInt(5), one(members)));
        }
        lastDay = new KitUse(day, "p" + plans++, stock(1 + dice.nextInt(2), members), items, KEEPING, orders);
        return lastDay;
    }

    private List<KitUse.StockUse> stock(int count, List<String> orders) {
        List<KitUse.StockUse> stock = new ArrayList<>();
        List<ModelShelf.Thing> pieces = model.things.stream()
                .filter(t -> t.kind.isPiece() && (t.amount > 0 || dice.nextInt(9) == 0))
                .toList();
        for (int i = 0; i < count; i++) {
            boolean pipe = dice.nextBoolean();
            Kind kind = pipe ? Kind.COIL : Kind.PLATE;
            if (!pieces.isEmpty() && dice.nextInt(3) > 0) {
                ModelShelf.Thing t = one(pieces);
                long length = Math.max(t.amount, 20_000);
                kind = t.kind == Kind.OPENED ? Kind.COIL : Kind.PLATE;
                stock.add(cut(Optional.of(t.name), kind, t.product, length, orders));
            } else {
                stock.add(cut(Optional.empty(), kind, pipe ? one(PIPES) : "SP-1", pipe ? one(COILS) : 120_000, orders));
            }
        }
        return stock;
    }

    private KitUse.StockUse cut(Optional<String> id, Kind kind, String product, long length, List<String> orders) {
        long first = Math.max(1, length / (1 + dice.nextInt(5)) - dice.nextInt(2) * 9_000L);
        long kerf = kind == Kind.PLATE ? Math.min(300, length - first) : 0;
        List<KitUse.Piece> cuts = new ArrayList<>(List.of(new KitUse.Piece(first, "loop A", one(orders))));
        long used = first + kerf;
        if (length - used > 20_000 && dice.nextBoolean()) {
            cuts.add(new KitUse.Piece(10_000, "run 2", one(orders)));
            used += 10_000;
        }
        return new KitUse.StockUse(id, kind, product, length, cuts, used, dice.nextInt(4) > 0);
    }

    private String spoil(String order) {
        List<ModelShelf.Piece> cuts = model.cutsOf(order);
        String name = cuts.isEmpty() || dice.nextInt(9) == 0 ? "1/1" : name(one(cuts));
        long rest = cuts.isEmpty() || dice.nextBoolean() ? 0 : cuts.get(0).length() / 2;
        Spoiled spoiled =
                new Spoiled(order, List.of(name), List.of(rest), stock(dice.nextInt(2), List.of("")), KEEPING);
        return both("spoil " + order, q -> ledger.spoil(q, spoiled), () -> model.spoil(spoiled));
    }

    private static String name(ModelShelf.Piece piece) {
        return piece.step() + "/" + piece.number();
    }

    /** What ledger and model hold, as one text each. */
    static String seen(StockLedger ledger) {
        return ledger.look(books -> {
            StringBuilder text = new StringBuilder();
            for (Holding h : books.holdings()) {
                String name = h.kind().isPiece()
                        ? h.id()
                        : ModelShelf.lotName(
                                h.kind(),
                                h.product(),
                                h.spec().length(),
                                h.spec().batch());
                text.append(name)
                        .append(' ')
                        .append(h.amount())
                        .append(' ')
                        .append(h.uncertainty())
                        .append(' ')
                        .append(h.reserved())
                        .append('\n');
            }
            List<Holding> holdings = books.holdings();
            books.reservations().forEach(r -> text.append(r.order())
                    .append(" keeps ")
                    .append(r.amount())
                    .append(" of ")
                    .append(name(holdings.get((int) r.holding() - 1)))
                    .append('\n'));
            for (String order : NAMES) {
                OrderRecord o = books.order(order);
                text.append(order)
                        .append(' ')
                        .append(o.state().word())
                        .append(' ')
                        .append(o.fingerprint());
                books.cuts(order).forEach(c -> text.append(' ')
                        .append(c.name())
                        .append(':')
                        .append(c.length())
                        .append(c.batch()));
                text.append('\n');
            }
            return text.toString();
        });
    }

    private static String name(Holding h) {
        return h.kind().isPiece()
                ? h.id()
                : ModelShelf.lotName(
                        h.kind(), h.product(), h.spec().length(), h.spec().batch());
    }

    /** The same of the model. */
    String modelled() {
        StringBuilder text = new StringBuilder();
        for (ModelShelf.Thing t : model.things) {
            text.append(t.name)
                    .append(' ')
                    .append(t.amount)
                    .append(' ')
                    .append(t.doubt)
                    .append(' ')
                    .append(t.keptInAll())
                    .append('\n');
        }
        for (String order : NAMES) {
            for (ModelShelf.Thing t : model.things) {
                if (t.kept.containsKey(order)) {
                    text.append(order)
                            .append(" keeps ")
                            .append(t.kept.get(order))
                            .append(" of ")
                            .append(t.name)
                            .append('\n');
                }
            }
        }
        for (String order : NAMES) {
            ModelShelf.Standing s = model.standing(order);
            text.append(order).append(' ').append(s.state()).append(' ').append(s.plan());
            model.cutsOf(order).forEach(c -> text.append(' ')
                    .append(name(c))
                    .append(':')
                    .append(c.length())
                    .append(c.batch()));
            text.append('\n');
        }
        return text.toString();
    }
}
