// The row of one position: wheel attitude, shock, shaft, stops, rod ends.
#include "cycle.h"
#include <math.h>

static Parts nextParts(Numbers* n) {
    const Vec base = nextVec(n), square = nextVec(n), quarter = nextVec(n);
    return (Parts){base, square, quarter};
}

static Carried nextCarried(Numbers* n) {
    const int carrier = nextInt(n);
    return (Carried){carrier, nextParts(n)};
}

static LinkEnd nextLinkEnd(Numbers* n) {
    LinkEnd end;
    end.place = nextInt(n);
    end.centre = nextInt(n);
    end.bolt = nextInt(n);
    end.cosLimit = next(n);
    return end;
}

void readOutputs(Outputs* o, Numbers* n) {
    o->axis = nextVec(n);
    o->designContact = nextVec(n);
    o->loadedRadius = next(n);
    o->driveLever = next(n);
    o->brakeLever = next(n);
    o->shockUpper = nextCarried(n);
    o->shockLower = nextCarried(n);
    o->shaftInner = nextVec(n);
    o->outputAxis = nextVec(n);
    o->shaftOuter = nextVec(n);
    o->stubAxis = nextVec(n);
    o->designLength = next(n);
    o->engagement = next(n);
    o->cosPhase = next(n);
    o->sinPhase = next(n);
    o->innerRipples = nextInt(n);
    o->outerRipples = nextInt(n);
    const int carried = nextInt(n);
    for (int i = 0; i < carried; ++i) o->now[i] = next(n);
    o->pointsEnd = nextInt(n);
    o->spindleEnd = nextInt(n);
    o->firstArmEnd = nextInt(n);
    o->secondArmEnd = nextInt(n);
    for (int i = 0; i < o->secondArmEnd; ++i) o->place[i] = nextInt(n);
    for (int i = 0; i < o->spindleEnd; ++i) o->onSpindle[i] = nextVec(n);
    for (int i = o->spindleEnd; i < o->secondArmEnd; ++i) o->onArm[i] = nextParts(n);
    o->strapUpper = nextInt(n);
    o->strapLower = nextInt(n);
    o->strapLength = next(n);
    o->base = nextInt(n);
    o->strikes = nextInt(n);
    o->reach = next(n);
    o->solid = next(n);
    o->lowest = next(n);
    o->hinges = nextInt(n);
    for (int i = 0; i < o->hinges; ++i) {
        o->hinge[i].place = nextInt(n);
        o->hinge[i].angle = nextInt(n);
        o->hinge[i].slant = next(n);
    }
    o->arms = nextInt(n);
    for (int i = 0; i < o->arms; ++i) {
        o->arm[i].place = nextInt(n);
        o->arm[i].housing = nextInt(n);
        o->arm[i].bolt = nextInt(n);
    }
    o->links = nextInt(n);
    for (int i = 0; i < o->links; ++i) {
        o->link[i].perLength = next(n);
        o->link[i].first = nextLinkEnd(n);
        o->link[i].second = nextLinkEnd(n);
        o->link[i].clocking = next(n);
    }
}

