package org.runbend.export.papers;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PdfPage;

/** A QR code (ISO/IEC 18004) of filled squares, level M, with its quiet zone of four modules. */
final class QrMark {
    private static final int QUIET = 4;
    private static final int INK = 0x000000;

    private QrMark() {}

    static void draw(PdfPage page, Box box, String text) {
        BitMatrix code = code(text);
        double module = Math.min(box.width(), box.height()) / code.getWidth();
        double top = box.y() + box.height();
        List<Box> dark = new ArrayList<>();
        for (int row = 0; row < code.getHeight(); row++) {
            int column = 0;
            while (column < code.getWidth()) {
                int from = column;
                while (column < code.getWidth() && code.get(column, row)) {
                    column++;
                }
                if (column > from) {
                    dark.add(new Box(
                            box.x() + from * module, top - (row + 1) * module, (column - from) * module, module));
                }
                column++;
            }
        }
        page.fill(dark, INK);
    }

    private static BitMatrix code(String text) {
        try {
            return new QRCodeWriter()
                    .encode(
                            text,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(
                                    EncodeHintType.CHARACTER_SET,
                                    "UTF-8",
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M,
                                    EncodeHintType.MARGIN,
                                    QUIET));
        } catch (WriterException e) {
            throw new IllegalArgumentException("a code of " + text.length() + " letters: " + e.getMessage(), e);
        }
    }
}
