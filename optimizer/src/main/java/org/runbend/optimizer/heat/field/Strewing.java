package org.runbend.optimizer.heat.field;

/** Lays a strip out in small equal pieces, so that no length of pipe and no area of plate is lost between cells. */
final class Strewing {
    private static final int FEWEST_ACROSS = 2;

    private Strewing() {}

    /** Takes a piece. */
    interface Piece {
        /**
         * Lays it down.
         *
         * @param x middle of the piece, mm
         * @param y middle of the piece, mm
         * @param part of the whole strip
         * @param along how far along the strip, 0 to 1
         */
        void lay(double x, double y, double part, double along);
    }

    /** Every piece of a strip; none is larger than a size in mm. */
    static void over(Band band, double size, Piece piece) {
        double length = band.length();
        if (length == 0) {
            return;
        }
        double width = band.left() + band.right();
        int along = (int) Math.max(1, Math.ceil(length / size));
        int across = (int) Math.max(FEWEST_ACROSS, Math.ceil(width / size));
        double dx = (band.x2() - band.x1()) / length;
        double dy = (band.y2() - band.y1()) / length;
        double part = 1.0 / along / across;
        for (int i = 0; i < along; i++) {
            double s = (i + 0.5) / along;
            for (int j = 0; j < across; j++) {
                double off = band.left() - (j + 0.5) / across * width;
                piece.lay(band.x1() + s * length * dx - off * dy, band.y1() + s * length * dy + off * dx, part, s);
            }
        }
    }
}
