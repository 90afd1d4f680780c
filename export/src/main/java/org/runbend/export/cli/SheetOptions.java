package org.runbend.export.cli;

import java.util.Locale;
import java.util.Optional;
import org.runbend.catalog.source.Unit;
import org.runbend.export.pdf.Paper;
import org.runbend.optimizer.job.Job;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** On which paper, and in which units, all papers are wanted. */
class SheetOptions {
    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            converter = PaperWord.class,
            description = "Size of all papers: a4 (default) or letter.")
    private Paper paper = Paper.A4;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = UnitsWord.class,
            description = "Sizes on papers: metric, or imperial with inches to 1/16 beside mm; default: as the job is"
                    + " written.")
    private Unit units;

    final Paper paper() {
        return paper;
    }

    /** What sizes are told in; empty: as each job is written. */
    final Optional<Unit> units() {
        return Optional.ofNullable(units);
    }

    /** The job, its sizes told as wanted. */
    final Job told(Job job) {
        return units == null ? job : job.writtenIn(units);
    }

    /** Reads what sizes are told in. */
    static final class UnitsWord implements ITypeConverter<Unit> {
        @Override
        public Unit convert(String word) {
            return switch (word.toLowerCase(Locale.ROOT)) {
                case "metric" -> Unit.MM;
                case "imperial" -> Unit.IN;
                default -> throw new TypeConversionException("'" + word + "' is neither metric nor imperial");
            };
        }
    }
}
