package org.runbend.optimizer.setout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/** Says where everything lies from two lines, in the order of flow and line by line. */
public final class SettingOut {
    /** Of offsets that are one line, mm. */
    private static final double STEP = 0.02;

    /** The marks of a floor. */
    public SetOut solve(SetOutProblem problem) {
        Datum datum = new DatumChoice(problem).choose();
        RunRoom room = new RunRoom(problem);
        List<SetOut.LoopMarks> loops = new ArrayList<>();
        for (int l = 0; l < problem.loops().size(); l++) {
            loops.add(loop(problem, datum.frame(), room, l));
        }
        return new SetOut(datum, lines(loops), loops);
    }

    private static SetOut.LoopMarks loop(SetOutProblem problem, Frame frame, RunRoom room, int index) {
        SetOutProblem.Loop loop = problem.loops().get(index);
        List<Element> elements = loop.breakdown().elements();
        List<SetOut.RunMark> runs = new ArrayList<>();
        List<SetOut.BendMark> bends = new ArrayList<>();
        double metre = 0;
        for (int i = 0; i < elements.size(); i++) {
            Element e = elements.get(i);
            Point from = frame.from(e.from());
            Point to = frame.from(e.to());
            if (e instanceof Element.Bend b) {
                bends.add(new SetOut.BendMark(
                        i,
                        bends.size() + 1,
                        frame.from(b.centre()),
                        b.radius(),
                        b.turn(),
                        from,
                        to,
                        metre,
                        metre + b.length()));
            } else {
                runs.add(new SetOut.RunMark(
                        i,
                        runs.size() + 1,
                        Lie.of(from, to),
                        from,
                        to,
                        metre,
                        room.left(index, i),
                        room.right(index, i)));
            }
            metre += e.length();
        }
        return new SetOut.LoopMarks(
                loop.name(),
                frame.from(elements.get(0).from()),
                frame.from(elements.get(elements.size() - 1).to()),
                runs,
                bends);
    }

    private static List<SetOut.ChalkLine> lines(List<SetOut.LoopMarks> loops) {
        List<SetOut.ChalkLine> lines = new ArrayList<>();
        for (Lie lie : List.of(Lie.ALONG, Lie.ACROSS)) {
            TreeMap<Long, List<SetOut.Stop>> byOffset = new TreeMap<>();
            for (SetOut.LoopMarks loop : loops) {
                stops(loop).stream().filter(s -> lie(loop, s) == lie).forEach(s -> byOffset.computeIfAbsent(
                                Math.round(lie.offset(s.from()) / STEP), k -> new ArrayList<>())
                        .add(s));
            }
            byOffset.values().forEach(stops -> {
                stops.sort(Comparator.comparingDouble(s -> Math.min(lie.stop(s.from()), lie.stop(s.to()))));
                lines.add(new SetOut.ChalkLine(lie, lie.offset(stops.get(0).from()), stops));
            });
        }
        for (SetOut.LoopMarks loop : loops) {
            stops(loop).stream()
                    .filter(s -> lie(loop, s) == Lie.ASLANT)
                    .forEach(s -> lines.add(new SetOut.ChalkLine(Lie.ASLANT, 0, List.of(s))));
        }
        return lines;
    }

    /** Runs, and the places where a bend follows a bend. */
    private static List<SetOut.Stop> stops(SetOut.LoopMarks loop) {
        List<SetOut.Stop> stops = new ArrayList<>();
        for (SetOut.RunMark r : loop.runs()) {
            stops.add(new SetOut.Stop(loop.name(), r.number(), false, r.from(), r.to()));
        }
        for (int i = 0; i + 1 < loop.bends().size(); i++) {
            SetOut.BendMark b = loop.bends().get(i);
            if (loop.bends().get(i + 1).element() == b.element() + 1) {
                stops.add(new SetOut.Stop(loop.name(), b.number(), true, b.to(), b.to()));
            }
        }
        return stops;
    }

    /** Of a run its own; of two bends that meet the direction of pipe there. */
    private static Lie lie(SetOut.LoopMarks loop, SetOut.Stop stop) {
        if (!stop.bends()) {
            return Lie.of(stop.from(), stop.to());
        }
        SetOut.BendMark bend = loop.bends().get(stop.number() - 1);
        Point radial = new Point(
                stop.from().x() - bend.centre().x(),
                stop.from().y() - bend.centre().y());
        return Math.abs(radial.x()) < STEP ? Lie.ALONG : Math.abs(radial.y()) < STEP ? Lie.ACROSS : Lie.ASLANT;
    }
}
