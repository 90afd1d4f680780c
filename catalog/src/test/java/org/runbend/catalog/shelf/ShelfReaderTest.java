package org.runbend.catalog.shelf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.source.BadInput;

class ShelfReaderTest {
    @TempDir
    Path folder;

    private Shelf read(String text) throws IOException {
        return ShelfReader.read(Files.writeString(folder.resolve("shelf.yaml"), text));
    }

    private String fault(String text) {
        BadInput bad = assertThrows(BadInput.class, () -> read(text));
        assertEquals(1, bad.faults().size());
        return bad.getMessage().replace(folder + File.separator, "");
    }

    @Test
    void readsAListWithAndWithoutItsKey() throws IOException {
        List<Remnant> two = List.of(new Remnant("C7", "PX-16", 18_250), new Remnant("O3", "SP-1", 430));
        String list = "- {id: C7, product: PX-16, length: 18.25 m}\n- {id: O3, product: SP-1, length: 430}\n";
        assertEquals(two, read(list).remnants());
        assertEquals(two, read("remnants:\n" + list).remnants());
        assertEquals(List.of(), read("remnants: []").remnants());
    }

    @Test
    void tellsWhatIsWrong() {
        assertEquals(
                "shelf.yaml:2:8: [1].id: id 'C7' stands twice on the shelf",
                fault("- {id: C7, product: PX-16, length: 1}\n- {id: C7, product: SP-1, length: 430}\n"));
        assertEquals(
                "shelf.yaml:1:3: [0].length: is missing, its length is wanted", fault("- {id: C7, product: PX-16}\n"));
        assertEquals(
                "shelf.yaml:1:3: [0]: remnant C7: length must be at least 1 mm",
                fault("- {id: C7, product: PX-16, length: 0}\n"));
        assertEquals(
                "shelf.yaml:1:1: remnant: unknown key, the nearest known key is 'remnants'", fault("remnant: []\n"));
    }
}
