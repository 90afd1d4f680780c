package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.runbend.catalog.product.StandardKit;
import org.runbend.optimizer.quote.KitChoice;
import org.runbend.optimizer.quote.KitNeed;

/**
 * Holds a choice of standard kits against what a floor needs, by plain counting; it shares no line with what chooses.
 *
 * <p>Rules: each loop is cut once and its coil is long enough; kits bring the coils taken from them; plates from kits and added ones, longest
 * to longest, are as long as those needed; parts are as many; the price is that of kits and of what is added, not under the bound.
 */
public final class KitChoiceVerifier {
    private static final double HUNDREDTHS = 100;

    private final KitNeed need;
    private final KitChoice choice;
    private final Findings found = new Findings();

    private KitChoiceVerifier(KitNeed need, KitChoice choice) {
        this.need = need;
        this.choice = choice;
    }

    /** What is wrong; empty for a sound choice. */
    public static List<Finding> verify(KitNeed need, KitChoice choice) {
        KitChoiceVerifier v = new KitChoiceVerifier(need, choice);
        v.checkPrice();
        v.checkCoils();
        for (KitNeed.LoosePlate p : need.stock()) {
            v.checkPlates(p.product());
        }
        v.checkParts();
        return v.found.all();
    }

    private void checkPrice() {
        long price = 0;
        long kits = 0;
        for (KitChoice.Chosen c : choice.kits()) {
            price += c.kit().price() * c.count();
            kits += c.count();
        }
        for (KitChoice.Added a : choice.added()) {
            price += a.price() * a.quantity();
        }
        found.unless(kits > 0, "%d kits are chosen, at least %d is asked", kits, 1);
        found.unless(price == choice.price(), "a price of %d, reckoned %d", choice.price(), price);
        found.unless(
                choice.bound() <= choice.price(), "a bound of %d over the price %d", choice.bound(), choice.price());
    }

    private void checkCoils() {
        Set<String> cut = new HashSet<>();
        List<Long> brought = new ArrayList<>();
        for (KitChoice.Chosen c : choice.kits()) {
            for (StandardKit.Coils k : c.kit().coils()) {
                for (int i = 0; i < k.count() * c.count(); i++) {
                    brought.add(Math.round(k.length() * HUNDREDTHS));
                }
            }
        }
        for (KitChoice.CoilUse use : choice.coils()) {
            long length = 0;
            for (KitNeed.LoopCut loop : need.loops()) {
                length += use.loops().contains(loop.loop()) ? loop.length() : 0;
            }
            found.unless(length <= use.length(), "pipe of %d from a coil of %d", length, use.length());
            for (String loop : use.loops()) {
                found.unless(cut.add(loop), "loop %s is cut %d times", loop, 2);
            }
            boolean there = use.source() != KitChoice.Source.KIT || brought.remove((Long) use.length());
            found.unless(there, "a coil of %d from kits that bring %d of it", use.length(), 0);
        }
        found.unless(
                cut.size() == need.loops().size(),
                "%d loops are cut, there are %d",
                cut.size(),
                need.loops().size());
    }

    private void checkPlates(String product) {
        List<Long> plates = new ArrayList<>();
        for (KitChoice.Chosen c : choice.kits()) {
            for (StandardKit.Plates p : c.kit().plates()) {
                for (int i = 0; p.plate().equals(product) && i < p.count() * c.count(); i++) {
                    plates.add(Math.round(p.length() * HUNDREDTHS));
                }
            }
        }
        for (KitChoice.Added a : choice.added()) {
            for (long i = 0; a.sku().equals(product) && i < a.quantity(); i++) {
                plates.add(a.length());
            }
        }
        List<Long> needed = new ArrayList<>();
        for (KitNeed.PlateCut p : need.plates()) {
            if (p.product().equals(product)) {
                needed.add(p.length());
            }
        }
        plates.sort(Comparator.reverseOrder());
        needed.sort(Comparator.reverseOrder());
        for (int i = 0; i < needed.size(); i++) {
            long has = i < plates.size() ? plates.get(i) : 0;
            found.unless(has >= needed.get(i), "plate %s of %d, %d is needed", product, has, needed.get(i));
        }
    }

    private void checkParts() {
        for (KitNeed.Part part : need.parts()) {
            long has = 0;
            for (KitChoice.Chosen c : choice.kits()) {
                for (StandardKit.Parts p : c.kit().parts()) {
                    has += p.sku().equals(part.sku()) ? (long) p.count() * c.count() : 0;
                }
            }
            for (KitChoice.Added a : choice.added()) {
                has += a.sku().equals(part.sku()) ? a.quantity() : 0;
            }
            found.unless(has >= part.quantity(), "part %s: %d of %d", part.sku(), has, part.quantity());
        }
    }
}
