package org.runbend.export.page;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletionException;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.KeyPlace;
import org.runbend.catalog.source.SourceFile;
import org.runbend.export.data.AlternativesJson;
import org.runbend.export.data.KitJson;
import org.runbend.export.drafting.MiniatureDrafting;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.stock.LedgerPlace;
import org.runbend.optimizer.choice.Alternative;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.job.read.LoopDrawings;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.service.PlanService;
import org.runbend.optimizer.service.Running;
import org.runbend.optimizer.work.Work;

/**
 * The other end of {@link PlanProcess}: one plan in a process of its own. It reads one request from its input and writes events
 * to its output, each a line of JSON with its kind under {@code event}; files of the kit go into a folder.
 */
public final class PlanChild {
    /** A small picture is drawn as for paper of this share of a page. */
    private static final double SMALL_PICTURE = 3.2;

    private final LoopDrawings drawings;
    private final Optional<LedgerPlace> stock;
    private final PrintWriter out;

    /** A child that tells its events to a writer, and cuts from a shelf where there is a ledger. */
    public PlanChild(LoopDrawings drawings, Optional<LedgerPlace> stock, PrintWriter out) {
        this.stock = stock;
        this.drawings = drawings;
        this.out = out;
    }

    /**
     * Gets ready, waits for one request and does it.
     *
     * @param in the request in one line
     * @param folder the start folder
     * @param warm a job that is planned first, so that the one asked finds everything loaded
     */
    public void run(BufferedReader in, Path folder, Path warm) throws IOException {
        StartFolder start = new StartFolder(folder);
        if (!in.ready()) { // nobody waits yet
            warmUp(warm);
        }
        String line = in.readLine();
        if (line == null) {
            return; // the page has ended
        }
        Map<String, Object> tree = Json.read(line.getBytes(StandardCharsets.UTF_8));
        leaveWith(in);
        PlanRequest request = PlanRequest.of(tree);
        SourceFile file = start.sent(request.name(), request.text());
        JobSheet sheet = new JobSheet(start, drawings);
        try {
            plan(file, request, Path.of(String.valueOf(tree.get("out"))));
        } catch (BadInput e) {
            tell("refused", Map.of("faults", sheet.faults(e.faults(), request.name())));
        } catch (Unbuildable e) {
            List<Fault> faults = e.lines().stream()
                    .map(words -> KeyPlace.fault(file, e.key(), words))
                    .toList();
            tell("refused", Map.of("faults", sheet.faults(faults, request.name())));
        } catch (LedgerRefused e) {
            Fault fault = new Fault(request.name(), 0, 0, "", e.getMessage());
            tell("refused", Map.of("faults", sheet.faults(List.of(fault), request.name())));
        }
    }

    private Job read(SourceFile file) {
        return stock.map(s -> s.read(shelf -> JobReader.read(file, shelf, drawings), word -> {}))
                .orElseGet(() -> JobReader.read(file, Optional.empty(), drawings));
    }

    private void warmUp(Path warm) {
        try {
            Job job = JobReader.read(warm, Optional.empty(), LoopDrawings.NONE);
            try (PlanService service = new PlanService(1)) {
                KitPlan plan = service.plan(job, Work.silent()).get();
                KitFiles.of(plan, DxfVersion.R2000, true);
                PlanPicture.svg(MiniatureDrafting.draw(plan, 10));
            }
        } catch (BadInput | Unbuildable e) {
            tell("cold", Map.of()); // the request will tell what is wrong
        }
    }

    /** A page that ends, or is killed, takes its plans along. */
    private static void leaveWith(BufferedReader in) {
        Thread watch = new Thread(
                () -> {
                    try {
                        int letter;
                        do {
                            letter = in.read(); // nothing more is said
                        } while (letter >= 0);
                    } catch (IOException e) {
                        // the same as an end
                    }
                    Runtime.getRuntime().halt(0);
                },
                "leave-with-page");
        watch.setDaemon(true);
        watch.start();
    }

    private void plan(SourceFile file, PlanRequest request, Path folder) throws IOException {
        Job job = read(file);
        try (PlanService service = new PlanService(1)) {
            Work work = Work.told(new ToldProgress(this::tell, System::nanoTime));
            KitPlan plan = service.plan(job, work).get();
            tell("laid", PlanPicture.of(plan));
            tell("kit", kit(plan));
            // other ways are looked at while the files are written, which is the work of one core
            Optional<Running<Choice>> choosing = request.alternatives()
                    ? Optional.of(service.choose(plan, work, choice -> tell(choice, true)))
                    : Optional.empty();
            work.step("drawing and writing");
            Map<String, byte[]> more = new TreeMap<>();
            if (request.temperatures() && plan.heat().isPresent()) {
                work.step("reckoning temperatures");
                more.putAll(KitFiles.temperatures(plan));
            }
            write(plan, more, folder);
            choosing.ifPresent(this::alternatives);
            tell("done", Map.of());
        }
    }

    private static Map<String, Object> kit(KitPlan plan) {
        String json = new String(new KitJson().bytes(plan, List.of()), StandardCharsets.UTF_8);
        return Map.of("kit", new Json.Raw(json.replace("\n", " ")));
    }

    private void write(KitPlan plan, Map<String, byte[]> more, Path folder) throws IOException {
        Map<String, byte[]> files = KitFiles.of(plan, new KitFiles.DrawingForm(DxfVersion.R2000, true, false), more);
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Path path = folder.resolve(file.getKey());
            Files.createDirectories(path.getParent());
            Files.write(path, file.getValue());
        }
        tell("files", Map.of("files", List.copyOf(files.keySet())));
    }

    /** What goes wrong beside the plan does not cost the plan. */
    private void alternatives(Running<Choice> choosing) {
        try {
            tell(choosing.get(), false);
        } catch (CompletionException | IllegalStateException | Unbuildable e) {
            tell("lost", Map.of("words", "The alternatives could not be worked out; the plan is whole."));
        }
    }

    /** A choice; more of it may be to come. */
    private void tell(Choice choice, boolean more) {
        String table = new String(new AlternativesJson().bytes(choice), StandardCharsets.UTF_8);
        tell(
                "alternatives",
                Map.of(
                        "table",
                        new Json.Raw(table.replace("\n", " ")),
                        "pictures",
                        choice.alternatives().stream().map(PlanChild::picture).toList(),
                        "more",
                        more));
    }

    private static String picture(Alternative alternative) {
        KitPlan plan = alternative.plan();
        double unit = PlanPicture.extent(plan).mmPerPaperMm() * SMALL_PICTURE;
        return PlanPicture.svg(MiniatureDrafting.draw(plan, unit));
    }

    private synchronized void tell(String event, Map<String, Object> data) {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put("event", event);
        line.putAll(data);
        out.println(Json.write(line));
        out.flush();
    }
}
