package org.runbend.export.stock;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.Driver;
import java.sql.DriverManager;
import java.sql.DriverPropertyInfo;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.SQLFeatureNotSupportedException;
import java.sql.Statement;
import java.util.List;
import java.util.Properties;
import java.util.logging.Logger;

/** Stands before the drivers of ledgers and tells of each statement before it runs. */
final class CountingDriver implements Driver {
    private final Runnable before;

    private CountingDriver(Runnable before) {
        this.before = before;
    }

    /** Registers one that is asked before all others. */
    static CountingDriver register(Runnable before) throws SQLException {
        List<Driver> others = DriverManager.drivers().toList();
        CountingDriver first = new CountingDriver(before);
        for (Driver other : others) {
            DriverManager.deregisterDriver(other);
        }
        DriverManager.registerDriver(first);
        for (Driver other : others) {
            DriverManager.registerDriver(other);
        }
        return first;
    }

    @Override
    public boolean acceptsURL(String url) {
        return url.startsWith("jdbc:sqlite:") || url.startsWith("jdbc:postgresql:");
    }

    @Override
    public Connection connect(String url, Properties info) throws SQLException {
        if (!acceptsURL(url)) {
            return null;
        }
        for (Driver other : DriverManager.drivers().toList()) {
            if (!(other instanceof CountingDriver) && other.acceptsURL(url)) {
                return counted(Connection.class, other.connect(url, info));
            }
        }
        throw new SQLException("no driver for " + url);
    }

    private <T> T counted(Class<T> as, T real) {
        return as.cast(Proxy.newProxyInstance(
                as.getClassLoader() == null ? getClass().getClassLoader() : as.getClassLoader(),
                new Class<?>[] {as},
                (proxy, method, values) -> call(method, real, values)));
    }

    private Object call(Method method, Object real, Object[] values) throws Throwable {
        if (method.getName().startsWith("execute")) {
            before.run();
        }
        try {
            Object answer = method.invoke(real, values);
            if (answer instanceof PreparedStatement statement) {
                return counted(PreparedStatement.class, statement);
            }
            return answer instanceof Statement statement ? counted(Statement.class, statement) : answer;
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    @Override
    public DriverPropertyInfo[] getPropertyInfo(String url, Properties info) {
        return List.<DriverPropertyInfo>of().toArray(DriverPropertyInfo[]::new);
    }

    @Override
    public int getMajorVersion() {
        return 1;
    }

    @Override
    public int getMinorVersion() {
        return 0;
    }

    @Override
    public boolean jdbcCompliant() {
        return false;
    }

    @Override
    public Logger getParentLogger() throws SQLFeatureNotSupportedException {
        throw new SQLFeatureNotSupportedException();
    }
}
