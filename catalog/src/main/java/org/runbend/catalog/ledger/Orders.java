package org.runbend.catalog.ledger;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The way of an order: quoted, reserved, cut, packed, sent, returned. */
final class Orders {
    /** How a plan after a change names pieces that were cut before it. */
    private static final String WAS = "was-";

    private Orders() {}

    static void quote(Posting posting, OrderRecord now, String fingerprint) {
        if (now.state() != OrderState.UNKNOWN
                && now.state() != OrderState.QUOTED
                && now.state() != OrderState.RETURNED) {
            throw new LedgerRefused(
                    "order " + now.order() + " is " + now.state().word() + ": a quote would be behind it");
        }
        posting.state(OrderState.QUOTED, fingerprint);
    }

    static void reserve(Posting posting, OrderRecord now, KitUse use) {
        if (now.state().isCut()) {
            throw new LedgerRefused(
                    "order " + now.order() + " is " + now.state().word()
                            + ": what was cut is gone; confirm its changed plan, or take it back with return");
        }
        Days.check(posting.books(), use.order(), use.orders().keySet());
        posting.releaseAll(use.order());
        Days.leave(posting, now, use);
        new Taking(posting).reserve(withoutCut(use, List.of()));
        posting.state(OrderState.CONFIRMED, use.fingerprint());
        Days.members(posting, use, OrderState.CONFIRMED);
    }

    static void release(Posting posting, OrderRecord now) {
        if (now.state() != OrderState.CONFIRMED) {
            throw new LedgerRefused("nothing is reserved for order " + now.order() + ": it is " + state(now));
        }
        Days.checkOwn(posting.books(), now);
        Days.lose(posting, now.order());
    }

    static void confirm(Posting posting, OrderRecord now, KitUse use) {
        if (now.state() == OrderState.SENT) {
            throw new LedgerRefused("order " + now.order() + " is sent: take it back with return first");
        }
        Days.check(posting.books(), use.order(), use.orders().keySet());
        Days.checkNew(posting.books(), now);
        posting.releaseAll(use.order());
        Days.leave(posting, now, use);
        List<Cut> before = now.state().isCut() ? posting.books().cuts(use.order()) : List.of();
        List<KitUse.StockUse> fresh = reuse(posting, use, new ArrayList<>(before));
        if (now.state().isCut()) {
            itemsBack(posting, use.order());
        }
        new Taking(posting).take(withoutCut(use, fresh));
        posting.state(OrderState.CUT, use.fingerprint());
        Days.members(posting, use, OrderState.CUT);
    }

    /** The plan with other stock; the pieces that were cut before are no stock of the shelf. */
    private static KitUse withoutCut(KitUse use, List<KitUse.StockUse> fresh) {
        List<KitUse.StockUse> stock = fresh.isEmpty()
                ? use.stock().stream().filter(u -> !isCutBefore(u)).toList()
                : fresh;
        return new KitUse(use.order(), use.fingerprint(), stock, use.items(), use.keeping(), use.orders());
    }

    private static boolean isCutBefore(KitUse.StockUse use) {
        return use.id().filter(id -> id.startsWith(WAS)).isPresent();
    }

    /** Takes what the plan uses again out of what was cut before, brings the rest back, and gives what is still to be cut. */
    private static List<KitUse.StockUse> reuse(Posting posting, KitUse use, List<Cut> before) {
        List<KitUse.StockUse> fresh = new ArrayList<>();
        for (KitUse.StockUse u : use.stock()) {
            if (!isCutBefore(u)
                    || posting.books().findPiece(u.id().orElseThrow()).isPresent()) {
                fresh.add(u);
                continue;
            }
            Cut cut = before.stream()
                    .filter(c -> c.product().equals(u.product()) && c.length() == u.length())
                    .findFirst()
                    .orElseThrow(() -> new LedgerRefused("the plan uses " + u.id().orElseThrow() + ", " + u.product()
                            + " of " + Held.length(u.length()) + ", but no such piece was cut for order " + use.order()
                            + ": plan it after the kit that was cut"));
            before.remove(cut);
            posting.books().fate(posting.movement(), cut, Fate.REUSED);
            u.cuts()
                    .forEach(c -> posting.cut(
                            "", cut.kind(), cut.product(), cut.batch(), c.length(), c.goesTo(), cut.name()));
            rest(posting, cut, cut.length() - u.used(), use.keeping());
        }
        before.forEach(cut -> back(posting, cut, use.keeping()));
        return fresh;
    }

