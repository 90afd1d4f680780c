package org.runbend.catalog.source;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Two lengths with an x between them, as people write the size of a floor: 2600x1500, 2.6m x 1.5m, 8ft 6in x 5ft.
 *
 * @param first mm
 * @param second mm
 */
public record SizeText(double first, double second) {
    /**
     * The size, or empty if the text is none.
     *
     * @param written the text; numbers without a unit are mm
     */
    public static Optional<SizeText> parse(String written) {
        List<OptionalDouble> parts = Stream.of(written.strip().split("\\s*[xX\u00d7*]\\s*", -1))
                .map(SizeText::length)
                .toList();
        return parts.size() == 2 && parts.stream().allMatch(OptionalDouble::isPresent)
                ? Optional.of(
                        new SizeText(parts.get(0).getAsDouble(), parts.get(1).getAsDouble()))
                : Optional.empty();
    }

    /** A single length in mm, or empty if the text is none; a number without a unit is mm. */
    public static OptionalDouble length(String written) {
        return LengthText.parse(written, Unit.MM);
    }
}
