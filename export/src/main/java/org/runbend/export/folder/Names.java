package org.runbend.export.folder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** Names of files in a kit: plain ones, and with a slash those in a sub-folder of it. */
final class Names {
    private Names() {}

    /** A path as {@code kit.json} lists it, whatever the system puts between folder and file. */
    static String listed(Path name) {
        return name.getNameCount() < 2 ? name.toString() : listed(name.getParent()) + "/" + name.getFileName();
    }

    /** The sub-folders that some names lie in. */
    static Set<String> folders(Collection<String> names) {
        Set<String> folders = new TreeSet<>();
        names.stream().filter(n -> n.indexOf('/') > 0).forEach(n -> folders.add(n.substring(0, n.indexOf('/'))));
        return folders;
    }

    /** What lies in a folder, and in place of each sub-folder named, if it is a folder and no link, what lies in that. */
    static SortedSet<Path> in(Path folder, Set<String> folders) throws IOException {
        SortedSet<Path> all = new TreeSet<>();
        for (Path name : Disk.entries(folder)) {
            if (folders.contains(name.toString()) && Disk.isFolder(folder.resolve(name))) {
                Disk.entries(folder.resolve(name)).forEach(n -> all.add(name.resolve(n)));
            } else {
                all.add(name);
            }
        }
        return all;
    }

    /** Whether the folder that a file of a kit lies in is there, and is no link that leads elsewhere. */
    static boolean hasFolder(Path kit, String name) {
        return Disk.isFolder(kit.resolve(name).getParent());
    }
}
