package org.runbend.catalog.ledger;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The rules of the ledger once more, in plain maps and without a database: a second opinion for the tests. A step that is
 * refused throws {@link No} and leaves a mess; who steps works on a copy.
 */
final class ModelShelf {
    /** The step is refused. */
    static final class No extends RuntimeException {
        private static final long serialVersionUID = 1;
    }

    /** One thing: how much, how sure, and for whom how much of it is kept. */
    static final class Thing {
        final String name;
        final Kind kind;
        final String product;
        final long length;
        final String batch;
        final int madeBy;
        long amount;
        long doubt;
        final Map<String, Long> kept = new TreeMap<>();
        final Map<String, Integer> keptSince = new TreeMap<>();

        Thing(String name, Kind kind, String product, long length, String batch, int madeBy) {
            this.name = name;
            this.kind = kind;
            this.product = product;
            this.length = length;
            this.batch = batch;
            this.madeBy = madeBy;
        }

        long keptInAll() {
            return kept.values().stream().mapToLong(k -> k).sum();
        }

        Thing copy() {
            Thing t = new Thing(name, kind, product, length, batch, madeBy);
            t.amount = amount;
            t.doubt = doubt;
            t.kept.putAll(kept);
            t.keptSince.putAll(keptSince);
            return t;
        }
    }

    /** A cut piece and what became of it by which step. */
    record Piece(
            int step, int number, String order, Kind kind, String product, String batch, long length, String place) {}

    /** How an order stands, who made it so (itself, or the day that it is one of), and whether it is a day of others. */
    record Standing(String state, String plan, String by, boolean isDay) {
        static final Standing NONE = new Standing("unknown", "", "", false);
    }

    /** A step that was taken, with what it changed. */
    static final class Step {
        final Map<String, long[]> change = new HashMap<>();
        final Map<String, Map<String, Long>> keptChange = new HashMap<>();
        final Map<String, Standing> standings = new TreeMap<>();
        final Map<String, Map<String, Long>> outChange = new TreeMap<>();
        final Set<String> counted = new HashSet<>();
        final Set<Piece> endedPieces = new HashSet<>();
        int undoneBy;
        int undoes;

        boolean counts() {
            return undoneBy == 0 && undoes == 0;
        }
    }

    final List<Step> steps = new ArrayList<>();
    final List<Thing> things = new ArrayList<>();
    final List<Piece> pieces = new ArrayList<>();
    final Map<String, Map<String, Long>> itemsOut = new TreeMap<>();
    private final Map<String, Integer> numbers = new HashMap<>();
    private Step now;

    ModelShelf copy() {
        ModelShelf c = new ModelShelf();
        c.steps.addAll(steps);
        things.forEach(t -> c.things.add(t.copy()));
        c.pieces.addAll(pieces);
        itemsOut.forEach((o, m) -> c.itemsOut.put(o, new TreeMap<>(m)));
        c.numbers.putAll(numbers);
        return c;
    }

    Thing thing(String name) {
        return things.stream().filter(t -> t.name.equals(name)).findFirst().orElse(null);
    }

    Standing standing(String order) {
        for (int i = steps.size() - 1; i >= 0; i--) {
            if (steps.get(i).standings.containsKey(order)) {
                return steps.get(i).standings.get(order);
            }
        }
        return Standing.NONE;
    }

    /** Takes a step: whatever differs afterwards is what the step did. */
    void step(Runnable doing) {
        now = new Step();
        Map<String, Map<String, Long>> outBefore = new TreeMap<>();
        itemsOut.forEach((o, m) -> outBefore.put(o, new TreeMap<>(m)));
        Map<String, Thing> before = new HashMap<>();
        things.forEach(t -> before.put(t.name, t.copy()));
        steps.add(now);
        doing.run();
        for (Thing t : things) {
            Thing b = before.getOrDefault(t.name, new Thing(t.name, t.kind, t.product, t.length, t.batch, 0));
            if (t.amount < 0 || t.doubt < 0 || t.doubt > t.amount || t.keptInAll() > t.amount) {
                throw new No();
            }
            now.change.put(t.name, new long[] {t.amount - b.amount, t.doubt - b.doubt});
            Map<String, Long> kept = new HashMap<>();
            Set<String> holders = new HashSet<>(t.kept.keySet());
            holders.addAll(b.kept.keySet());
            holders.forEach(h -> {
                long d = t.kept.getOrDefault(h, 0L) - b.kept.getOrDefault(h, 0L);
                if (d != 0) {
                    kept.put(h, d);
                    t.keptSince.put(h, steps.size());
                }
            });
            now.keptChange.put(t.name, kept);
            t.kept.values().removeIf(v -> v == 0);
        }
        itemsOut.forEach((order, out) -> {
            Map<String, Long> change = new TreeMap<>(out);
            outBefore.getOrDefault(order, Map.of()).forEach((name, n) -> change.merge(name, -n, Long::sum));
            now.outChange.put(order, change);
        });
        if (now.undoes > 0) {
            steps.get(now.undoes - 1).undoneBy = steps.size();
        }
    }

