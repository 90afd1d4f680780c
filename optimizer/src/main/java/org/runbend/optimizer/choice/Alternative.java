package org.runbend.optimizer.choice;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.Remark;

/**
 * One of the good plans of a floor.
 *
 * @param number from 1
 * @param aims what it is best at, at least one
 * @param why how it differs from the plan asked, one sentence
 * @param changes what it changes otherwise than the job; empty for the plan asked
 * @param figures what it is compared by
 * @param plan the whole plan
 */
public record Alternative(
        int number, List<Aim> aims, String why, List<KeyChange> changes, PlanFigures figures, KitPlan plan) {
    /** Copies the lists. */
    public Alternative {
        aims = List.copyOf(aims);
        changes = List.copyOf(changes);
    }

    /** What it is best at, as a person reads it, beginning with a capital. */
    public String name() {
        String words = aims.stream().map(Aim::words).collect(Collectors.joining(", "));
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /**
     * What is said on the papers of the kit that is made of it.
     *
     * @param count how many alternatives there are
     */
    public Remark remark(int count) {
        return new Remark.Alternative(number, count, name(), wishWords());
    }

    /** What it changes otherwise, as a person reads it. */
    public String wishWords() {
        return Candidate.words(changes);
    }
}
