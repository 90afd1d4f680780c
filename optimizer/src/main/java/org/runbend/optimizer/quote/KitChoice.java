package org.runbend.optimizer.quote;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.StandardKit;

/**
 * Standard kits that cover a floor, with what must be added. Lengths in hundredths of mm, prices in minor units, net, before discount and
 * freight.
 *
 * @param kits which and how many, at least one
 * @param coils which coil each loop is cut from
 * @param added what is bought beside the kits
 * @param spare what of the kits this floor does not need
 * @param price of kits and what is added
 * @param bound no choice of one kit or more costs less
 * @param proof how the bound was proved
 * @param madeToMeasure price of the plan's own box
 * @param platesAlone the only product of plate that the floor is plated with for it; empty: those of the plan, cut as planned
 */
public record KitChoice(
        List<Chosen> kits,
        List<CoilUse> coils,
        List<Added> added,
        List<Spare> spare,
        long price,
        long bound,
        String proof,
        long madeToMeasure,
        Optional<String> platesAlone) {
    /** Copies the lists. */
    public KitChoice {
        kits = List.copyOf(kits);
        coils = List.copyOf(coils);
        added = List.copyOf(added);
        spare = List.copyOf(spare);
    }

    /** The same for a floor plated with one product alone, beside the box made to measure of the plan. */
    public KitChoice platedWith(String product, long ownBox) {
        return new KitChoice(kits, coils, added, spare, price, bound, proof, ownBox, Optional.of(product));
    }

    /** The same with a bound that holds for other ways of plating too; it counts where it is the lower one. */
    public KitChoice boundedBy(long other) {
        return new KitChoice(
                kits, coils, added, spare, price, Math.min(bound, other), proof, madeToMeasure, platesAlone);
    }

    /** Whether kits cost less than the box made to measure. */
    public boolean isCheaper() {
        return price < madeToMeasure;
    }

    /** Whether nothing cheaper exists. */
    public boolean isProvedLeast() {
        return price == bound;
    }

    /**
     * A kit.
     *
     * @param kit which
     * @param count how many
     */
    public record Chosen(StandardKit kit, int count) {}

    /** Where a coil comes from. */
    public enum Source {
        /** It lies in a kit. */
        KIT,
        /** It is added. */
        ADDED,
        /** It is an opened coil of the workshop. */
        OPENED
    }

    /**
     * A coil and the loops that are cut from it.
     *
     * @param source where it comes from
     * @param length of the coil, or of the cut where pipe is charged by its share
     * @param loops names of the loops
     */
    public record CoilUse(Source source, long length, List<String> loops) {
        /** Copies the list. */
        public CoilUse {
            loops = List.copyOf(loops);
        }
    }

    /**
     * Something bought beside the kits.
     *
     * @param sku part number
     * @param name what a person calls it
     * @param length of a coil, cut or plate; 0 for other things
     * @param quantity how many
     * @param unit what one of it is
     * @param price of one
     */
    public record Added(String sku, String name, long length, long quantity, String unit, long price) {
        /** Price of all. */
        public long amount() {
            return Math.multiplyExact(price, quantity);
        }
    }

    /**
     * Something in the kits that stays over.
     *
     * @param sku part number
     * @param length of a coil or plate; 0 for other things
     * @param quantity how many
     */
    public record Spare(String sku, long length, long quantity) {}
}
