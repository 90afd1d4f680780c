package org.runbend.export.stock;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Cut;
import org.runbend.catalog.ledger.Days;
import org.runbend.catalog.ledger.Held;
import org.runbend.catalog.ledger.KitUse;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.Request;
import org.runbend.catalog.ledger.Spoiled;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.DeliveryNote;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code runbend stock spoil}: pieces were cut wrong; they alone are nested again. */
@Command(
        name = "spoil",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Pieces were cut wrong: they alone are nested again, from what is on the shelf.",
        footer = {
            "",
            "Examples:",
            "  runbend stock orders HF-1042         (numbers of its cuts)",
            "  runbend stock spoil kit 12/3",
            "  runbend stock spoil kit 12/3=400mm   (400 mm of it can still be used)"
        })
final class SpoilCommand extends ChangeCommand {
    @Parameters(index = "0", paramLabel = "KIT", description = "The folder of the kit that was cut.")
    private Path kit;

    @Parameters(
            index = "1..*",
            arity = "1..*",
            paramLabel = "CUT[=REST]",
            description = "Spoiled cuts, and what is left of them.")
    private List<String> cuts;

    @Mixin
    private KitOption option;

    @Override
    Outcome change(StockLedger ledger) {
        KitUses uses = option.read(kit);
        List<String> names = new ArrayList<>();
        List<Long> rests = new ArrayList<>();
        for (String cut : cuts) {
            int at = cut.indexOf('=');
            names.add(at < 0 ? cut : cut.substring(0, at));
            rests.add(at < 0 ? 0 : DeliveryNote.length(cut.substring(at + 1), "what is left"));
        }
        Request request = request();
        String order = ledger.look(b -> orderOf(b, uses.use().order(), names));
        List<KitUse.StockUse> again = ledger.hasSeen(request)
                ? List.of()
                : new Recutting(uses.kerf(), option.keeping())
                        .recut(spoiled(ledger, order, names), ledger.look(b -> b.holdings()));
        Outcome outcome = ledger.spoil(request, new Spoiled(order, names, rests, again, option.keeping()));
        List<String> notes = new ArrayList<>(outcome.notes());
        if (outcome.isNew()) {
            again.forEach(u -> u.cuts()
                    .forEach(c -> notes.add("cut " + Held.length(c.length()) + " for " + c.goesTo() + " from "
                            + u.id().map(id -> u.kind().rest().words() + " " + id)
                                    .orElse("a whole " + u.kind().words() + " " + u.product() + " of "
                                            + Held.length(u.length())))));
        }
        return new Outcome(outcome.movement(), outcome.isNew(), outcome.made(), notes);
    }

    /** The kit's order; of a day the one that the cuts are for. */
    private static String orderOf(Books books, String kit, List<String> names) {
        List<String> orders = Days.orders(books, kit);
        if (orders.isEmpty()) {
            return kit;
        }
        List<String> meant = orders.stream()
                .filter(o -> books.cuts(o).stream().anyMatch(c -> names.contains(c.name())))
                .toList();
        if (meant.size() > 1) {
            throw new LedgerRefused(
                    "these cuts are for orders " + String.join(" and ", meant) + ": spoil them order by order");
        }
        if (meant.isEmpty()) {
            throw new LedgerRefused("day " + kit + " has no cut " + String.join(", ", names)
                    + ": 'runbend stock orders " + kit + "' lists them");
        }
        return meant.get(0);
    }

    private static List<Cut> spoiled(StockLedger ledger, String order, List<String> names) {
        List<Cut> there = ledger.look(b -> b.cuts(order));
        List<Cut> spoiled = new ArrayList<>();
        for (String name : names) {
            spoiled.add(there.stream()
                    .filter(c -> c.name().equals(name))
                    .findFirst()
                    .orElseThrow(() -> new LedgerRefused("order " + order + " has no cut " + name
                            + ": 'runbend stock orders " + order + "' lists them")));
        }
        return spoiled;
    }
}
