package org.runbend.optimizer.mip;

import java.util.ArrayList;
import java.util.List;

/** A minimisation model as plain data: rows with limits, columns with a cost, an upper limit and sparse entries. */
public final class Model {
    private final List<double[]> rowLimits = new ArrayList<>();
    private final List<Column> columns = new ArrayList<>();

    /** One column: {@code rows[k]} has the coefficient {@code entries[k]}; lower limit 0. */
    public static final class Column {
        private final double cost;
        private final double upper;
        private final int[] rows;
        private final double[] entries;
        private final boolean whole;

        public Column(double cost, double upper, int[] rows, double[] entries, boolean whole) {
            this.cost = cost;
            this.upper = upper;
            this.rows = rows;
            this.entries = entries;
            this.whole = whole;
        }

        public double cost() {
            return cost;
        }

        /** Greatest value of a row. */
        public double upper() {
            return upper;
        }

        public int[] rows() {
            return rows;
        }

        /** False for a column that may take fractions even in an integer program. */
        boolean whole() {
            return whole;
        }

        public double[] entries() {
            return entries;
        }
    }

    /** Adds a row and returns its index. */
    public int row(double lower, double upper) {
        rowLimits.add(new double[] {lower, upper});
        return rowLimits.size() - 1;
    }

    /** Adds a column and returns its index. */
    public int column(double cost, double upper, int[] rows, double[] entries) {
        columns.add(new Column(cost, upper, rows, entries, true));
        return columns.size() - 1;
    }

    /** Adds a column that may take fractions and returns its index. */
    public int fraction(double cost, int[] rows, double[] entries) {
        columns.add(new Column(cost, Double.POSITIVE_INFINITY, rows, entries, false));
        return columns.size() - 1;
    }

    /** How many rows there are. */
    public int rowCount() {
        return rowLimits.size();
    }

    /** Least value of a row. */
    public double lower(int row) {
        return rowLimits.get(row)[0];
    }

    public double upper(int row) {
        return rowLimits.get(row)[1];
    }

    /** The columns by their index. */
    public List<Column> columns() {
        return columns;
    }
}
