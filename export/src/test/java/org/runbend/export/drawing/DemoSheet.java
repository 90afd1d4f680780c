package org.runbend.export.drawing;

import java.util.List;

/** A small floor with everything a sheet can hold, for the tests of all formats. */
public final class DemoSheet {
    private DemoSheet() {}

    /** 1200 x 800 floor, a serpentine of five straight lines and six arcs (r = 75), three dimensions, texts. */
    public static Sheet sheet() {
        SheetBuilder b = new SheetBuilder("Reading room <floor> & \"caf\u00e9\"");
        b.add(Layer.FLOOR, Path.rectangle(new Extent(0, 0, 1200, 800)));
        b.add(Layer.KEEP_OUT, new Circle(new Point(1050, 640), 60));
        b.add(Layer.UNHEATED, Path.rectangle(new Extent(900, 20, 1180, 250)));
        b.add(Layer.PLATE, Path.rectangle(new Extent(250, 90, 700, 210)));
        b.add(Layer.PIPE, pipe());
        b.add(Layer.CHANNEL, slot());
        b.add(Layer.SCREW, new Circle(new Point(40, 40), 4));
        b.add(Layer.SENSOR, new Arc(new Point(600, 700), 50, 0, -270));
        b.add(Layer.NOTE, new Arrow(new Point(400, 150), 0, 30));
        b.add(Layer.DIMENSION, Dimension.measured(new Point(0, 800), new Point(1200, 800), 60, 22));
        b.add(Layer.DIMENSION, Dimension.measured(new Point(0, 0), new Point(0, 800), 60, 22));
        b.add(Layer.DIMENSION, Dimension.measured(new Point(150, 0), new Point(190, 0), -60, 22));
        b.add(Layer.NOTE, Text.level(new Point(1050, 640), 18, Anchor.MIDDLE_CENTRE, "drain \u00d8 60"));
        b.add(Layer.NOTE, new Text(new Point(1230, 400), 18, 90, Anchor.BOTTOM_CENTRE, "100%%c {\\P} <script> ^J"));
        b.add(
                Layer.NOTE,
                new Paragraph(new Point(0, -120), 18, List.of("seen from above", "door: \u017b\u00f3\u0142w")));
        b.add(Layer.TITLE, Text.level(new Point(1200, -120), 30, Anchor.TOP_RIGHT, "Reading room caf\u00e9"));
        return b.build();
    }

    private static Path pipe() {
        return Path.from(new Point(0, 75))
                .lineTo(new Point(750, 75))
                .arcTo(new Point(825, 150), 90)
                .arcTo(new Point(750, 225), 90)
                .lineTo(new Point(225, 225))
                .arcTo(new Point(225, 375), -180)
                .lineTo(new Point(750, 375))
                .arcTo(new Point(750, 525), 180)
                .lineTo(new Point(150, 525))
                .arcTo(new Point(75, 450), 90)
                .lineTo(new Point(75, 225))
                .arcTo(new Point(0, 150), -90)
                .open();
    }

    /** A closed slot with one arc of 270 degrees, so that it must be split. */
    private static Path slot() {
        return Path.from(new Point(400, 600))
                .lineTo(new Point(500, 600))
                .lineTo(new Point(500, 640))
                .arcTo(new Point(460, 600 + 80), 270)
                .close();
    }
}
