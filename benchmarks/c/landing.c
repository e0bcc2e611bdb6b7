// One corner's landing on even ground, the same method and the same numbers as packages/engine/src/landing:
//   landing FILE N    reads start, end, step rules and constants; prints steps, checksum and seconds a run (least of N)
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { SPRUNG, UNSPRUNG, GRAVITY, TYRE_RATE, TYRE_DAMPING, FIRST, PER_METRE, NODES, TABLE, SEAT, STRETCHES,
    BUMP_POINTS = 19, BUMP_CURVE, REBOUND_POINTS, REBOUND_CURVE, STOP_REACH, STOP_STROKE, STOP_PER_METRE, STOP_TABLE,
    STOP_SOLID, STOP_SOLID_RATE, STRAP_LENGTH, STRAP_POINTS, STRAP_CURVE, SHORTEST, LONGEST, END_RATE };
enum { OUT_SIZE = 14, STEP_SIZE = 21, NODE_SIZE = 8, STOP_PIECES = 1024 };

static double lines(int count, const double* at, double x) {
    double fromX = 0, fromY = 0, slope = 0;
    for (int i = 0; i < count; ++i, at += 2) {
        if (at[0] <= fromX) continue;
        slope = (at[1] - fromY) / (at[0] - fromX);
        if (x <= at[0]) break;
        fromX = at[0];
        fromY = at[1];
    }
    return fromY + slope * (x - fromX);
}

static void suspensionForces(const double* P, double z, double rate, double* out) {
    const double perMetre = P[PER_METRE], u = (z - P[FIRST]) * perMetre;
    const int nodes = (int)P[NODES];
    int index = (int)floor(u);
    if (index < 0) index = 0;
    if (index > nodes - 2) index = nodes - 2;
    double s = u - index, over = 0;
    if (s < 0) over = s, s = 0;
    else if (s > 1) over = s - 1, s = 1;
    const double* n = P + (int)P[TABLE] + index * NODE_SIZE;
    const double h = 1 / perMetre, s1 = s - 1;
    const double h00 = (1 + 2 * s) * s1 * s1, h10 = s * s1 * s1 * h, h01 = s * s * (3 - 2 * s), h11 = s * s * s1 * h;
    const double d00 = 6 * s * s1 * perMetre, d10 = s1 * (3 * s - 1), d11 = s * (3 * s - 2), far = over * h;
    const double lengthSlope = d00 * (n[0] - n[8]) + d10 * n[1] + d11 * n[9];
    const double length = h00 * n[0] + h10 * n[1] + h01 * n[8] + h11 * n[9] + far * lengthSlope;
    const double squeezed = P[SEAT] - length;
    double spring = 0;
    if (squeezed > 0) {
        const double* k = P + STRETCHES;
        if (squeezed >= k[3]) k += 3;
        if (squeezed >= k[3] && k < P + STRETCHES + 6) k += 3;
        spring = k[1] + k[2] * (squeezed - k[0]);
    }
    spring += h00 * n[6] + h10 * n[7] + h01 * n[14] + h11 * n[15];
    double past = 0;
    if (length < P[SHORTEST]) past = P[SHORTEST] - length;
    else if (length > P[LONGEST]) past = P[LONGEST] - length;
    const double end = P[END_RATE] * past;
    const double speed = -lengthSlope * rate, size = fabs(speed);
    const int in = speed >= 0;
    double damper = lines((int)P[in ? BUMP_POINTS : REBOUND_POINTS], P + (int)P[in ? BUMP_CURVE : REBOUND_CURVE], size);
    if (!in) damper = -damper;
    double atWheel = -lengthSlope * (spring + end + damper), stop = 0, squeeze = 0, strap = 0;
    if (P[STOP_REACH] >= 0) {
        const double gapSlope = d00 * (n[4] - n[12]) + d10 * n[5] + d11 * n[13];
        const double gap = h00 * n[4] + h10 * n[5] + h01 * n[12] + h11 * n[13] + far * gapSlope;
        squeeze = P[STOP_REACH] - gap;
        if (squeeze > 0) {
            const double stroke = P[STOP_STROKE];
            if (squeeze >= stroke) stop = P[STOP_SOLID] + P[STOP_SOLID_RATE] * (squeeze - stroke);
            else {
                const double v = squeeze * P[STOP_PER_METRE];
                int piece = (int)floor(v);
                if (piece > STOP_PIECES - 1) piece = STOP_PIECES - 1;
                const double* p = P + (int)P[STOP_TABLE] + piece;
                stop = p[0] + (v - piece) * (p[1] - p[0]);
            }
            atWheel -= gapSlope * stop;
        }
    }
    if (P[STRAP_LENGTH] >= 0) {
        const double apartSlope = d00 * (n[2] - n[10]) + d10 * n[3] + d11 * n[11];
        const double apart = h00 * n[2] + h10 * n[3] + h01 * n[10] + h11 * n[11] + far * apartSlope;
        const double stretch = apart - P[STRAP_LENGTH];
        if (stretch > 0) {
            strap = lines((int)P[STRAP_POINTS], P + (int)P[STRAP_CURVE], stretch);
            atWheel += apartSlope * strap;
        }
    }
    out[2] = damper * speed;
    out[5] = spring + end;
    out[6] = damper;
    out[7] = stop;
    out[8] = strap;
    out[9] = atWheel;
    out[10] = length;
    out[11] = speed;
    out[12] = squeeze;
    out[13] = past;
}

