package org.runbend.optimizer.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.runbend.optimizer.plan.SoundKit.assertFound;
import static org.runbend.optimizer.plan.SoundKit.line;
import static org.runbend.optimizer.plan.SoundKit.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.product.Pipe;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.heat.limits.Finding.Side;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.SoundKit;
import org.runbend.optimizer.plates.PlatePlan;

/** Each rule: the hand-made plan passes, and one change that breaks the rule is found and named. */
class KitVerifierTest {
    private static final KitPlan SOUND = SoundKit.plan();

    @Test
    void soundPlanHasNothingAgainstIt() {
        assertEquals(List.of(), found(SOUND));
    }

    @Test
    void callsTheVerifierOfLoops() {
        List<Element> elements = with(SoundKit.loop().elements(), 0, SoundKit.run(75, 75, 448, 75));
        assertFound(found(withLoops(loop(new Breakdown(elements)))), "loop A element 1", "starts 2.00 mm");
    }

    @Test
    void callsTheVerifierOfPlates() {
        PlatePlan p = SoundKit.plates();
        PlatePlan cheap = new PlatePlan(p.pieces(), p.stock(), 3, 450, 450, 600, 1400, 1400, "", 3000, List.of());
        assertFound(found(withPlates(cheap)), "bought 1400", "cost 1500");
    }

    @Test
    void callsTheVerifierOfCoils() {
        CoilPlan cheap = new CoilPlan(SoundKit.coils().coils(), 1900, 1900, "");
        assertFound(found(withCoils(cheap)), "cost of 1900", "2000");
    }

    /** Two hundredths of a millimetre lie within what a router cannot tell, but a cutting plan is exact. */
    @Test
    void callsTheVerifierOfCutting() {
        CoilPlan off = new CoilPlan(
                List.of(new CoilPlan.CoilCut(
                        "PX-16", 25_000, List.of(new CoilPlan.LoopCut("A", 3710)), 21_290.02, Optional.empty())),
                2000,
                2000,
                "material");
        assertFound(found(withCoils(off)), "coils: stock piece 0", "leaves 2129000, not 2129002");
    }

    @Test
    void floorLengthIsTheSumOfTheElements() {
        assertFound(found(withLoops(loop(1424.0, 3710, 8, 0, 8, 8, 8))), "loop A", "floorLength 1424.00", "1424.67");
    }

    @Test
    void cutLengthHoldsTailsAndAllowance() {
        assertFound(found(withLoops(loop(1424.667, 3709, 8, 0, 8, 8, 8))), "loop A", "cutLength 3709", "3709.54");
        assertFound(found(withLoops(loop(1424.667, 3711, 8, 0, 8, 8, 8))), "loop A", "cutLength 3711", "3709.54");
    }

    @Test
    void loopLimitIsKept() {
        assertFound(found(withJob(SoundKit.job(OptionalDouble.of(3700)))), "loop A", "cutLength 3710", "3700.00 mm");
        assertEquals(List.of(), found(withJob(SoundKit.job(OptionalDouble.of(3710)))));
    }

    @ParameterizedTest
    @CsvSource({"6", "10"})
    void turnsAgreeWithTheBends(int turns) {
        assertFound(found(withLoops(loop(1424.667, 3710, turns, 0, 0, turns, 0))), "turns " + turns, "bends make 7");
    }

    @Test
    void turnBoundIsNotOverTheTurns() {
        assertFound(found(withLoops(loop(1424.667, 3710, 8, 0, 9, 8, 8))), "loop A", "turnBound 9", "turns 8");
    }

    @Test
    void objectiveIsTurnsAndPriceOfNodesLeftOut() {
        assertFound(found(withLoops(loop(1424.667, 3710, 8, 1, 8, 17, 8))), "objective 17", "1 nodes", "make 18");
    }

    @Test
    void objectiveBoundIsNotOverTheObjective() {
        assertFound(found(withLoops(loop(1424.667, 3710, 8, 0, 8, 8, 9))), "objectiveBound 9", "objective 8");
    }

    @Test
    void noMoreLeftOutThanReachable() {
        assertFound(found(withLoops(loop(1424.667, 3710, 8, 13, 8, 138, 8))), "leftOut 13", "12 reachable");
    }

