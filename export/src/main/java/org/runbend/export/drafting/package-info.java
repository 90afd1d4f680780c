/** From a kit plan to a drawing: the one place where a plan becomes lines. Knows no file format. */
package org.runbend.export.drafting;
