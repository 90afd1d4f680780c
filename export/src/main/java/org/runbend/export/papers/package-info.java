/** Papers for people, as PDF. They say what the plan says and work out no pipe of their own. */
package org.runbend.export.papers;
