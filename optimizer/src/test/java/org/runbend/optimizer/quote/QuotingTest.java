package org.runbend.optimizer.quote;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Freight;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.product.Sales;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.SoundKit;
import org.runbend.optimizer.verify.QuoteVerifier;

/** The kit planned by hand comes to 136.40 and weighs 5.108 kg; what is asked for it is reckoned by hand beside each test. */
class QuotingTest {
    private static final Freight FREIGHT = freight(OptionalLong.empty());

    private static Freight freight(OptionalLong free) {
        return new Freight(List.of(new Freight.Step(5, 890), new Freight.Step(10, 1450)), free);
    }

    private static Sales sales(Freight freight, Sales.Lines lines, long discountFrom) {
        return new Sales(
                Optional.of(new Rate(1900)),
                "VAT",
                lines,
                List.of(new Sales.Discount(discountFrom, new Rate(350))),
                freight,
                21);
    }

    private static KitPlan plan(Sales sales, PlanCheck.Verdict verdict, Optional<String> date) {
        KitPlan p = SoundKit.plan();
        Catalog c = p.job().catalog();
        Catalog terms = new Catalog(
                c.workshop(),
                c.currency(),
                c.pipes(),
                c.plates(),
                c.items(),
                c.coolants(),
                c.pumps(),
                c.boards(),
                c.routing(),
                c.labour(),
                c.layers(),
                c.panels(),
                sales,
                List.of(),
                c.packing());
        Job j = p.job();
        Job job = new Job(
                new Job.Heading(j.title(), j.order(), j.customer(), date, j.revision()),
                new Job.Supply(terms, j.shelf()),
                j.floor(),
                j.layout(),
                j.pipe(),
                j.plates(),
                j.build(),
                j.heating(),
                j.source());
        return new KitPlan(
                job,
                p.tape(),
                p.laid(),
                p.plates(),
                p.coils(),
                p.box(),
                p.channel(),
                p.heat(),
                p.plateOptions(),
                p.boards(),
                p.sensor(),
                List.of(new PlanCheck("air", 1, p.checks().get(0).good(), 2, "mm", verdict, "x")),
                p.remarks());
    }

    private static Quote quote(Sales sales, Optional<Rate> asked) {
        KitPlan plan = plan(sales, PlanCheck.Verdict.OK, Optional.of("12 March"));
        Quote quote = new Quoting().quote(plan, asked);
        assertEquals(List.of(), QuoteVerifier.verify(plan, quote));
        return quote;
    }

    /** 3.5 % of 13640 are 477.4, so 477; 13640 - 477 + 1450 = 14613; 19 % are 2776.47, so 2776; 17389 in all. */
    @Test
    void discountFreightAndTax() {
        Quote quote = quote(sales(FREIGHT, Sales.Lines.ITEMS, 13_640), Optional.empty());
        assertEquals(Optional.of(new Quote.Discount(new Rate(350), 477, false)), quote.discount());
        assertEquals(new Quote.Sending(Quote.How.BY_WEIGHT, 5.108, 1450), quote.sending());
        assertEquals(
                new Totals(13_640, 477, 1450, List.of(new Totals.TaxSum(new Rate(1900), 14_613, 2776))),
                quote.totals());
        assertEquals(17_389, quote.totals().gross());
        assertEquals("21 days from 12 March", quote.validity());
        assertEquals(12, quote.lines().size());
        assertTrue(quote.isFirm());
    }

    /** A discount asked takes the place of the scale's: 10 % are 1364. */
    @Test
    void askedDiscount() {
        Quote quote = quote(sales(FREIGHT, Sales.Lines.ITEMS, 0), Optional.of(new Rate(1000)));
        assertEquals(Optional.of(new Quote.Discount(new Rate(1000), 1364, true)), quote.discount());
        assertEquals(
                Optional.empty(),
                quote(sales(FREIGHT, Sales.Lines.ITEMS, 0), Optional.of(Rate.NONE))
                        .discount());
        assertEquals(
                Optional.empty(),
                quote(sales(FREIGHT, Sales.Lines.ITEMS, 13_641), Optional.empty())
                        .discount());
    }

    /** The discount is taken off before freight is free: 13640 - 477 = 13163. */
    @Test
    void freeFreight() {
        Quote free = quote(sales(freight(OptionalLong.of(13_163)), Sales.Lines.ITEMS, 0), Optional.empty());
        assertEquals(new Quote.Sending(Quote.How.FREE, 5.108, 0), free.sending());
        Quote paid = quote(sales(freight(OptionalLong.of(13_164)), Sales.Lines.ITEMS, 0), Optional.empty());
        assertEquals(Quote.How.BY_WEIGHT, paid.sending().how());
    }

    @Test
    void tooHeavyOrNotPriced() {
        Freight light = new Freight(List.of(new Freight.Step(5, 890)), OptionalLong.empty());
        assertEquals(
                new Quote.Sending(Quote.How.BY_ARRANGEMENT, 5.108, 0),
                quote(sales(light, Sales.Lines.ITEMS, 0), Optional.empty()).sending());
        Quote plain = quote(Sales.PLAIN, Optional.empty());
        assertEquals(Quote.How.NOT_PRICED, plain.sending().how());
        assertEquals(Optional.empty(), plain.taxName());
        assertEquals(13_640, plain.totals().gross());
    }

    @Test
    void lumpSum() {
        Quote quote = quote(sales(FREIGHT, Sales.Lines.LUMP_SUM, 0), Optional.empty());
        assertEquals(1, quote.lines().size());
        assertEquals(13_640, quote.lines().get(0).amount());
        assertEquals(17_389, quote.totals().gross());
    }

    @Test
    void whatFailsIsNotFirm() {
        KitPlan plan = plan(sales(FREIGHT, Sales.Lines.ITEMS, 0), PlanCheck.Verdict.FAIL, Optional.empty());
        Quote quote = new Quoting().quote(plan, Optional.empty());
        assertFalse(quote.isFirm());
        assertEquals(List.of("air"), quote.failed());
        assertEquals("21 days from the day it reaches you", quote.validity());
        assertEquals(List.of(), QuoteVerifier.verify(plan, quote));
    }

    /** The verifier notices each figure that is a cent off. */
    @Test
    void verifierSeesWrongFigures() {
        Sales sales = sales(FREIGHT, Sales.Lines.ITEMS, 0);
        KitPlan plan = plan(sales, PlanCheck.Verdict.OK, Optional.empty());
        Quote q = new Quoting().quote(plan, Optional.empty());
        Totals t = q.totals();
        List<Quote> wrong = List.of(
                with(q, q.discount(), q.sending(), new Totals(t.lines(), t.allowances(), t.charges() + 1, t.taxes())),
                with(
                        q,
                        q.discount(),
                        q.sending(),
                        new Totals(
                                t.lines(),
                                t.allowances(),
                                t.charges(),
                                List.of(new Totals.TaxSum(new Rate(1900), 14_613, 2777)))),
                with(q, Optional.of(new Quote.Discount(new Rate(350), 478, false)), q.sending(), t),
                with(q, q.discount(), new Quote.Sending(Quote.How.BY_WEIGHT, 5.108, 890), t));
        wrong.forEach(w -> assertFalse(QuoteVerifier.verify(plan, w).isEmpty(), w::toString));
    }

    private static Quote with(Quote q, Optional<Quote.Discount> discount, Quote.Sending sending, Totals totals) {
        return new Quote(
                q.form(), q.lines(), discount, sending, q.taxName(), totals, q.validity(), q.granted(), q.failed());
    }
}
