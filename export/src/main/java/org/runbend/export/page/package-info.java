/**
 * The local page: a server for one person on this machine, a queue of plans each in a process of its own, and what the page
 * itself is made of (resources beside this package). It draws with the drawing model of the files and plans with the service
 * of the command line.
 */
package org.runbend.export.page;
