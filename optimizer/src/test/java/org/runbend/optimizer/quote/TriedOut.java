package org.runbend.optimizer.quote;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.runbend.catalog.product.StandardKit;

/** The least price of kits and loose parts, by trying everything; it knows no program and no nested lengths. */
final class TriedOut {
    private static final int MOST_OF_A_KIT = 8;

    private final KitNeed need;
    private final List<StandardKit> kits;
    private long least = Long.MAX_VALUE;

    TriedOut(KitNeed need) {
        this.need = need;
        this.kits = need.kits().stream()
                .filter(k -> k.coils().stream().allMatch(c -> c.pipe().equals(need.pipe())))
                .toList();
    }

    /** Long.MAX_VALUE where no kit has anything to give. */
    long least() {
        count(0, new int[kits.size()]);
        return least;
    }

    private void count(int kit, int[] counts) {
        if (kit == kits.size()) {
            price(counts);
            return;
        }
        for (int n = 0; n <= (isUseful(kits.get(kit)) ? MOST_OF_A_KIT : 0); n++) {
            counts[kit] = n;
            count(kit + 1, counts);
        }
        counts[kit] = 0;
    }

    private boolean isUseful(StandardKit kit) {
        return !kit.coils().isEmpty()
                || kit.plates().stream().anyMatch(p -> need.plates().stream()
                        .anyMatch(n -> n.product().equals(p.plate())))
                || kit.parts().stream().anyMatch(p -> need.parts().stream()
                        .anyMatch(n -> n.sku().equals(p.sku())));
    }

    private void price(int[] counts) {
        long price = 0;
        int any = 0;
        List<Long> coils = new ArrayList<>();
        List<Object[]> plates = new ArrayList<>();
        for (int k = 0; k < counts.length; k++) {
            any += counts[k];
            price += counts[k] * kits.get(k).price();
            for (StandardKit.Coils c : kits.get(k).coils()) {
                add(coils, Math.round(c.length() * 100), counts[k] * c.count());
            }
            for (StandardKit.Plates p : kits.get(k).plates()) {
                for (int i = 0; i < counts[k] * p.count(); i++) {
                    plates.add(new Object[] {p.plate(), Math.round(p.length() * 100), 0L});
                }
            }
        }
        if (any == 0) {
            return;
        }
        for (KitNeed.Part part : need.parts()) {
            long has = 0;
            for (int k = 0; k < counts.length; k++) {
                for (StandardKit.Parts p : kits.get(k).parts()) {
                    has += p.sku().equals(part.sku()) ? (long) counts[k] * p.count() : 0;
                }
            }
            price += Math.max(0, part.quantity() - has) * part.price();
        }
        need.plates().stream()
                .filter(KitNeed.PlateCut::isFromShelf)
                .forEach(p -> plates.add(new Object[] {p.product(), p.length(), p.shelfPrice()}));
        long ofPlates = plates(0, plates);
        List<Long> free = new ArrayList<>();
        coils.forEach(c -> free.add(c));
        long ofCoils = loops(0, free, new ArrayList<>(need.opened()), new ArrayList<>());
        if (ofPlates < Long.MAX_VALUE / 4 && ofCoils < Long.MAX_VALUE / 4) {
            least = Math.min(least, price + ofPlates + ofCoils);
        }
    }

    private static void add(List<Long> list, long what, int times) {
        for (int i = 0; i < times; i++) {
            list.add(what);
        }
    }

    /** Each need takes one of the plates at hand, or one is bought. */
    private long plates(int i, List<Object[]> hand) {
        if (i == need.plates().size()) {
            return 0;
        }
        KitNeed.PlateCut cut = need.plates().get(i);
        long best = Long.MAX_VALUE / 2;
        for (KitNeed.LoosePlate p : need.stock()) {
            if (p.product().equals(cut.product()) && p.length() >= cut.length()) {
                best = Math.min(best, p.price() + plates(i + 1, hand));
            }
        }
        for (int h = 0; h < hand.size(); h++) {
            Object[] plate = hand.get(h);
            if (plate[0].equals(cut.product()) && (long) plate[1] >= cut.length()) {
                List<Object[]> rest = new ArrayList<>(hand);
                rest.remove(h);
                best = Math.min(best, (long) plate[2] + plates(i + 1, rest));
                while (h + 1 < hand.size() && Arrays.equals(plate, hand.get(h + 1))) {
                    h++; // its twin would do as well
                }
            }
        }
        return best;
    }

    /** Each loop is cut from a coil at hand, from what is left of one that was bought, or one is bought; what is shared costs by its cuts. */
    private long loops(int i, List<Long> kits, List<Long> opened, List<long[]> bought) {
        if (i == need.loops().size()) {
            long price = 0;
            for (long[] b : bought) {
                price += price(b[0], b[1] == 1);
            }
            return price;
        }
        long length = need.loops().get(i).length();
        long best = Long.MAX_VALUE / 2;
        for (int k = 0; k < kits.size(); k++) {
            if (kits.get(k) >= length) {
                List<Long> rest = new ArrayList<>(kits);
                rest.set(k, kits.get(k) - length);
                best = Math.min(best, loops(i + 1, rest, opened, bought));
            }
        }
        for (int b = 0; b <= bought.size(); b++) {
            if (b < bought.size() && bought.get(b)[1] == 1) {
                continue; // an opened coil, see below
            }
            List<long[]> more = new ArrayList<>();
            bought.forEach(x -> more.add(x.clone()));
            if (b < bought.size()) {
                more.get(b)[0] += length;
            } else {
                more.add(new long[] {length, 0, 0});
            }
            best = Math.min(best, loops(i + 1, kits, opened, more));
        }
        for (int o = 0; o < opened.size(); o++) {
            if (opened.get(o) >= length) {
                List<Long> rest = new ArrayList<>(opened);
                rest.set(o, opened.get(o) - length);
                List<long[]> more = new ArrayList<>();
                bought.forEach(x -> more.add(x.clone()));
                boolean found = false;
                for (long[] m : more) {
                    if (m[1] == 1 && m[2] == o) {
                        m[0] += length;
                        found = true;
                    }
                }
                if (!found) {
                    more.add(new long[] {length, 1, o});
                }
                best = Math.min(best, loops(i + 1, kits, rest, more));
            }
        }
        return best;
    }

    private long price(long used, boolean opened) {
        long best = Long.MAX_VALUE / 4;
        for (KitNeed.LooseCoil c : need.coils()) {
            if (c.length() >= used || opened) {
                best = Math.min(best, opened || need.shared() ? need.priceOfCut(used) : c.price());
            }
        }
        return best;
    }
}
