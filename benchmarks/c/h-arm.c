// H-arm, as in h-arm.ts: the arm's angle by Halley's method, the spindle's in closed form.
#include "cycle.h"
#include <math.h>
#include <stdlib.h>

typedef struct {
    Vec c, a, e, o, w;
    double designHeight, Pk, Pc, Ps, Qk, Qc, Qs, Sk, Sc, Ss, z0k, z0c, z0s, zck, zcc, zcs, zsk, zsc, zss, branch;
    double lowest, highest;
} HArm;

Mechanism* readHArm(Numbers* numbers) {
    HArm* h = malloc(sizeof *h);
    double* fields = (double*)h;
    for (size_t i = 0; i < sizeof *h / sizeof *fields; ++i) fields[i] = next(numbers);
    return (Mechanism*)h;
}

static const double HEIGHT_TOLERANCE = 2e-15;
static const int MOST_ITERATIONS = 60;

static void writeTwoHinges(const HArm* restrict h, double* restrict s, double ca, double sa, double aRate,
    double aAcceleration, double cb, double sb, double bRate, double bAcceleration) {
    const double ax = h->a.x, ay = h->a.y, az = h->a.z, ta = 1 - ca;
    const double m0 = ca + ta * ax * ax, m1 = ta * ax * ay - sa * az, m2 = ta * ax * az + sa * ay;
    const double m3 = ta * ax * ay + sa * az, m4 = ca + ta * ay * ay, m5 = ta * ay * az - sa * ax;
    const double m6 = ta * ax * az - sa * ay, m7 = ta * ay * az + sa * ax, m8 = ca + ta * az * az;
    const double ex = h->e.x, ey = h->e.y, ez = h->e.z, tb = 1 - cb;
    const double n0 = cb + tb * ex * ex, n1 = tb * ex * ey - sb * ez, n2 = tb * ex * ez + sb * ey;
    const double n3 = tb * ex * ey + sb * ez, n4 = cb + tb * ey * ey, n5 = tb * ey * ez - sb * ex;
    const double n6 = tb * ex * ez - sb * ey, n7 = tb * ey * ez + sb * ex, n8 = cb + tb * ez * ez;
    const double r0 = m0 * n0 + m1 * n3 + m2 * n6, r1 = m0 * n1 + m1 * n4 + m2 * n7, r2 = m0 * n2 + m1 * n5 + m2 * n8;
    const double r3 = m3 * n0 + m4 * n3 + m5 * n6, r4 = m3 * n1 + m4 * n4 + m5 * n7, r5 = m3 * n2 + m4 * n5 + m5 * n8;
    const double r6 = m6 * n0 + m7 * n3 + m8 * n6, r7 = m6 * n1 + m7 * n4 + m8 * n7, r8 = m6 * n2 + m7 * n5 + m8 * n8;
    double* r = s + ROTATION;
    r[0] = r0, r[1] = r1, r[2] = r2, r[3] = r3, r[4] = r4, r[5] = r5, r[6] = r6, r[7] = r7, r[8] = r8;
    const double ox = m0 * h->o.x + m1 * h->o.y + m2 * h->o.z;
    const double oy = m3 * h->o.x + m4 * h->o.y + m5 * h->o.z;
    const double oz = m6 * h->o.x + m7 * h->o.y + m8 * h->o.z;
    const double wx = r0 * h->w.x + r1 * h->w.y + r2 * h->w.z;
    const double wy = r3 * h->w.x + r4 * h->w.y + r5 * h->w.z;
    const double wz = r6 * h->w.x + r7 * h->w.y + r8 * h->w.z;
    const double e1x = m0 * ex + m1 * ey + m2 * ez;
    const double e1y = m3 * ex + m4 * ey + m5 * ez;
    const double e1z = m6 * ex + m7 * ey + m8 * ez;
    s[CENTRE] = h->c.x + ox + wx;
    s[CENTRE + 1] = h->c.y + oy + wy;
    s[CENTRE + 2] = h->c.z + oz + wz;
    const double px = aRate * ax + bRate * e1x, py = aRate * ay + bRate * e1y, pz = aRate * az + bRate * e1z;
    const double ab = aRate * bRate;
    const double qx = aAcceleration * ax + bAcceleration * e1x + ab * (ay * e1z - az * e1y);
    const double qy = aAcceleration * ay + bAcceleration * e1y + ab * (az * e1x - ax * e1z);
    const double qz = aAcceleration * az + bAcceleration * e1z + ab * (ax * e1y - ay * e1x);
    s[SPIN] = px, s[SPIN + 1] = py, s[SPIN + 2] = pz;
    s[SPIN_RATE] = qx, s[SPIN_RATE + 1] = qy, s[SPIN_RATE + 2] = qz;
    const double tx = ay * oz - az * oy, ty = az * ox - ax * oz, tz = ax * oy - ay * ox;
    const double vox = aRate * tx, voy = aRate * ty, voz = aRate * tz;
    const double ux = py * wz - pz * wy, uy = pz * wx - px * wz, uz = px * wy - py * wx;
    s[VELOCITY] = vox + ux, s[VELOCITY + 1] = voy + uy, s[VELOCITY + 2] = voz + uz;
    double* acceleration = s + ACCELERATION;
    acceleration[0] =
        aAcceleration * tx + aRate * (ay * voz - az * voy) + (qy * wz - qz * wy) + (py * uz - pz * uy);
    acceleration[1] =
        aAcceleration * ty + aRate * (az * vox - ax * voz) + (qz * wx - qx * wz) + (pz * ux - px * uz);
    acceleration[2] =
        aAcceleration * tz + aRate * (ax * voy - ay * vox) + (qx * wy - qy * wx) + (px * uy - py * ux);
}