    private int number() {
        return steps.size();
    }

    private static void need(boolean right) {
        if (!right) {
            throw new No();
        }
    }

    private static long doubt(Kind kind, long length) {
        return kind == Kind.OPENED ? Math.min(length, Math.max(10_000, (length + 199) / 200)) : 0;
    }

    static String lotName(Kind kind, String product, long length, String batch) {
        return kind + "|" + product + "|" + length + "|" + batch;
    }

    private Thing lot(Kind kind, String product, long length, String batch) {
        String name = lotName(kind, product, length, batch);
        Thing t = thing(name);
        if (t == null) {
            t = new Thing(name, kind, product, length, batch, number());
            things.add(t);
        }
        return t;
    }

    private void newPiece(Kind kind, String product, String batch, long length, long doubt) {
        String letter = kind == Kind.OPENED ? "C" : "O";
        int n = numbers.merge(letter, 1, Integer::sum);
        Thing t = new Thing(letter + n, kind, product, 0, batch, number());
        t.amount = length;
        t.doubt = doubt;
        things.add(t);
    }

    void receive(Received r) {
        Received.Thing s = r.spec();
        if (s.kind().isPiece()) {
            newPiece(
                    s.kind(),
                    s.product(),
                    s.batch(),
                    r.amount(),
                    r.uncertainty().orElse(doubt(s.kind(), r.amount())));
        } else {
            lot(s.kind(), s.product(), s.length(), s.batch()).amount += r.amount();
        }
    }

    void count(Counted c) {
        Thing t = c.lot().isPresent()
                ? lot(
                        c.lot().get().kind(),
                        c.lot().get().product(),
                        c.lot().get().length(),
                        c.lot().get().batch())
                : thing(c.id());
        need(t != null);
        now.counted.add(t.name);
        while (t.keptInAll() > c.amount()) {
            String last = t.kept.keySet().stream()
                    .max((a, b) -> {
                        int bySince = Integer.compare(t.keptSince.get(a), t.keptSince.get(b));
                        return bySince != 0 ? bySince : b.compareTo(a);
                    })
                    .orElseThrow();
            lose(last);
        }
        t.amount = c.amount();
        t.doubt = doubt(t.kind, c.amount());
    }

    private void letGo(String order) {
        things.forEach(t -> t.kept.remove(order));
    }

    private void stands(String order, String state, String plan) {
        now.standings.put(order, new Standing(state, plan, order, false));
    }

    private void stands(String order, String state) {
        stands(order, state, standing(order).plan());
    }

    /** Nothing is kept for an order any more, nor, if it is a day, for those of the day. */
    private void lose(String order) {
        letGo(order);
        members(order).forEach(m -> stands(m, "quoted"));
        stands(order, "quoted");
    }

    /** Orders for which a day keeps stock. */
    private List<String> members(String day) {
        Set<String> all = new TreeSet<>();
        steps.forEach(s -> all.addAll(s.standings.keySet()));
        return all.stream()
                .filter(o -> !o.equals(day) && standing(o).state().equals("confirmed"))
                .filter(o -> standing(o).by().equals(day))
                .toList();
    }

    private boolean isOfADay(String order) {
        Standing s = standing(order);
        return s.state().equals("confirmed") && !s.by().equals(order);
    }

    /** Begins what a plan does: the orders of a day are free for it, and it alone keeps for them. */
    private void begin(KitUse use) {
        String order = use.order();
        need(!isOfADay(order));
        for (String member : use.orders().keySet()) {
            Standing s = standing(member);
            need(!cut(s.state()) && (!isOfADay(member) || s.by().equals(order)));
            need(members(member).isEmpty());
        }
        letGo(order);
        members(order).stream().filter(m -> !use.orders().containsKey(m)).forEach(m -> stands(m, "quoted"));
        use.orders().keySet().forEach(this::letGo);
    }

