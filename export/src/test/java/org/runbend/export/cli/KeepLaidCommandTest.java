package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;

/** Parts already routed on the command line, and what becomes of an earlier plan's loop. */
class KeepLaidCommandTest {
    private static final String JOB = """
            job: Kept
            order: K-1
            catalog: workshop.yaml
            floor: {outline: [[0, 0], [1200, 0], [1200, 900], [0, 900]], port: {at: [0, 75]}}
            layout: {leftOutPrice: 10, spacing: 150, along: x}
            pipe: {product: PX-16}
            plates: {product: [SP-1]}
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void lay() throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
    }

    private CommandRun plan(String layout, String out, Path was) throws IOException {
        Path job = Files.writeString(folder.resolve("job.yaml"), JOB.replace("along: x", layout));
        return CommandRun.of(
                "plan", job.toString(), "--out", folder.resolve(out).toString(), "--was", was.toString());
    }

    private Path before() throws IOException {
        Path job = Files.writeString(folder.resolve("before.yaml"), JOB);
        assertEquals(0, CommandRun.of("plan", job.toString()).code());
        return folder.resolve("before").resolve("kit.json");
    }

    /** The same job again: all of it stays. */
    @Test
    void nothingChanges() throws IOException {
        CommandRun run = plan("along: x", "kit", before());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains(" m stay and 0.00 m with no bends go; 0.00 m with no bends are new."), run.out());
        assertFalse(Files.readString(folder.resolve("kit").resolve("kit.json")).contains("\"kept\""));
    }

    /** A part across the rows: 300 mm of it stand in kit.json, and the rows before go. */
    @Test
    void aPartAcross() throws IOException {
        CommandRun run = plan("along: x, keepLaid: [[[525, 300], [525, 600]]]", "kit", before());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("0.30 m of the pipe on the floor lie in the part already routed"), run.out());
        String kit = Files.readString(folder.resolve("kit").resolve("kit.json"));
        assertTrue(kit.contains("\"kept\""), kit);
        assertTrue(kit.replaceAll("\\s", "").contains("\"kept\":[{\"part\":0,\"length\":300"), kit);
    }

    @Test
    void aFileThatIsNoKitOfOurs() throws IOException {
        for (String text : new String[] {
            "",
            "[]",
            "{\"fingerprint\": \"x\", \"loops\": []}",
            "{\"fingerprint\": \"x\", \"loops\": [{\"elements\": [{\"kind\": \"run\", \"from\": [0, 0]}]}]}",
            "{\"fingerprint\": \"x\", \"loops\": [{\"elements\": [{\"from\": [0, \"a\"], \"to\": [1, 1]}]}]}",
            "{\"loops\": [{\"elements\": [{\"from\": [0, 0], \"to\": [1, 1]}]}]}",
            "{\"fingerprint\": \"x\", \"loops\": [{\"elements\": ["
        }) {
            Path was = Files.writeString(folder.resolve("was.json"), text);
            CommandRun run = plan("along: x", "kit", was);
            assertEquals(2, run.code(), text);
            assertEquals(1, run.err().lines().count(), run.err());
            assertTrue(run.err().contains("was.json: is no kit.json that Runbend wrote"), run.err());
        }
        CommandRun run = plan("along: x", "kit", folder.resolve("none.json"));
        assertTrue(run.err().contains("none.json: no such file"), run.err());
        assertFalse(Files.exists(folder.resolve("kit")));
    }
}