    @Test
    void loopNamesDiffer() {
        assertFound(found(withLoops(SoundKit.loopPlan(), SoundKit.loopPlan())), "loop A", "name stands twice");
    }

    @ParameterizedTest
    @CsvSource({
        "0, VALVE, 2, 'asks for 1'",
        "1, NIPPLE, 1, 'LOOP asks for 2'",
        "2, CLAMP, 6, 'BEND asks for 7'",
        "3, TAPE, 2, 'METRE_OF_RUN asks for 1'",
        "4, CLIP, 5, 'METRE_OF_PIPE asks for 6'",
        "5, SCREW, 9, 'PLATE_PIECE asks for 8'",
        "9, SLEEVE, 1, 'PORT asks for 2'",
        "10, COLLAR, 5, 'JOINT asks for 4'",
        "11, GUIDE, 2, 'HAND_ROUTING asks for 1'"
    })
    void quantityFollowsTheCatalogsRule(int index, String sku, long quantity, String words) {
        KitPlan.BoxItem sound = SoundKit.items().get(index);
        KitPlan.BoxItem wrong = line(sku, quantity, sound.price(), sound.weight());
        assertFound(found(withItems(with(SoundKit.items(), index, wrong))), "item " + sku, words);
    }

    @Test
    void sensorOnlyWhereTheJobAsksForOne() {
        assertFound(found(withItems(plus(line("PROBE", 1, 0, 0)))), "item PROBE", "quantity of 1", "SENSOR asks for 0");
    }

    @Test
    void itemOfAnotherPipeStaysOut() {
        assertFound(found(withItems(plus(line("THIN", 1, 100, 0.1)))), "item THIN", "quantity of 1", "asks for 0");
    }

    @Test
    void quantityOverZero() {
        assertFound(found(withItems(plus(line("VALVE", 0, 5000, 1)))), "item VALVE", "quantity of 0", "over 0");
    }

    @Test
    void partNumberExists() {
        assertFound(found(withItems(plus(line("GHOST", 1, 1, 1)))), "item GHOST", "not in the catalog");
        assertFound(found(withItems(plus(line("SP-10", 1, 1, 1)))), "item SP-10", "not in the catalog");
    }

    @Test
    void priceAndWeightAreTheCatalogs() {
        assertFound(found(withItems(with(SoundKit.items(), 0, line("VALVE", 1, 4999, 1)))), "VALVE", "4999", "5000");
        assertFound(found(withItems(with(SoundKit.items(), 0, line("VALVE", 1, 5000, 2)))), "VALVE", "2.000", "1.000");
    }

    @Test
    void aidGoesInWhereHandsCannotBend() {
        // by hand 80 mm is over 150 / 2, so the pipe turns into its holes at 55 mm
        assertFound(found(withItems(without("AID"))), "item AID", "0 bending aids", "80.00", "55.00");
        Job job = SoundKit.job(OptionalDouble.empty());
        Pipe sold = job.pipe().product();
        Pipe supple = new Pipe(
                sold.sku(),
                sold.name(),
                sold.outer(),
                sold.wall(),
                sold.material(),
                sold.fittedRadius(),
                70,
                sold.aid(),
                sold.weightPerMetre(),
                sold.coils());
        Job byHand = job.with(job.layout(), job.pipe().of(supple), job.plates());
        assertFound(found(withJob(byHand)), "item AID", "1 bending aids", "70.00", "70.00");
    }

    @Test
    void pipeAndPlatesAreInTheBox() {
        assertFound(found(withItems(without("PX-16/25000"))), "product PX-16", "0 in the box", "cuts 1");
        assertFound(found(withItems(without("SP-1"))), "product SP-1", "0 in the box", "cuts 1");
    }

    @Test
    void totalAndWeightAddUp() {
        assertFound(found(sums(13_641, 5.108)), "total of 13641", "13640");
        assertFound(found(sums(13_640, 5.2)), "weight of 5.200", "5.108");
    }

