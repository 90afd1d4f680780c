/** What lies on the shelf: opened coils and offcuts. */
package org.runbend.catalog.shelf;
