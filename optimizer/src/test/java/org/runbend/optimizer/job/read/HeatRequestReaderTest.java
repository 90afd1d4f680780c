package org.runbend.optimizer.job.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.Faults;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.YamlDocument;
import org.runbend.catalog.source.YamlMap;
import org.runbend.optimizer.heat.CircuitParts;
import org.runbend.optimizer.heat.HeatRequest;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.need.SpaceLoss;

class HeatRequestReaderTest {
    @TempDir
    Path folder;

    private final Faults faults = new Faults();

    private HeatRequest read(String text) throws IOException, BadInput {
        YamlMap root = YamlDocument.open(SourceFile.read(Files.writeString(folder.resolve("job.yaml"), text)), faults);
        HeatRequestReader reader = new HeatRequestReader();
        Optional<SpaceLoss> space = root.findMap("space").flatMap(reader::space);
        CircuitParts circuit = root.findMap("circuit").flatMap(reader::circuit).orElse(CircuitParts.NONE);
        return root.findMap("heating")
                .map(m -> reader.heating(m, space, circuit))
                .orElse(HeatRequest.NONE);
    }

    @Test
    void everythingIsRead() throws IOException, BadInput {
        HeatRequest request = read("""
                heating: {source: 75, volumeFlow: 4, start: 5, humidity: 60%, sleeping: yes, timber: yes}
                space:
                  surfaces:
                    - {name: walls, area: 20, layers: [{thickness: 30, conductivity: 0.034}, {thickness: 6, conductivity: 0.13}]}
                    - {name: glass, area: 2, transmittance: 5.8}
                  volume: 10
                  airChanges: 1
                circuit:
                  heater: {least: 1000, most: 4000, setting: 75}
                  litres: 5
                  cylinder: {litres: 10, walls: 2}
                  sensor: {setting: 33}
                  closed: yes
                """);
        assertEquals(0, faults.count());
        assertEquals(75, request.source().getAsDouble());
        assertEquals(0.6, request.humidity(), 1e-12);
        assertTrue(request.sleeping() == Sleeping.YES && request.timber() && !request.bath());
        // EN ISO 6946: 0.9103 x 20 + 5.8 x 2 + 0.34 x 10.
        assertEquals(0.9103 * 20 + 11.6 + 3.4, request.space().orElseThrow().perKelvin(), 2e-3);
        HeatSource source = request.circuit().source().orElseThrow();
        assertEquals(75, source.highest());
        assertEquals(2, request.circuit().walls().orElseThrow());
        assertEquals(2, request.circuit().sensor().orElseThrow().hysteresis());
        assertEquals(300, request.circuit().relief());
    }

    /** EN ISO 6946 by hand: a tenth of softwood ribs in foam, upper limit 0.9587, lower 0.9043 m2 K/W; steel ribs are outside of it. */
    @ParameterizedTest
    @CsvSource({"0.13, 1.0736, false", "50, 0, true"})
    void ribsGoThroughALayer(double rib, double transmittance, boolean bridged) throws IOException, BadInput {
        HeatRequest request = read("""
                heating: {source: 75}
                space:
                  surfaces:
                    - {name: walls, area: 1, ribs: 10%, layers: [{thickness: 30, conductivity: 0.034, rib: RIB}, {thickness: 6, conductivity: 0.13}]}
                """.replace("RIB", "" + rib));
        assertEquals(0, faults.count());
        SpaceLoss.Surface walls = request.space().orElseThrow().surfaces().get(0);
        assertEquals(bridged, walls.bridged());
        if (!bridged) {
            assertEquals(transmittance, walls.transmittance(), 2e-4);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        space: {volume: 5}                                   | a space needs its loss in W/K, or surfaces
        space: {loss: 20, volume: 5}                         | a plain loss in W/K holds the whole space
        space: {surfaces: [{area: 3}]}                       | a surface needs its transmittance
        space: {surfaces: [{area: 3, ribs: 10%, layers: [{thickness: 30, conductivity: 0.034}]}]} | ribs go through a layer
        circuit: {heater: {least: 500, most: 100, setting: 60}} | least power of the heater
        circuit: {heater: {most: 100, setting: 60}, engine: {transfer: 50}} | one source of the two
        circuit: {sensor: {seting: 30}}                      | nearest known key is 'setting'
        circuit: {cylinder: {litres: -3}}                    | litres
        """)
    void oddWishesAreOneLine(String text, String part) throws IOException, BadInput {
        read(text);
        BadInput bad = assertThrows(BadInput.class, faults::throwIfAny);
        List<String> lines = bad.faults().stream().map(Fault::toString).toList();
        assertTrue(lines.stream().anyMatch(l -> l.contains(part)), () -> part + " is not in " + lines);
    }
}
