package org.runbend.optimizer.packing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.product.LabelSheet;
import org.runbend.catalog.product.PackedSize;
import org.runbend.catalog.product.Packing;

/** Parcels by hand, and seeded kits whose parcels must keep every rule and never be more than one for each line. */
class PackerTest {
    private static final Packing.Carton SMALL =
            new Packing.Carton("S", "small", new PackedSize(400, 300, 200), 0.4, 10);
    private static final Packing.Carton LONG = new Packing.Carton("L", "long", new PackedSize(1250, 300, 100), 0.9, 25);
    private static final Packing.Carton WIDE = new Packing.Carton("W", "wide", new PackedSize(800, 800, 400), 2.1, 30);
    private static final Packing.Carrier CARRIER = new Packing.Carrier(31.5, 1750, 3600);

    private static Packing shop(Packing.Carton... cartons) {
        return new Packing(List.of(), List.of(cartons), Optional.of(CARRIER), LabelSheet.USUAL);
    }

    private static PackedLine line(String sku, String place, double weight, long quantity, PackedSize size) {
        return new PackedLine(
                sku, sku, quantity, "piece", weight, Optional.of(place), List.of(), Optional.of(size), false);
    }

    /** By hand: a plate of 1200 mm goes into the long carton only; the clamps have room beside it, so one box does. */
    @Test
    void oneBoxWhereOneWillDo() {
        List<Parcel> parcels = new Packer(shop(SMALL, LONG, WIDE))
                .pack(List.of(
                        line("PLATE", "B1", 0.3, 4, new PackedSize(1200, 120, 17)),
                        line("CLAMP", "A1", 0.004, 50, new PackedSize(30, 20, 10))));
        assertEquals(1, parcels.size());
        assertEquals("L", parcels.get(0).carton().orElseThrow().sku());
        assertEquals(
                List.of("CLAMP", "PLATE"),
                parcels.get(0).lines().stream().map(PackedLine::sku).toList());
        assertEquals(0.9 + 1.2 + 0.2, parcels.get(0).weight(), 1e-9);
        assertEquals(Optional.of(true), parcels.get(0).sendable());
    }

