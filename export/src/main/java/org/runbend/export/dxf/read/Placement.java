package org.runbend.export.dxf.read;

/** An affine map of space, three rows of four numbers: where things of a block or of an own plane come to lie. */
final class Placement {
    static final Placement IDENTITY = new Placement(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0);

    /** Under this both x and y of an extrusion count as none (DXF reference, arbitrary axis algorithm). */
    private static final double NEAR_Z = 1.0 / 64;

    private final double[] m;

    private Placement(double... rows) {
        m = rows;
    }

    static Placement moved(double x, double y, double z) {
        return new Placement(1, 0, 0, x, 0, 1, 0, y, 0, 0, 1, z);
    }

    static Placement scaled(double x, double y, double z) {
        return new Placement(x, 0, 0, 0, 0, y, 0, 0, 0, 0, z, 0);
    }

    /** Turned about z; exact for whole quarters, so that what was level stays level. */
    static Placement turned(double degrees) {
        double c = cosine(degrees);
        double s = cosine(degrees - 90);
        return new Placement(c, -s, 0, 0, s, c, 0, 0, 0, 0, 1, 0);
    }

    static double cosine(double degrees) {
        double quarter = degrees / 90;
        if (quarter == Math.rint(quarter)) {
            int k = (int) (((long) quarter % 4 + 4) % 4);
            return k == 0 ? 1 : k == 2 ? -1 : 0;
        }
        return StrictMath.cos(Math.toRadians(degrees));
    }

    /**
     * From an entity's own plane with the given normal into the world: x axis = Y x N where N is near Z, else Z x N; y
     * axis = N x x axis (DXF reference, arbitrary axis algorithm). A normal of no length counts as Z.
     */
    static Placement ofNormal(double nx, double ny, double nz) {
        double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
        if (!(length > 0)) {
            return IDENTITY;
        }
        double x = nx / length;
        double y = ny / length;
        double z = nz / length;
        boolean near = Math.abs(x) < NEAR_Z && Math.abs(y) < NEAR_Z;
        double ax = near ? z : -y;
        double ay = near ? 0 : x;
        double az = near ? -x : 0;
        double a = Math.sqrt(ax * ax + ay * ay + az * az);
        ax /= a;
        ay /= a;
        az /= a;
        double bx = y * az - z * ay;
        double by = z * ax - x * az;
        double bz = x * ay - y * ax;
        return new Placement(ax, bx, x, 0, ay, by, y, 0, az, bz, z, 0);
    }

    /** First {@code inner}, then this. */
    Placement times(Placement inner) {
        if (inner == IDENTITY) {
            return this;
        }
        if (this == IDENTITY) {
            return inner;
        }
        double[] r = new double[12];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 4; column++) {
                double sum = column == 3 ? m[4 * row + 3] : 0;
                for (int k = 0; k < 3; k++) {
                    sum += m[4 * row + k] * inner.m[4 * k + column];
                }
                r[4 * row + column] = sum;
            }
        }
        return new Placement(r);
    }

    double x(double x, double y, double z) {
        return m[0] * x + m[1] * y + m[2] * z + m[3];
    }

    double y(double x, double y, double z) {
        return m[4] * x + m[5] * y + m[6] * z + m[7];
    }

    /** x of a direction. */
    double dx(double x, double y, double z) {
        return m[0] * x + m[1] * y + m[2] * z;
    }

    /** y of a direction. */
    double dy(double x, double y, double z) {
        return m[4] * x + m[5] * y + m[6] * z;
    }

    /** Whether the plane z = 0 keeps all angles: arcs stay arcs. */
    boolean isSimilar() {
        return Conic.isRound(m[0], m[4], m[1], m[5]);
    }

    /** Whether the plane z = 0 is turned over, as seen from above. */
    boolean isMirrored() {
        return m[0] * m[5] - m[1] * m[4] < 0;
    }

    /** Whether every number is finite and within what a drawing may hold. */
    boolean isSound() {
        for (double value : m) {
            if (!(Math.abs(value) <= TagSource.LARGEST)) {
                return false;
            }
        }
        return true;
    }
}
