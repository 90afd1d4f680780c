package org.runbend.export.papers;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.EncodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.QRCode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PdfPage;

/** A QR code (ISO/IEC 18004) of filled squares, level M, with its quiet zone of four modules. */
final class QrMark {
    private static final int QUIET = 4;
    private static final int INK = 0x000000;
    private static final int PAPER = 0xFFFFFF;
    /** Dots to a module at which a code is read back before it is printed. */
    private static final int[] SIZES = {4, 8, 12};

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

    /** Of the masks that a code may have (ISO/IEC 18004) the usual one, or the first that a common reader finds at more than one size. */
    private static BitMatrix code(String text) {
        BitMatrix usual = code(text, Map.of());
        if (isRead(usual)) {
            return usual;
        }
        return IntStream.range(0, QRCode.NUM_MASK_PATTERNS)
                .mapToObj(mask -> code(text, Map.of(EncodeHintType.QR_MASK_PATTERN, mask)))
                .filter(QrMark::isRead)
                .findFirst()
                .orElse(usual);
    }

    private static boolean isRead(BitMatrix code) {
        return IntStream.of(SIZES).allMatch(dots -> {
            int side = code.getWidth() * dots;
            int[] pixels = new int[side * side];
            for (int i = 0; i < pixels.length; i++) {
                pixels[i] = code.get(i % side / dots, i / side / dots) ? INK : PAPER;
            }
            RGBLuminanceSource picture = new RGBLuminanceSource(side, side, pixels);
            try {
                new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(picture)));
                return true;
            } catch (ReaderException e) {
                return false;
            }
        });
    }

    private static BitMatrix code(String text, Map<EncodeHintType, ?> mask) {
        Map<EncodeHintType, Object> hints = new EnumMap<>(EncodeHintType.class);
        hints.put(EncodeHintType.CHARACTER_SET, "UTF-8");
        hints.put(EncodeHintType.ERROR_CORRECTION, ErrorCorrectionLevel.M);
        hints.put(EncodeHintType.MARGIN, QUIET);
        hints.putAll(mask);
        try {
            return new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, hints);
        } catch (WriterException e) {
            throw new IllegalArgumentException("a code of " + text.length() + " letters: " + e.getMessage(), e);
        }
    }
}
