package org.runbend.export.cli;

import java.util.Locale;
import org.runbend.export.pdf.Paper;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a size of paper. */
final class PaperWord implements ITypeConverter<Paper> {
    @Override
    public Paper convert(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
            case "a4" -> Paper.A4;
            case "letter" -> Paper.LETTER;
            default -> throw new TypeConversionException("'" + word + "' is neither a4 nor letter");
        };
    }
}
