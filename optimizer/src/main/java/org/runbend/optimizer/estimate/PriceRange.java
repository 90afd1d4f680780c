package org.runbend.optimizer.estimate;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.catalog.product.Money;
import org.runbend.catalog.source.Plain;

/**
 * What kits for a floor of two sizes come to. Amounts in minor units, discount, sending and tax in them.
 *
 * @param currency its three letters
 * @param length of the longer side, mm
 * @param width of the shorter side, mm
 * @param pipe what the pipe is called
 * @param spacing centre to centre of neighbouring runs, mm
 * @param taxName what the tax is called; empty where none is reckoned
 * @param plain whether a plain loop was taken for the one that would be sought
 * @param priced the floors that were planned, in their order
 * @param left floors that cannot be built so
 */
public record PriceRange(
        String currency,
        double length,
        double width,
        String pipe,
        double spacing,
        Optional<String> taxName,
        boolean plain,
        List<Priced> priced,
        int left) {
    /** Checks that something was priced and copies the list. */
    public PriceRange {
        priced = List.copyOf(priced);
        if (priced.isEmpty()) {
            throw new IllegalArgumentException("no floor was priced");
        }
    }

    /**
     * A floor that was planned.
     *
     * @param floor what it is, in words
     * @param gross what is asked for its kit
     * @param pipe pipe that is cut, mm
     * @param sent whether sending is in the price
     */
    public record Priced(String floor, long gross, double pipe, boolean sent) {}

    /** The cheapest floor. */
    public Priced least() {
        return priced.stream().min(Comparator.comparingLong(Priced::gross)).orElseThrow();
    }

    /** The dearest floor. */
    public Priced most() {
        return priced.stream().max(Comparator.comparingLong(Priced::gross)).orElseThrow();
    }

    /** The range and what it spans, line by line. */
    public List<String> words() {
        return List.of(
                String.format(
                        Locale.ROOT,
                        "A kit for %s x %s mm (%.2f m2): %s to %s, %s%s.",
                        Plain.number(length),
                        Plain.number(width),
                        length * width / 1e6,
                        money(least().gross()).bare(),
                        money(most().gross()),
                        taxName.map(t -> t + " included").orElse("no tax reckoned"),
                        priced.stream().allMatch(Priced::sent) ? ", sending included" : ", sending not included"),
                "It spans a sparing floor (" + standing() + ", plates on " + RangeQuoting.SPARING
                        + " % of what can take them) and a"
                        + " generous one (the bare rectangle, " + RangeQuoting.GENEROUS + " %), " + ports()
                        + (left == 0 ? "" : " " + left + " of the " + (priced.size() + left) + " cannot be built so."),
                "Least: " + least().floor() + ", " + money(least().gross()) + ". Most: " + most().floor() + ", "
                        + money(most().gross()) + ".",
                String.format(
                        Locale.ROOT,
                        "Reckoned with: %s, runs %s mm apart, %.1f to %.1f m of pipe with %d mm to the valves each way. Not in it: pump,"
                                + " coolant, boards, cover, whatever the floor needs beside the kit.",
                        pipe,
                        Plain.number(spacing),
                        priced.stream().mapToDouble(Priced::pipe).min().orElseThrow() / 1000,
                        priced.stream().mapToDouble(Priced::pipe).max().orElseThrow() / 1000,
                        RoughFloor.TAIL),
                "This is no quotation: a measured floor (a job file) gives one.");
    }

    private String standing() {
        return plain
                ? "something along a whole long side, " + Plain.number(RoughFloor.strip(width)) + " mm deep"
                : "something of " + Plain.number(Math.rint(length * RoughFloor.NOTCH_LENGTH)) + " x "
                        + Plain.number(Math.rint(width * RoughFloor.NOTCH_DEPTH))
                        + " mm against the middle of both long sides";
    }

    private String ports() {
        return plain
                ? "each with a plain loop up and down; the one that would be laid has fewer bends."
                : "each with flow and return in the middle of a short side and in a corner.";
    }

    private Money money(long minor) {
        return new Money(minor, currency);
    }
}
