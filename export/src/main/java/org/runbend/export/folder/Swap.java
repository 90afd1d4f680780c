package org.runbend.export.folder;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Platform;
import java.nio.file.Path;
import java.util.Arrays;

/** Exchanges two names of one file system in a single step, so that nobody ever sees one of them missing. */
interface Swap {
    /** Whether the two were exchanged; if not, nothing was changed. */
    boolean swap(Path a, Path b);

    /** The exchange that this system offers. Java has none, so the C library is asked for it. */
    static Swap ofSystem() {
        return (a, b) -> {
            try {
                return (Platform.isLinux() && linux(a, b)) || (Platform.isMac() && mac(a, b));
            } catch (LastErrorException | LinkageError e) {
                return false; // a file system or a C library that cannot: the caller has another way
            }
        };
    }

    private static boolean linux(Path a, Path b) {
        int here = -100; // AT_FDCWD of fcntl.h
        int exchange = 2; // RENAME_EXCHANGE of rename(2), since Linux 3.15 and glibc 2.28
        return Native.load("c", Linux.class).renameat2(here, name(a), here, name(b), exchange) == 0;
    }

    private static boolean mac(Path a, Path b) {
        int swap = 2; // RENAME_SWAP of renamex_np(2), from memory and not tried on that system
        return Native.load("c", Mac.class).renamex_np(name(a), name(b), swap) == 0;
    }

    /** The path's bytes as the system has them, with the zero at the end that C wants. */
    private static byte[] name(Path path) {
        byte[] bytes = Disk.bytes(path);
        return Arrays.copyOf(bytes, bytes.length + 1);
    }

    /** The call of Linux. */
    interface Linux extends Library {
        /** Renames as rename(2) says; 0 if it was done. */
        int renameat2(int oldFolder, byte[] oldPath, int newFolder, byte[] newPath, int flags)
                throws LastErrorException;
    }

    /** The call of macOS. */
    interface Mac extends Library {
        /** Renames as renamex_np(2) says; 0 if it was done. */
        int renamex_np(byte[] oldPath, byte[] newPath, int flags) throws LastErrorException;
    }
}
