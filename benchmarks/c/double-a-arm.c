// Double A-arm and toe link, as in double-a-arm.ts: the lower arm's angle by Halley's method, the rest in closed form.
#include "cycle.h"
#include <math.h>
#include <stdlib.h>

typedef struct {
    Vec c1, a1, lAlong, lSquare, lQuarter, c2, a2, uAlong, uSquare, uQuarter;
    double uSquared, kingpin;
    Vec helper, e0, g0, k0;
    double te, tg, tk, we, wg, wk;
    Vec toeInner;
    double toeLength, designHeight, upperBranch, toeBranch, lowest, highest;
} DoubleAArm;

Mechanism* readDoubleAArm(Numbers* numbers) {
    DoubleAArm* m = malloc(sizeof *m);
    double* fields = (double*)m;
    for (size_t i = 0; i < sizeof *m / sizeof *fields; ++i) fields[i] = next(numbers);
    return (Mechanism*)m;
}

static const double HEIGHT_TOLERANCE = 2e-15;
static const int MOST_ITERATIONS = 60;

// Pose at lower-arm angle α, with derivatives by α.
static void placeByAngle(const DoubleAArm* restrict m, double alpha, double* restrict s) {
    const double ca = cos(alpha), sa = sin(alpha);
    const double lsx = ca * m->lSquare.x + sa * m->lQuarter.x;
    const double lsy = ca * m->lSquare.y + sa * m->lQuarter.y;
    const double lsz = ca * m->lSquare.z + sa * m->lQuarter.z;
    const double lvx = ca * m->lQuarter.x - sa * m->lSquare.x;
    const double lvy = ca * m->lQuarter.y - sa * m->lSquare.y;
    const double lvz = ca * m->lQuarter.z - sa * m->lSquare.z;
    const double lx = m->c1.x + m->lAlong.x + lsx;
    const double ly = m->c1.y + m->lAlong.y + lsy;
    const double lz = m->c1.z + m->lAlong.z + lsz;
    const double rx = lx - m->c2.x, ry = ly - m->c2.y, rz = lz - m->c2.z;
    const double P1 = m->uSquare.x * rx + m->uSquare.y * ry + m->uSquare.z * rz;
    const double Q1 = m->uQuarter.x * rx + m->uQuarter.y * ry + m->uQuarter.z * rz;
    const double S1 = 0.5 * (m->uSquared + rx * rx + ry * ry + rz * rz - m->kingpin * m->kingpin)
        - (m->uAlong.x * rx + m->uAlong.y * ry + m->uAlong.z * rz);
    const double N1 = P1 * P1 + Q1 * Q1, D1 = N1 - S1 * S1;
    if (!(D1 > 0)) return;
    const double root1 = m->upperBranch * sqrt(D1), perN1 = 1 / N1;
    const double cg = (P1 * S1 - Q1 * root1) * perN1, sg = (Q1 * S1 + P1 * root1) * perN1;
    const double usx = cg * m->uSquare.x + sg * m->uQuarter.x;
    const double usy = cg * m->uSquare.y + sg * m->uQuarter.y;
    const double usz = cg * m->uSquare.z + sg * m->uQuarter.z;
    const double uqx = cg * m->uQuarter.x - sg * m->uSquare.x;
    const double uqy = cg * m->uQuarter.y - sg * m->uSquare.y;
    const double uqz = cg * m->uQuarter.z - sg * m->uSquare.z;
    const double dx = m->uAlong.x + usx - rx, dy = m->uAlong.y + usy - ry, dz = m->uAlong.z + usz - rz;
    const double perUpper = 1 / (dx * uqx + dy * uqy + dz * uqz);
    const double g1 = (dx * lvx + dy * lvy + dz * lvz) * perUpper;
    const double d1x = g1 * uqx - lvx, d1y = g1 * uqy - lvy, d1z = g1 * uqz - lvz, gg = g1 * g1;
    const double g2 = -(d1x * d1x + d1y * d1y + d1z * d1z + dx * (lsx - gg * usx) + dy * (lsy - gg * usy)
        + dz * (lsz - gg * usz)) * perUpper;
    const double d2x = g2 * uqx - gg * usx + lsx, d2y = g2 * uqy - gg * usy + lsy, d2z = g2 * uqz - gg * usz + lsz;
    const double perKingpin = 1 / m->kingpin;
    const double ex = dx * perKingpin, ey = dy * perKingpin, ez = dz * perKingpin;
    const double he = m->helper.x * ex + m->helper.y * ey + m->helper.z * ez, perG = 1 / sqrt(1 - he * he);
    const double gx = (m->helper.x - he * ex) * perG;
    const double gy = (m->helper.y - he * ey) * perG;
    const double gz = (m->helper.z - he * ez) * perG;
    const double kx = ey * gz - ez * gy, ky = ez * gx - ex * gz, kz = ex * gy - ey * gx;
    const double qx = m->toeInner.x - lx, qy = m->toeInner.y - ly, qz = m->toeInner.z - lz;
    const double qe = qx * ex + qy * ey + qz * ez, qg = qx * gx + qy * gy + qz * gz, qk = qx * kx + qy * ky + qz * kz;
    const double P2 = m->tg * qg + m->tk * qk, Q2 = m->tg * qk - m->tk * qg;
    const double S2 = 0.5 * (m->te * m->te + m->tg * m->tg + m->tk * m->tk + qx * qx + qy * qy + qz * qz
        - m->toeLength * m->toeLength) - m->te * qe;
    const double N2 = P2 * P2 + Q2 * Q2, D2 = N2 - S2 * S2;
    if (!(D2 > 0)) return;
    const double root2 = m->toeBranch * sqrt(D2), perN2 = 1 / N2;
    const double cd = (P2 * S2 - Q2 * root2) * perN2, sd = (Q2 * S2 + P2 * root2) * perN2;
    const double Gx = cd * gx + sd * kx, Gy = cd * gy + sd * ky, Gz = cd * gz + sd * kz;
    const double Kx = cd * kx - sd * gx, Ky = cd * ky - sd * gy, Kz = cd * kz - sd * gz;
    const Vec e0 = m->e0, g0 = m->g0, k0 = m->k0;
    double* r = s + ROTATION;
    r[0] = ex * e0.x + Gx * g0.x + Kx * k0.x;
    r[1] = ex * e0.y + Gx * g0.y + Kx * k0.y;
    r[2] = ex * e0.z + Gx * g0.z + Kx * k0.z;
    r[3] = ey * e0.x + Gy * g0.x + Ky * k0.x;
    r[4] = ey * e0.y + Gy * g0.y + Ky * k0.y;
    r[5] = ey * e0.z + Gy * g0.z + Ky * k0.z;
    r[6] = ez * e0.x + Gz * g0.x + Kz * k0.x;
    r[7] = ez * e0.y + Gz * g0.y + Kz * k0.y;
    r[8] = ez * e0.z + Gz * g0.z + Kz * k0.z;
    const double e1x = d1x * perKingpin, e1y = d1y * perKingpin, e1z = d1z * perKingpin;
    const double ox = ey * e1z - ez * e1y, oy = ez * e1x - ex * e1z, oz = ex * e1y - ey * e1x;
    const double tx = m->te * ex + m->tg * Gx + m->tk * Kx;
    const double ty = m->te * ey + m->tg * Gy + m->tk * Ky;
    const double tz = m->te * ez + m->tg * Gz + m->tk * Kz;
    const double fx = tx - qx, fy = ty - qy, fz = tz - qz;
    const double perToe = 1 / (fx * (ey * tz - ez * ty) + fy * (ez * tx - ex * tz) + fz * (ex * ty - ey * tx));
    const double sigma = -(fx * (lvx + oy * tz - oz * ty) + fy * (lvy + oz * tx - ox * tz)
        + fz * (lvz + ox * ty - oy * tx)) * perToe;
    const double px = ox + sigma * ex, py = oy + sigma * ey, pz = oz + sigma * ez;
    const double bx = (ey * d2z - ez * d2y) * perKingpin + sigma * e1x;
    const double by = (ez * d2x - ex * d2z) * perKingpin + sigma * e1y;
    const double bz = (ex * d2y - ey * d2x) * perKingpin + sigma * e1z;
    const double tvx = py * tz - pz * ty, tvy = pz * tx - px * tz, tvz = px * ty - py * tx;
    const double vtx = lvx + tvx, vty = lvy + tvy, vtz = lvz + tvz;
    const double sigma1 = -(vtx * vtx + vty * vty + vtz * vtz
        + fx * (by * tz - bz * ty + py * tvz - pz * tvy - lsx)
        + fy * (bz * tx - bx * tz + pz * tvx - px * tvz - lsy)
        + fz * (bx * ty - by * tx + px * tvy - py * tvx - lsz)) * perToe;
    const double ax = bx + sigma1 * ex, ay = by + sigma1 * ey, az = bz + sigma1 * ez;
    const double wx = m->we * ex + m->wg * Gx + m->wk * Kx;
    const double wy = m->we * ey + m->wg * Gy + m->wk * Ky;
    const double wz = m->we * ez + m->wg * Gz + m->wk * Kz;
    const double wvx = py * wz - pz * wy, wvy = pz * wx - px * wz, wvz = px * wy - py * wx;
    s[CENTRE] = lx + wx, s[CENTRE + 1] = ly + wy, s[CENTRE + 2] = lz + wz;
    s[SPIN] = px, s[SPIN + 1] = py, s[SPIN + 2] = pz;
    s[VELOCITY] = lvx + wvx, s[VELOCITY + 1] = lvy + wvy, s[VELOCITY + 2] = lvz + wvz;
    s[SPIN_RATE] = ax, s[SPIN_RATE + 1] = ay, s[SPIN_RATE + 2] = az;
    s[ACCELERATION] = ay * wz - az * wy + py * wvz - pz * wvy - lsx;
    s[ACCELERATION + 1] = az * wx - ax * wz + pz * wvx - px * wvz - lsy;
    s[ACCELERATION + 2] = ax * wy - ay * wx + px * wvy - py * wvx - lsz;
    s[FIRST_ARM] = ca, s[FIRST_ARM + 1] = sa, s[FIRST_ARM + 2] = alpha;
    s[SECOND_ARM] = cg, s[SECOND_ARM + 1] = sg, s[SECOND_ARM + 3] = g1, s[SECOND_ARM + 4] = g2;
}

