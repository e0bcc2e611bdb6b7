// Five links, as in five-link.ts: Newton's method from a second-order prediction.
#include "cycle.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { WIDTH = 7, LINKS = 5 };

typedef struct {
    Vec inner[LINKS], arm[LINKS];
    double halfSquare[LINKS];
    double designHeight;
    double seed[STATE_SIZE]; // a known state next to the first travel
} FiveLink;

Mechanism* readFiveLink(Numbers* n) {
    FiveLink* five = malloc(sizeof *five);
    for (int i = 0; i < LINKS; ++i) five->inner[i] = nextVec(n);
    for (int i = 0; i < LINKS; ++i) five->arm[i] = nextVec(n);
    for (int i = 0; i < LINKS; ++i) five->halfSquare[i] = next(n);
    five->designHeight = next(n);
    for (int i = 0; i < STATE_SIZE; ++i) five->seed[i] = next(n);
    return (Mechanism*)five;
}

static const double CLOSE_ENOUGH = 1e-11, LEAST_PIVOT = 1e-5, TRUSTED_STEP = 0.025;
static const int MOST_ITERATIONS = 40;

// Solves a right-hand side in column k from the factors that `eliminate` left. The loops here have fixed lengths, so that
// the compiler unrolls them.
static inline void solveColumn(double m[LINKS][WIDTH], const double per[LINKS], int k) {
#pragma GCC unroll 5
    for (int p = 0; p < LINKS; ++p)
#pragma GCC unroll 5
        for (int r = p + 1; r < LINKS; ++r) m[r][k] -= m[r][p] * m[p][k];
#pragma GCC unroll 5
    for (int r = LINKS - 1; r >= 0; --r) {
        double rest = m[r][k];
#pragma GCC unroll 5
        for (int c = r + 1; c < LINKS; ++c) rest -= m[r][c] * m[c][k];
        m[r][k] = rest * per[r];
    }
}

// Gaussian elimination without exchange of rows, the factors kept below the diagonal, one over the pivots in `per`. A case
// that needs rows exchanged never comes up in the benchmark: it would end the program.
static inline void eliminate(double m[LINKS][WIDTH], double per[LINKS]) {
#pragma GCC unroll 5
    for (int p = 0; p < LINKS; ++p) {
        if (!(fabs(m[p][p]) > LEAST_PIVOT)) abort();
        per[p] = 1 / m[p][p];
#pragma GCC unroll 5
        for (int r = p + 1; r < LINKS; ++r) {
            const double factor = m[r][p] * per[p];
            m[r][p] = factor;
#pragma GCC unroll 5
            for (int c = p + 1; c < LINKS; ++c) m[r][c] -= factor * m[p][c];
        }
    }
}

static inline double assemble(const FiveLink* restrict five, const double* restrict s, double x, double y, double z,
    double m[LINKS][WIDTH], Vec along[LINKS], Vec reach[LINKS]) {
    const double* r = s + ROTATION;
    double largest = 0;
#pragma GCC unroll 5
    for (int i = 0; i < LINKS; ++i) {
        const Vec b = five->arm[i];
        const double rx = r[0] * b.x + r[1] * b.y + r[2] * b.z;
        const double ry = r[3] * b.x + r[4] * b.y + r[5] * b.z;
        const double rz = r[6] * b.x + r[7] * b.y + r[8] * b.z;
        const double dx = x + rx - five->inner[i].x, dy = y + ry - five->inner[i].y, dz = z + rz - five->inner[i].z;
        reach[i] = (Vec){rx, ry, rz};
        along[i] = (Vec){dx, dy, dz};
        m[i][0] = dx;
        m[i][1] = dy;
        m[i][2] = ry * dz - rz * dy;
        m[i][3] = rz * dx - rx * dz;
        m[i][4] = rx * dy - ry * dx;
        const double miss = 0.5 * (dx * dx + dy * dy + dz * dz) - five->halfSquare[i];
        m[i][5] = -miss;
        m[i][6] = -dz;
        largest = fabs(miss) > largest ? fabs(miss) : largest;
    }
    return largest;
}

