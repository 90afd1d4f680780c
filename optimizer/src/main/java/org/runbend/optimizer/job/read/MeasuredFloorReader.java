package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.runbend.catalog.source.Nearest;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.survey.FloorSurvey;
import org.runbend.optimizer.survey.Measurement;
import org.runbend.optimizer.survey.NotRigid;
import org.runbend.optimizer.survey.Place;
import org.runbend.optimizer.survey.Residual;
import org.runbend.optimizer.survey.SurveyProblem;
import org.runbend.optimizer.survey.SurveySolution;

/** Reads a floor that was measured by sides and diagonals, and says which lengths do not fit the others. */
final class MeasuredFloorReader {
    private static final int MOST_CORNERS = 40;
    private static final int MOST_LENGTHS = 800;
    private static final double LONGEST = 30_000;
    private static final double DOUBTFUL = Job.MeasuredLength.DOUBTFUL;
    private static final double WRONG = Job.MeasuredLength.WRONG;
    /** A length that differs by this from what all others say is doubtful, however small a residual it hides behind. */
    private static final double CONTRADICTED = 15;

    /** Which way round the corners are listed, seen from above. */
    private enum Round {
        ANTICLOCKWISE,
        CLOCKWISE
    }

    /**
     * A measured floor.
     *
     * @param names names of its corners
     * @param outline its corners
     * @param lengths how each length fits
     * @param warnings what a person should look at
     */
    record Measured(List<String> names, List<Point> outline, List<Job.MeasuredLength> lengths, List<String> warnings) {}

    /** The floor, empty if something was wrong. */
    Optional<Measured> read(YamlValue value) {
        YamlMap m = value.map();
        List<String> corners = corners(m.require("corners", "a list of names of corners"));
        YamlValue written = m.require("lengths", "a list of lengths [corner, corner, length]");
        List<YamlValue> entries = written.list(1, MOST_LENGTHS, "a list of lengths [corner, corner, length]");
        List<Measurement> lengths =
                entries.stream().flatMap(v -> length(v, corners).stream()).toList();
        Round round = m.get("round", v -> v.oneOf(Round.class), Round.ANTICLOCKWISE);
        if (lengths.size() < entries.size()) {
            return Optional.empty(); // what is wrong has been said; without that length others would seem to be missing
        }
        return m.make(() -> new SurveyProblem(corners, lengths, round == Round.CLOCKWISE))
                .flatMap(problem -> adjusted(problem, written, entries));
    }

    private static List<String> corners(YamlValue value) {
        List<String> names = new ArrayList<>();
        for (YamlValue v : value.list(3, MOST_CORNERS, "a list of 3 to " + MOST_CORNERS + " names of corners")) {
            String name = v.text();
            if (names.contains(name) && !name.isEmpty()) {
                v.fault("corner " + Plain.quoted(name) + " stands twice");
            }
            names.add(name);
        }
        return names;
    }

    private static Optional<Measurement> length(YamlValue value, List<String> corners) {
        List<YamlValue> parts = value.list(3, 3, "a length [corner, corner, length]");
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        int from = corner(parts.get(0), corners);
        int to = corner(parts.get(1), corners);
        double length = parts.get(2).length(1, LONGEST);
        return from < 0 || to < 0 || Double.isNaN(length)
                ? Optional.empty()
                : value.make(() -> new Measurement(from, to, length));
    }

    private static int corner(YamlValue value, List<String> corners) {
        String name = value.text();
        int index = corners.indexOf(name);
        if (index < 0 && !name.isEmpty() && !corners.isEmpty()) {
            value.fault("there is no corner " + Plain.quoted(name) + Nearest.hint(name, corners));
        }
        return index;
    }

    private static Optional<Measured> adjusted(SurveyProblem problem, YamlValue place, List<YamlValue> entries) {
        try {
            SurveySolution floor = new FloorSurvey().adjust(problem);
            if (floor.worst() > WRONG) {
                refuse(problem, floor, place, entries);
                return Optional.empty();
            }
            List<Point> outline =
                    floor.places().stream().map(MeasuredFloorReader::rounded).toList();
            return Optional.of(
                    new Measured(problem.corners(), outline, lengths(problem, floor), warnings(problem, floor)));
        } catch (NotRigid e) {
            place.fault(e.getMessage());
            return Optional.empty();
        }
    }

    /** A thousandth of a millimetre is far below what a tape can say, and far above what rounding noise can. */
    private static Point rounded(Place p) {
        return new Point(Math.rint(p.x() * 1000) / 1000 + 0.0, Math.rint(p.y() * 1000) / 1000 + 0.0);
    }

    private static List<Job.MeasuredLength> lengths(SurveyProblem problem, SurveySolution floor) {
        return floor.residuals().stream()
                .map(r -> new Job.MeasuredLength(
                        problem.corners().get(r.measurement().from()),
                        problem.corners().get(r.measurement().to()),
                        r.measurement().length(),
                        Math.rint(r.value() * 1000) / 1000 + 0.0))
                .toList();
    }

    private static void refuse(SurveyProblem problem, SurveySolution floor, YamlValue place, List<YamlValue> entries) {
        List<Residual> suspects = floor.suspects();
        YamlValue at = suspects.size() == 1 ? entries.get(floor.residuals().indexOf(suspects.get(0))) : place;
        at.fault("the lengths miss each other by up to " + mm(floor.worst()) + " mm, at most " + Plain.number(WRONG)
                + " mm are possible: " + advice(problem, suspects));
    }

    private static List<String> warnings(SurveyProblem problem, SurveySolution floor) {
        if (floor.redundancy() == 0) {
            return List.of("No measured length checks another one: measure one more diagonal.");
        }
        List<Residual> suspects = floor.suspects();
        boolean contradicted = suspects.stream().anyMatch(r -> Math.abs(r.discrepancy()) > CONTRADICTED);
        if (floor.worst() <= DOUBTFUL && !contradicted) {
            return List.of();
        }
        return List.of("The measured lengths miss each other by up to " + mm(floor.worst()) + " mm: "
                + advice(problem, suspects) + ".");
    }

    private static String advice(SurveyProblem problem, List<Residual> suspects) {
        Set<String> seen = new HashSet<>();
        List<Residual> each =
                suspects.stream().filter(r -> seen.add(name(problem, r))).toList();
        if (each.size() == 1) {
            Residual r = each.get(0);
            double length = r.measurement().length();
            return "take " + name(problem, r) + " again, it reads " + Plain.number(length)
                    + " and the others make it about " + mm(length - r.discrepancy());
        }
        return "one of "
                + each.stream().map(r -> name(problem, r)).collect(Collectors.joining(", "))
                + " is wrong and the others cannot tell which, take them again or measure one more diagonal";
    }

    private static String name(SurveyProblem problem, Residual r) {
        return problem.corners().get(r.measurement().from()) + "-"
                + problem.corners().get(r.measurement().to());
    }

    private static String mm(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
