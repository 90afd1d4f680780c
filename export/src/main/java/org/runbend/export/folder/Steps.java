package org.runbend.export.folder;

import java.io.IOException;

/** Is told before each change on the disk. A test halts the process there, or lets the disk be full. */
interface Steps {
    /** Nobody listens. */
    Steps NONE = step -> {};

    /** The change that comes next. */
    void before(String step) throws IOException;
}
