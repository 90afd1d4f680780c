package org.runbend.optimizer.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.runbend.catalog.product.PackedSize;
import org.runbend.catalog.product.Packing;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.packing.PackedLine;
import org.runbend.optimizer.packing.Packer;
import org.runbend.optimizer.packing.Parcel;
import org.runbend.optimizer.plates.PlateCut;

/** Which parcels a kit makes: its lines with their places and sizes, put into the workshop's cartons. */
final class KitParcels {
    private final KitPlan plan;
    private final Packing packing;

    private KitParcels(KitPlan plan) {
        this.plan = plan;
        packing = plan.job().catalog().packing();
    }

    static List<Parcel> of(KitPlan plan) {
        KitParcels parcels = new KitParcels(plan);
        return new Packer(parcels.packing).pack(parcels.lines());
    }

    static int atLeast(KitPlan plan) {
        KitParcels parcels = new KitParcels(plan);
        return new Packer(parcels.packing).atLeast(parcels.lines());
    }

    private List<PackedLine> lines() {
        List<PackedLine> lines = new ArrayList<>();
        List<CoilPlan.CoilCut> coils = plan.coils().coils();
        String pipe = plan.job().pipe().product().sku();
        int coil = 0;
        Map<String, Deque<Double>> plates = new HashMap<>();
        for (KitPlan.BoxItem item : plan.items()) {
            boolean isCoil = item.sku().equals(pipe) && coil < coils.size();
            Optional<SpreaderPlate> plate = plan.job().catalog().findPlate(item.sku());
            if (isCoil) {
                lines.add(coil(item, coils.get(coil)));
                coil++;
            } else if (plate.isPresent()) {
                Deque<Double> lengths = plates.computeIfAbsent(item.sku(), sku -> bought(plate.get()));
                double length = item.unit().equals("plate") && !lengths.isEmpty() ? lengths.pop() : 0;
                Optional<String> place = packing.place(item.sku(), length);
                lines.add(line(item, place, bundle(plate.get(), item, lines), true));
            } else {
                lines.add(line(item, packing.place(item.sku(), 0), packing.size(item.sku(), 0), false));
            }
        }
        return lines;
    }

    /** Lengths of which plates are bought, in the order of the catalog, as the items are. */
    private Deque<Double> bought(SpreaderPlate plate) {
        return plate.stock().stream()
                .map(PlateStock::length)
                .filter(length ->
                        !plan.plates().boughtPlates(plate.sku(), length).isEmpty())
                .collect(Collectors.toCollection(ArrayDeque::new));
    }

    /** A cut is taken from the coil it is cut from, and is as large as the smallest coil that it could be. */
    private PackedLine coil(KitPlan.BoxItem item, CoilPlan.CoilCut coil) {
        double length = item.unit().equals("coil")
                ? coil.length()
                : coil.cuts().stream().mapToDouble(CoilPlan.LoopCut::length).sum();
        double whole = plan.job().pipe().product().coils().stream()
                .mapToDouble(c -> c.length())
                .filter(c -> c >= length - 0.01)
                .findFirst()
                .orElse(length);
        Optional<String> place = packing.place(item.sku(), coil.length()).or(() -> packing.place(item.sku(), whole));
        return line(item, place, packing.size(item.sku(), whole), false);
    }

    /** Plates lie in each other: as high as one groove and all sheets; all plates of a product make one bundle, told once. */
    private Optional<PackedSize> bundle(SpreaderPlate plate, KitPlan.BoxItem item, List<PackedLine> before) {
        List<Double> cuts = plan.plates().stock().stream()
                .filter(s -> s.product().equals(plate.sku()))
                .map(PlateCut::cuts)
                .flatMap(List::stream)
                .toList();
        double longest = cuts.stream().mapToDouble(c -> c).max().orElse(0);
        if (longest <= 0 || before.stream().anyMatch(l -> l.sku().equals(item.sku()))) {
            return Optional.empty();
        }
        double high = plate.grooveDiameter() + cuts.size() * plate.thickness();
        return Optional.of(new PackedSize(longest, plate.width(), high));
    }

    private PackedLine line(KitPlan.BoxItem item, Optional<String> place, Optional<PackedSize> size, boolean bundle) {
        return new PackedLine(
                item.sku(),
                item.name(),
                item.quantity(),
                item.unit(),
                item.weight(),
                place,
                packing.instead(item.sku()),
                size,
                bundle);
    }
}
