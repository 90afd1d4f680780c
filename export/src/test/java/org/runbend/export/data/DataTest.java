package org.runbend.export.data;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.DemoPlan;
import org.runbend.export.JsonIn;
import org.runbend.export.OutsideReader;

class DataTest {
    private static final String JSON =
            "import json,sys\nk=json.load(open(sys.argv[1]))\nfor e in sys.argv[2:]: print(eval(e))";

    private static final String CSV =
            "import csv,sys\nfor r in csv.reader(open(sys.argv[1],newline='',encoding='utf-8')): print('|'.join(r))";

    private final byte[] kit = new KitJson().bytes(DemoPlan.plan(), List.of("kit.json", "cuts.csv"));

    @TempDir
    Path folder;

    /** Python's reader finds the numbers worked by hand in the plan's comment. */
    @Test
    void pythonReadsTheKit() throws IOException {
        Path file = Files.write(folder.resolve("kit.json"), kit);
        List<String> found = OutsideReader.run(
                        "python3",
                        "-c",
                        JSON,
                        file.toString(),
                        "list(k)",
                        "k['pipe']['minBendRadius'], k['pipe']['bendRadius'], k['lattice']",
                        "len(k['loops'][0]['elements']), k['loops'][0]['elements'][3]",
                        "k['loops'][0]['floorLength'], k['loops'][0]['cutLength'], k['loops'][0]['objectiveBound']",
                        "'turnBound' in k['loops'][0], abs(sum(e['length'] for e in k['loops'][0]['elements']) - k['loops'][0]['floorLength']) < 1e-4",
                        "k['plates']['pieces'][1]",
                        "[s.get('id') for s in k['plates']['stock']], k['plates']['coverage'], k['plates']['bound'], k['plates']['bought'], k['plates']['runByRun']",
                        "k['coils'], k['coilCost'], k['coilBound']",
                        "k['items'][0], k['total'], k['currency'], k['weight']",
                        "[c['verdict'] for c in k['checks']], k['remarks'], k['fingerprint'], k['files'], k['customer'], k['job']")
                .lines()
                .toList();
        assertEquals(
                "['contract', 'job', 'order', 'customer', 'date', 'workshop', 'units', 'floor', 'port', 'pipe', 'lattice', 'loops', 'setOut', 'plates', 'sawWork', 'work', 'coils',"
                        + " 'coilCost', 'coilBound', 'coilProof', 'items', 'total', 'currency', 'weight', 'notSupplied', 'parcels', 'parcelsAtLeast', 'checks',"
                        + " 'bareFloor', 'remarks', 'fingerprint', 'files']",
                found.get(0));
        assertEquals(
                "(55.0, 75.0, {'origin': [75.0, 75.0], 'angle': 0.0, 'spacing': 150.0, 'reachable': 60})",
                found.get(1));
        assertEquals(
                "(13, {'kind': 'bend', 'from': [1350.0, 75.0], 'to': [1350.0, 225.0], 'centre': [1350.0, 150.0],"
                        + " 'radius': 75.0, 'turn': 180.0, 'length': 235.619449})",
                found.get(2));
        assertEquals("(6192.477796, 8357, 38)", found.get(3));
        assertEquals("(False, True)", found.get(4));
        assertEquals(
                "{'name': 'P3', 'product': 'SP2', 'length': 800.0, 'width': 270.0, 'runs': [{'loop': 'A', 'element': 4, 'from': 100.0},"
                        + " {'loop': 'A', 'element': 6, 'from': 150.0}]}",
                found.get(5));
        assertEquals("([None, '=S\"1,2', None], 0.647619, 900, 1000, 1500)", found.get(6));
        assertEquals(
                "([{'product': 'PX', 'length': 25000.0, 'cuts': [{'loop': 'A', 'length': 8357.0}], 'left': 16643.0,"
                        + " 'restGoesTo': 'customer'}], 2125, 2125)",
                found.get(7));
        assertEquals(
                "({'sku': 'PX-25', 'name': 'Pipe 16 x 2, coil of 25 m', 'quantity': 1, 'unit': 'coil', 'price': 3900,"
                        + " 'weight': 2.075}, 5130, 'EUR', 2.671)",
                found.get(8));
        assertEquals(
                "(['ok', 'warn'], ['Some places stay bare.', 'Plate SP2 is named in the job but not used: a narrower one is named.'], '00ff', ['kit.json',"
                        + " 'cuts.csv'], '=cmd|x', 'Reading room <caf\u00e9>')",
                found.get(9));
    }

    /** The demo plan's bare part, as {@code DemoPlan} says it. */
    @Test
    void bareFloorIsToldInNumbersAndWords() throws IOException {
        JsonIn bare = JsonIn.read(Files.write(folder.resolve("kit.json"), kit))
                .at("bareFloor")
                .list()
                .get(0);
        assertEquals("not-joined", bare.at("reason").text());
        assertEquals(3, bare.at("places").number());
        assertEquals(
                "Out of reach: 3 places at [225, 675] near post join the port's part of the floor nowhere. With clearance 25"
                        + " instead of 40 round post a loop can reach 4 places more, 3 of them here. With the port at"
                        + " [150, 600] a loop can reach 3 places more.",
                bare.at("words").text());
        JsonIn clearance = bare.at("remedies").list().get(0);
        assertEquals("floor.keepOut.clearance", clearance.at("key").text());
        assertEquals("post", clearance.at("keepOut").text());
        assertEquals(25, clearance.at("to").number());
        assertEquals(
                List.of(150.0, 600.0),
                bare.at("remedies").list().get(1).at("to").list().stream()
                        .map(JsonIn::number)
                        .toList());
    }

    @Test
    void numbersArePlainAndLinesEndAlike() {
        String text = new String(kit, StandardCharsets.UTF_8);
        assertFalse(text.contains("\r"));
        assertTrue(text.contains("\"length\": 235.619449"));
        assertTrue(text.contains("\"turn\": 180.000"), "at least three decimals");
        assertTrue(text.lines().noneMatch(l -> l.matches(".*: -?[0-9.]+[eE].*")));
        assertArrayEquals(kit, new KitJson().bytes(DemoPlan.plan(), List.of("kit.json", "cuts.csv")));
    }

    /** Python's csv module takes the same cells apart; P1 lies on the shelf, so bought plates begin with P2. */
    @Test
    void pythonReadsTheCuts() throws IOException {
        Path file = Files.write(folder.resolve("cuts.csv"), new CutsCsv().bytes(DemoPlan.plan()));
        assertEquals(
                List.of(
                        "kind|stockId|product|stockLength|cutNo|length|goesTo|leftover",
                        "pipe|C1|PX|25000|1|8357|loop A|16643",
                        "plate|P2|SP|1200|1|1000|A run 2 at 100 mm|197",
                        "plate|'=S\"1,2|SP|805|1|800|A run 6 at 100 mm|2",
                        "plate|P3|SP2|1200|1|800|A run 3 at 100 mm + A run 4 at 150 mm|397"),
                OutsideReader.run("python3", "-c", CSV, file.toString()).lines().toList());
        assertTrue(Files.readString(file).endsWith("397\r\n"));
    }
}
