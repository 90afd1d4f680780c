package org.runbend.export.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What {@code runbend help} tells of. Keys come from the schemas, everything else is written here. */
enum HelpTopic {
    JOB("job", "job.schema.json", """
            A job file is YAML: one floor, and what to lay it with. Lengths are mm, or as units says; 1.2 m, 30 cm,
            12 in and 5ft 3 3/8in are lengths too. Axes: x to the right, y up, seen from above.
            A key that nobody knows is an error that names the nearest one. Keys, [] standing for each of a list:
            """),
    CATALOG("catalog", "catalog.schema.json", """
            A catalog file is YAML: what a workshop buys, what it costs and what its customers pay. A job names it.
            Money is in units of the catalog's currency. sales are the terms of quotations (runbend quote), kits what
            stands ready packed. Keys, [] standing for each of a list:
            """),
    SHELF("shelf", "", """
            A shelf file (plan --shelf FILE) is YAML: opened coils and offcuts of plate at hand. They are cut before
            anything is bought; pick list and cuts.csv say which piece comes from which.

              remnants                    list, required: what lies on the shelf
              remnants[].id               text, required: what is written on it
              remnants[].product          text, required: part number of a pipe or a plate of the catalog
              remnants[].length           length, required: what is left of it

            Example:
              remnants:
                - {id: C7, product: PX-16, length: 26 m}
                - {id: O3, product: SP-1, length: 430}
            """),
    STOCK("stock", "", """
            runbend stock keeps what is on the shelf as the sum of its movements: each says what, how much, why, for which
            order, who and when, and none is ever changed. --stock LEDGER is a file (stock init makes one), or a
            database of PostgreSQL that several benches share; its password comes from --password-file or
            RUNBEND_STOCK_PASSWORD. plan --stock LEDGER cuts opened coils and offcuts that are free, and unopened coils in
            lengths that the catalog does not list (called whole 50 m): by the metre, also where supply is whole.

              kinds    coil PRODUCT LENGTH, plate PRODUCT LENGTH, board PRODUCT, item PRODUCT: so many of each;
                       opened PRODUCT LENGTH (an opened coil), offcut PRODUCT LENGTH: one, with an id
              states   quoted, confirmed (stock is kept for it), cut, packed, sent, returned

              receive     goods came; --note FILE.csv: columns kind, product, length, quantity, batch, id, label
              count       a stock-take; orders that it leaves short lose their reservation, and that is said
              reserve     keeps what a kit's plan needs; release gives it back
              confirm     a kit was cut; again after a change, under its new plan: what was cut is used or comes back
              spoil       pieces were cut wrong; they alone are nested again
              return      an order came back: pieces of 3 m of pipe or 150 mm of plate and more get new ids
              undo        a movement never happened; refused where a later one needs it
              audit       adds everything up once more

            runbend batch ORDERS_DIR --stock LEDGER plans a day's orders and cuts them together: DIR/day-sheet.pdf (what
            to take, where to cut, which box each piece goes to, what to write on rests), buy-list.pdf and .csv, cuts.csv,
            day.json, and a folder for each order. Reserve and confirm take DIR as they take a kit. Until it is cut the
            batch can be done again: an order whose file is gone is out of the day. Once it is cut, each order is
            spoiled (spoil DIR CUT), packed, sent and returned by its own number; a changed one is planned with plan
            --was DIR/orders/ORDER/kit.json and confirmed by itself.
            runbend page FOLDER --stock LEDGER shows orders and shelf, keeps stock for the plan on the screen, and begins
            days of folders below FOLDER.

            A floor that was laid before is not laid again, turned or mirrored either: loops are kept in this user's cache folder
            ($RUNBEND_CACHE or --laid DIR name another). batch --workers has floors laid by runbend worker on other machines too,
            over the database of the ledger.

            Lengths of opened coils are differences of metre marks: 0.5 % and at least 100 mm stay as reserve.
            --request ID: the same id again changes nothing, with other content it is refused.
            """),
    CHOICES("choices", "", """
            plan --alternatives plans the floor in several ways and keeps up to six good plans, none worse than
            another in everything: warmest, least work, lowest price, one that fits a coil, most even, each with watts,
            minutes of work, bends and price; alternatives.pdf and alternatives.json show them side by side.
            plan --take N goes on with alternative N; each names the keys of the job file that lead to it.

              layout.prefer: even-heat    flow beside return where loops are equal
              layout.along                direction of the runs
              layout.leftOutPrice         what leaving a place bare may save, in turns
              layout.loops                2 to 6 loops, or auto: as few as loopLimit or the longest coil allow
              layout.fit: coil            a loop shortened to a coil
              plates.product              other plates, or several
              plates.coverage             less or more of what can be plated
              plates.maxLengths           fewer lengths at the saw
            A place is a point where runs, spacing apart, can cross: the loop passes it or leaves it bare.
            """),
    DRAWINGS("drawings", "", """
            Written: drawing.dxf, 1:1 in mm, seen from above. One layer for each operation:

              1 CHANNEL   groove: a pocket, cleared whole, by the passes that the legend says; tool inside
                SLOT      the groove falls to a given hole of the pipe: pocket, tool inside
              2 HOLE      through: given holes of the pipe, round drains, vents and bolts; tool inside
              3 FLOOR     outline, through, tool outside, last
              not cut:    KEEP_OUT    what no pipe may touch      PIPE    centreline of the pipe, nothing else
                          UNHEATED    no heat wanted              PLATE   spreader plates, numbered as in the lists
                          DIMENSION, NOTE, TITLE                  measures and words

              --dxf r12                   for old controllers; no sheet of paper, the words stand in the drawing
              --contours lines            single lines and arcs in place of polylines, for programs that misread
                                          arcs in polylines
              --channel centre            CHANNEL is the passes beside PIPE and rings in the pads, for cutters that
                                          follow lines

            With build.boards in the job: boards/MATERIAL-NN.dxf, a stock board each, its lower left corner at 0, 0, in the
            same form as drawing.dxf, and boards.svg, where each part goes.

            runbend guide JOB.yaml --out FILE.dxf draws the plate to rout by hand along, and the same as FILE.pdf in tiles:
            its layers carry operation, tool and depth in their names, in the form of layers in the catalog.

            Read: runbend outline FLOOR.dxf, DXF R9 to 2018, ASCII or binary, and layout.loop: {dxf: FILE,
            layer: NAME}. Closed lines that could be the floor are numbered in message and picture:

              --contour N                 the closed line that is the floor
              --at X,Y                    a place on the floor, in mm as messages name places
              --layer NAME                the layer of the outline
              --tolerance MM              widest gap that is closed
              --unheated LAYER            closed lines and hatches of the layer are unheated floor
              --drawing-units UNIT        unit of the numbers, if the drawing names none
            Frames of sheets and outer faces of walls are told apart from the floor, and that is said; chords and
            splines that fit an arc within the tolerance become one. A drawing of Runbend's own is read back with
            names, kinds, clearances, marks, supports and port.
            """),
    EXIT_CODES("exit codes", "", """
              0     done
              1     done, but a check failed; the plan says which
              2     bad input or usage: one line says what is wrong, where, and what would be right; nothing was
                    written but, by outline, a picture of the closed lines to choose from
              70    a fault of our own: one line and a report file to send with the job file
            """);

    private final String words;
    private final String schema;
    private final String text;

    HelpTopic(String words, String schema, String text) {
        this.words = words;
        this.schema = schema;
        this.text = text;
    }

    /** As a person types it. */
    String words() {
        return words;
    }

    /** The topic of these words; {@code exit} and {@code exit-codes} will do. */
    static Optional<HelpTopic> of(List<String> typed) {
        String name = String.join(" ", typed)
                .toLowerCase(Locale.ROOT)
                .replace('-', ' ')
                .strip();
        return Arrays.stream(values())
                .filter(t -> t.words.equals(name) || t.words.split(" ", -1)[0].equals(name))
                .findFirst();
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>(text.lines().toList());
        if (!schema.isEmpty()) {
            lines.add("");
            lines.addAll(KeyTable.of(schema));
        }
        return lines;
    }
}