    private void end(KitUse use, String state) {
        String order = use.order();
        boolean isDay = !use.orders().isEmpty();
        now.standings.put(order, new Standing(state, use.fingerprint(), order, isDay));
        use.orders().forEach((m, plan) -> now.standings.put(m, new Standing(state, plan, order, false)));
    }

    void quote(String order, String plan) {
        need(Set.of("unknown", "quoted", "returned").contains(standing(order).state()));
        stands(order, "quoted", plan);
    }

    private static boolean cut(String state) {
        return Set.of("cut", "packed", "sent").contains(state);
    }

    void reserve(KitUse use) {
        String order = use.order();
        need(!cut(standing(order).state()));
        begin(use);
        for (KitUse.StockUse u : use.stock()) {
            if (u.isFromPiece()) {
                Thing t = onShelf(u);
                need(t.amount - t.doubt - t.keptInAll() >= u.used());
                t.kept.merge(order, u.used(), Long::sum);
            } else {
                spread(u.kind(), u.product(), u.length(), 1).forEach((t, n) -> t.kept.merge(order, n, Long::sum));
            }
        }
        for (KitUse.ItemUse i : use.items()) {
            if (known(i.kind(), i.product())) {
                spread(i.kind(), i.product(), 0, i.quantity()).forEach((t, n) -> t.kept.merge(order, n, Long::sum));
            }
        }
        end(use, "confirmed");
    }

    private boolean known(Kind kind, String product) {
        return things.stream().anyMatch(t -> t.kind == kind && t.product.equals(product));
    }

    private Map<Thing, Long> spread(Kind kind, String product, long length, long wanted) {
        Map<Thing, Long> all = new HashMap<>();
        long open = wanted;
        for (Thing t : things) {
            if (t.kind == kind && t.product.equals(product) && t.length == length) {
                long n = Math.min(open, t.amount - t.keptInAll());
                if (n > 0) {
                    all.put(t, n);
                    open -= n;
                }
            }
        }
        need(open == 0);
        return all;
    }

    private Thing onShelf(KitUse.StockUse u) {
        Thing t = thing(u.id().orElseThrow());
        need(t != null && t.amount > 0 && t.product.equals(u.product()));
        need(t.kind == (u.kind() == Kind.COIL ? Kind.OPENED : Kind.OFFCUT));
        return t;
    }

    void release(String order) {
        need(standing(order).state().equals("confirmed") && !isOfADay(order));
        lose(order);
    }

    List<Piece> cutsOf(String order) {
        return pieces.stream()
                .filter(p -> p.order().equals(order) && steps.get(p.step() - 1).undoneBy == 0)
                .filter(p -> steps.stream().noneMatch(s -> s.undoneBy == 0 && s.endedPieces.contains(p)))
                .toList();
    }

    void confirm(KitUse use) {
        String order = use.order();
        need(!standing(order).state().equals("sent"));
        boolean again = cut(standing(order).state());
        need(!again || !standing(order).isDay());
        begin(use);
        if (again) {
            allBack(order, use.keeping());
        }
        int[] cutNumber = {0};
        for (KitUse.StockUse u : use.stock()) {
            take(u, order, use.keeping(), cutNumber);
        }
        for (KitUse.ItemUse i : use.items()) {
            if (known(i.kind(), i.product())) {
                String whose = i.order().isEmpty() ? order : i.order();
                spread(i.kind(), i.product(), 0, i.quantity()).forEach((t, n) -> {
                    t.amount -= n;
                    out(whose).merge(t.name, n, Long::sum);
                });
            }
        }
        end(use, "cut");
    }

