package org.runbend.export.stock;

import java.io.PrintWriter;
import org.runbend.export.data.Listing;
import picocli.CommandLine.Option;

/** In which form a list is printed. */
final class Form {
    @Option(names = "--json", description = "As JSON; lengths in mm.")
    private boolean json;

    @Option(names = "--csv", description = "As comma-separated values; lengths in mm.")
    private boolean csv;

    boolean isJson() {
        return json;
    }

    /** Prints the short list for a person, or the full one for programs. */
    void print(PrintWriter out, Listing forPeople, Listing forPrograms) {
        if (json) {
            out.print(forPrograms.json());
        } else if (csv) {
            out.print(forPrograms.csv());
        } else if (forPeople.rows().isEmpty()) {
            out.println("Nothing.");
        } else {
            forPeople.table().forEach(out::println);
        }
        out.flush();
    }
}
