package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.source.BadInput;
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;

/** What lies in the box, what does not, and what is said of both. */
class BoxContentsTest {
    @TempDir
    Path folder;

    private static KitPlan.BoxItem item(KitPlan plan, String sku) {
        return plan.items().stream()
                .filter(i -> i.sku().equals(sku))
                .findFirst()
                .orElseThrow();
    }

    /** A whole coil of 50 m at 0.083 kg/m weighs 4.15 kg and costs its price; the customer keeps the rest. */
    @Test
    void wholeCoil() throws IOException {
        KitPlan plan = Sheds.plan(Sheds.job(folder, Sheds.SHED));
        KitPlan.BoxItem coil = item(plan, "PX-16");
        assertEquals("coil", coil.unit());
        assertEquals(50000, plan.coils().coils().get(0).length());
        assertEquals(4.15, coil.weight(), 1e-9);
        assertEquals(7400, coil.price());
        assertTrue(coil.name().contains("whole coil of 50 m"), coil.name());
        assertEquals("customer", plan.restGoesTo(plan.coils().coils().get(0)));
        assertEquals(List.of(), KitVerifier.verify(plan));
    }

    /** The cut alone: its share of the coil's price, its own weight, and the rest stays on the shelf. */
    @Test
    void cutFromACoil() throws IOException {
        String catalog = Sheds.catalog(
                "    supply: whole\n    weightPerMetre: 0.083", "    supply: cut\n    weightPerMetre: 0.083");
        KitPlan plan = Sheds.plan(Sheds.job(folder, Sheds.SHED, catalog, Optional.empty()));
        double cut = plan.loops().get(0).cutLength();
        KitPlan.BoxItem line = item(plan, "PX-16");
        assertEquals(Math.round(7400 * cut / 50000), line.price());
        assertEquals(cut / 1000 * 0.083, line.weight(), 1e-9);
        assertTrue(line.name().contains("the rest stays in the workshop"), line.name());
        assertEquals("shelf", plan.restGoesTo(plan.coils().coils().get(0)));
        assertEquals(List.of(), KitVerifier.verify(plan));
    }

    /** A bore of 12 mm holds pi / 4 x 0.12 dm x 0.12 dm x 10 dm = 0.113 l a metre: 30-odd metres hold 4 l, rounded up. */
    @Test
    void pumpAndCoolantAreInTheBox() throws IOException {
        String heated = Sheds.SHED.replace("{spacing: 150}", "{spacing: 150, leftOutPrice: 10}")
                + "build: {insulation: 30, cover: {thickness: 12, material: birch-ply}}\n"
                + "heating: {coolant: propylene-glycol-40, pump: CP-12}\n";
        KitPlan plan = Sheds.plan(Sheds.job(folder, heated));
        assertEquals(1, item(plan, "CP-12").quantity());
        double litres = Math.PI / 4 * 0.12 * 0.12 * plan.loops().get(0).cutLength() / 100;
        assertEquals((long) Math.ceil(litres), item(plan, "propylene-glycol-40").quantity());
        assertEquals(
                List.of(
                        "Propylene glycol 40 %, more of it for the rest of the circuit and the header tank (how much that holds was"
                                + " not given): the box holds what fills the pipe",
                        "cover (Birch plywood, 12 mm, 4.46 m2 of floor)",
                        "what takes the groove (board or foam 16.5 mm thick beside it, which the job does not name; 4.46 m2 of"
                                + " floor)",
                        "insulation (Extruded foam, 300 kPa, 30 mm, 4.46 m2 of floor)"),
                plan.notSupplied());
        assertEquals(List.of(), KitVerifier.verify(plan));
        KitPlan boat = Sheds.plan(Sheds.job(folder, heated + "circuit: {litres: 6}\n"));
        assertTrue(
                boat.notSupplied()
                        .get(0)
                        .matches("Propylene glycol 40 %, [56]\\.\\d l more for what the circuit holds beside the pipe"),
                boat.notSupplied()::toString);
        String water = heated.replace("propylene-glycol-40", "water");
        KitPlan unsold = Sheds.plan(Sheds.job(folder, water.replace(", pump: CP-12", "")));
        double held = unsold.heat().orElseThrow().solution().filling().litres();
        assertEquals(litres, held, 0.03 * litres, "all but the allowance");
        assertEquals(
                String.format(
                        Locale.ROOT,
                        "Water, %.2f l for pipe and tails, more for the rest of the circuit and the header tank (how much that"
                                + " holds was not given)",
                        held),
                unsold.notSupplied().get(0));
        assertEquals("circulation pump", unsold.notSupplied().get(1));
    }

