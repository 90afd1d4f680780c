package org.runbend.export.folder;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;

/** A process that a test kills while it writes kits. */
final class WriterProcess {
    private WriterProcess() {}

    /** The files of a kit of that word; every other one has one file more. */
    static String[] names(String word) {
        boolean even = word.hashCode() % 2 == 0;
        return even
                ? new String[] {"a.dxf", "b.csv", "boards/p-01.dxf"}
                : new String[] {"a.dxf", "b.csv", "gone.svg", "boards/p-01.dxf", "boards/p-02.dxf"};
    }

    /** Writes one large kit, or small ones for ever after a sign that it has begun. */
    public static void main(String[] args) {
        OutputFolder folder = new OutputFolder(Path.of(args[0]));
        if (args[1].equals("large")) {
            Map<String, byte[]> files = TrialKit.files("new", "a.dxf", "b.csv");
            byte[] large = new byte[1_000_000];
            Arrays.fill(large, (byte) 'x');
            files.put("b.csv", large);
            try {
                folder.write(files);
            } catch (OutputRefused e) {
                System.out.println(e.getMessage());
            }
            return;
        }
        for (int i = 0; ; i++) {
            String word = "word" + i;
            folder.write(TrialKit.files(word, names(word)));
            if (i == 0) {
                System.out.print('.');
                System.out.flush();
            }
        }
    }
}
