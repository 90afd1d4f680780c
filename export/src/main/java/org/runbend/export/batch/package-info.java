/** A day's orders: read, planned floor by floor, and cut together from one shelf. */
package org.runbend.export.batch;
