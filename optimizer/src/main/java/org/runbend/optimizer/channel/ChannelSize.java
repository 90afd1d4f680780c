package org.runbend.optimizer.channel;

/**
 * Sizes of a channel, mm.
 *
 * @param width on straights
 * @param bendWidth at bends
 * @param depth from the top of the board
 * @param pad diameter of the pocket at each end; 0 for none
 * @param cutter diameter of the cutter, not over the width
 */
public record ChannelSize(double width, double bendWidth, double depth, double pad, double cutter) {
    /** Checks that the cutter goes in and that bends are not narrower than straights. */
    public ChannelSize {
        if (!(width > 0) || !(depth > 0) || !(cutter > 0) || cutter > width || !(pad >= 0)) {
            throw new IllegalArgumentException("a channel " + width + " mm wide and " + depth
                    + " mm deep cannot be cut with a cutter of " + cutter + " mm");
        }
        if (!(bendWidth >= width)) {
            throw new IllegalArgumentException("a channel " + bendWidth + " mm wide at bends is narrower than the "
                    + width + " mm of its straights");
        }
    }
}