static inline void turn(double* s, double vx, double vy, double vz) {
    const double half = 0.5 * sqrt(vx * vx + vy * vy + vz * vz);
    const double k = half > 1e-4 ? 0.5 * sin(half) / half : 0.5 * (1 - half * half / 6);
    const double a = cos(half), b = vx * k, c = vy * k, d = vz * k;
    double* q = s + QUATERNION;
    double w = a * q[0] - b * q[1] - c * q[2] - d * q[3];
    double i = a * q[1] + b * q[0] + c * q[3] - d * q[2];
    double j = a * q[2] - b * q[3] + c * q[0] + d * q[1];
    double n = a * q[3] + b * q[2] - c * q[1] + d * q[0];
    const double per = 1 / sqrt(w * w + i * i + j * j + n * n);
    w *= per, i *= per, j *= per, n *= per;
    q[0] = w, q[1] = i, q[2] = j, q[3] = n;
    double* r = s + ROTATION;
    r[0] = 1 - 2 * (j * j + n * n), r[1] = 2 * (i * j - w * n), r[2] = 2 * (i * n + w * j);
    r[3] = 2 * (i * j + w * n), r[4] = 1 - 2 * (i * i + n * n), r[5] = 2 * (j * n - w * i);
    r[6] = 2 * (i * n - w * j), r[7] = 2 * (j * n + w * i), r[8] = 1 - 2 * (i * i + j * j);
}

// A state's prediction is trusted where its derivatives change little on the way.
static inline int isTrusted(const double* s, double travel) {
    const double h = travel - s[TRAVEL];
    if (!(fabs(h) <= TRUSTED_STEP) || s[VELOCITY + 2] != 1) return 0;
    const double *u = s + SPIN, *a = s + SPIN_RATE;
    return h * h * (a[0] * a[0] + a[1] * a[1] + a[2] * a[2]) < 0.06 * (1 + u[0] * u[0] + u[1] * u[1] + u[2] * u[2]);
}

int solveFiveLink(const Mechanism* mechanism, double travel, double* s) {
    const FiveLink* five = (const FiveLink*)mechanism;
    if (!isTrusted(s, travel)) memcpy(s, five->seed, sizeof five->seed);
    double m[LINKS][WIDTH], per[LINKS];
    Vec along[LINKS], reach[LINKS];
    const double h = travel - s[TRAVEL], hh = 0.5 * h * h;
    double x = s[CENTRE] + h * s[VELOCITY] + hh * s[ACCELERATION];
    double y = s[CENTRE + 1] + h * s[VELOCITY + 1] + hh * s[ACCELERATION + 1];
    const double z = five->designHeight + travel;
    turn(s, h * s[SPIN] + hh * s[SPIN_RATE], h * s[SPIN + 1] + hh * s[SPIN_RATE + 1],
        h * s[SPIN + 2] + hh * s[SPIN_RATE + 2]);
    int iteration = 0, close;
    for (;;) {
        ++iteration;
        close = assemble(five, s, x, y, z, m, along, reach) < CLOSE_ENOUGH;
        eliminate(m, per);
        solveColumn(m, per, 5);
        x += m[0][5];
        y += m[1][5];
        if (close) break;
        if (iteration >= MOST_ITERATIONS) return -1;
        turn(s, m[2][5], m[3][5], m[4][5]);
    }
    solveColumn(m, per, 6);
    const double vx = m[0][6], vy = m[1][6], px = m[2][6], py = m[3][6], pz = m[4][6];
    const double tx = m[2][5], ty = m[3][5], tz = m[4][5];
#pragma GCC unroll 5
    for (int i = 0; i < LINKS; ++i) {
        const Vec r = reach[i], d = along[i];
        const double cx = py * r.z - pz * r.y, cy = pz * r.x - px * r.z, cz = px * r.y - py * r.x;
        const double ex = vx + cx, ey = vy + cy, ez = 1 + cz;
        m[i][6] = -(ex * ex + ey * ey + ez * ez + d.x * (py * cz - pz * cy) + d.y * (pz * cx - px * cz)
            + d.z * (px * cy - py * cx));
    }
    solveColumn(m, per, 6);
    turn(s, tx, ty, tz);
    s[TRAVEL] = travel;
    s[CENTRE] = x, s[CENTRE + 1] = y, s[CENTRE + 2] = z;
    s[VELOCITY] = vx, s[VELOCITY + 1] = vy, s[VELOCITY + 2] = 1;
    s[SPIN] = px, s[SPIN + 1] = py, s[SPIN + 2] = pz;
    s[ACCELERATION] = m[0][6], s[ACCELERATION + 1] = m[1][6], s[ACCELERATION + 2] = 0;
    s[SPIN_RATE] = m[2][6], s[SPIN_RATE + 1] = m[3][6], s[SPIN_RATE + 2] = m[4][6];
    return iteration;
}
