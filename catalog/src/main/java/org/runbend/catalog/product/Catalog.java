package org.runbend.catalog.product;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Everything that one workshop sells.
 *
 * @param workshop its name
 * @param currency three-letter code of ISO 4217; all amounts are whole minor units of it
 * @param pipes pipes
 * @param plates spreader plates
 * @param items fittings, tools and consumables, in the order in which a box is packed
 * @param coolants heat carriers
 * @param pumps pumps
 * @param boards boards
 * @param routing how channels are cut
 * @param labour what cutting takes of a worker's time, if the workshop says so
 * @param layers how layers of drawings for machines are called
 * @param panels how parts are cut from stock boards
 * @param sales terms that it sells on
 * @param kits kits that it keeps ready packed
 * @param packing how boxes are packed
 */
public record Catalog(
        String workshop,
        String currency,
        List<Pipe> pipes,
        List<SpreaderPlate> plates,
        List<Item> items,
        List<Coolant> coolants,
        List<Pump> pumps,
        List<Board> boards,
        Routing routing,
        Optional<Labour> labour,
        ShopLayers layers,
        PanelCutting panels,
        Sales sales,
        List<StandardKit> kits,
        Packing packing) {
    /** Checks that no part number stands twice and that what others name exists: bending aids, what lies in kits. */
    public Catalog {
        Require.that(
                currency.matches("[A-Z]{3}"), "currency %s: three capital letters of ISO 4217, such as EUR", currency);
        pipes = List.copyOf(pipes);
        plates = List.copyOf(plates);
        items = List.copyOf(items);
        coolants = List.copyOf(coolants);
        pumps = List.copyOf(pumps);
        boards = List.copyOf(boards);
        kits = List.copyOf(kits);
        Set<String> seen = new HashSet<>();
        Set<String> sold = skus(pipes, plates, items, coolants, pumps, boards).collect(Collectors.toSet());
        Stream.concat(
                        skus(pipes, plates, items, coolants, pumps, boards),
                        kits.stream().map(StandardKit::sku))
                .forEach(sku -> Require.that(seen.add(sku), "part number %s stands twice", sku));
        for (Pipe p : pipes) {
            List<Item> all = items;
            p.aid()
                    .ifPresent(a -> Require.that(
                            all.stream().anyMatch(i -> i.sku().equals(a)),
                            "pipe %s: its aid %s is not among the items",
                            p.sku(),
                            a));
        }
        for (StandardKit kit : kits) {
            skus(kit)
                    .forEach(sku ->
                            Require.that(sold.contains(sku), "kit %s: its part %s is not sold alone", kit.sku(), sku));
        }
    }

    private static Stream<String> skus(StandardKit kit) {
        return Stream.of(
                        kit.coils().stream().map(StandardKit.Coils::pipe),
                        kit.plates().stream().map(StandardKit.Plates::plate),
                        kit.parts().stream().map(StandardKit.Parts::sku))
                .flatMap(Function.identity());
    }

    /** A catalog of a workshop that routs as is usual. */
    public Catalog(
            String workshop,
            String currency,
            List<Pipe> pipes,
            List<SpreaderPlate> plates,
            List<Item> items,
            List<Coolant> coolants,
            List<Pump> pumps,
            List<Board> boards) {
        this(
                workshop,
                currency,
                pipes,
                plates,
                items,
                coolants,
                pumps,
                boards,
                Routing.USUAL,
                Optional.empty(),
                ShopLayers.OURS,
                PanelCutting.USUAL,
                Sales.PLAIN,
                List.of(),
                Packing.USUAL);
    }

    private static Stream<String> skus(
            List<Pipe> pipes,
            List<SpreaderPlate> plates,
            List<Item> items,
            List<Coolant> coolants,
            List<Pump> pumps,
            List<Board> boards) {
        return Stream.of(
                        pipes.stream().map(Pipe::sku),
                        plates.stream().map(SpreaderPlate::sku),
                        items.stream().map(Item::sku),
                        coolants.stream().map(Coolant::sku),
                        pumps.stream().map(Pump::sku),
                        boards.stream().map(Board::sku))
                .flatMap(Function.identity());
    }

    /** An amount of this catalog's currency, from its minor units. */
    public Money money(long minor) {
        return new Money(minor, currency);
    }

    /** The pipe of a part number, if it is sold. */
    public Optional<Pipe> findPipe(String sku) {
        return pipes.stream().filter(p -> p.sku().equals(sku)).findFirst();
    }

    /** The plate of a part number, if it is sold. */
    public Optional<SpreaderPlate> findPlate(String sku) {
        return plates.stream().filter(p -> p.sku().equals(sku)).findFirst();
    }

    /** The item of a part number, if it is sold. */
    public Optional<Item> findItem(String sku) {
        return items.stream().filter(p -> p.sku().equals(sku)).findFirst();
    }

    /** The coolant of a name, if it is sold. */
    public Optional<Coolant> findCoolant(String sku) {
        return coolants.stream().filter(p -> p.sku().equals(sku)).findFirst();
    }

    /** The pump of a part number, if it is sold. */
    public Optional<Pump> findPump(String sku) {
        return pumps.stream().filter(p -> p.sku().equals(sku)).findFirst();
    }

    /** What a person calls an item, a pump or a coolant of a part number, if it is sold. */
    public Optional<String> nameOf(String sku) {
        return findItem(sku)
                .map(Item::name)
                .or(() -> findPump(sku).map(Pump::name))
                .or(() -> findCoolant(sku).map(Coolant::name));
    }

    /** The board of a name, if it is sold. */
    public Optional<Board> findBoard(String sku) {
        return boards.stream().filter(p -> p.sku().equals(sku)).findFirst();
    }
}