    /** Tape for each centimetre of straight pipe: what is routed to the holes is taped too, and counted like the rest. */
    @Test
    void leadInsAreTaped() throws IOException {
        String joined = Sheds.SHED.replace(
                "port: {at: [0, 75]}", "port: {at: [0, 700], holes: [{flow: [90, 690], return: [90, 870]}]}");
        String catalog = Sheds.catalog("per: metre-of-run, amount: 0.04", "per: metre-of-run, amount: 100");
        KitPlan plan = Sheds.plan(Sheds.job(folder, joined, catalog, Optional.empty()));
        Breakdown pipe = plan.loops().get(0).breakdown();
        double runs = pipe.elements().stream()
                .filter(Element.Run.class::isInstance)
                .mapToDouble(Element::length)
                .sum();
        assertTrue(runs > pipe.straightLength() + 1, "there are lead-ins");
        assertEquals((long) Math.ceil(runs / 10 - 1e-9), item(plan, "FT-25").quantity());
        assertEquals(List.of(), KitVerifier.verify(plan));
    }

    /** Two loops: four places where pipe comes through, four ends at valves with two collars each. */
    @Test
    void sleevesByPortAndCollarsByJoint() throws IOException {
        String two = Sheds.SHED.replace("{spacing: 150}", "{spacing: 150, loops: 2}");
        assertNotEquals(Sheds.SHED, two);
        String sleeve = "per: loop, amount: 2}\n  - {sku: BA-16";
        String catalog = Sheds.catalog(
                sleeve,
                "per: port}\n  - {sku: HC-1, name: Collar, unit: piece, cost: 1, price: 2,"
                        + " weight: 0.01, per: joint, amount: 2}\n  - {sku: BA-16");
        KitPlan plan = Sheds.plan(Sheds.job(folder, two, catalog, Optional.empty()));
        assertEquals(2, plan.loops().size());
        assertEquals(4, item(plan, "PG-1").quantity());
        assertEquals(8, item(plan, "HC-1").quantity());
        assertEquals(List.of(), KitVerifier.verify(plan));
    }

    /** A coil of 30 m is missed by little: the catalog is made to sell one 0.2 m shorter than the cut. */
    @Test
    void aCoilJustMissed() throws IOException {
        double cut = Sheds.plan(Sheds.job(folder, Sheds.SHED)).loops().get(0).cutLength();
        String shorter = Sheds.catalog(
                "{length: 25 m, cost: 21.25, price: 39.00}",
                "{length: " + (cut - 200) + ", cost: 21.25, price: 39.00}");
        KitPlan missed = Sheds.plan(Sheds.job(folder, Sheds.SHED, shorter, Optional.empty()));
        String line = missed.remarkWords().stream()
                .filter(r -> r.startsWith("Just missed: "))
                .findFirst()
                .orElseThrow();
        assertTrue(line.contains("with 0.20 m less pipe a coil of"), line);
        assertTrue(line.contains("save 35.00 EUR: 2 places fewer on the floor"), line);
        String scant = Sheds.catalog(
                "{length: 25 m, cost: 21.25, price: 39.00}",
                "{length: " + (cut + 100) + ", cost: 21.25, price: 39.00}");
        KitPlan full = Sheds.plan(Sheds.job(folder, Sheds.SHED, scant, Optional.empty()));
        assertTrue(
                full.remarkWords().stream().anyMatch(r -> r.contains("only 100 mm of the coil")),
                () -> "" + full.remarkWords());
    }

    @Test
    void bendsAsPeopleCountThem() {
        assertEquals("3 return bends and 1 quarter bend", new BendCount(3, 1).words());
        assertEquals("1 return bend", new BendCount(1, 0).words());
        assertEquals("no bends", new BendCount(0, 0).words());
    }

    /** 43 is 43 mm: nobody keeps that of a coil; a plate of 1300 was never sold; SP-7 is no product. */
    @Test
    void shelfEntriesThatCannotBe() throws IOException {
        Path shelf = Files.writeString(
                folder.resolve("shelf.yaml"),
                "remnants: [{id: C1, product: PX-16, length: 43}, {id: O1, product: SP-1, length: 1300},"
                        + " {id: O2, product: SP-7, length: 400}]\n");
        Job job = Sheds.job(folder, Sheds.SHED, Sheds.catalog("currency", "currency"), Optional.of(shelf));
        assertTrue(job.warnings().contains("Shelf: C1 is 43 mm of pipe: is that 43 m?"), () -> "" + job.warnings());
        assertTrue(job.warnings().contains("Shelf: O1 is 1300 mm, but the longest plate sold is 1200 mm."));
        assertTrue(
                job.warnings().stream().anyMatch(w -> w.startsWith("Shelf: O2 is of product SP-7, which the catalog")));
    }

    /** A length that cannot be read is one fault; that the corner then seems to hang in the air is none of its own. */
    @Test
    void aBadMeasureIsOneFault() {
        String measured = Sheds.SHED.replace(
                "  outline: [[0, 0], [2700, 0], [2700, 1650], [0, 1650]]\n",
                "  measured:\n    corners: [A, B, C, D]\n    lengths: [[A, B, 2700], [B, C, 16m50], [C, D, 2700], [D, A, 1650], [A, C, 3164]]\n");
        BadInput answer = assertThrows(BadInput.class, () -> Sheds.job(folder, measured));
        assertEquals(1, answer.faults().size(), answer::getMessage);
    }
}