static inline Vec minus(Vec a, Vec b) { return (Vec){a.x - b.x, a.y - b.y, a.z - b.z}; }
static inline Vec plus(Vec a, Vec b) { return (Vec){a.x + b.x, a.y + b.y, a.z + b.z}; }
static inline Vec times(Vec a, double f) { return (Vec){a.x * f, a.y * f, a.z * f}; }
static inline double dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static inline double size(Vec a) { return sqrt(dot(a, a)); }
static inline Vec cross(Vec a, Vec b) {
    return (Vec){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
static inline Vec at(const double* s, int offset) { return (Vec){s[offset], s[offset + 1], s[offset + 2]}; }
static inline Vec turned(const double* s, Vec v) {
    const double* r = s + ROTATION;
    return (Vec){r[0] * v.x + r[1] * v.y + r[2] * v.z, r[3] * v.x + r[4] * v.y + r[5] * v.z,
        r[6] * v.x + r[7] * v.y + r[8] * v.z};
}

typedef struct { Vec position, velocity, acceleration; } Motion;

static inline Motion motionOf(const Carried* c, const double* s) {
    const Parts* parts = &c->parts;
    Motion m;
    if (c->carrier == ON_CHASSIS) return (Motion){parts->base, {0, 0, 0}, {0, 0, 0}};
    if (c->carrier == ON_SPINDLE) {
        const Vec r = turned(s, parts->base), p = at(s, SPIN), v = cross(p, r);
        m.position = plus(at(s, CENTRE), r);
        m.velocity = plus(at(s, VELOCITY), v);
        m.acceleration = plus(at(s, ACCELERATION), plus(cross(at(s, SPIN_RATE), r), cross(p, v)));
        return m;
    }
    const double* arm = s + (c->carrier == ON_FIRST_ARM ? FIRST_ARM : SECOND_ARM);
    const Vec r = plus(times(parts->square, arm[0]), times(parts->quarter, arm[1]));
    const Vec t = minus(times(parts->quarter, arm[0]), times(parts->square, arm[1]));
    m.position = plus(parts->base, r);
    m.velocity = times(t, arm[3]);
    m.acceleration = minus(times(t, arm[4]), times(r, arm[3] * arm[3]));
    return m;
}

static inline void put(double* now, int place, Vec v) { now[place] = v.x, now[place + 1] = v.y, now[place + 2] = v.z; }

static void carryAll(Outputs* restrict o, const double* restrict s) {
    const Vec centre = at(s, CENTRE), none = {0, 0, 0};
    for (int i = 0; i < o->spindleEnd; ++i)
        put(o->now, o->place[i], plus(i < o->pointsEnd ? centre : none, turned(s, o->onSpindle[i])));
    for (int i = o->spindleEnd; i < o->secondArmEnd; ++i) {
        const double* arm = s + (i < o->firstArmEnd ? FIRST_ARM : SECOND_ARM);
        const Parts* p = &o->onArm[i];
        put(o->now, o->place[i], plus(p->base, plus(times(p->square, arm[0]), times(p->quarter, arm[1]))));
    }
}

static inline double limit(double value) { return value < -1 ? -1 : value > 1 ? 1 : value; }

static void writeAttitude(const Outputs* o, const double* s, double* row) {
    const Vec axis = turned(s, o->axis), p = at(s, SPIN), w = at(s, CENTRE), v = at(s, VELOCITY);
    const double level2 = axis.x * axis.x + axis.y * axis.y, level = sqrt(level2);
    const Vec d = cross(p, axis);
    row[CAMBER] = -atan(axis.z / level);
    row[TOE] = atan2(axis.x, axis.y);
    row[CAMBER_GAIN] = -d.z / level;
    row[TOE_GAIN] = (d.x * axis.y - d.y * axis.x) / level2;
    const double k = o->loadedRadius / level;
    const Vec r = {k * axis.x * axis.z, k * axis.y * axis.z, -k * level2};
    const Vec c = plus(w, r);
    row[WHEEL_X] = w.x;
    row[WHEEL_Y] = w.y;
    row[WHEEL_Z] = w.z;
    row[CONTACT_X] = c.x;
    row[CONTACT_Y] = c.y;
    row[CONTACT_Z] = c.z;
    row[HALF_TRACK_CHANGE] = c.y - o->designContact.y;
    row[WHEELBASE_CHANGE] = o->designContact.x - c.x;
    const Vec cv = plus(v, cross(p, r));
    row[CONTACT_VELOCITY_X] = cv.x;
    row[CONTACT_VELOCITY_Y] = cv.y;
    row[CONTACT_VELOCITY_Z] = cv.z;
    row[FRONT_VIEW_TURN] = p.x;
    row[SIDE_VIEW_TURN] = p.y;
    row[ROLL_CENTRE_HEIGHT] = c.y * cv.y / cv.z;
    row[SIDE_SWING_ANGLE] = atan2(-cv.x, cv.z);
    row[ANTI_SQUAT] = -v.x / v.z * o->driveLever;
    row[ANTI_LIFT] = -cv.x / cv.z * o->brakeLever;
}

static void writeShock(const Outputs* o, const double* s, double* row) {
    const Motion upper = motionOf(&o->shockUpper, s), lower = motionOf(&o->shockLower, s);
    const Vec d = minus(upper.position, lower.position), v = minus(upper.velocity, lower.velocity);
    const double length = size(d), per = 1 / length, rate = dot(d, v) * per;
    row[SHOCK_LENGTH] = length;
    row[MOTION_RATIO] = -rate;
    row[MOTION_RATIO_SLOPE] =
        -((dot(v, v) - rate * rate) * per + dot(d, minus(upper.acceleration, lower.acceleration)) * per);
    row[SHOCK_LEAN] = atan2(sqrt(d.x * d.x + d.y * d.y), d.z);
    if (o->shockLower.carrier >= ON_FIRST_ARM) {
        const Vec a = minus(lower.position, o->shockLower.parts.base);
        row[SHOCK_TO_ARM] = acos(limit(-dot(d, a) * per / size(a)));
        return;
    }
    const double speed = size(v);
    row[SHOCK_TO_ARM] = speed > 0 ? asin(limit(fabs(rate) / speed)) : 0;
}

static void writeShaft(const Outputs* o, const double* s, double* row) {
    const Vec g = o->outputAxis;
    const Vec d = minus(plus(at(s, CENTRE), turned(s, o->shaftOuter)), o->shaftInner);
    const Vec stub = turned(s, o->stubAxis);
    const double length = size(d);
    const Vec m = cross(g, d), n = cross(d, stub);
    const double alongInner = dot(g, d), alongOuter = dot(stub, d);
    row[INNER_JOINT_ANGLE] = atan2(size(m), alongInner);
    row[OUTER_JOINT_ANGLE] = atan2(size(n), alongOuter);
    row[SHAFT_LENGTH] = length;
    row[PLUNGE] = length - o->designLength;
    row[SLIP_ENGAGEMENT] = o->engagement - row[PLUNGE];
    if (!o->innerRipples && !o->outerRipples) {
        row[SPEED_RIPPLE] = 0;
        row[RIPPLE_ANGLE] = 0;
        return;
    }
    const double along = dot(m, n) * length, across = dot(cross(m, n), d), both = sqrt(along * along + across * across);
    const double cosBetween = both > 0 ? along / both : 1, sinBetween = both > 0 ? across / both : 0;
    const double t = cosBetween * o->cosPhase + sinBetween * o->sinPhase;
    const double c = -(sinBetween * o->cosPhase - cosBetween * o->sinPhase);
    const double c1 = o->innerRipples ? 1 / (alongInner / length) : 1;
    const double c2 = o->outerRipples ? 1 / (alongOuter / length) : 1;
    const double m00 = c, m01 = -t * c1, m10 = t * c2, m11 = c * c1 * c2;
    const double p = sqrt((m00 + m11) * (m00 + m11) + (m10 - m01) * (m10 - m01));
    const double q = sqrt((m00 - m11) * (m00 - m11) + (m10 + m01) * (m10 + m01));
    row[SPEED_RIPPLE] = 4 * p * q / (p * p - q * q);
    row[RIPPLE_ANGLE] = 2 * atan(sqrt(q / p));
}

static inline double apart(const Outputs* o, int a, int b) { return size(minus(at(o->now, a), at(o->now, b))); }

static void writeStops(const Outputs* o, double* row) {
    row[STRAP_SLACK] = o->strapLength - apart(o, o->strapUpper, o->strapLower);
    const double gap = apart(o, o->base, o->strikes);
    row[BUMP_STOP_GAP] = gap - o->reach;
    row[BUMP_STOP_LEFT] = gap - o->solid;
    row[GROUND_CLEARANCE] = o->lowest - row[CONTACT_Z];
}

static const double PI = 3.14159265358979323846;
static inline double asLine(double angle) { return angle > 0.5 * PI ? angle - PI : angle < -0.5 * PI ? angle + PI : angle; }
static inline double positive(double value) { return value > 0 ? value : 0; }

static void writeLinkEnds(const LinkEnds* r, const double* now, double* row) {
    const Vec from = at(now, r->first.centre), a = at(now, r->first.bolt), b = at(now, r->second.bolt);
    const Vec l = times(minus(at(now, r->second.centre), from), r->perLength);
    const double along1 = dot(a, l), along2 = dot(b, l);
    const double cos1 = sqrt(positive(1 - along1 * along1)), cos2 = sqrt(positive(1 - along2 * along2));
    const double across = dot(cross(a, b), l), level = dot(a, b) - along1 * along2;
    const double turn = asLine((across == 0 ? 0 : atan(across / level)) - r->clocking);
    const double room1 = cos1 > r->first.cosLimit ? acos(r->first.cosLimit / cos1) : 0;
    const double room2 = cos2 > r->second.cosLimit ? acos(r->second.cosLimit / cos2) : 0;
    const double room = room1 + room2, turn1 = room > 0 ? turn * room1 / room : 0.5 * turn;
    const double side1 = cos1 * sin(turn1), side2 = cos2 * sin(turn - turn1);
    row[r->first.place] = asin(limit(sqrt(along1 * along1 + side1 * side1)));
    row[r->second.place] = asin(limit(sqrt(along2 * along2 + side2 * side2)));
}

static void writeRodEnds(const Outputs* o, const double* s, double* row) {
    for (int i = 0; i < o->hinges; ++i) {
        const double tilt = 2 * asin(o->hinge[i].slant * fabs(sin(0.5 * s[o->hinge[i].angle])));
        row[o->hinge[i].place] = tilt < PI - tilt ? tilt : PI - tilt;
    }
    for (int i = 0; i < o->arms; ++i) {
        const Vec a = at(o->now, o->arm[i].housing), b = at(o->now, o->arm[i].bolt);
        row[o->arm[i].place] = atan(size(cross(a, b)) / fabs(dot(a, b)));
    }
    for (int i = 0; i < o->links; ++i) writeLinkEnds(&o->link[i], o->now, row);
}

void writeRow(Outputs* outputs, const double* state, double* row) {
    carryAll(outputs, state);
    writeAttitude(outputs, state, row);
    writeShock(outputs, state, row);
    writeShaft(outputs, state, row);
    writeStops(outputs, row);
    writeRodEnds(outputs, state, row);
}
