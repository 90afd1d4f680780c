package org.runbend.optimizer.heat.output;

/**
 * Output of a floor of type B by EN 1264-2 and ISO 11855-2, annex A: q = B aB aT^mT aU aWL aK dT, B = 6.5 (equations A.11 to A.15, as
 * one public code gives them), with the correction for another wall or material of the pipe. Valid for spacings of 0.05 to 0.45
 * m, pipes of 14 to 22 mm, covers of 0.01 to 0.18 m2 K/W. Plates of 0.5 mm aluminium lie beyond the tables of aWL known to us
 * (KWL 0.4); there aWL = 1.03 - (1.03 - a0.4) (KWL / 0.4)^-0.88, after finite elements.
 */
public final class En1264TypeB {
    private static final double B = 6.5;
    private static final double ALPHA = 10.8;
    private static final double REFERENCE_COVER = 0.045;
    private static final double LAST = 0.4;
    private static final double IDEAL = 1.03;
    private static final double DECAY = 0.88;
    private static final double SHEATHLESS = 0.35;
    private static final double SHEATHLESS_WALL = 0.002;

    /** The output and its factors. */
    public TypeBSolution solve(TypeBProblem p) {
        double cover = p.cover() / p.coverConductivity();
        double aT = En1264TypeBTables.aT(cover);
        double mT = 1 - p.spacing() / 0.075;
        double aU = (1 / ALPHA + REFERENCE_COVER) / (1 / ALPHA + cover);
        double bU = En1264TypeBTables.bU(p.spacing());
        double kwl = (p.plate().sideways() + bU * p.cover() * p.coverConductivity()) / 0.125;
        double aWL = plateFactor(p.spacing(), p.pipe().outer(), kwl);
        double product = Math.pow(aT, mT) * aU * aWL * p.contact();
        double b = 1 / (1 / B + wall(p, product));
        double aB = 1 / (1 + b * product * p.finish() * (1 + 0.44 * Math.sqrt(p.spacing())));
        boolean valid = p.spacing() >= 0.05
                && p.spacing() <= 0.45
                && p.pipe().outer() >= 14
                && p.pipe().outer() <= 22
                && cover >= 0.01
                && cover <= 0.18;
        return new TypeBSolution(b * aB * product, valid, kwl > LAST, aT, mT, aU, aWL, aB, bU, kwl);
    }

    private static double plateFactor(double spacing, double outer, double kwl) {
        double last = En1264TypeBTables.aWL(spacing, outer, Math.min(LAST, kwl));
        return kwl <= LAST ? last : IDEAL - (IDEAL - last) * Math.pow(kwl / LAST, -DECAY);
    }

    private static double wall(TypeBProblem p, double product) {
        double d = p.pipe().outer() / 1000;
        double own = p.pipe().shape() / (2 * p.pipe().conductivity());
        double usual = Math.log(d / (d - 2 * SHEATHLESS_WALL)) / (2 * SHEATHLESS);
        // A wall so thin and conductive that it would turn the sum negative does not occur: 1/B0 is far greater.
        return Math.max(-0.5 / B, 1.1 / Math.PI * product * p.spacing() * (own - usual));
    }
}