int solveHArm(const Mechanism* mechanism, double travel, double* s) {
    const HArm* restrict h = (const HArm*)mechanism;
    const double target = h->designHeight + travel, ahead = travel - s[TRAVEL];
    double low = h->lowest, high = h->highest;
    double alpha = s[FIRST_ARM + 2] + ahead * (s[FIRST_ARM + 3] + 0.5 * ahead * s[FIRST_ARM + 4]);
    if (!(alpha >= low && alpha <= high)) alpha = 0.5 * (low + high);
    double ca, sa, cb, sb, b1, b2, z1, z2;
    int iteration = 0;
    for (;;) {
        ++iteration;
        ca = cos(alpha), sa = sin(alpha);
        const double P = h->Pk + h->Pc * ca + h->Ps * sa, Q = h->Qk + h->Qc * ca + h->Qs * sa;
        const double S = h->Sk + h->Sc * ca + h->Ss * sa;
        const double N = P * P + Q * Q, D = N - S * S;
        const double root = h->branch * sqrt(D > 1e-24 ? D : 1e-24), perN = 1 / N;
        cb = (P * S - Q * root) * perN;
        sb = (Q * S + P * root) * perN;
        const double dP = h->Ps * ca - h->Pc * sa, dQ = h->Qs * ca - h->Qc * sa, dS = h->Ss * ca - h->Sc * sa;
        const double perRoot = 1 / root;
        b1 = (dP * cb + dQ * sb - dS) * perRoot;
        const double Faa = (h->Pk - P) * cb + (h->Qk - Q) * sb - (h->Sk - S), Fab = dQ * cb - dP * sb;
        b2 = (Faa + b1 * (2 * Fab - b1 * S)) * perRoot;
        const double z0a = h->z0c * ca + h->z0s * sa, zca = h->zcc * ca + h->zcs * sa, zsa = h->zsc * ca + h->zss * sa;
        const double zc = h->zck + zca, zs = h->zsk + zsa;
        const double dzc = h->zcs * ca - h->zcc * sa, dzs = h->zss * ca - h->zsc * sa, zBeta = cb * zs - sb * zc;
        z1 = h->z0s * ca - h->z0c * sa + cb * dzc + sb * dzs + zBeta * b1;
        const double zAlphaBeta = cb * dzs - sb * dzc;
        z2 = -(z0a + cb * zca + sb * zsa) + b1 * (2 * zAlphaBeta - b1 * (cb * zc + sb * zs)) + zBeta * b2;
        const double miss = h->z0k + z0a + cb * zc + sb * zs - target;
        if (miss <= HEIGHT_TOLERANCE && miss >= -HEIGHT_TOLERANCE) break;
        if (miss > 0) high = alpha;
        else low = alpha;
        double next = alpha - 2 * miss * z1 / (2 * z1 * z1 - miss * z2);
        if (!(next > low && next < high)) next = 0.5 * (low + high);
        if (next == alpha || iteration >= MOST_ITERATIONS) break;
        alpha = next;
    }
    const double a1 = 1 / z1, a2 = -z2 * a1 * a1 * a1;
    writeTwoHinges(h, s, ca, sa, a1, a2, cb, sb, b1 * a1, b2 * a1 * a1 + b1 * a2);
    s[TRAVEL] = travel;
    s[FIRST_ARM] = ca, s[FIRST_ARM + 1] = sa, s[FIRST_ARM + 2] = alpha, s[FIRST_ARM + 3] = a1, s[FIRST_ARM + 4] = a2;
    return iteration;
}
