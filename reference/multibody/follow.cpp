#include "follow.hpp"
#include "mechanism.hpp"
#include <algorithm>
#include <cmath>
#include <stdexcept>

using namespace SimTK;

static const double range = 0.3; // travel either way, m
static const double spacing = 0.015; // of the recorded travels, m
static const double nearLimit[] = {0.002, 0.004, 0.008}; // extra travels, this far inside a limit, m
static const double step = 1e-3; // along the branch: square root of the sum of the squares of rates (m, rad) and travel
static const double tolerance = 1e-13; // of the projections; they try for a tenth of it

// A point of the free corner's branch. (A copied State loses its computed results, so plain numbers are kept.)
struct Point {
    Vector q; // coordinates
    Vector u; // speeds along the branch, of unit norm
    double travel; // m
    double climb; // rate of travel at those speeds
};

struct Branch {
    std::vector<Point> points; // from the design position outward
    std::optional<double> limit; // m
};

// The point that a state projects to, going on in the direction of the given speeds.
static Point pointOf(const Mechanism& corner, State& state, const Vector& along) {
    corner.system().projectQ(state, tolerance);
    state.updU() = along;
    corner.system().projectU(state, tolerance);
    const Vector u = state.getU() / state.getU().norm();
    if (~u * along < 0.9) throw std::runtime_error("the branch bends too sharply for the step");
    state.updU() = u;
    return {state.getQ(), u, corner.travelOf(state), corner.height().getU(state)};
}

static Point stepped(const Mechanism& corner, const Point& from, double distance) {
    State state = corner.designState();
    state.updQ() = from.q;
    state.updU() = from.u;
    corner.system().realize(state, Stage::Velocity);
    const Vector ahead = from.q + distance * state.getQDot();
    state.updQ() = ahead;
    return pointOf(corner, state, from.u);
}

// The design position, heading for bump (direction +1) or droop (-1).
static Point designPoint(const Mechanism& corner, double direction) {
    State state = corner.designState();
    corner.height().setU(state, direction);
    corner.system().projectU(state, tolerance);
    const Vector along = state.getU() / state.getU().norm();
    return pointOf(corner, state, along);
}

// The travel where it stops growing (or falling) between a point and the next one, by halving.
static double limitAfter(const Mechanism& corner, const Point& before, double direction) {
    double below = 0, above = step;
    for (int i = 0; i < 50; ++i) {
        const double middle = (below + above) / 2;
        (direction * stepped(corner, before, middle).climb > 0 ? below : above) = middle;
    }
    return stepped(corner, before, below).travel;
}

// direction: +1 to bump, -1 to droop.
static Branch followBranch(const Mechanism& corner, double direction) {
    Branch branch;
    branch.points.push_back(designPoint(corner, direction));
    while (direction * branch.points.back().travel < range) {
        const Point next = stepped(corner, branch.points.back(), step);
        if (direction * next.climb <= 0) {
            branch.limit = limitAfter(corner, branch.points.back(), direction);
            break;
        }
        branch.points.push_back(next);
    }
    return branch;
}

// Multiples of the spacing that lie inside the range and inside the limit, and a few close to the limit.
static std::vector<double> travelsOf(const Branch& branch, double direction) {
    const double reach = branch.limit ? std::abs(*branch.limit) : range;
    std::vector<double> travels;
    for (int i = 0; i * spacing <= range + 1e-12; ++i)
        if (!branch.limit || i * spacing <= reach - nearLimit[0]) travels.push_back(direction * i * spacing);
    if (branch.limit)
        for (const double inside : nearLimit)
            if (reach - inside <= range) travels.push_back(direction * (reach - inside));
    std::sort(travels.begin(), travels.end());
    return travels;
}

// Solves the driven corner at a travel, from a point of the free one: both have the same coordinates.
static void solve(const Mechanism& driven, State& state, const Point& from, double travel) {
    state.updQ() = from.q;
    state.setTime(travel);
    driven.system().projectQ(state, tolerance);
    Vector noEstimate;
    ProjectOptions polish(tolerance);
    polish.setOption(ProjectOptions::ForceProjection).setOption(ProjectOptions::ForceFullNewton);
    ProjectResults results;
    driven.system().projectQ(state, noEstimate, polish, results);
    driven.system().projectU(state, tolerance);
}

static double poseDifference(const Mechanism& driven, const State& a, const State& b) {
    const Transform& X_GA = driven.spindle().getBodyTransform(a);
    const Transform& X_GB = driven.spindle().getBodyTransform(b);
    const double turn = (X_GA.R().asMat33() - X_GB.R().asMat33()).norm() / std::sqrt(2.0); // small angles
    return std::max((X_GA.p() - X_GB.p()).norm(), turn);
}

static Position record(const Mechanism& driven, const Branch& branch, double travel) {
    std::size_t after = 0;
    while (after + 1 < branch.points.size() && std::abs(branch.points[after].travel) < std::abs(travel)) ++after;
    State state = driven.designState(), again = driven.designState();
    solve(driven, state, branch.points[after > 0 ? after - 1 : 0], travel);
    solve(driven, again, branch.points[after], travel);

    Position position;
    const MobilizedBody& spindle = driven.spindle();
    position.travel = driven.travelOf(state);
    position.wheelCentre = spindle.getBodyOriginLocation(state);
    position.rotation = spindle.getBodyRotation(state);
    position.wheelCentreRate = spindle.getBodyOriginVelocity(state);
    position.angularRate = spindle.getBodyAngularVelocity(state);
    position.residual = std::max(driven.closureError(state), std::abs(position.travel - travel));
    position.spread = poseDifference(driven, state, again);
    return position;
}

Cycle followCycle(const Car& car) {
    const Mechanism freeCorner(car, Travel::Free), driven(car, Travel::Driven);
    Cycle cycle;
    for (const double direction : {-1.0, 1.0}) {
        const Branch branch = followBranch(freeCorner, direction);
        (direction < 0 ? cycle.droopLimit : cycle.bumpLimit) = branch.limit;
        for (const double travel : travelsOf(branch, direction))
            if (travel != 0 || direction > 0) cycle.positions.push_back(record(driven, branch, travel));
    }
    return cycle;
}