    private void take(KitUse.StockUse u, String order, Keeping keeping, int[] cutNumber) {
        Kind kind = u.kind() == Kind.COIL ? Kind.OPENED : Kind.OFFCUT;
        long keep = kind == Kind.OPENED ? keeping.coil() : keeping.plate();
        String batch;
        if (u.isFromPiece()) {
            Thing t = onShelf(u);
            need(u.used() <= t.amount - t.keptInAll());
            batch = t.batch;
            long rest = t.amount - u.used();
            boolean stays = rest - t.doubt >= keep || !t.kept.isEmpty();
            t.amount = stays ? rest : 0;
            t.doubt = stays ? Math.min(t.doubt, rest) : 0;
        } else {
            Thing t = spread(u.kind(), u.product(), u.length(), 1)
                    .keySet()
                    .iterator()
                    .next();
            t.amount--;
            batch = t.batch;
            long rest = u.length() - u.used();
            if (u.restStays() && rest - doubt(kind, rest) >= keep) {
                newPiece(kind, u.product(), batch, rest, doubt(kind, rest));
            }
        }
        for (KitUse.Piece c : u.cuts()) {
            String whose = c.order().isEmpty() ? order : c.order();
            pieces.add(new Piece(number(), ++cutNumber[0], whose, kind, u.product(), batch, c.length(), c.goesTo()));
        }
    }

    private Map<String, Long> out(String order) {
        return itemsOut.computeIfAbsent(order, o -> new TreeMap<>());
    }

    private void allBack(String order, Keeping keeping) {
        for (Piece p : cutsOf(order)) {
            now.endedPieces.add(p);
            if (p.length() >= (p.kind() == Kind.OPENED ? keeping.coil() : keeping.plate())) {
                newPiece(p.kind(), p.product(), p.batch(), p.length(), 0);
            }
        }
        out(order).forEach((name, n) -> thing(name).amount += n);
        out(order).clear();
    }

    void takeBack(String order, Keeping keeping) {
        need(cut(standing(order).state()) && !standing(order).isDay());
        allBack(order, keeping);
        stands(order, "returned");
    }

    void spoil(Spoiled s) {
        String order = s.order();
        need(Set.of("cut", "packed").contains(standing(order).state())
                && !standing(order).isDay());
        for (int i = 0; i < s.cuts().size(); i++) {
            String name = s.cuts().get(i);
            Piece p = cutsOf(order).stream()
                    .filter(c -> (c.step() + "/" + c.number()).equals(name))
                    .findFirst()
                    .orElseThrow(No::new);
            long rest = s.rests().get(i);
            need(rest <= p.length());
            now.endedPieces.add(p);
            if (rest
                    >= (p.kind() == Kind.OPENED
                            ? s.keeping().coil()
                            : s.keeping().plate())) {
                newPiece(p.kind(), p.product(), p.batch(), rest, 0);
            }
        }
        int[] cutNumber = {0};
        s.again().forEach(u -> take(u, order, s.keeping(), cutNumber));
        stands(order, "cut");
    }

    void go(String order, String from, String to) {
        need(standing(order).state().equals(from) && !standing(order).isDay());
        stands(order, to);
    }

    /** The difference that a step made is taken away, if nothing after it stands on it. */
    void undo(int number) {
        need(number >= 1 && number < number());
        Step wrong = steps.get(number - 1);
        need(wrong.undoneBy == 0 && wrong.undoes == 0);
        List<Step> later = steps.subList(number, steps.size() - 1).stream()
                .filter(Step::counts)
                .toList();
        for (String order : wrong.standings.keySet()) {
            need(later.stream().noneMatch(s -> s.standings.containsKey(order)));
            Standing was = Standing.NONE;
            for (Step s : steps.subList(0, number - 1)) {
                if (s.counts() && s.standings.containsKey(order)) {
                    was = s.standings.get(order);
                }
            }
            now.standings.put(order, was);
        }
        for (Thing t : things) {
            long[] d = wrong.change.getOrDefault(t.name, new long[2]);
            boolean moved = d[0] != 0 || d[1] != 0;
            need(!moved || later.stream().noneMatch(s -> s.counted.contains(t.name)));
            t.amount -= d[0];
            t.doubt -= d[1];
            Map<String, Long> kept = wrong.keptChange.getOrDefault(t.name, Map.of());
            kept.forEach((h, n) -> t.kept.merge(h, -n, Long::sum));
            long more = -kept.values().stream().mapToLong(k -> k).sum();
            need(more <= 0 || t.keptInAll() + t.doubt <= t.amount);
            need(t.madeBy != number || !t.kind.isPiece() || t.amount == 0);
        }
        undoItems(wrong);
        now.undoes = number;
    }

    private void undoItems(Step wrong) {
        wrong.outChange.forEach(
                (order, change) -> change.forEach((name, n) -> out(order).merge(name, -n, Long::sum)));
        itemsOut.values().forEach(out -> out.values().removeIf(n -> n == 0));
    }
}
