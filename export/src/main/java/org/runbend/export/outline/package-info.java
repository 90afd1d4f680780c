/**
 * From a customer's drawing to the beginning of a job: which closed line is the floor, what lies in it, what was not
 * understood. Everything that was concluded is said. Millimetres throughout.
 */
package org.runbend.export.outline;
