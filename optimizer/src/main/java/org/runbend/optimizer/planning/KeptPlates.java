package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plates.KeptPiece;
import org.runbend.optimizer.plates.PlatePiece;

/** Finds the pieces of plate of an earlier kit under which pipe still runs as it ran. */
final class KeptPlates {
    /** Pipe this far off the line of a groove lies in it, mm. */
    private static final double SAME = 0.1;

    private KeptPlates() {}

    /**
     * The pieces whose grooves all lie under runs of the loops.
     *
     * @param stock the pieces as stock, in the order of the kit's pieces
     */
    static List<KeptPiece> of(EarlierKit was, List<Remnant> stock, List<Breakdown> loops) {
        List<KeptPiece> kept = new ArrayList<>();
        for (int i = 0; i < was.pieces().size(); i++) {
            Remnant remnant = stock.get(i);
            placed(was.pieces().get(i), loops).ifPresent(p -> kept.add(new KeptPiece(p, remnant)));
        }
        return kept;
    }

    private static Optional<PlatePiece> placed(EarlierKit.PlateCutBefore piece, List<Breakdown> loops) {
        List<PlatePiece.Place> places = new ArrayList<>();
        for (EarlierKit.Groove groove : piece.grooves()) {
            Optional<PlatePiece.Place> place = place(groove, loops);
            if (place.isEmpty()) {
                return Optional.empty();
            }
            places.add(place.get());
        }
        return Optional.of(new PlatePiece(piece.product(), piece.length(), places));
    }

    private static Optional<PlatePiece.Place> place(EarlierKit.Groove groove, List<Breakdown> loops) {
        for (int i = 0; i < loops.size(); i++) {
            List<Element> elements = loops.get(i).elements();
            for (int j = 0; j < elements.size(); j++) {
                if (elements.get(j) instanceof Element.Run run && !loops.get(i).isLead(j)) {
                    double from = along(run, groove.from());
                    double to = along(run, groove.to());
                    boolean under = isOn(run, groove.from(), from) && isOn(run, groove.to(), to);
                    if (under) {
                        return Optional.of(new PlatePiece.Place(i, j, Math.max(0, Math.min(from, to))));
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static double along(Element.Run run, Point p) {
        return ((p.x() - run.from().x()) * (run.to().x() - run.from().x())
                        + (p.y() - run.from().y()) * (run.to().y() - run.from().y()))
                / run.length();
    }

    private static boolean isOn(Element.Run run, Point p, double along) {
        return along >= -SAME
                && along <= run.length() + SAME
                && run.along(Math.max(0, Math.min(along, run.length()))).distance(p) <= SAME;
    }
}