static void cornerRates(const double* P, double body, double bodySpeed, double wheel, double wheelSpeed, double road,
    double roadRate, int isDown, double* out) {
    suspensionForces(P, wheel - body, wheelSpeed - bodySpeed, out);
    const double pressed = road - wheel;
    double tyre = 0, lost = 0;
    if (isDown && pressed > 0) {
        const double pressing = roadRate - wheelSpeed, elastic = P[TYRE_RATE] * pressed;
        tyre = elastic + P[TYRE_DAMPING] * pressing;
        if (tyre < 0) tyre = 0;
        lost = (tyre - elastic) * pressing - tyre * roadRate;
    }
    out[0] = out[9] / P[SPRUNG] - P[GRAVITY];
    out[1] = (tyre - out[9]) / P[UNSPRUNG] - P[GRAVITY];
    out[3] = lost;
    out[4] = tyre;
}

static int run(const double* P, const double* start, double until, double error, double longest, double* path) {
    double out[OUT_SIZE], time = 0, body = start[0], bodySpeed = start[1], wheel = start[2], wheelSpeed = start[3];
    double damperWork = 0, tyreWork = 0, next = 1e-4;
    const double byHeight = 1 / error, bySpeed = byHeight / 100;
    int steps = 0, isDown = -wheel > 0, tries = 0;
#define KEEP \
    do { \
        double* to = path + steps++ * STEP_SIZE; \
        to[0] = time, to[1] = body, to[2] = bodySpeed, to[3] = wheel, to[4] = wheelSpeed; \
        to[5] = damperWork, to[6] = tyreWork; \
        for (int i = 0; i < OUT_SIZE; ++i) to[7 + i] = out[i]; \
    } while (0)
    cornerRates(P, body, bodySpeed, wheel, wheelSpeed, 0, 0, isDown, out);
    KEEP;
    double a1 = out[0], b1 = out[1], p1 = out[2], q1 = out[3];
    while (time < until) {
        double h = next;
        if (h > longest) h = longest;
        if (time + h > until) h = until - time;
        const double v1 = bodySpeed, u1 = wheelSpeed;
        const double v2 = bodySpeed + h * ((1.0 / 5) * a1);
        const double u2 = wheelSpeed + h * ((1.0 / 5) * b1);
        const double y2 = body + h * ((1.0 / 5) * v1);
        const double w2 = wheel + h * ((1.0 / 5) * u1);
        cornerRates(P, y2, v2, w2, u2, 0, 0, isDown, out);
        const double a2 = out[0], b2 = out[1];
        const double v3 = bodySpeed + h * ((3.0 / 40) * a1 + (9.0 / 40) * a2);
        const double u3 = wheelSpeed + h * ((3.0 / 40) * b1 + (9.0 / 40) * b2);
        const double y3 = body + h * ((3.0 / 40) * v1 + (9.0 / 40) * v2);
        const double w3 = wheel + h * ((3.0 / 40) * u1 + (9.0 / 40) * u2);
        cornerRates(P, y3, v3, w3, u3, 0, 0, isDown, out);
        const double a3 = out[0], b3 = out[1], p3 = out[2], q3 = out[3];
        const double v4 = bodySpeed + h * ((44.0 / 45) * a1 - (56.0 / 15) * a2 + (32.0 / 9) * a3);
        const double u4 = wheelSpeed + h * ((44.0 / 45) * b1 - (56.0 / 15) * b2 + (32.0 / 9) * b3);
        const double y4 = body + h * ((44.0 / 45) * v1 - (56.0 / 15) * v2 + (32.0 / 9) * v3);
        const double w4 = wheel + h * ((44.0 / 45) * u1 - (56.0 / 15) * u2 + (32.0 / 9) * u3);
        cornerRates(P, y4, v4, w4, u4, 0, 0, isDown, out);
        const double a4 = out[0], b4 = out[1], p4 = out[2], q4 = out[3];
        const double v5 = bodySpeed + h * ((19372.0 / 6561) * a1 - (25360.0 / 2187) * a2 + (64448.0 / 6561) * a3 - (212.0 / 729) * a4);
        const double u5 = wheelSpeed + h * ((19372.0 / 6561) * b1 - (25360.0 / 2187) * b2 + (64448.0 / 6561) * b3 - (212.0 / 729) * b4);
        const double y5 = body + h * ((19372.0 / 6561) * v1 - (25360.0 / 2187) * v2 + (64448.0 / 6561) * v3 - (212.0 / 729) * v4);
        const double w5 = wheel + h * ((19372.0 / 6561) * u1 - (25360.0 / 2187) * u2 + (64448.0 / 6561) * u3 - (212.0 / 729) * u4);
        cornerRates(P, y5, v5, w5, u5, 0, 0, isDown, out);
        const double a5 = out[0], b5 = out[1], p5 = out[2], q5 = out[3];
        const double v6 = bodySpeed + h * ((9017.0 / 3168) * a1 - (355.0 / 33) * a2 + (46732.0 / 5247) * a3 + (49.0 / 176) * a4 - (5103.0 / 18656) * a5);
        const double u6 = wheelSpeed + h * ((9017.0 / 3168) * b1 - (355.0 / 33) * b2 + (46732.0 / 5247) * b3 + (49.0 / 176) * b4 - (5103.0 / 18656) * b5);
        const double y6 = body + h * ((9017.0 / 3168) * v1 - (355.0 / 33) * v2 + (46732.0 / 5247) * v3 + (49.0 / 176) * v4 - (5103.0 / 18656) * v5);
        const double w6 = wheel + h * ((9017.0 / 3168) * u1 - (355.0 / 33) * u2 + (46732.0 / 5247) * u3 + (49.0 / 176) * u4 - (5103.0 / 18656) * u5);
        cornerRates(P, y6, v6, w6, u6, 0, 0, isDown, out);
        const double a6 = out[0], b6 = out[1], p6 = out[2], q6 = out[3];
        const double v7 = bodySpeed + h * ((35.0 / 384) * a1 + (500.0 / 1113) * a3 + (125.0 / 192) * a4 - (2187.0 / 6784) * a5 + (11.0 / 84) * a6);
        const double u7 = wheelSpeed + h * ((35.0 / 384) * b1 + (500.0 / 1113) * b3 + (125.0 / 192) * b4 - (2187.0 / 6784) * b5 + (11.0 / 84) * b6);
        const double y7 = body + h * ((35.0 / 384) * v1 + (500.0 / 1113) * v3 + (125.0 / 192) * v4 - (2187.0 / 6784) * v5 + (11.0 / 84) * v6);
        const double w7 = wheel + h * ((35.0 / 384) * u1 + (500.0 / 1113) * u3 + (125.0 / 192) * u4 - (2187.0 / 6784) * u5 + (11.0 / 84) * u6);
        cornerRates(P, y7, v7, w7, u7, 0, 0, isDown, out);
        const double a7 = out[0], b7 = out[1], p7 = out[2], q7 = out[3];
        const double offBody = h * ((71.0 / 57600) * v1 - (71.0 / 16695) * v3 + (71.0 / 1920) * v4 - (17253.0 / 339200) * v5 + (22.0 / 525) * v6 - (1.0 / 40) * v7) * byHeight;
        const double offWheel = h * ((71.0 / 57600) * u1 - (71.0 / 16695) * u3 + (71.0 / 1920) * u4 - (17253.0 / 339200) * u5 + (22.0 / 525) * u6 - (1.0 / 40) * u7) * byHeight;
        const double offBodySpeed = h * ((71.0 / 57600) * a1 - (71.0 / 16695) * a3 + (71.0 / 1920) * a4 - (17253.0 / 339200) * a5 + (22.0 / 525) * a6 - (1.0 / 40) * a7) * bySpeed;
        const double offWheelSpeed = h * ((71.0 / 57600) * b1 - (71.0 / 16695) * b3 + (71.0 / 1920) * b4 - (17253.0 / 339200) * b5 + (22.0 / 525) * b6 - (1.0 / 40) * b7) * bySpeed;
        const double off = sqrt((offBody * offBody + offWheel * offWheel + offBodySpeed * offBodySpeed
            + offWheelSpeed * offWheelSpeed) / 4);
        const double change = off > 0.18 * 0.18 * 0.18 * 0.18 * 0.18 ? fmax(0.2, 0.9 * pow(off, -0.2)) : 5;
        if (off > 1 && h > 1e-13) {
            next = h * fmin(1, change);
            continue;
        }
        const double pressed = -w7;
        if (!isDown && pressed > 1e-12 && tries < 40) {
            ++tries;
            next = (h * (wheel + 5e-13)) / (wheel + pressed);
            if (next > 1e-13) continue;
        }
        time += h;
        body = y7, bodySpeed = v7, wheel = w7, wheelSpeed = u7;
        damperWork += h * ((35.0 / 384) * p1 + (500.0 / 1113) * p3 + (125.0 / 192) * p4 - (2187.0 / 6784) * p5 + (11.0 / 84) * p6);
        tyreWork += h * ((35.0 / 384) * q1 + (500.0 / 1113) * q3 + (125.0 / 192) * q4 - (2187.0 / 6784) * q5 + (11.0 / 84) * q6);
        next = h * change;
        tries = 0;
        if (isDown != (pressed > 0)) {
            isDown = !isDown;
            cornerRates(P, body, bodySpeed, wheel, wheelSpeed, 0, 0, isDown, out);
            a1 = out[0], b1 = out[1], p1 = out[2], q1 = out[3];
            next = 1e-4;
        } else a1 = a7, b1 = b7, p1 = p7, q1 = q7;
        KEEP;
    }
    return steps;
}