    private static void back(Posting posting, Cut cut, Keeping keeping) {
        posting.books().fate(posting.movement(), cut, Fate.BACK);
        rest(posting, cut, cut.length(), keeping);
    }

    private static void rest(Posting posting, Cut cut, long length, Keeping keeping) {
        if (keeping.keeps(cut.kind(), length)) {
            posting.bring(cut.kind(), cut.product(), cut.batch(), "", length, Optional.of(0L));
        }
    }

    private static void itemsBack(Posting posting, String order) {
        posting.books().takenBy(order).forEach(l -> posting.line(new Line(l.holding(), -l.amount(), 0, 0, order)));
    }

    static void takeBack(Posting posting, OrderRecord now, Keeping keeping) {
        if (!now.state().isCut()) {
            throw new LedgerRefused("order " + now.order() + " is " + state(now) + ": only what was cut can come back");
        }
        Days.checkNoDay(posting.books(), now);
        posting.books().cuts(now.order()).forEach(cut -> back(posting, cut, keeping));
        itemsBack(posting, now.order());
        posting.state(OrderState.RETURNED, now.fingerprint());
    }

    static void pack(Posting posting, OrderRecord now) {
        if (now.state() != OrderState.CUT) {
            throw new LedgerRefused("order " + now.order() + " is " + state(now) + ": only what is cut can be packed");
        }
        Days.checkNoDay(posting.books(), now);
        posting.state(OrderState.PACKED, now.fingerprint());
    }

    static void send(Posting posting, OrderRecord now) {
        if (now.state() != OrderState.PACKED) {
            throw new LedgerRefused("order " + now.order() + " is " + state(now) + ": only what is packed can be sent");
        }
        posting.state(OrderState.SENT, now.fingerprint());
    }

    static void spoil(Posting posting, OrderRecord now, Spoiled spoiled) {
        if (now.state() != OrderState.CUT && now.state() != OrderState.PACKED) {
            throw new LedgerRefused("order " + now.order() + " is " + state(now) + ": only what is cut can be spoiled");
        }
        Days.checkNoDay(posting.books(), now);
        Map<String, Cut> cuts = new LinkedHashMap<>();
        posting.books().cuts(now.order()).forEach(c -> cuts.put(c.name(), c));
        for (int i = 0; i < spoiled.cuts().size(); i++) {
            String name = spoiled.cuts().get(i);
            Cut cut = cuts.get(name);
            if (cut == null) {
                throw new LedgerRefused("order " + now.order() + " has no cut " + name + "; it has "
                        + (cuts.isEmpty() ? "none" : String.join(", ", cuts.keySet())));
            }
            long rest = spoiled.rests().get(i);
            Entry.that(
                    rest >= 0 && rest <= cut.length(),
                    "cut " + name + ": what is left must be 0 to " + Held.length(cut.length()));
            posting.books().fate(posting.movement(), cut, Fate.SPOILED);
            rest(posting, cut, rest, spoiled.keeping());
        }
        KitUse again = new KitUse(now.order(), now.fingerprint(), spoiled.again(), List.of(), spoiled.keeping());
        new Taking(posting).take(again);
        posting.state(OrderState.CUT, now.fingerprint());
    }

    private static String state(OrderRecord order) {
        return order.state() == OrderState.UNKNOWN
                ? "not in the ledger"
                : order.state().word();
    }
}
