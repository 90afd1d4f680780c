package org.runbend.optimizer.breakdown;

import java.util.List;

/**
 * Bends as people count them: a return bend is one.
 *
 * @param returns return bends
 * @param quarters quarter bends beside them
 */
public record BendCount(int returns, int quarters) {
    /** The bends among elements. */
    public static BendCount of(List<Element> elements) {
        int returns = 0;
        int all = 0;
        for (Element e : elements) {
            if (e instanceof Element.Bend bend) {
                returns += bend.quarters() == 2 ? 1 : 0;
                all += bend.quarters();
            }
        }
        return new BendCount(returns, all - 2 * returns);
    }

    /** The bends of all loops. */
    public static BendCount ofAll(List<Breakdown> loops) {
        return of(loops.stream().flatMap(l -> l.elements().stream()).toList());
    }

    /** Such as "3 return bends and 1 quarter bend". */
    public String words() {
        if (returns == 0 && quarters == 0) {
            return "no bends";
        }
        String both = returns > 0 && quarters > 0 ? " and " : "";
        return (returns > 0 ? count(returns, "return bend") : "")
                + both
                + (quarters > 0 ? count(quarters, "quarter bend") : "");
    }

    private static String count(int number, String one) {
        return number + " " + one + (number == 1 ? "" : "s");
    }
}