int main(int count, char** words) {
    FILE* file = count == 3 ? fopen(words[1], "rb") : NULL;
    if (!file) return 1;
    static double numbers[100000], path[STEP_SIZE * 100000];
    if (fread(numbers, sizeof(double), 100000, file) < 8) return 1;
    fclose(file);
    const double* P = numbers + 7;
    double least = 1e9;
    int steps = 0;
    for (int n = 0; n < atoi(words[2]); ++n) {
        struct timespec start, end;
        clock_gettime(CLOCK_MONOTONIC, &start);
        steps = run(P, numbers, numbers[4], numbers[5], numbers[6], path);
        clock_gettime(CLOCK_MONOTONIC, &end);
        const double seconds = end.tv_sec - start.tv_sec + 1e-9 * (end.tv_nsec - start.tv_nsec);
        if (seconds < least) least = seconds;
    }
    // The motion itself, as far as step sizes let two programs agree: the last state and the greatest forces.
    double most[3] = {0, 0, 0};
    for (int i = 0; i < steps; ++i)
        for (int k = 0; k < 3; ++k) most[k] = fmax(most[k], path[i * STEP_SIZE + (int[]){11, 12, 14}[k]]);
    const double* last = path + (steps - 1) * STEP_SIZE;
    printf("%d %.17g %.17g %.17g %.17g %.17g %.9g\n", steps, last[1], last[3], most[0], most[1], most[2], least);
    return 0;
}
