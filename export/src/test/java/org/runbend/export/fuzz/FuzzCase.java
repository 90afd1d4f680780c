package org.runbend.export.fuzz;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One thing to try.
 *
 * @param number its number, from which all of it follows
 * @param what how it was made
 * @param command plan, check, loop, confirm or outline
 * @param options what is added to the command
 * @param files name and bytes of each file in the folder of the case
 * @param before what lies where the output folder goes; only for {@code plan}
 * @param facts what the job asked for, if it is sound in form
 */
record FuzzCase(
        long number,
        String what,
        String command,
        List<String> options,
        Map<String, byte[]> files,
        Before before,
        Optional<FloorFacts> facts) {
    static final String JOB = "job.yaml";
    static final String DRAWING = "floor.dxf";
    static final String SHELF = "shelf.yaml";

    /** What lies at the place of the output folder before the command runs. */
    enum Before {
        NOTHING,
        EMPTY_FOLDER,
        KIT_OF_OURS,
        FOREIGN_FOLDER,
        A_FILE
    }

    FuzzCase {
        options = List.copyOf(options);
        files = new LinkedHashMap<>(files);
    }

    /** The files that a command leaves that has done what it was asked for, beside those of {@code plan}. */
    List<String> writes() {
        return switch (command) {
            case "loop" -> List.of("loop.svg");
            case "confirm" -> List.of("confirm.pdf");
            case "outline" -> List.of("drawn.svg", "drawn.yaml");
            default -> List.of();
        };
    }

    boolean isRefusedUnread() {
        return command.equals("plan") && (before == Before.FOREIGN_FOLDER || before == Before.A_FILE);
    }
}
