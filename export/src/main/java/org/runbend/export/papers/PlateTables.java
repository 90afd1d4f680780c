package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.runbend.catalog.product.Catalog;
import org.runbend.export.data.TapeText;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlateOptions;
import org.runbend.optimizer.plan.SawWork;

/** What plates would cost in fewer lengths, and covering less; and the work of the saw. */
final class PlateTables {
    private static final double MINUTE = 60;

    private final KitPlan plan;
    private final Catalog prices;

    PlateTables(KitPlan plan) {
        this.plan = plan;
        prices = plan.job().catalog();
    }

    /**
     * The plan itself and what fewer or more lengths would take, with costs where they are for the reader; empty where there is
     * nothing that takes less material or time than the plan.
     */
    Optional<PdfTable> lengths(boolean withCost) {
        List<PlateOptions.ByLengths> options =
                plan.plateOptions().map(PlateOptions::lengths).orElse(List.of());
        PlateOptions.ByLengths own = new PlateOptions.ByLengths(OptionalInt.empty(), plan.plates(), plan.sawWork());
        List<PlateOptions.ByLengths> better = new ArrayList<>();
        for (PlateOptions.ByLengths option : options) {
            if (isBetter(option, own, withCost) && better.stream().allMatch(b -> isBetter(option, b, withCost))) {
                better.add(option);
            }
        }
        if (better.isEmpty()) {
            return Optional.empty();
        }
        PdfTable table = new PdfTable(columns(own, withCost));
        table.row(row(own, "this plan (" + own.work().lengths() + ")", withCost));
        better.forEach(o -> table.row(row(o, words(o), withCost)));
        return Optional.of(table);
    }

    private static String words(PlateOptions.ByLengths option) {
        return option.limit().isPresent()
                ? "at most " + option.limit().getAsInt()
                : "any number (" + option.work().lengths() + ")";
    }

    private static Column[] columns(PlateOptions.ByLengths own, boolean withCost) {
        List<Column> columns = new ArrayList<>(List.of(Column.left("lengths", 4), Column.left("stock plates", 5.4)));
        if (withCost) {
            columns.add(Column.right("plates cost", 3.4));
            columns.add(Column.right("proved not under", 3.8));
        }
        columns.addAll(List.of(
                Column.right("pieces", 2.4), Column.right("saw cuts", 2.6), Column.right("stop settings", 3.4)));
        if (own.work().seconds().isPresent()) {
            columns.add(Column.right("minutes", 2.6));
        }
        if (withCost && own.work().cost().isPresent()) {
            columns.add(Column.right("plates and work", 4));
        }
        return columns.toArray(Column[]::new);
    }

    /** Whether it takes less material or less time than another; where times are unknown, fewer cuts or settings. */
    private static boolean isBetter(PlateOptions.ByLengths a, PlateOptions.ByLengths b, boolean withCost) {
        boolean quicker = a.work().seconds().isPresent()
                ? a.work().seconds().getAsDouble() < b.work().seconds().getAsDouble() - 1
                : a.work().cuts() < b.work().cuts()
                        || a.work().stopSettings() < b.work().stopSettings();
        boolean cheaper = withCost && a.plates().bought() < b.plates().bought();
        return quicker
                || cheaper
                || a.plates().stock().size() < b.plates().stock().size();
    }

    private List<String> row(PlateOptions.ByLengths option, String name, boolean withCost) {
        SawWork work = option.work();
        List<String> row = new ArrayList<>(List.of(name, stock(option)));
        if (withCost) {
            row.add(prices.money(option.plates().bought()).bare());
            row.add(prices.money(option.plates().bound()).bare());
        }
        row.addAll(List.of(
                Integer.toString(option.plates().pieces().size()),
                Integer.toString(work.cuts()),
                Integer.toString(work.stopSettings())));
        work.seconds().ifPresent(s -> row.add(minutes(s)));
        if (withCost && work.cost().isPresent()) {
            row.add(prices.money(option.plates().bought() + work.cost().getAsLong())
                    .bare());
        }
        return row;
    }

    /** Which plates are bought or taken from the shelf, as in "5 x SP-1 of 1200". */
    private String stock(PlateOptions.ByLengths option) {
        TapeText tape = new TapeText(plan.job());
        Map<String, Integer> counts = new TreeMap<>();
        option.plates()
                .stock()
                .forEach(c -> counts.merge(c.product() + " of " + tape.beside(c.length()), 1, Integer::sum));
        return counts.entrySet().stream()
                .map(e -> e.getValue() + " x " + e.getKey())
                .collect(Collectors.joining("\n"));
    }

    /** What the table of lengths is for: whoever saws by this sheet needs nothing of it. */
    String lengthsLead() {
        return "To compare, not to saw by: this sheet is right as it is. Other lengths are another plan with other plates, names and"
                + " papers; plates.maxLengths in the job makes it, before anything is bought or cut.";
    }

    /** The work of the plan itself, in one sentence, with what it costs where that is for the reader. */
    String work(boolean withCost) {
        SawWork work = plan.sawWork();
        return String.format(
                Locale.ROOT,
                "The saw makes %s for pieces of %s, its stop is set %s; %s mounted.%s",
                count(work.cuts(), "cut", "cuts"),
                count(work.lengths(), "length", "lengths"),
                count(work.stopSettings(), "time", "times"),
                work.coilChanges() == 1 ? "1 coil is" : work.coilChanges() + " coils are",
                time(work, withCost));
    }

    private String time(SawWork work, boolean withCost) {
        if (work.seconds().isEmpty()) {
            return "";
        }
        String cost = withCost && work.cost().isPresent()
                ? ", which cost " + prices.money(work.cost().getAsLong())
                : "";
        return " That takes " + minutes(work.seconds().getAsDouble()) + " minutes" + cost + ".";
    }

    /** What other coverages cost, in one sentence; empty where it was not worked out. */
    Optional<String> coverages() {
        List<PlateOptions.ByCoverage> options =
                plan.plateOptions().map(PlateOptions::coverages).orElse(List.of());
        return options.isEmpty()
                ? Optional.empty()
                : Optional.of("Plates for other shares of what can take plates: "
                        + options.stream()
                                .map(o -> Math.round(o.asked() * 100) + " % "
                                        + prices.money(o.plates().bought()).bare())
                                .collect(Collectors.joining(", "))
                        + " " + plan.job().catalog().currency() + ".");
    }

    private static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    private static String minutes(double seconds) {
        return String.format(Locale.ROOT, "%.1f", seconds / MINUTE);
    }
}
