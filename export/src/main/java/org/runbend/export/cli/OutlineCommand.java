package org.runbend.export.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.export.drawing.Point;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfFault;
import org.runbend.export.dxf.read.DxfReader;
import org.runbend.export.folder.Disk;
import org.runbend.export.folder.DraftFile;
import org.runbend.export.folder.OutputRefused;
import org.runbend.export.outline.Candidate;
import org.runbend.export.outline.FloorReading;
import org.runbend.export.outline.FloorSketch;
import org.runbend.export.outline.JobDraft;
import org.runbend.export.outline.NoOutline;
import org.runbend.export.outline.OutlineRequest;
import org.runbend.export.outline.SketchDrafting;
import org.runbend.export.svg.SvgBackend;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code runbend outline FLOOR.dxf}: starts a job file from a drawing. */
@Command(
        name = "outline",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Starts a job file from a customer's drawing (DXF), with a picture of what was understood beside it.",
        footer = {"", "Example:", "  runbend outline floor.dxf --out floor.yaml"})
final class OutlineCommand implements Callable<Integer> {
    private static final List<DrawingUnit> UNITS = List.of(
            DrawingUnit.MM,
            DrawingUnit.CM,
            DrawingUnit.DM,
            DrawingUnit.M,
            DrawingUnit.IN,
            DrawingUnit.FT,
            DrawingUnit.YD);

    private static final Pattern PLACE = Pattern.compile(
            "\\s*\\[?\\s*(-?\\d{1,9}(?:\\.\\d{1,9})?)\\s*[,; ]\\s*(-?\\d{1,9}(?:\\.\\d{1,9})?)\\s*\\]?\\s*");

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FLOOR.dxf", description = "The drawing.")
    private Path drawing;

    @Option(
            names = "--out",
            paramLabel = "JOB.yaml",
            description = "The job file to write; default: named after the drawing, beside it.")
    private Path out;

    @Option(
            names = "--drawing-units",
            paramLabel = "UNIT",
            description = "Unit of the drawing, in place of its header's: mm, cm, dm, m, in, ft or yd.")
    private String unit;

    @Option(
            names = "--layer",
            paramLabel = "NAME",
            description = "The layer of the outline; default: the largest line.")
    private String layer;

    @Option(
            names = "--contour",
            paramLabel = "N",
            description = "The closed line that is the floor, by its number in a message or picture of this command.")
    private Integer contour;

    @Option(
            names = "--at",
            paramLabel = "X,Y",
            description = "A place on the floor, in mm as messages name places: the smallest closed line round it is"
                    + " taken.")
    private String at;

    @Option(
            names = "--unheated",
            paramLabel = "LAYER",
            description = "Closed lines and hatches of this layer are unheated floor.")
    private String unheated;

    @Option(
            names = "--tolerance",
            paramLabel = "MM",
            defaultValue = "0.5",
            description = "Widest gap between lines that is closed; default: ${DEFAULT-VALUE} mm.")
    private double tolerance;

    @Option(names = "--replace", description = "Replace files that were changed since they were written, too.")
    private boolean replace;

    @Override
    public Integer call() {
        OutlineRequest request = request();
        Path job = out != null ? out : beside(".yaml");
        Path picture = job.resolveSibling(stem(job) + ".svg");
        if (stem(job).equals(String.valueOf(job.getFileName()))) {
            throw new OutputRefused(job + ": a job file ends with .yaml");
        }
        DraftFile jobFile = new DraftFile(job, "# ", "");
        DraftFile pictureFile = new DraftFile(picture, "<!-- ", " -->");
        FloorSketch sketch = sketch(request, pictureFile);
        jobFile.check(replace);
        pictureFile.check(replace);
        String text = JobDraft.text(sketch, String.valueOf(picture.getFileName()));
        write(
                jobFile,
                jobFile.sealed(text),
                pictureFile,
                pictureFile.sealed(SvgBackend.svg(SketchDrafting.draw(sketch))));
        say(sketch, job, picture);
        return 0;
    }

