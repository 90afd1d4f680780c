package org.runbend.catalog.ledger.sql;

import java.util.List;
import java.util.Map;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.configuration.FluentConfiguration;
import org.runbend.catalog.ledger.LedgerRefused;

/** Brings the tables of a ledger to this version, and says which version they are of. */
final class Migrations {
    /** The newest step among the resources; a test holds it against them. */
    static final long NEWEST = 2;

    private static final String FOLDER = "classpath:org/runbend/catalog/ledger/sql/";

    private Migrations() {}

    /** Makes or renews the tables. */
    static void run(String url, String dialect, List<String> schemas, Map<String, String> properties) {
        FluentConfiguration configuration = Flyway.configure(Migrations.class.getClassLoader())
                .dataSource(url, properties.get("user"), properties.get("password"))
                .locations(FOLDER + "both", FOLDER + dialect)
                .failOnMissingLocations(true)
                .loggers("slf4j");
        if (!schemas.isEmpty()) {
            configuration.schemas(schemas.toArray(String[]::new));
        }
        try {
            configuration.load().migrate();
        } catch (FlywayException e) {
            throw new LedgerRefused("the tables of the ledger could not be made: " + reason(e), e);
        }
    }

    private static String reason(Throwable e) {
        Throwable deepest = e;
        while (deepest.getCause() != null) {
            deepest = deepest.getCause();
        }
        return String.valueOf(deepest.getMessage()).lines().findFirst().orElse("");
    }

    /** The version that the tables are of. */
    static long version(Sql sql) {
        return sql.rows(
                        "SELECT MAX(CAST(version AS INTEGER)) AS version FROM flyway_schema_history WHERE version IS NOT NULL",
                        r -> r.number("version"))
                .get(0);
    }
}
