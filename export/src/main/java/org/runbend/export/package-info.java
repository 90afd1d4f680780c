/** Room {@code export} of Runbend. */
package org.runbend.export;