int solveDoubleAArm(const Mechanism* mechanism, double travel, double* s) {
    const DoubleAArm* m = (const DoubleAArm*)mechanism;
    const double target = m->designHeight + travel, ahead = travel - s[TRAVEL];
    double low = m->lowest, high = m->highest;
    double alpha = s[FIRST_ARM + 2] + ahead * (s[FIRST_ARM + 3] + 0.5 * ahead * s[FIRST_ARM + 4]);
    if (!(alpha >= low && alpha <= high)) alpha = 0.5 * (low + high);
    int iteration = 0;
    for (;;) {
        ++iteration;
        placeByAngle(m, alpha, s);
        const double miss = s[CENTRE + 2] - target;
        if (miss <= HEIGHT_TOLERANCE && miss >= -HEIGHT_TOLERANCE) break;
        if (miss > 0) high = alpha;
        else low = alpha;
        const double z1 = s[VELOCITY + 2];
        double next = alpha - 2 * miss * z1 / (2 * z1 * z1 - miss * s[ACCELERATION + 2]);
        if (!(next > low && next < high)) next = 0.5 * (low + high);
        if (next == alpha || iteration >= MOST_ITERATIONS) break;
        alpha = next;
    }
    const double rate = 1 / s[VELOCITY + 2], rate2 = rate * rate, acceleration = -s[ACCELERATION + 2] * rate2 * rate;
    for (int i = 0; i < 3; ++i) {
        s[SPIN_RATE + i] = s[SPIN_RATE + i] * rate2 + s[SPIN + i] * acceleration;
        s[SPIN + i] *= rate;
        s[ACCELERATION + i] = s[ACCELERATION + i] * rate2 + s[VELOCITY + i] * acceleration;
        s[VELOCITY + i] *= rate;
    }
    s[SECOND_ARM + 2] = atan2(s[SECOND_ARM + 1], s[SECOND_ARM]);
    s[SECOND_ARM + 4] = s[SECOND_ARM + 4] * rate2 + s[SECOND_ARM + 3] * acceleration;
    s[SECOND_ARM + 3] *= rate;
    s[FIRST_ARM + 3] = rate;
    s[FIRST_ARM + 4] = acceleration;
    s[TRAVEL] = travel;
    return iteration;
}
