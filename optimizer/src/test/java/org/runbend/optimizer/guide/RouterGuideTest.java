package org.runbend.optimizer.guide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.product.GuideBush;
import org.runbend.catalog.product.Routing;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.guide.GuidePlate.Kind;
import org.runbend.optimizer.guide.GuidePlate.Slot;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.verify.GuideVerifier;

/** Guides for many spacings hold what a bush and a cutter swept through them say; spoilt ones do not. */
class RouterGuideTest {
    private static final Groove SIXTEEN = new Groove(17.5, 20, 16.5, 32, 10);
    private static final Groove TEN = new Groove(11.5, 14, 10.5, 32, 10);

    private static GuideProblem problem(double spacing, double radius, Groove groove) {
        return new GuideProblem(spacing, radius, groove, 75, Routing.USUAL.cutters(), Routing.USUAL.bushes(), 12);
    }

    @ParameterizedTest
    @CsvSource({
        "150, 75, 16",
        "200, 100, 16",
        "300, 150, 16",
        "110, 55, 16",
        "100, 50, 10",
        "150, 80, 16",
        "120, 90, 16"
    })
    void bushAndCutterMakeTheChannel(double spacing, double radius, int pipe) {
        GuidePlate plate = new RouterGuide().lay(problem(spacing, radius, pipe == 16 ? SIXTEEN : TEN));
        assertEquals(List.of(), GuideVerifier.verify(plate));
        boolean stiff =
                radius > 1.1 * spacing / 2; // over that no two turns lie side by side, so there is no return bend
        assertEquals(!stiff, plate.slots().stream().anyMatch(s -> s.kind() == Kind.RETURN_BEND));
    }

    /** Cutters that workshops have in bushes that are sold (common practice), inches among them. */
    @ParameterizedTest
    @CsvSource({"6, 13, 100", "10, 17, 125", "12.7, 17, 150", "16, 24, 200", "12, 27, 110", "12.7, 30, 200"})
    void otherCuttersAndBushesMakeTheChannel(double cutter, double outer, double spacing) {
        List<GuideBush> bushes = List.of(new GuideBush(outer, outer - 2.5, 8));
        GuidePlate plate =
                new RouterGuide().lay(new GuideProblem(spacing, spacing / 2, SIXTEEN, 75, List.of(cutter), bushes, 12));
        assertEquals(List.of(), GuideVerifier.verify(plate));
        assertEquals(cutter, plate.cutter());
        assertEquals(outer, plate.bush().outer());
    }

    /**
     * The rule of routing along templates: the slot is wider than the cut by bush less cutter, each edge offset by half of it
     * (common practice).
     */
    @Test
    void straightSlotIsWiderByBushLessCutter() {
        GuidePlate plate = new RouterGuide().lay(problem(150, 75, SIXTEEN));
        assertEquals(12, plate.cutter());
        assertEquals(17, plate.bush().outer());
        List<Double> y = plate.slots().get(0).contour().stream()
                .map(c -> c.at().y())
                .sorted()
                .toList();
        assertEquals(17.5 + 17 - 12, y.get(y.size() - 1) - y.get(0), 1e-9);
        assertEquals(75, (y.get(y.size() - 1) + y.get(0)) / 2, 1e-9);
        assertEquals(28.5, plate.reach(), 1e-9);
    }

    /** A wider slot, a slot of another bush, one moved beside its line, one without entry: each is found. */
    @Test
    void spoiltGuidesAreFound() {
        GuidePlate good = new RouterGuide().lay(problem(150, 75, SIXTEEN));
        for (int i = 0; i < good.slots().size(); i++) {
            Slot slot = good.slots().get(i);
            int at = i;
            assertFalse(
                    verify(
                                    good,
                                    at,
                                    new Slot(
                                            slot.kind(),
                                            slot.way(),
                                            slot.channel() + 0.2,
                                            slot.contour(),
                                            slot.entry()))
                            .isEmpty(),
                    () -> "width of slot " + at);
            List<Corner> moved = slot.contour().stream()
                    .map(c -> new Corner(new Point(c.at().x(), c.at().y() + 0.1), c.bulge()))
                    .toList();
            assertFalse(
                    verify(good, at, new Slot(slot.kind(), slot.way(), slot.channel(), moved, slot.entry()))
                            .isEmpty(),
                    () -> "place of slot " + at);
            Point beside = new Point(slot.entry().x() - 5, slot.entry().y() + 5);
            assertFalse(
                    verify(good, at, new Slot(slot.kind(), slot.way(), slot.channel(), slot.contour(), beside))
                                    .isEmpty()
                            && slot.kind() != Kind.POCKET,
                    () -> "entry of slot " + at);
        }
        assertFalse(GuideVerifier.verify(with(good, new GuideBush(24, 20, 8), good.slots()))
                .isEmpty());
        assertFalse(GuideVerifier.verify(with(good, new GuideBush(17, 12.5, 8), good.slots()))
                .isEmpty());
    }

    @Test
    void whatCannotBeMadeIsSaid() {
        Stream.of(
                        problemOf(List.of(20.0), Routing.USUAL.bushes(), 12, 150),
                        problemOf(List.of(12.0), List.of(new GuideBush(14, 12, 8)), 12, 150),
                        problemOf(List.of(12.0), Routing.USUAL.bushes(), 8, 150),
                        problemOf(List.of(12.0), List.of(new GuideBush(40, 36, 8)), 12, 60))
                .forEach(p -> assertThrows(Unbuildable.class, () -> new RouterGuide().lay(p)));
        Unbuildable tight = assertThrows(Unbuildable.class, () -> new RouterGuide()
                .lay(problemOf(List.of(12.0), List.of(new GuideBush(40, 36, 8)), 12, 60)));
        assertTrue(tight.getMessage().contains("63 mm or more"), tight.getMessage());
    }

    private static GuideProblem problemOf(
            List<Double> cutters, List<GuideBush> bushes, double thickness, double spacing) {
        return new GuideProblem(spacing, spacing / 2, SIXTEEN, 75, cutters, bushes, thickness);
    }

    private static List<?> verify(GuidePlate plate, int at, Slot slot) {
        List<Slot> slots = new ArrayList<>(plate.slots());
        slots.set(at, slot);
        return GuideVerifier.verify(with(plate, plate.bush(), slots));
    }

    private static GuidePlate with(GuidePlate p, GuideBush bush, List<Slot> slots) {
        return new GuidePlate(
                p.problem(),
                p.cutter(),
                bush,
                p.width(),
                p.height(),
                p.axis(),
                slots,
                p.handHoles(),
                p.marks(),
                p.letters());
    }
}
