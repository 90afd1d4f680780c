/** Room {@code catalog} of Runbend. */
package org.runbend.catalog;
