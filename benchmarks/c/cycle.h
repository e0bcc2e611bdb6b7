// Plain C twin of the engine's cycle (packages/engine/src/{linkage,cycle,driveline}): same algorithm, same outputs, same
// constants. Written to tell how fast the machine could be at best. Metres, radians; vehicle axes.
#ifndef CYCLE_H
#define CYCLE_H

#define MOST_ROD_ENDS 10
#define MOST_CARRIED 40

typedef struct { double x, y, z; } Vec;

// Offsets into a motion state, as in motion-state.ts.
enum {
    TRAVEL = 0, ROTATION = 1, CENTRE = 10, SPIN = 13, VELOCITY = 16, SPIN_RATE = 19, ACCELERATION = 22, FIRST_ARM = 25,
    SECOND_ARM = 30, QUATERNION = 35, STATE_SIZE = 39
};

// Places in a row, as in row.ts.
enum {
    WHEEL_X, WHEEL_Y, WHEEL_Z, CAMBER, TOE, CAMBER_GAIN, TOE_GAIN, CONTACT_X, CONTACT_Y, CONTACT_Z, HALF_TRACK_CHANGE,
    WHEELBASE_CHANGE, CONTACT_VELOCITY_X, CONTACT_VELOCITY_Y, CONTACT_VELOCITY_Z, FRONT_VIEW_TURN, SIDE_VIEW_TURN,
    ROLL_CENTRE_HEIGHT, SIDE_SWING_ANGLE, ANTI_SQUAT, ANTI_LIFT, SHOCK_LENGTH, MOTION_RATIO, MOTION_RATIO_SLOPE,
    SHOCK_TO_ARM, SHOCK_LEAN, INNER_JOINT_ANGLE, OUTER_JOINT_ANGLE, SHAFT_LENGTH, PLUNGE, SLIP_ENGAGEMENT, SPEED_RIPPLE,
    RIPPLE_ANGLE, STRAP_SLACK, BUMP_STOP_GAP, BUMP_STOP_LEFT, GROUND_CLEARANCE, ROD_ENDS
};

enum { ON_CHASSIS, ON_SPINDLE, ON_FIRST_ARM, ON_SECOND_ARM };

// A point carried by a body, as in carried.ts.
typedef struct { Vec base, square, quarter; } Parts;
typedef struct { int carrier; Parts parts; } Carried;

typedef struct { int place, angle; double slant; } HingeEnd;
typedef struct { int place, housing, bolt; } ArmEnd;
typedef struct { int place, centre, bolt; double cosLimit; } LinkEnd;
typedef struct { double perLength; LinkEnd first, second; double clocking; } LinkEnds;

typedef struct {
    Vec axis, designContact;
    double loadedRadius, driveLever, brakeLever;
    Carried shockUpper, shockLower;
    Vec shaftInner, outputAxis, shaftOuter, stubAxis;
    double designLength, engagement, cosPhase, sinPhase;
    int innerRipples, outerRipples;
    double now[3 * MOST_CARRIED];
    // What is carried, as in carried-list.ts.
    int pointsEnd, spindleEnd, firstArmEnd, secondArmEnd, place[MOST_CARRIED];
    Vec onSpindle[MOST_CARRIED];
    Parts onArm[MOST_CARRIED];
    int strapUpper, strapLower, base, strikes; // places in `now`
    double strapLength, reach, solid, lowest;
    int hinges, arms, links;
    HingeEnd hinge[MOST_ROD_ENDS];
    ArmEnd arm[MOST_ROD_ENDS];
    LinkEnds link[MOST_ROD_ENDS];
} Outputs;

// A file of plain doubles, read one after the other.
typedef struct { const double* at; } Numbers;
double next(Numbers* numbers);
int nextInt(Numbers* numbers);
Vec nextVec(Numbers* numbers);

typedef struct Mechanism Mechanism;
// Brings a state to a travel; gives the iterations used.
typedef int (*Solve)(const Mechanism* mechanism, double travel, double* state);

Mechanism* readHArm(Numbers* numbers);
int solveHArm(const Mechanism* mechanism, double travel, double* state);
Mechanism* readDoubleAArm(Numbers* numbers);
int solveDoubleAArm(const Mechanism* mechanism, double travel, double* state);
Mechanism* readFiveLink(Numbers* numbers);
int solveFiveLink(const Mechanism* mechanism, double travel, double* state);

void readOutputs(Outputs* outputs, Numbers* numbers);
void writeRow(Outputs* outputs, const double* state, double* row);

#endif
