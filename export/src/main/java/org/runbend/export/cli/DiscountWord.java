package org.runbend.export.cli;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.source.Plain;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a discount such as 5% or 2.5%. */
final class DiscountWord implements ITypeConverter<Rate> {
    private static final Pattern SHARE = Pattern.compile("(\\d{1,3}(?:\\.\\d{1,2})?) ?%");
    private static final int MOST = 10_000;

    @Override
    public Rate convert(String word) {
        Matcher m = SHARE.matcher(word.strip());
        int hundredths =
                m.matches() ? new BigDecimal(m.group(1)).movePointRight(2).intValueExact() : MOST + 1;
        if (hundredths > MOST) {
            throw new TypeConversionException(
                    Plain.quoted(word) + " is no share from 0 to 100% with at most two decimals, such as 5%");
        }
        return new Rate(hundredths);
    }
}
