package org.runbend.catalog.product;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.source.BadInput;

class CatalogReaderTest {
    private static final String GOOD = """
            workshop: Small Shop
            currency: EUR
            pipes:
              - sku: P-1
                name: Pipe
                outer: 16
                wall: 2
                material: pe-rt
                leastRadius: {fitted: 55, byHand: 80}
                aid: B-1
                weightPerMetre: 0.083
                coils: [{length: 50 m, cost: 40.05, price: 74}, {length: 25 m, cost: 21.25, price: 39.00}]
            plates:
              - {sku: S-2, name: Twin, width: 270, grooves: 2, centres: 150, grooveDiameter: 16, thickness: 0.5,
                 material: aluminium, weightPerMetre: 0.4, kerf: 3, stock: [{length: 1200, cost: 5.6, price: 10.4}]}
            items:
              - {sku: B-1, name: Bending aid, cost: 11, price: 21, weight: 0.4, per: on-demand, pipes: [P-1]}
              - {sku: T-1, name: Tape, unit: roll, cost: 3, price: 7, weight: 0.2, per: metre-of-run, amount: 0.04}
            coolants: [{sku: pg, name: Glycol, base: propylene-glycol, share: 40%, freezes: -21}]
            pumps: [{sku: C-1, name: Pump, power: 14, weight: 0.5, cost: 31, price: 58, curve: [[0, 34], [10, 4]]}]
            boards:
              - {sku: ply, name: Ply, kind: cover, conductivity: 0.17, density: 680,
                 sheets: [{length: 5ft, width: 48in, thickness: 12, cost: 33.5, price: 61}]}
            """;

    @TempDir
    Path folder;

    private Catalog read(String text) throws IOException {
        return CatalogReader.read(Files.writeString(folder.resolve("shop.yaml"), text));
    }

    private List<String> faults(String what, String with) throws IOException {
        assertEquals(true, GOOD.contains(what), what);
        BadInput bad = assertThrows(BadInput.class, () -> read(GOOD.replace(what, with)));
        return bad.faults().stream()
                .map(f -> f.text().replace(folder + File.separator, ""))
                .toList();
    }

    @Test
    void readsEveryKey() throws IOException {
        Catalog c = read(GOOD);
        assertEquals(
                new Pipe(
                        "P-1",
                        "Pipe",
                        16,
                        2,
                        "pe-rt",
                        55,
                        80,
                        Optional.of("B-1"),
                        0.083,
                        List.of(new Coil(25_000, 2125, 3900), new Coil(50_000, 4005, 7400))),
                c.findPipe("P-1").orElseThrow());
        assertEquals(
                new SpreaderPlate(
                        "S-2",
                        "Twin",
                        270,
                        2,
                        150,
                        16,
                        0.5,
                        "aluminium",
                        0.4,
                        3,
                        10,
                        List.of(new PlateStock(1200, 560, 1040))),
                c.findPlate("S-2").orElseThrow());
        assertEquals(
                List.of(
                        new Item(
                                "B-1",
                                "Bending aid",
                                "piece",
                                1100,
                                2100,
                                0.4,
                                Item.Per.ON_DEMAND,
                                1,
                                List.of("P-1"),
                                OptionalDouble.empty()),
                        new Item(
                                "T-1",
                                "Tape",
                                "roll",
                                300,
                                700,
                                0.2,
                                Item.Per.METRE_OF_RUN,
                                0.04,
                                List.of(),
                                OptionalDouble.empty())),
                c.items());
        assertEquals(List.of(new Coolant("pg", "Glycol", Coolant.Base.PROPYLENE_GLYCOL, 0.4, -21)), c.coolants());
        assertEquals(
                List.of(new Pump(
                        "C-1", "Pump", List.of(new Pump.Point(0, 34), new Pump.Point(10, 4)), 14, 3100, 5800, 0.5)),
                c.pumps());
        assertEquals(
                List.of(new Board(
                        "ply",
                        "Ply",
                        Board.Kind.COVER,
                        0.17,
                        680,
                        List.of(new Board.BoardSheet(1524, 1219.2, 12, 3350, 6100)))),
                c.boards());
    }

