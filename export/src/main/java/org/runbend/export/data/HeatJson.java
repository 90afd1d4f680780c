package org.runbend.export.data;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.LoopHeat;
import org.runbend.optimizer.heat.circuit.CircuitRun;
import org.runbend.optimizer.heat.circuit.WarmUp;
import org.runbend.optimizer.heat.flow.BalanceSolution;
import org.runbend.optimizer.heat.need.NeedSolution;
import org.runbend.optimizer.heat.output.FloorOutput;

/** The object {@code heating} of kit.json: W, degrees C, l/min, m/s, kPa, l, m2. */
public final class HeatJson {
    private HeatJson() {}

    /** The object by itself, as a file. */
    public static byte[] bytes(HeatSolution heat) {
        try {
            JsonOut out = new JsonOut().open();
            write(out, heat);
            return out.close().finish();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void write(JsonOut out, HeatSolution heat) throws IOException {
        HeatSolution.Output o = heat.output();
        HeatSolution.Flow f = heat.flow();
        out.open("heating")
                .number("area", o.area())
                .number("upward", o.upward())
                .number("upwardLeast", o.upwardLeast())
                .number("upwardMost", o.upwardMost())
                .number("downward", o.downward())
                .number("surfaceMean", o.surfaceMean())
                .number("surfacePeak", o.surfacePeak())
                .number("supply", f.supply())
                .number("return", f.back())
                .number("volumeFlow", f.volume())
                .number("velocity", f.velocity())
                .number("reynolds", reynolds(heat.loops()))
                .number("pressureDrop", f.pressureDrop())
                .number("pumpHead", f.pumpHead())
                .number("flushingFlow", f.flushing());
        if (heat.need().isPresent()) {
            NeedSolution need = heat.need().get();
            out.number("need", need.need()).number("share", need.share()).number("remaining", need.remaining());
        }
        out.number("highestSupply", heat.highestSupply().celsius())
                .text("highestSupplyFrom", heat.highestSupply().name())
                .number("volume", heat.filling().litres())
                .number("glycol", heat.filling().glycol())
                .number("expansion", heat.expansion().litres())
                .number("expansionRoom", heat.expansion().room())
                .number("fillPressure", heat.standing().fill())
                .number("boiling", heat.standing().boiling());
        if (heat.held().isPresent()) {
            held(out, heat.held().get());
        }
        if (o.standard().isPresent()) {
            out.open("typeB")
                    .number("up", o.standard().get().up())
                    .flag("valid", o.standard().get().valid())
                    .flag("extrapolated", o.standard().get().extrapolated())
                    .close();
        }
        if (heat.damp().isPresent()) {
            out.open("damp")
                    .number("metal", heat.damp().get().metal())
                    .number("dewPoint", heat.damp().get().dewPoint())
                    .flag("wet", heat.damp().get().wet())
                    .close();
        }
        if (heat.sensor().isPresent()) {
            out.open("sensor")
                    .number("highest", heat.sensor().get().highest())
                    .number("hysteresis", heat.sensor().get().hysteresis())
                    .number("top", heat.sensor().get().top())
                    .close();
        }
        out.list("pipeCurve", f.pipes(), p -> out.number("volumeFlow", p.flow()).number("head", p.head()));
        out.list("zones", o.zones(), z -> zone(out, z));
        out.list("loops", IntStream.range(0, heat.loops().size()).boxed().toList(), i -> loop(out, heat, i));
        out.list("warmUp", heat.warmUp().points(), p -> minute(out, p));
        if (heat.circuit().isPresent()) {
            circuit(out, heat.circuit().get(), heat.stuck());
        }
        out.texts("notes", heat.notes())
                .texts("assumptions", heat.assumptions())
                .close();
    }

    /** What may be promised where the supply that was asked for breaks a limit; warm-up and circuit are those of this supply too. */
    private static void held(JsonOut out, HeatSolution.Held held) throws IOException {
        out.open("held")
                .number("supply", held.supply())
                .number("upward", held.upward())
                .number("upwardLeast", held.upwardLeast())
                .number("upwardMost", held.upwardMost())
                .number("surfaceMean", held.surfaceMean())
                .number("surfacePeak", held.surfacePeak())
                .close();
    }

    private static void circuit(JsonOut out, CircuitRun run, Optional<CircuitRun> stuck) throws IOException {
        out.open("circuit")
                .number("duty", run.duty())
                .whole("openings", run.openings())
                .number("swing", run.swing())
                .number("surface", run.surface())
                .number("sensor", run.plates())
                .number("source", run.source())
                .whole("starts", run.starts())
                .number("floor", run.floor())
                .number("floorShare", run.floorShare())
                .number("cylinder", run.cylinder())
                .number("blowers", run.blowers())
                .number("kept", run.kept())
                .whole("firstOpen", run.firstOpen());
        if (stuck.isPresent()) {
            out.open("stuckOpen")
                    .number("surface", stuck.get().hottestSurface())
                    .number("sensor", stuck.get().hottestPlates())
                    .close();
        }
        out.close();
    }

    private static double reynolds(List<LoopHeat> loops) {
        return loops.stream().mapToDouble(l -> l.losses().reynolds()).max().orElse(0);
    }

    private static void zone(JsonOut out, FloorOutput.ZoneOutput z) throws IOException {
        out.text("kind", z.zone().kind().words());
        if (!z.zone().plate().isEmpty()) {
            out.text("plate", z.zone().plate());
        }
        out.number("area", z.zone().area())
                .number("coolant", z.coolant())
                .number("up", z.zone().output().up())
                .number("down", z.zone().output().down())
                .number("through", z.zone().output().exchange())
                .number("upward", z.upward())
                .number("downward", z.downward())
                .number("surfaceMean", z.surfaceMean())
                .number("surfacePeak", z.surfacePeak());
    }

    private static void loop(JsonOut out, HeatSolution heat, int i) throws IOException {
        LoopHeat l = heat.loops().get(i);
        out.text("name", l.name())
                .number("upward", l.upward())
                .number("downward", l.downward())
                .number("supply", l.supply())
                .number("return", l.back())
                .number("volumeFlow", l.losses().flow())
                .number("velocity", l.losses().velocity())
                .number("reynolds", l.losses().reynolds())
                .number("friction", l.losses().friction())
                .number("pressureDrop", l.losses().total())
                .number("coolant", l.mean())
                .number("film", l.film())
                .number("volume", l.litres());
        out.list("zones", l.zones(), z -> zone(out, z));
        if (heat.balance().isPresent()) {
            BalanceSolution.Setting setting = heat.balance().get().settings().get(i);
            out.number("throttled", setting.throttled());
            if (Double.isFinite(setting.kv())) {
                out.number("kv", setting.kv());
            }
        }
    }

    private static void minute(JsonOut out, WarmUp.Point p) throws IOException {
        out.whole("minute", p.minute())
                .number("surface", p.surface())
                .number("sensor", p.sensor())
                .number("coolant", p.coolant());
    }
}
