/** The files of a kit and their folder: written whole or not at all, and never over what is not ours. */
package org.runbend.export.folder;
