package org.runbend.export.page;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.runbend.catalog.product.Board;
import org.runbend.catalog.product.Catalog;

/** What a catalog offers to choose from. */
final class Products {
    private Products() {}

    static Map<String, Object> of(Catalog catalog) {
        return Map.of(
                "currency", catalog.currency(),
                "workshop", catalog.workshop(),
                "pipes",
                        catalog.pipes().stream()
                                .map(p -> Map.of("sku", p.sku(), "name", p.name(), "outer", p.outer()))
                                .toList(),
                "plates",
                        catalog.plates().stream()
                                .map(p -> Map.of("sku", p.sku(), "name", p.name(), "groove", p.grooveDiameter()))
                                .toList(),
                "coolants", names(catalog.coolants(), p -> p.sku(), p -> p.name()),
                "pumps", names(catalog.pumps(), p -> p.sku(), p -> p.name()),
                "covers",
                        names(
                                catalog.boards().stream()
                                        .filter(b -> b.kind() == Board.Kind.COVER)
                                        .toList(),
                                p -> p.sku(),
                                p -> p.name()));
    }

    private static <T> List<Object> names(List<T> all, Function<T, String> sku, Function<T, String> name) {
        return all.stream()
                .map(p -> (Object) Map.of("sku", sku.apply(p), "name", name.apply(p)))
                .toList();
    }
}
