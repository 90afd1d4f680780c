package org.runbend.optimizer.bare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;

/** Distances as a tape held square to the walls shows them; a 3-4-5 triangle for the slanting wall. */
class LandmarksTest {
    private static Landmarks of(List<Point> outline, List<Job.FloorMark> marks) {
        return new Landmarks(
                new Job.FloorPlan(outline, marks, List.of(), List.of(), new Job.Port(outline.get(0), 330)));
    }

    @Test
    void fromTheTwoNearestWallsThatDoNotRunAlike() {
        List<Point> room = List.of(new Point(0, 0), new Point(3000, 0), new Point(3000, 500), new Point(0, 500));
        List<Job.FloorMark> marks = List.of(new Job.FloorMark("door", new Point(3000, 250), 1));
        String words = "at [2900, 225] near door, 100 mm from the right wall (door) and 225 mm from the lower wall";
        assertEquals(words, of(room, marks).words(new Point(2900, 225)));
        List<Point> clockwise = new ArrayList<>(room);
        Collections.reverse(clockwise);
        assertEquals(
                "at [2900, 225] near the corner [3000, 0], 100 mm from the right wall and 225 mm from the lower wall",
                of(clockwise, List.of()).words(new Point(2900, 225)));
    }

    /** From (3000, 0) to (0, 4000): the point 50 mm inside its middle, and the wall x = 0. */
    @Test
    void slantingWallsAreNamedByTheirEnds() {
        List<Point> sail = List.of(new Point(0, 0), new Point(3000, 0), new Point(0, 4000));
        assertEquals(
                "at [1460, 1970] near the corner [0, 0], 50 mm from the wall from [3000, 0] to [0, 4000] and 1460 mm"
                        + " from the left wall",
                of(sail, List.of()).words(new Point(1500 - 40, 2000 - 30)));
    }

    /** Behind the inner corner of an L the two walls beside the place count, not those across. */
    @Test
    void innerCorners() {
        List<Point> ell = List.of(
                new Point(0, 0),
                new Point(3000, 0),
                new Point(3000, 1000),
                new Point(1000, 1000),
                new Point(1000, 2000),
                new Point(0, 2000));
        assertEquals(
                "at [900, 1900] near the corner [1000, 2000], 100 mm from the upper wall and 100 mm from the wall from"
                        + " [1000, 1000] to [1000, 2000]",
                of(ell, List.of()).words(new Point(900, 1900)));
    }

    /** Midway between the left wall and the side of a wheel arch: the wall is meant, not the arch that faces like the right one. */
    @Test
    void notchesAreNoWalls() {
        List<Point> van = List.of(
                new Point(0, 0),
                new Point(2700, 0),
                new Point(2700, 1600),
                new Point(1600, 1600),
                new Point(1600, 1390),
                new Point(800, 1390),
                new Point(800, 1600),
                new Point(0, 1600));
        assertEquals(
                "at [400, 1550] near the corner [800, 1600], 50 mm from the upper wall and 400 mm from the left wall",
                of(van, List.of()).words(new Point(400, 1550)));
        assertEquals(
                "at [1125, 1275] near the corner [800, 1390], 115 mm from the wall from [1600, 1390] to [800, 1390] and"
                        + " 1125 mm from the left wall",
                of(van, List.of()).words(new Point(1125, 1275)));
    }
}
