#include "clock.hpp"
#include "mechanism.hpp"
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <stdexcept>
#include <string>
#include <vector>

using namespace SimTK;

static const int positionCount = 41;
static const double range = 0.3; // travel either way, m
static const int sampleCount = 31;
static const double leastSample = 0.010; // s
static const double allowed = 1e-9; // m and rad, against a tight solve

// One way to run the library's projection.
struct Way {
    bool eulerAngles; // else quaternions
    int order; // start at the last position (0), or go on along a line (1), parabola (2) or cubic (3) through the last
    bool fullNewton; // refactor at each iteration
    double accuracy; // wanted of the constraints, as an infinity norm
    std::string name() const {
        const char* starts[] = {"at the neighbour", "on a line", "on a parabola", "on a cubic"};
        return std::string(eulerAngles ? "Euler angles" : "quaternions") + ", start " + starts[order]
            + (fullNewton ? ", full Newton" : "");
    }
};

static double travelAt(int i) { return -range + i * 2 * range / (positionCount - 1); }

static void solve(const Mechanism& corner, State& state, double travel, const ProjectOptions& options) {
    Vector noEstimate;
    ProjectResults results;
    state.setTime(travel);
    corner.system().realize(state, Stage::Time);
    corner.system().prescribeQ(state);
    corner.system().realize(state, Stage::Position);
    corner.system().projectQ(state, noEstimate, options, results);
}

static ProjectOptions optionsOf(const Way& way) {
    ProjectOptions options(way.accuracy);
    options.setOvershootFactor(1).setOption(ProjectOptions::UseInfinityNorm);
    if (way.fullNewton) options.setOption(ProjectOptions::ForceFullNewton);
    return options;
}

// Where a polynomial through the coordinates of the last positions, latest first, gets to one position further.
static void extrapolate(const std::vector<Vector>& last, int order, Vector& q) {
    static const double weights[4][4] = {{1}, {2, -1}, {3, -3, 1}, {4, -6, 4, -1}};
    q = weights[order][0] * last[0];
    for (int i = 1; i <= order; ++i) q += weights[order][i] * last[i];
}

// Solves up through all positions and back down, calling each(i, state) after every solve; the state starts and ends
// at position 0.
template <class Each> static void sweep(const Mechanism& corner, State& state, const Way& way, Each each) {
    const ProjectOptions options = optionsOf(way);
    std::vector<Vector> last(4, state.getQ());
    int known = 1; // positions to extrapolate from: they start again at either end of the sweep
    for (int k = 1; k < 2 * positionCount - 1; ++k) {
        const int i = k < positionCount ? k : 2 * positionCount - 2 - k;
        if (k == positionCount) known = 1;
        if (way.order > 0) extrapolate(last, std::min(way.order, known - 1), state.updQ());
        solve(corner, state, travelAt(i), options);
        if (way.order > 0) {
            std::rotate(last.begin(), last.end() - 1, last.end());
            last[0] = state.getQ();
            ++known;
        }
        each(i, state);
    }
}

// At the lowest position, reached from the design position in steps.
static State lowest(const Mechanism& corner, bool eulerAngles) {
    State state = corner.designState(eulerAngles);
    const ProjectOptions tight(1e-12);
    for (int i = positionCount / 2; i >= 0; --i) solve(corner, state, travelAt(i), tight);
    return state;
}

// Worst difference of a pose from a tight solve, m and rad.
static double worstError(const Mechanism& corner, const Way& way) {
    std::vector<Transform> exact;
    State state = lowest(corner, way.eulerAngles);
    for (int i = 0; i < positionCount; ++i) {
        solve(corner, state, travelAt(i), ProjectOptions(1e-13));
        exact.push_back(corner.spindle().getBodyTransform(state));
    }
    double worst = 0;
    State swept = lowest(corner, way.eulerAngles);
    sweep(corner, swept, way, [&](int i, const State& at) {
        const Transform& pose = corner.spindle().getBodyTransform(at);
        const double turn = (pose.R().asMat33() - exact[i].R().asMat33()).norm() / std::sqrt(2.0);
        worst = std::max({worst, turn, (pose.p() - exact[i].p()).norm()});
    });
    return worst;
}

// Least of the samples, microseconds a position.
static double microsecondsPerPosition(const Mechanism& corner, const Way& way) {
    using Clock = std::chrono::steady_clock;
    State state = lowest(corner, way.eulerAngles);
    double least = Infinity, sink = 0;
    for (int sample = 0; sample < sampleCount; ++sample) {
        long solves = 0;
        double seconds = 0;
        const Clock::time_point start = Clock::now();
        do {
            sweep(corner, state, way, [&](int, const State& at) {
                sink += corner.spindle().getBodyOriginLocation(at)[0];
                ++solves;
            });
            seconds = std::chrono::duration<double>(Clock::now() - start).count();
        } while (seconds < leastSample);
        least = std::min(least, 1e6 * seconds / solves);
    }
    if (!std::isfinite(sink)) throw std::runtime_error("a position is not a number");
    return least;
}

struct Timing {
    Way way;
    double microseconds = Infinity, error = Infinity;
};

// Over quaternions or Euler angles, where to start, and how to iterate; each at the loosest accuracy that is enough.
static Timing fastest(const Mechanism& corner, int leastOrder, int mostOrder) {
    Timing best{};
    for (const bool eulerAngles : {false, true})
        for (int order = leastOrder; order <= mostOrder; ++order)
            for (const bool fullNewton : {false, true})
                for (const double accuracy : {1e-7, 1e-8, 1e-9, 1e-10, 1e-11}) {
                    const Way way{eulerAngles, order, fullNewton, accuracy};
                    const double error = worstError(corner, way);
                    if (error > allowed) continue;
                    const double microseconds = microsecondsPerPosition(corner, way);
                    if (microseconds < best.microseconds) best = {way, microseconds, error};
                    break;
                }
    return best;
}

static void print(const Car& car, const char* start, const char* built, const Timing& timing) {
    if (!std::isfinite(timing.microseconds)) throw std::runtime_error(car.kind + ": no way is good to 1e-9");
    std::printf("{\"kind\":\"%s\",\"geometry\":\"%s\",\"start\":\"%s\",\"microsecondsPerPosition\":%.3f,"
                "\"worstPoseError\":%.1e,\"built\":\"%s\",\"way\":\"%s\",\"accuracy\":%.0e}\n",
        car.kind.c_str(), car.geometry.c_str(), start, timing.microseconds, timing.error, built,
        timing.way.name().c_str(), timing.way.accuracy);
}

// The faster of the ways to build the corner, from a range of starts.
static void timeStarts(const Car& car, const char* start, int leastOrder, int mostOrder) {
    const Timing jointed = fastest(Mechanism(car, Travel::Driven), leastOrder, mostOrder);
    if (car.kind == "h-arm") return print(car, start, "as jointed", jointed);
    const Timing lean = fastest(Mechanism(car, Travel::Driven, Build::OnHeight), leastOrder, mostOrder);
    if (lean.microseconds < jointed.microseconds) print(car, start, "five distances on the height body", lean);
    else print(car, start, "as jointed", jointed);
}

void timeCar(const Car& car) {
    timeStarts(car, "neighbour", 0, 0);
    timeStarts(car, "extrapolated", 1, 3);
}
