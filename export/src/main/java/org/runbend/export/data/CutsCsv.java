package org.runbend.export.data;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.runbend.export.drawing.Decimals;
import org.runbend.optimizer.plan.KitPlan;

/**
 * All cuts as comma-separated values: UTF-8, one head line, lines end in CR LF, quoted as RFC 4180 says. Lengths in mm.
 *
 * <p>A text that a spreadsheet would take for a formula gets an apostrophe in front (common practice).
 */
public final class CutsCsv {
    private static final String HEAD = "kind,stockId,product,stockLength,cutNo,length,goesTo,leftover";
    /** What begins a formula, the wide forms of East Asian keyboards too. */
    private static final String FORMULA = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private static final int DIGITS = 3;

    /** One row a cut; a stock piece's rows stand together and all say what is left of it. */
    public byte[] bytes(KitPlan plan) {
        StringBuilder out = new StringBuilder(HEAD).append("\r\n");
        CutList.pipe(plan).forEach(coil -> append(out, "pipe", coil));
        CutList.plates(plan).forEach(plate -> append(out, "plate", plate));
        return out.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void append(StringBuilder out, String kind, CutList.StockPiece stock) {
        List<CutList.Cut> cuts = stock.cuts();
        for (int i = 0; i < cuts.size(); i++) {
            out.append(Stream.of(
                                    kind,
                                    text(stock.id()),
                                    text(stock.product()),
                                    Decimals.of(stock.length(), DIGITS),
                                    Integer.toString(i + 1),
                                    Decimals.of(cuts.get(i).length(), DIGITS),
                                    text(cuts.get(i).goesTo()),
                                    Decimals.of(stock.leftover(), DIGITS))
                            .collect(Collectors.joining(",")))
                    .append("\r\n");
        }
    }

    /** A cell as it is written. */
    static String text(String cell) {
        boolean formula = !cell.isEmpty() && FORMULA.indexOf(cell.charAt(0)) >= 0;
        String safe = formula ? "'" + cell : cell;
        boolean quote = safe.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return quote ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
    }
}
