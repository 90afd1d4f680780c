package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.concurrent.CompletionException;
import org.junit.jupiter.api.Test;
import org.runbend.export.DemoPlan;
import org.runbend.optimizer.plan.KitPlan;

/** What is there to compare never costs the kit: the plan goes on and says what is missing. */
class LostComparisonTest {
    @Test
    void thePlanGoesOnWithoutIt() {
        KitPlan plan = PlanCommand.compared(DemoPlan.plan(), p -> {
            throw new CompletionException(new ArithmeticException("long overflow"));
        });
        assertEquals(DemoPlan.plan().plates(), plan.plates());
        assertEquals(
                "Plates in few lengths and for other coverages could not be compared: a fault of our own"
                        + " (ArithmeticException); the kit is whole without.",
                plan.remarkWords().get(0));
    }
}
