package org.runbend.optimizer.job.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.source.BadInput;

/** Each fault of a job is told in one whole line. The place is counted in the text of {@link Jobs#GOOD}. */
class BadJobTest {
    @TempDir
    Path folder;

    private List<String> faults(String text) {
        BadInput bad = assertThrows(BadInput.class, () -> Jobs.read(folder, text));
        return told(bad);
    }

    private List<String> told(BadInput bad) {
        return bad.faults().stream()
                .map(f -> f.text().replace(folder + File.separator, ""))
                .toList();
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            job: Trial floor          | job:                        | 1:5: job: found nothing, a text is wanted
            job: Trial floor          | jobb: Trial floor           | 1:1: job: is missing, a title is wanted
            order: T-1                | job: T-1                    | 1:1: order: is missing, an order number is wanted
            order: T-1                | order: [1]                  | 2:8: order: found a list, a text is wanted
            catalog: workshop.yaml    | catalog: shop.yaml          | 3:10: catalog: shop.yaml: no such file
            outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]] | outline: [[0, 0], [2400, 0]] | 5:12: floor.outline: the outline has 2 points, at least 3 are wanted
            outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]] | outline: [] | 5:12: floor.outline: the outline has 0 points, at least 3 are wanted
            outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]] | outlin: []  | 5:3: floor.outline: is missing, a list of at least 3 points [x, y] is wanted
            [2400, 0], [2400, 1500]   | [2400, 1500], [2400, 0]     | 5:12: floor.outline: the outline crosses or touches itself near [1200, 750]
            [2400, 0], [2400, 1500]   | [2400, 0], [2400, 0]        | 5:12: floor.outline: the outline has the same point twice: entries 1 and 2
            [2400, 0], [2400, 1500]   | [2400], [2400, 1500]        | 5:21: floor.outline[1]: has 1 entry, a point [x, y] is wanted
            [2400, 0], [2400, 1500]   | [2.4e9, 0], [2400, 1500]    | 5:22: floor.outline[1][0]: found '2.4e9', a length from -1000000 to 1000000 mm is wanted
            [2400, 0], [2400, 1500]   | [.inf, 0], [2400, 1500]     | 5:22: floor.outline[1][0]: found '.inf', a length in mm is wanted
            [2400, 0], [2400, 1500]   | [0x960, 0], [2400, 1500]    | 5:22: floor.outline[1][0]: found '0x960', a length in mm is wanted
            [2400, 0], [2400, 1500]   | [24000, 0], [24000, 1500]   | 5:12: floor.outline: the floor has 36.00 m2, at most 25 m2 are possible
            [[0, 0], [2400, 0], [2400, 1500], [0, 1500]] | [[0, 0], [2.4, 0], [2.4, 1.5], [0, 1.5]] | 5:12: floor.outline: the floor measures 2.4 x 1.5 mm, too small for any loop; is the unit right?
            radius: 60                | radius: abc                 | 7:58: floor.keepOut[0].circle.radius: found 'abc', a length in mm is wanted
            radius: 60                | radius: 0                   | 7:58: floor.keepOut[0].circle.radius: found '0', a length from 0.1 to 20000 mm is wanted
            radius: 60                | radius: 6,5                 | 7:60: floor.keepOut[0].circle.5: unknown key, the nearest known key is 'centre'
            radius: 60                | radius: '6,5'               | 7:58: floor.keepOut[0].circle.radius: found '6,5', a length in mm with a decimal point, not a comma, is wanted
            clearance: 60             | clearence: 60               | 7:63: floor.keepOut[0].clearence: unknown key, the nearest known key is 'clearance'
            clearance: 60             | clearance: -5               | 7:74: floor.keepOut[0].clearance: found '-5', a length from 0 to 2000 mm is wanted
            [700, 250]                | [700, -250]                 | 7:7: floor.keepOut[0]: keep-out 'drain' lies 130 mm outside the floor, its clearance included
            spacing: 150              | spacing: 150, veto: [{noBend: [1, 2]}]  | 10:40: layout.veto[0].noBend: has 2 entries, a circle [x, y, radius] is wanted
            spacing: 150              | spacing: 150, veto: [{noBends: [1, 2, 3]}] | 10:31: layout.veto[0]: a veto has one of the keys noBend, noPipe and mustRun, not 0
            spacing: 150              | spacing: 150, veto: [{mustRun: [[1, 2], [1, 2]]}] | 10:41: layout.veto[0].mustRun: the line has no length
            spacing: 150              | spacing: 150, loop: [[80, 75], [900, 75], [900, 75], [900, 300]] | 10:52: layout.loop[2]: the same point as the one before
            spacing: 150              | spacing: 150, loop: [[80, 75], [900, 75]] | 10:30: layout.loop: has 2 entries, a list of at least 4 points [x, y] is wanted
            name: drain               | point: [1, 1]               | 7:7: floor.keepOut[0]: a keep-out has one of the keys circle, polygon and point, not 2
            name: drain               | kind: hole                  | 7:14: floor.keepOut[0].kind: found 'hole', one of vent, drain, bolt, anchor, pillar, hatch, other is wanted
            [2400, 300]]              | [2200, 0]]                  | 8:38: floor.unheated[0].polygon: the region crosses or touches itself near [2200, 0]
            [[2000, 0], [2400, 0], [2400, 300]] | [[3000, 0], [3400, 0], [3400, 300]] | 8:14: floor.unheated[0]: unheated region 'locker' lies 600 mm outside the floor
            at: [0, 75]               | at: [-301, 75]              | 9:14: floor.port.at: the port lies 301 mm outside the floor, at most 300 mm are possible
            at: [0, 75]               | reach: 3                    | 9:9: floor.port.at: is missing, a point [x, y] is wanted
            at: [0, 75]               | at: 75                      | 9:14: floor.port.at: found '75', a point [x, y] is wanted
            spacing: 150              | spacing: 15                 | 10:19: layout.spacing: found '15', a length from 100 to 300 mm is wanted
            spacing: 150              | spacing: 150, edge: 5       | 10:30: layout.edge: edge 5 mm: pipe PX-16 would stick out of the floor, at least half of its 16 mm is needed
            spacing: 150              | spaceing: 150               | 10:10: layout.spaceing: unknown key, the nearest known key is 'spacing'
            spacing: 150              | spacing: 150, spacing: 200  | 10:24: layout.spacing: key stands twice, first in line 10
            spacing: 150              | along: north                | 10:17: layout.along: found 'north', free, x, y or an angle from -360 to 360 degrees is wanted
            spacing: 150              | prefer: heat                | 10:18: layout.prefer: found 'heat', one of long-runs, even-heat is wanted
            spacing: 150              | leftOutPrice: few           | 10:24: layout.leftOutPrice: found 'few', a number is wanted
            spacing: 150              | leftOutPrice: 0             | 10:24: layout.leftOutPrice: found '0', a number from 0.1 to 10000 is wanted
            spacing: 150              | loops: two                  | 10:17: layout.loops: found 'two', a number of loops from 1 to 6, or auto, is wanted
            spacing: 150              | loops: 9                    | 10:17: layout.loops: found '9', a number of loops from 1 to 6, or auto, is wanted
            spacing: 150              | fit: pipe                   | 10:15: layout.fit: found 'pipe', coil or none is wanted
            spacing: 150              | loop: [[0, 0]]              | 10:16: layout.loop: has 1 entry, a list of at least 4 points [x, y] is wanted
            {spacing: 150}            | 150                         | 10:9: layout: found '150', a mapping is wanted
            product: PX-16            | product: PX-61              | 11:17: pipe.product: the catalog has no pipe 'PX-61', the nearest one is PX-16
            product: PX-16            | product: PX-16, allowance: 2 | 11:35: pipe.allowance: found '2', a share with %, such as 2%, is wanted
            product: PX-16            | product: PX-16, tails: [900] | 11:31: pipe.tails: has 1 entry, a list of two lengths [flow, return] is wanted
            product: PX-16            | product: PX-16, tails: [900, -1] | 11:37: pipe.tails[1]: found '-1', a length from 0 to 100000 mm is wanted
            product: PX-16            | product: PX-16, loopLimit: 0 | 11:35: pipe.loopLimit: found '0', a length from 1 to 1000000 mm is wanted
            [SP-1, SP-2]              | [SP-1, SP-3]                | 12:26: plates.product[1]: the catalog has no plate 'SP-3', the nearest one is SP-1
            [SP-1, SP-2]              | [SP-10]                     | 12:20: plates.product[0]: plate SP-10 has a groove for 10 mm pipe, pipe PX-16 measures 16 mm
            [SP-1, SP-2]              | [SP-1, SP-1]                | 12:26: plates.product[1]: plate SP-1 stands twice
            [SP-1, SP-2]              | []                          | 12:19: plates.product: has 0 entries, a list of part numbers of plates is wanted
            product: [SP-1, SP-2]     | coverage: 85%               | 12:9: plates.product: is missing, a list of part numbers of plates is wanted
            [SP-1, SP-2]              | [SP-1], coverage: 120%      | 12:37: plates.coverage: found '120%', a share from 0 to 100% is wanted
            [SP-1, SP-2]              | [SP-1], coverage: -1%       | 12:37: plates.coverage: found '-1%', a share from 0 to 100% is wanted
            [SP-1, SP-2]              | [SP-1], coverage: 85        | 12:37: plates.coverage: found '85', a share with %, such as 85%, is wanted
            [SP-1, SP-2]              | [SP-1], gap: 3 furlongs     | 12:32: plates.gap: found '3 furlongs', a length in mm is wanted
            """)
    void oneLineForEachFault(String what, String with, String line) {
        assertTrue(Jobs.GOOD.contains(what), what);
        String first = faults(Jobs.GOOD.replace(what, with)).stream()
                .filter(f -> with.startsWith("jobb") || !f.contains("unknown key") || line.contains("unknown key"))
                .filter(f -> !f.contains("twice") || line.contains("twice"))
                .findFirst()
                .orElse("no fault");
        assertEquals("job.yaml:" + line, first);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            extends: base.yaml                     | 13:10: extends: base.yaml: no such file
            colour: red                            | 13:1: colour: unknown key, the nearest known key is 'floor'
            units: ft                              | 13:8: units: found 'ft', one of mm, in is wanted
            build: {insulation: thick}             | 13:21: build.insulation: found 'thick', a length in mm is wanted
            build: {cover: {material: birchply}}   | 13:27: build.cover.material: the catalog has no board 'birchply', the nearest one is birch-ply
            build: {cover: {thick: 12}}            | 13:17: build.cover.thick: unknown key, the nearest known key is 'thickness'
            heating: {coolant: glycol}             | 13:20: heating.coolant: the catalog has no coolant 'glycol', the nearest one is ethylene-glycol-30
            heating: {pump: CP-21}                 | 13:17: heating.pump: the catalog has no pump 'CP-21', the nearest one is CP-24
            heating: {flow: 15}                    | 13:17: heating.flow: flow of 15 degrees C cannot heat a room of 20 degrees C
            heating: {flow: 140}                   | 13:17: heating.flow: found '140', a number from 0 to 95 is wanted
            """)
    void oneLineForEachFaultOfAnAddedKey(String added, String line) {
        assertEquals(List.of("job.yaml:" + line), faults(Jobs.GOOD + added + "\n"));
    }

    @Test
    void spacingThatThePipeCannotTurnAt() {
        assertEquals(
                List.of("job.yaml:12:26: plates.product[1]: plate SP-2 has its grooves 150 mm apart, the spacing is"
                        + " 200 mm"),
                faults(Jobs.GOOD.replace("spacing: 150", "spacing: 200")));
        assertEquals(
                List.of("job.yaml:12:20: plates.product[0]: plate SP-1 is 120 mm wide and would overlap its neighbour,"
                        + " there are 115 mm"),
                faults(Jobs.GOOD.replace("spacing: 150", "spacing: 115").replace(", SP-2", "")));
    }

    @Test
    void allFaultsAreToldFromTopToBottom() {
        assertEquals(
                List.of(
                        "job.yaml:7:74: floor.keepOut[0].clearance: found '-1', a length from 0 to 2000 mm is wanted",
                        "job.yaml:9:14: floor.port.at: the port lies 1600 mm outside the floor, at most 300 mm are"
                                + " possible",
                        "job.yaml:11:17: pipe.product: the catalog has no pipe 'PX-99', the nearest one is PX-16"),
                faults(Jobs.GOOD
                        .replace("clearance: 60", "clearance: -1")
                        .replace("[0, 75]", "[4000, 75]")
                        .replace("PX-16", "PX-99")));
    }

    @Test
    void faultsOfCatalogAndShelfNameTheirOwnFile() throws IOException {
        Jobs.read(folder, Jobs.GOOD);
        String catalog = Files.readString(folder.resolve("workshop.yaml"));
        Path job = folder.resolve("job.yaml");
        Path shelf = Files.writeString(folder.resolve("shelf.yaml"), "- {id: C7, product: PX-16, length: long}\n");
        Files.writeString(folder.resolve("workshop.yaml"), catalog.replace("currency: EUR", "currency: Euro"));
        assertEquals(
                List.of(
                        "workshop.yaml:5:11: currency: found 'Euro', a code of ISO 4217 such as EUR is wanted",
                        "shelf.yaml:1:36: [0].length: found 'long', a length in mm is wanted"),
                told(assertThrows(BadInput.class, () -> JobReader.read(job, Optional.of(shelf)))));
        assertEquals(
                List.of("none.yaml: no such file"),
                told(assertThrows(
                        BadInput.class, () -> JobReader.read(folder.resolve("none.yaml"), Optional.empty()))));
    }
}