    @Test
    void readsTermsAndKits() throws IOException {
        Catalog c = read(GOOD + """
                sales:
                  tax: 5.5%
                  taxName: VAT
                  lines: lump-sum
                  discounts: [{from: 800, share: 3.25%}, {from: 400.50, share: 2%}]
                  freight: [{upTo: 31.5, price: 22}, {upTo: 5, price: 8.90}]
                  freightFreeFrom: 1000
                  validDays: 14
                kits:
                  - {sku: K-1, name: Kit, cost: 100, price: 199.90, coils: [{pipe: P-1, length: 50 m, count: 2}],
                     plates: [{plate: S-2, length: 1200, count: 6}], items: [{item: T-1}, {item: C-1, count: 1}]}
                """);
        assertEquals(
                new Sales(
                        Optional.of(new Rate(550)),
                        "VAT",
                        Sales.Lines.LUMP_SUM,
                        List.of(new Sales.Discount(40_050, new Rate(200)), new Sales.Discount(80_000, new Rate(325))),
                        new Freight(
                                List.of(new Freight.Step(5, 890), new Freight.Step(31.5, 2200)),
                                OptionalLong.of(100_000)),
                        14),
                c.sales());
        assertEquals(
                List.of(new StandardKit(
                        "K-1",
                        "Kit",
                        10_000,
                        19_990,
                        List.of(new StandardKit.Coils("P-1", 50_000, 2)),
                        List.of(new StandardKit.Plates("S-2", 1200, 6)),
                        List.of(new StandardKit.Parts("T-1", 1), new StandardKit.Parts("C-1", 1)))),
                c.kits());
        assertEquals(Sales.PLAIN, read(GOOD).sales());
        assertEquals(List.of(), read(GOOD).kits());
    }

    /** Coils of one pipe may lie on several shelves; what has one place for all lengths lies there whatever its length. */
    @Test
    void coilsLieWhereTheirLengthDoes() throws IOException {
        Packing packing = read(GOOD + """
                packing:
                  parts:
                    - {part: P-1, length: 25 m, place: A1, size: [520, 520, 110]}
                    - {part: P-1, length: 50 m, place: A2}
                    - {part: S-2, place: B1}
                """).packing();
        assertEquals(Optional.of("A1"), packing.place("P-1", 25_000));
        assertEquals(Optional.of("A2"), packing.place("P-1", 50_000));
        assertEquals(Optional.empty(), packing.place("P-1", 80_000));
        assertEquals(Optional.of("B1"), packing.place("S-2", 1200));
        assertEquals(Optional.empty(), packing.size("P-1", 50_000));
    }

    @Test
    void aCurrencyWithoutDecimalsTakesNone() throws IOException {
        assertEquals(
                List.of(
                        "shop.yaml:12:34: pipes[0].coils[0].cost: found '40.05', an amount of at most 0 decimals and not"
                                + " over 100000000 is wanted"),
                faults("currency: EUR", "currency: JPY").subList(0, 1));
        assertEquals(
                List.of("shop.yaml:2:11: currency: found 'EURO', a code of ISO 4217 such as EUR is wanted"),
                faults("EUR", "EURO"));
    }

    @Test
    void whatARecordRefusesIsToldAtItsPlace() throws IOException {
        assertEquals(
                List.of("shop.yaml:4:5: pipes[0]: pipe P-1: wall 9.0 mm must be over 0 and under half of outer"),
                faults("wall: 2", "wall: 9"));
        assertEquals(
                List.of("shop.yaml:10:10: pipes[0].aid: there is no item 'B-9', the nearest one is B-1"),
                faults("aid: B-1", "aid: B-9"));
        assertEquals(
                List.of("shop.yaml:18:11: items[1].sku: part number 'S-2' stands twice"),
                faults("sku: T-1", "sku: S-2"));
        assertEquals(
                List.of("shop.yaml:20:84: pumps[0].curve: has 1 entry, a list of 2 or more points [l/min, kPa] is"
                        + " wanted"),
                faults("[[0, 34], [10, 4]]", "[[0, 34]]"));
    }

    @Test
    void keysAreChecked() throws IOException {
        assertEquals(
                List.of(
                        "shop.yaml:4:5: pipes[0].outer: is missing, the outside diameter is wanted",
                        "shop.yaml:6:5: pipes[0].otter: unknown key, the nearest known key is 'outer'"),
                faults("outer: 16", "otter: 16"));
        assertEquals(
                List.of("shop.yaml:17:74: items[0].per: found 'demand', one of kit, loop, port, joint, bend,"
                        + " metre-of-run, metre-of-pipe, plate-piece, sensor, hand-routing, on-demand is wanted"),
                faults("per: on-demand", "per: demand"));
        assertEquals(
                List.of("shop.yaml:19:67: coolants[0].share: found '140%', a share from 0 to 100% is wanted"),
                faults("40%", "140%"));
        assertEquals(
                List.of("shop.yaml:19:67: coolants[0].share: found '40', a share with %, such as 40%, is wanted"),
                faults("40%", "40"));
    }
}
