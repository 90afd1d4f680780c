package org.runbend.optimizer.survey;

import java.util.ArrayList;
import java.util.List;

/** Turns, moves and if need be mirrors a floor into its frame: first corner at the origin, first side along x. */
final class SurveyFrame {
    private SurveyFrame() {}

    /** The floor in its frame, its corners anticlockwise or clockwise as asked for. */
    static List<Place> of(List<Place> floor, boolean clockwise) {
        Place a = floor.get(0);
        Place b = floor.get(1);
        double side = Math.max(1e-9, a.distance(b));
        double ux = (b.x() - a.x()) / side;
        double uy = (b.y() - a.y()) / side;
        int mirror = area(floor) < 0 == clockwise ? 1 : -1;
        List<Place> framed = new ArrayList<>();
        for (Place p : floor) {
            double dx = p.x() - a.x();
            double dy = p.y() - a.y();
            framed.add(new Place(dx * ux + dy * uy, mirror * (dy * ux - dx * uy)));
        }
        framed.set(0, new Place(0, 0));
        framed.set(1, new Place(side, 0));
        return framed;
    }

    /** Signed area by the shoelace formula, positive if the corners run anticlockwise. */
    static double area(List<Place> floor) {
        double twice = 0;
        for (int i = 0; i < floor.size(); i++) {
            Place p = floor.get(i);
            Place q = floor.get((i + 1) % floor.size());
            twice += p.x() * q.y() - q.x() * p.y();
        }
        return twice / 2;
    }
}
