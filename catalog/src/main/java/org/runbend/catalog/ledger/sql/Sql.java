package org.runbend.catalog.ledger.sql;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.function.Function;

/** A line to a database. What goes wrong on it comes out as {@link Trouble}; no type of the driver leaves this class. */
final class Sql implements AutoCloseable {
    private final Connection connection;
    private final boolean isSqlite;
    private final Map<String, PreparedStatement> prepared = new HashMap<>();

    private Sql(Connection connection, boolean isSqlite) {
        this.connection = connection;
        this.isSqlite = isSqlite;
    }

    static Sql open(String url, Map<String, String> properties) {
        boolean isSqlite = url.startsWith("jdbc:sqlite:");
        Properties all = new Properties();
        all.putAll(properties);
        try {
            return new Sql(DriverManager.getConnection(url, all), isSqlite);
        } catch (SQLException e) {
            throw trouble(e, isSqlite);
        }
    }

    /** Runs a statement that gives no rows and takes no values. */
    void run(String sql) {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw trouble(e, isSqlite);
        }
    }

    /** Runs a statement that changes rows. */
    void change(String sql, Object... values) {
        try {
            statement(sql, values).executeUpdate();
        } catch (SQLException e) {
            throw trouble(e, isSqlite);
        }
    }

    /** The rows of an answer, each made into something. */
    <T> List<T> rows(String sql, Function<Row, T> reader, Object... values) {
        try (ResultSet rows = statement(sql, values).executeQuery()) {
            List<T> all = new ArrayList<>();
            Row row = new Current(rows);
            while (rows.next()) {
                all.add(reader.apply(row));
            }
            return all;
        } catch (SQLException e) {
            throw trouble(e, isSqlite);
        }
    }

    private PreparedStatement statement(String sql, Object... values) throws SQLException {
        PreparedStatement statement = prepared.get(sql);
        if (statement == null) {
            statement = connection.prepareStatement(sql);
            prepared.put(sql, statement);
        }
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
        return statement;
    }

    /** Rolls back whatever is open; a line that is broken does so itself. */
    void rollBack() {
        try {
            run("ROLLBACK");
        } catch (Trouble e) {
            // the database rolls back when the line is closed
        }
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            // there is nothing more to do with it
        }
    }

    private static Trouble trouble(SQLException e, boolean isSqlite) {
        Trouble.Kind kind = isSqlite ? Trouble.ofSqlite(e.getErrorCode()) : Trouble.ofState(e.getSQLState());
        return new Trouble(kind, e);
    }

    /** The row at which an answer stands. */
    private record Current(ResultSet rows) implements Row {
        @Override
        public long number(String column) {
            try {
                return rows.getLong(column);
            } catch (SQLException e) {
                throw new Trouble(Trouble.Kind.OTHER, e);
            }
        }

        @Override
        public String text(String column) {
            try {
                String text = rows.getString(column);
                return text == null ? "" : text;
            } catch (SQLException e) {
                throw new Trouble(Trouble.Kind.OTHER, e);
            }
        }

        @Override
        public boolean has(String column) {
            try {
                return rows.getObject(column) != null;
            } catch (SQLException e) {
                throw new Trouble(Trouble.Kind.OTHER, e);
            }
        }
    }
}
