package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Rate;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.quote.KitChoice;
import org.runbend.optimizer.quote.KitChoosing;
import org.runbend.optimizer.quote.KitNeed;
import org.runbend.optimizer.quote.KitNeeds;
import org.runbend.optimizer.quote.Offer;
import org.runbend.optimizer.quote.Quote;
import org.runbend.optimizer.quote.Quoting;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.KitChoiceVerifier;
import org.runbend.optimizer.verify.QuoteVerifier;

/** Prices a finished plan: its quotation, and the standard kits that would do. */
public final class OfferPart {
    private OfferPart() {}

    /**
     * The offer, verified.
     *
     * @param discount asked for this order; empty: the one of the catalog's terms
     * @throws IllegalStateException if a verifier finds a fault in it
     */
    public static Offer of(KitPlan plan, Optional<Rate> discount) {
        Quote quote = new Quoting().quote(plan, discount);
        KitNeed need = KitNeeds.of(plan);
        Optional<KitChoice> kits = new KitChoosing().choose(need);
        List<Finding> findings = new ArrayList<>(QuoteVerifier.verify(plan, quote));
        kits.ifPresent(k -> findings.addAll(KitChoiceVerifier.verify(need, k)));
        if (!findings.isEmpty()) {
            throw new IllegalStateException("the offer breaks a rule: " + findings);
        }
        return new Offer(quote, kits);
    }
}