    /** Both files or none: a job file without its picture says nothing of what was understood. */
    private static void write(DraftFile job, byte[] text, DraftFile picture, byte[] svg) {
        Map<Path, byte[]> files = new LinkedHashMap<>();
        files.put(picture.path(), svg);
        files.put(job.path(), text);
        try {
            Files.createDirectories(job.path().toAbsolutePath().getParent());
            Disk.replace(files);
        } catch (IOException e) {
            throw new OutputRefused(job.path() + ": cannot be written");
        }
    }

    private OutlineRequest request() {
        if (!(tolerance >= 0 && tolerance <= OutlineRequest.MOST_TOLERANCE)) {
            throw new ParameterException(spec.commandLine(), "--tolerance is a gap from 0 to 100 mm, not " + tolerance);
        }
        if (contour != null && at != null) {
            throw new ParameterException(spec.commandLine(), "--contour and --at both name the floor; say one of them");
        }
        return new OutlineRequest(
                Optional.ofNullable(unit).map(this::unit),
                Optional.ofNullable(layer),
                tolerance,
                contour == null ? OptionalInt.empty() : OptionalInt.of(contour),
                Optional.ofNullable(at).map(this::place),
                Optional.ofNullable(unheated));
    }

    private Point place(String words) {
        Matcher two = PLACE.matcher(words);
        if (!two.matches()) {
            throw new ParameterException(
                    spec.commandLine(), "--at is a place such as 1200,800 in mm, not '" + words + "'");
        }
        return new Point(Double.parseDouble(two.group(1)), Double.parseDouble(two.group(2)));
    }

    private DrawingUnit unit(String word) {
        return UNITS.stream()
                .filter(u -> u.symbol().equalsIgnoreCase(word.strip()))
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        "--drawing-units is one of "
                                + UNITS.stream().map(DrawingUnit::symbol).collect(Collectors.joining(", "))
                                + ", not '" + word + "'"));
    }

    private FloorSketch sketch(OutlineRequest request, DraftFile picture) {
        String name = String.valueOf(drawing.getFileName());
        try {
            return FloorReading.read(name, new DxfReader().read(drawing, request.unit()), request);
        } catch (DxfFault e) {
            throw new BadInput(Fault.ofFile(drawing.toString(), e.reason()));
        } catch (NoOutline e) {
            throw new BadInput(Fault.ofFile(drawing.toString(), e.getMessage() + shown(name, e.candidates(), picture)));
        }
    }

    /** Draws the closed lines that a person may choose from; a file of others that stands in the way stays. */
    private String shown(String name, List<Candidate> candidates, DraftFile picture) {
        if (candidates.size() < 2) {
            return "";
        }
        try {
            picture.check(replace);
            Disk.replace(picture.path(), picture.sealed(SvgBackend.svg(SketchDrafting.draw(name, candidates))));
            return "; " + picture.name() + " shows their numbers";
        } catch (OutputRefused | IOException e) {
            return "";
        }
    }

    private Path beside(String ending) {
        return drawing.resolveSibling(stem(drawing) + ending);
    }

    private static String stem(Path file) {
        return String.valueOf(file.getFileName()).replaceFirst("\\.(?i:dxf|ya?ml)$", "");
    }

    private void say(FloorSketch sketch, Path job, Path picture) {
        PrintWriter to = spec.commandLine().getOut();
        sketch.guesses().forEach(g -> to.println(Terminal.plain("guess: " + g)));
        sketch.leftOut().forEach(l -> to.println(Terminal.plain("left out: " + l)));
        to.println("keep-outs: " + sketch.obstacles().size() + ", marks: "
                + sketch.marks().size());
        to.println(Terminal.plain(
                "Written to " + job + " and " + picture + "; fill in what is marked so, then: runbend check " + job));
    }
}
