package org.runbend.optimizer.channel;

/**
 * How a cutter clears a channel: lines of its middle side by side, rings in the pads, and layers one below the other.
 *
 * @param across lines side by side, the middle one on the centreline of the pipe
 * @param stepOver from line to line at bends, where the channel is widest, mm; 0 where one line will do
 * @param rings rings of a pad beside its middle; 0 where the cutter fills the pad, or there is none
 * @param ringStep from ring to ring, mm
 * @param down layers
 * @param layer depth of a layer, mm
 */
public record Passes(int across, double stepOver, int rings, double ringStep, int down, double layer) {
    /** Most of the cutter's diameter that lies between two passes side by side: common practice, 40 to 50 %. */
    public static final double MOST_STEP = 0.4;

    /** Most depth of a layer by the cutter's diameter: common practice in plywood, half of it; foam takes more. */
    public static final double MOST_LAYER = 0.5;

    private static final double SAME = 1e-6;

    /** The fewest passes that clear a channel. */
    public static Passes of(ChannelSize size) {
        double cutter = size.cutter();
        double side = (size.bendWidth() - cutter) / 2;
        int beside = count(side, MOST_STEP * cutter);
        double outer = size.pad() > size.width() ? (size.pad() - cutter) / 2 : 0;
        int rings = count(outer, MOST_STEP * cutter);
        int down = count(size.depth(), MOST_LAYER * cutter);
        return new Passes(
                2 * beside + 1,
                beside == 0 ? 0 : side / beside,
                rings,
                rings == 0 ? 0 : outer / rings,
                down,
                size.depth() / down);
    }

    /** Lines on each side of the centreline. */
    public int beside() {
        return across / 2;
    }

    private static int count(double way, double most) {
        return way < SAME ? 0 : (int) Math.ceil(way / most - SAME);
    }
}
