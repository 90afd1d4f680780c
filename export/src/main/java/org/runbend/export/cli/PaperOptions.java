package org.runbend.export.cli;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.catalog.source.Plain;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.papers.FullSizePaper;
import org.runbend.export.papers.PaperForm;
import org.runbend.export.pdf.PageFormat;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How the papers of a kit are wanted. */
final class PaperOptions extends SheetOptions {
    @Option(names = "--prices", description = "Say prices on the pick list.")
    private boolean prices;

    @Option(
            names = "--full-size",
            paramLabel = "PAGE",
            converter = FullSizeWord.class,
            description =
                    "Write the floor in actual size into full-size.pdf: in tiles of a4, a3 or letter, or on one page"
                            + " (plotter).")
    private FullSizePaper.Page fullSize;

    KitFiles.PaperWish wish() {
        return new KitFiles.PaperWish(new PaperForm(paper(), prices), Optional.ofNullable(fullSize));
    }

    /** What can be said of that before a floor is planned, from its size alone. */
    Optional<String> fault(Job job) {
        if (fullSize == null) {
            return Optional.empty();
        }
        int pages = FullSizePaper.pagesAtLeast(
                FloorShapes.polygon(job.floor().outline()).getArea(), fullSize);
        return pages > FullSizePaper.MOST ? Optional.of(tooMany("at least " + pages)) : Optional.empty();
    }

    private String tooMany(String pages) {
        return "--full-size " + fullSize.name().toLowerCase(Locale.ROOT) + ": that takes " + pages
                + " pages, more than " + FullSizePaper.MOST + "; --full-size plotter makes one page of it";
    }

    /** Why a floor cannot be printed in actual size as wanted, if it cannot. */
    Optional<String> fault(KitPlan plan) {
        if (fullSize == null) {
            return Optional.empty();
        }
        if (fullSize == FullSizePaper.Page.PLOTTER) {
            return KitFiles.fitsPlotter(plan)
                    ? Optional.empty()
                    : Optional.of("--full-size plotter: the floor with its measures is longer than the "
                            + Plain.number(Math.floor(PageFormat.LONGEST))
                            + " mm of a page; drawing.dxf holds it in actual size");
        }
        OptionalInt pages = KitFiles.tooManyTiles(plan, fullSize);
        return pages.isEmpty() ? Optional.empty() : Optional.of(tooMany(Integer.toString(pages.getAsInt())));
    }

    /** Reads on what a floor is printed in actual size. */
    static final class FullSizeWord implements ITypeConverter<FullSizePaper.Page> {
        @Override
        public FullSizePaper.Page convert(String word) {
            return switch (word.toLowerCase(Locale.ROOT)) {
                case "a4" -> FullSizePaper.Page.A4;
                case "a3" -> FullSizePaper.Page.A3;
                case "letter" -> FullSizePaper.Page.LETTER;
                case "plotter" -> FullSizePaper.Page.PLOTTER;
                default -> throw new TypeConversionException("'" + word + "' is none of a4, a3, letter, plotter");
            };
        }
    }
}
