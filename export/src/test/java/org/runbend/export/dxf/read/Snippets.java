package org.runbend.export.dxf.read;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Small drawings as text: pairs parted by bars. */
public final class Snippets {
    private Snippets() {}

    /** A drawing of these entities. */
    public static String entities(String pairs) {
        return lines("0|SECTION|2|ENTITIES|" + pairs + "|0|ENDSEC|0|EOF");
    }

    /** A drawing with header, layers, blocks and entities. */
    public static String drawing(String header, String layers, String blocks, String entities) {
        return lines(section("HEADER", header)
                + section("TABLES", "0|TABLE|2|LAYER|" + (layers.isEmpty() ? "" : layers + "|") + "0|ENDTAB")
                + section("BLOCKS", blocks)
                + section("ENTITIES", entities)
                + "0|EOF");
    }

    private static String section(String name, String pairs) {
        return "0|SECTION|2|" + name + "|" + (pairs.isEmpty() ? "" : pairs + "|") + "0|ENDSEC|";
    }

    /** Pairs as lines. */
    public static String lines(String pairs) {
        return pairs.replace('|', '\n') + "\n";
    }

    /** A bit of everything the reader knows. */
    public static String everything() {
        return drawing(
                "9|$ACADVER|1|AC1021|9|$DWGCODEPAGE|3|ANSI_1252|9|$INSUNITS|70|4|9|$MEASUREMENT|70|1",
                "0|LAYER|2|A|70|0|62|3|0|LAYER|2|B|70|1|62|3|0|LAYER|2|C|70|0|62|-3",
                "0|BLOCK|2|K|70|0|10|1|20|2|0|LINE|8|0|10|0|20|0|11|9|21|9|0|ARC|8|A|10|0|20|0|40|5|50|10|51|100|0|ENDBLK"
                        + "|0|BLOCK|2|L|70|0|10|0|20|0|0|INSERT|8|A|2|K|10|5|20|5|41|2|42|-1|50|30|0|ENDBLK",
                "0|LWPOLYLINE|8|A|90|4|70|1|10|-500|20|-500|10|2500|20|-500|10|2500|20|1500|10|-500|20|1500"
                        + "|0|LINE|8|A|10|0|20|0|11|100|21|0|0|CIRCLE|8|B|10|0|20|0|40|5|0|POINT|8|A|10|5|20|6"
                        + "|0|LWPOLYLINE|8|A|90|3|70|1|10|0|20|0|42|1|10|50|20|0|10|50|20|50"
                        + "|0|POLYLINE|8|A|66|1|70|1|0|VERTEX|8|A|10|0|20|0|42|0.5|0|VERTEX|8|A|10|9|20|0|0|SEQEND"
                        + "|0|ELLIPSE|8|A|10|5|20|5|11|80|21|10|40|0.5|41|0|42|3"
                        + "|0|SPLINE|8|A|70|8|71|2|72|6|73|3|40|0|40|0|40|0|40|1|40|1|40|1|10|0|20|0|10|50|20|90|10|99|20|0"
                        + "|0|SPLINE|8|A|70|8|71|3|74|3|11|0|21|0|11|50|21|90|11|99|21|0"
                        + "|0|INSERT|8|A|2|L|10|7|20|8|70|3|71|2|44|40|45|50|66|1|0|ATTRIB|8|A|10|1|20|2|40|3|1|tag|0|SEQEND"
                        + "|0|TEXT|8|A|10|1|20|2|40|5|1|caf\u00e9 %%d|72|1|11|5|21|5"
                        + "|0|MTEXT|8|C|10|1|20|2|40|5|71|5|3|{\\fArial;one}\\P|1|two"
                        + "|0|CIRCLE|8|A|10|-5|20|0|40|5|210|0|220|0|230|-1|0|HATCH|8|A|2|SOLID|0|LINE|8|A|67|1|10|1|20|1|11|2|21|2");
    }

    /** The same drawing in binary form: group codes of two bytes, or of one as up to R12 (DXF reference, binary files). */
    public static byte[] binary(String text, boolean wide) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("AutoCAD Binary DXF\r\n\032\0".getBytes(StandardCharsets.US_ASCII));
        List<String> lines = text.lines().toList();
        for (int i = 0; i + 1 < lines.size(); i += 2) {
            int code = Integer.parseInt(lines.get(i).strip());
            ByteBuffer number = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
            if (wide) {
                out.write(code & 255);
                out.write(code >> 8);
            } else if (code < 255) {
                out.write(code);
            }
            String value = lines.get(i + 1);
            if (code < 10 || code == 100) {
                out.writeBytes(value.getBytes(StandardCharsets.UTF_8));
                out.write(0);
            } else if (code < 60 || code >= 210) {
                out.write(number.putDouble(Double.parseDouble(value)).array(), 0, 8);
            } else if (code < 90) {
                out.write(number.putShort(Short.parseShort(value)).array(), 0, 2);
            } else {
                out.write(number.putInt(Integer.parseInt(value)).array(), 0, 4);
            }
        }
        return out.toByteArray();
    }
}
