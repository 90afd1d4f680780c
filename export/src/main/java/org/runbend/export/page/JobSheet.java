package org.runbend.export.page;

import java.nio.file.InvalidPathException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.CatalogReader;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.YamlEdit;
import org.runbend.catalog.source.YamlTree;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.job.read.LoopDrawings;

/** Reads a job's text for the page: its tree to draw and to change, its faults at their lines, its floor as it was understood. */
final class JobSheet {
    private final StartFolder folder;
    private final LoopDrawings drawings;

    JobSheet(StartFolder folder, LoopDrawings drawings) {
        this.folder = folder;
        this.drawings = drawings;
    }

    /** The text with the values of another tree; an empty text is written from the tree. */
    String edited(String name, String text, Map<String, Object> tree) {
        return text.isBlank() ? YamlEdit.written(tree) : YamlEdit.edited(folder.sent(name, text), tree);
    }

    /** What the page shows of a text. */
    Map<String, Object> read(String name, String text) {
        Map<String, Object> shown = new LinkedHashMap<>();
        shown.put("text", text);
        try {
            SourceFile file = folder.sent(name, text);
            Map<String, Object> tree = YamlTree.of(file);
            shown.put("doc", tree);
            catalog(file, tree).ifPresent(c -> shown.put("products", Products.of(c)));
            Job job = JobReader.read(file, Optional.empty(), drawings);
            shown.put("floor", FloorView.of(job));
            shown.put("warnings", List.copyOf(job.warnings()));
            shown.put("faults", List.of());
        } catch (BadInput e) {
            shown.put("faults", faults(e.faults(), name));
        }
        return shown;
    }

    /** Products of a catalog that can be read; what is wrong with one that cannot is told by the job's reader. */
    private static Optional<Catalog> catalog(SourceFile file, Map<String, Object> tree) {
        try {
            String name = String.valueOf(tree.getOrDefault("catalog", ""));
            return name.isBlank()
                    ? Optional.empty()
                    : Optional.of(CatalogReader.read(file.named(file.path().resolveSibling(name))));
        } catch (BadInput | InvalidPathException e) {
            return Optional.empty();
        }
    }

    List<Object> faults(List<Fault> faults, String name) {
        List<Object> all = new ArrayList<>();
        faults.forEach(f -> all.add(fault(f, name)));
        return all;
    }

    /** A fault for the page. What a file other than the job holds is not quoted: whoever made a job may have named any. */
    Map<String, Object> fault(Fault fault, String name) {
        String file = folder.shortened(fault.file());
        boolean own = file.equals(name) || fault.line() == 0;
        return Map.of(
                "file", file,
                "line", fault.line(),
                "column", fault.column(),
                "path", fault.path(),
                "message",
                        own
                                ? folder.shortened(fault.message())
                                : "is not as it should be here; runbend check " + name + " tells what is wrong");
    }
}
