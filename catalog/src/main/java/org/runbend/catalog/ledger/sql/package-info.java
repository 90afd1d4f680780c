/** The ledger in a database: a SQLite file of one workshop, or PostgreSQL where several benches share a shelf. */
package org.runbend.catalog.ledger.sql;