    /**
     * By hand: a plate of 1200 mm goes into the long carton only, a coil 520 wide into the wide one only, a pole nowhere: three
     * parcels at least, and three are made. 70 kg of lead in five pieces go 29.4 kg to a box: three; it takes five boxes of one
     * or three of two, so no fewer than three are packed.
     */
    @Test
    void fewerParcelsDoNotHoldIt() {
        List<PackedLine> mixed = List.of(
                line("PLATE", "B1", 0.3, 4, new PackedSize(1200, 120, 17)),
                line("COIL", "A1", 2, 1, new PackedSize(520, 520, 110)),
                line("POLE", "C1", 2, 1, new PackedSize(2000, 40, 40)),
                line("CLAMP", "A2", 0.004, 50, new PackedSize(30, 20, 10)));
        Packer packer = new Packer(shop(SMALL, LONG, WIDE));
        assertEquals(3, packer.atLeast(mixed));
        assertEquals(3, packer.pack(mixed).size());
        List<PackedLine> lead = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            lead.add(line("LEAD" + i, "A" + i, 14, 1, new PackedSize(100, 100, 100)));
        }
        assertEquals(3, packer.atLeast(lead));
        assertEquals(3, packer.pack(lead).size());
        assertEquals(1, packer.atLeast(List.of(mixed.get(3))));
        assertEquals(0, packer.atLeast(List.of()));
    }

    /** Places are counted as people count: A2 before A10. */
    @Test
    void placesAreCountedAsPeopleCount() {
        List<Parcel> parcels = new Packer(shop(WIDE))
                .pack(List.of(
                        line("TEN", "A10", 1, 1, new PackedSize(10, 10, 10)),
                        line("TWO", "A2", 1, 1, new PackedSize(10, 10, 10))));
        assertEquals(
                List.of("TWO", "TEN"),
                parcels.get(0).lines().stream().map(PackedLine::sku).toList());
    }

    /** By hand: 2000 mm is longer than any carton, so it travels by itself, and the carrier does not take it. */
    @Test
    void whatFitsNowhereTravelsByItself() {
        List<Parcel> parcels =
                new Packer(shop(SMALL, LONG)).pack(List.of(line("POLE", "A1", 2, 1, new PackedSize(2000, 40, 40))));
        assertEquals(1, parcels.size());
        assertEquals(Optional.empty(), parcels.get(0).carton());
        assertEquals(Optional.of(false), parcels.get(0).sendable());
    }

    /** 12 kg in all: over the 10 kg of the small carton, so the next one that holds it. */
    @Test
    void weightDecidesToo() {
        List<Parcel> parcels =
                new Packer(shop(SMALL, WIDE)).pack(List.of(line("LEAD", "A1", 12, 1, new PackedSize(100, 100, 100))));
        assertEquals("W", parcels.get(0).carton().orElseThrow().sku());
    }

    @Test
    void withoutCartonsThereIsOneBox() {
        List<Parcel> parcels = new Packer(Packing.USUAL)
                .pack(List.of(
                        line("A", "A1", 1, 1, new PackedSize(1, 1, 1)),
                        line("B", "B1", 2, 3, new PackedSize(1, 1, 1))));
        assertEquals(1, parcels.size());
        assertEquals(7, parcels.get(0).weight(), 1e-9);
        assertEquals(Optional.empty(), parcels.get(0).sendable());
    }

    /** Every line lies in one parcel, what lies in a carton fits in by each rule told here anew, and none is empty. */
    @Test
    void seededKitsKeepEveryRule() {
        Random random = new Random(19);
        int several = 0;
        for (int round = 0; round < 300; round++) {
            List<PackedLine> lines = new ArrayList<>();
            int count = 1 + random.nextInt(20);
            for (int i = 0; i < count; i++) {
                lines.add(line(
                        "P" + i,
                        "A" + random.nextInt(30),
                        random.nextInt(800) / 100.0,
                        1 + random.nextInt(6),
                        new PackedSize(1 + random.nextInt(1400), 1 + random.nextInt(300), 1 + random.nextInt(120))));
            }
            Packer packer = new Packer(shop(SMALL, LONG, WIDE));
            List<Parcel> parcels = packer.pack(lines);
            assertTrue(packer.atLeast(lines) <= parcels.size(), "round " + round);
            several += parcels.size() > 1 ? 1 : 0;
            assertEquals(
                    lines.stream().map(PackedLine::sku).sorted().toList(),
                    parcels.stream()
                            .flatMap(p -> p.lines().stream())
                            .map(PackedLine::sku)
                            .sorted()
                            .toList());
            for (Parcel p : parcels) {
                assertFalse(p.lines().isEmpty());
                if (p.carton().isPresent()) {
                    assertHolds(p);
                } else {
                    assertEquals(1, p.lines().size(), "only what no carton holds travels by itself");
                }
            }
        }
        assertTrue(several > 100, "several parcels in " + several + " rounds");
    }

    private static void assertHolds(Parcel p) {
        Packing.Carton carton = p.carton().orElseThrow();
        double volume = 0;
        double weight = 0;
        List<Double> inside = carton.inside().sides();
        for (PackedLine l : p.lines()) {
            List<Double> sides = l.size().orElseThrow().sides();
            for (int i = 0; i < 3; i++) {
                assertTrue(sides.get(i) <= inside.get(i), l + " in " + carton);
            }
            volume += l.quantity() * sides.get(0) * sides.get(1) * sides.get(2);
            weight += l.quantity() * l.weight();
        }
        assertTrue(volume <= 0.8 * inside.get(0) * inside.get(1) * inside.get(2) + 1e-6);
        assertTrue(weight <= Math.min(carton.most(), 31.5 - carton.weight()) + 1e-9);
    }
}