    @ParameterizedTest
    @CsvSource({
        "54, AT_LEAST, OK, 'verdict ok'",
        "56, AT_LEAST, FAIL, 'verdict fail'",
        "56, AT_MOST, OK, 'verdict ok'",
        "54, AT_MOST, FAIL, 'verdict fail'"
    })
    void verdictAgreesWithTheNumbers(double value, Side good, PlanCheck.Verdict verdict, String words) {
        double limit = 55;
        PlanCheck check = new PlanCheck("depth of the channel", value, good, limit, "mm", verdict, "catalog");
        assertFound(found(withCheck(check)), "depth of the channel", words, value + "0 mm", limit + "0 mm");
    }

    @Test
    void checkIsComplete() {
        assertFound(
                found(withCheck(
                        new PlanCheck("x", Double.NaN, Side.AT_MOST, 1, "mm", PlanCheck.Verdict.OK, "catalog"))),
                "check 'x'",
                "NaN");
        assertFound(
                found(withCheck(new PlanCheck("x", 2, Side.AT_LEAST, 1, "mm", PlanCheck.Verdict.OK, " "))),
                "check 'x'",
                "source");
    }

    private static List<Finding> found(KitPlan plan) {
        return KitVerifier.verify(plan);
    }

    private static KitPlan.LoopPlan loop(Breakdown breakdown) {
        return new KitPlan.LoopPlan(
                "A", breakdown, 1424.667, 3710, 8, 0, OptionalInt.of(8), 0, 8, OptionalInt.of(8), List.of());
    }

    private static KitPlan.LoopPlan loop(
            double floor, long cut, int turns, int leftOut, int turnBound, int objective, int objectiveBound) {
        return new KitPlan.LoopPlan(
                "A",
                SoundKit.loop(),
                floor,
                cut,
                turns,
                leftOut,
                OptionalInt.of(turnBound),
                0,
                objective,
                OptionalInt.of(objectiveBound),
                List.of());
    }

    private static List<KitPlan.BoxItem> plus(KitPlan.BoxItem item) {
        List<KitPlan.BoxItem> items = new ArrayList<>(SoundKit.items());
        items.add(item);
        return items;
    }

    private static List<KitPlan.BoxItem> without(String sku) {
        return SoundKit.items().stream().filter(i -> !i.sku().equals(sku)).toList();
    }

    private static KitPlan withJob(Job job) {
        return plan(job, SOUND.loops(), SOUND.plates(), SOUND.coils(), SOUND.items(), 13_640, 5.108, SOUND.checks());
    }

    private static KitPlan withLoops(KitPlan.LoopPlan... loops) {
        return plan(
                SOUND.job(), List.of(loops), SOUND.plates(), SOUND.coils(), SOUND.items(), 13_640, 5.108, List.of());
    }

    private static KitPlan withPlates(PlatePlan plates) {
        return plan(SOUND.job(), SOUND.loops(), plates, SOUND.coils(), SOUND.items(), 13_640, 5.108, List.of());
    }

    private static KitPlan withCoils(CoilPlan coils) {
        return plan(SOUND.job(), SOUND.loops(), SOUND.plates(), coils, SOUND.items(), 13_640, 5.108, List.of());
    }

    private static KitPlan withItems(List<KitPlan.BoxItem> items) {
        return plan(SOUND.job(), SOUND.loops(), SOUND.plates(), SOUND.coils(), items, 13_640, 5.108, List.of());
    }

    private static KitPlan sums(long total, double weight) {
        return plan(SOUND.job(), SOUND.loops(), SOUND.plates(), SOUND.coils(), SOUND.items(), total, weight, List.of());
    }

    private static KitPlan withCheck(PlanCheck check) {
        return plan(
                SOUND.job(),
                SOUND.loops(),
                SOUND.plates(),
                SOUND.coils(),
                SOUND.items(),
                13_640,
                5.108,
                List.of(check));
    }

    private static KitPlan plan(
            Job job,
            List<KitPlan.LoopPlan> loops,
            PlatePlan plates,
            CoilPlan coils,
            List<KitPlan.BoxItem> items,
            long total,
            double weight,
            List<PlanCheck> checks) {
        return new KitPlan(
                job,
                SOUND.tape(),
                new KitPlan.LaidPart(75, SOUND.lattice(), loops, SOUND.served(), List.of(), List.of()),
                plates,
                coils,
                new KitPlan.Box(items, total, weight),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                checks,
                List.of());
    }
}
