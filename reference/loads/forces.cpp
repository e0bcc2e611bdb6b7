// Forces in a loaded corner from a general multibody library, to hold against our own free-body balance.
//
//   forces cars.txt forces.json
//
// Each corner of ../multibody/cars.txt is built of the library's bodies and constraints and brought to a travel with its
// height locked. Then it stands still: no weight, no speed, a load on its wheel, and a shock whose force is what brings the
// corner's acceleration to nothing. What joints and constraints then carry is statics, out of the library's dynamics.
#include "../multibody/car.hpp"
#include "Simbody.h"
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <memory>

using namespace SimTK;

static const double loadedRadius = 0.4; // m
enum class Turning { Rolling, Brake };

struct Load {
    Vec3 contact, centre; // N, vehicle axes
    Turning turning;
};

// A joint's force and moment on the outboard body, N and N m in vehicle axes, about a point.
struct Carried {
    std::string name;
    Vec3 about, force, moment;
};

struct Result {
    double travel, shockForce, leftOver;
    std::vector<std::pair<std::string, double>> links; // tension positive, N
    std::vector<Carried> joints;
};

static Body::Rigid someBody() { return Body::Rigid(MassProperties(1, Vec3(0), Inertia(1))); }

class Corner {
public:
    explicit Corner(const Car& car) : car_(car), matter_(system_), forces_(system_), applied_(forces_, matter_) {
        origins_.push_back(Vec3(0));
        const Rotation xToZ(UnitVec3(ZAxis), XAxis);
        height_ = MobilizedBody::Slider(
            matter_.updGround(), Transform(xToZ, car.wheelCentre), someBody(), Transform(xToZ, Vec3(0)));
        origins_.push_back(car.wheelCentre);
        if (car.kind == "h-arm") buildHArm();
        else if (car.kind == "double-a-arm") buildDoubleAArm();
        else if (car.kind == "trailing-arm") buildTrailingArm();
        else buildFiveLink();
        Constraint::PointInPlane(height_, UnitVec3(ZAxis), 0, spindle_, Vec3(0));
        const Rotation axle(car.spinAxis, ZAxis);
        wheel_ = MobilizedBody::Pin(spindle_, Transform(axle, Vec3(0)), someBody(), Transform(axle, Vec3(0)));
        origins_.push_back(car.wheelCentre);
        shockUpper_ = shockLower_ + Vec3(0.03, -0.12, 0.55);
        system_.realizeTopology();
    }

    Vec3 shockUpper() const { return shockUpper_; }
    Vec3 shockLower() const { return shockLower_; }
    const std::string& shockOn() const { return shockOn_; }

    Result carry(double travel, const Load& load) {
        State state = placed(travel);
        if (load.turning == Turning::Brake) wheel_.lock(state);
        system_.realize(state, Stage::Position);
        // The acceleration is linear in the forces: by the load alone, and by one newton of shock more.
        const double byLoad = heave(state, load, 0);
        const double byOne = heave(state, load, 1) - byLoad;
        Result result;
        result.travel = travel;
        result.shockForce = -byLoad / byOne;
        result.leftOver = std::abs(heave(state, load, result.shockForce) / byOne);
        for (const auto& rod : rods_) result.links.emplace_back(rod.first, rod.second.getRodTension(state));
        Vector_<SpatialVec> reactions;
        matter_.calcMobilizerReactionForces(state, reactions);
        for (const auto& joint : mobilizers_) {
            const MobilizedBody& body = matter_.getMobilizedBody(joint.second);
            const Vec3 origin = body.getBodyTransform(state) * body.getOutboardFrame(state).p();
            const SpatialVec& on = reactions[joint.second];
            result.joints.push_back({joint.first, origin, on[1], on[0]});
        }
        for (const auto& ball : balls_) {
            // Constraints stand on the left of the equations of motion: what acts on the body is the opposite.
            const Vector_<SpatialVec> on = ball.second.getConstrainedBodyForcesAsVector(state);
            const MobilizedBody& outer = ball.second.getMobilizedBodyFromConstrainedBody(ConstrainedBodyIndex(1));
            const SpatialVec& felt = on[1];
            result.joints.push_back({ball.first, outer.getBodyOriginLocation(state), -felt[1], -felt[0]});
        }
        return result;
    }

private:
    State placed(double travel) {
        State state = system_.getDefaultState();
        system_.realizeModel(state);
        const int steps = std::max(1, int(std::ceil(std::abs(travel) / 0.002)));
        for (int i = 1; i <= steps; ++i) {
            height_.unlock(state);
            height_.setOneQ(state, 0, travel * i / steps);
            height_.lock(state);
            system_.project(state, 1e-13);
        }
        height_.unlock(state);
        return state;
    }

    // Upward acceleration of the wheel centre per unit of the library's masses, and the state realized to it.
    double heave(State& state, const Load& load, double shock) {
        applied_.clearAllBodyForces(state);
        system_.realize(state, Stage::Position);
        const Vec3 centre = spindle_.getBodyOriginLocation(state);
        const Vec3 axis = spindle_.getBodyRotation(state) * Vec3(car_.spinAxis);
        const Vec3 down = Vec3(0, 0, -1) - axis * dot(Vec3(0, 0, -1), axis);
        const Vec3 contact = centre + down * (loadedRadius / down.norm());
        addForce(state, wheel_, contact, load.contact);
        addForce(state, wheel_, centre, load.centre);
        const MobilizedBody& lowerBody = matter_.getMobilizedBody(shockBody_);
        const Vec3 lower = lowerBody.findStationLocationInGround(state, shockLower_ - origins_.at(shockBody_));
        addForce(state, lowerBody, lower, (lower - shockUpper_) / (lower - shockUpper_).norm() * shock);
        system_.realize(state, Stage::Acceleration);
        return spindle_.getBodyOriginAcceleration(state)[2];
    }

    void addForce(State& state, const MobilizedBody& body, const Vec3& at, const Vec3& force) {
        applied_.addForceToBodyPoint(state, body, body.findStationAtGroundPoint(state, at), force);
        system_.realize(state, Stage::Position);
    }

    void buildHArm() {
        MobilizedBody arm = hinge("lowerArm.inner", matter_.updGround(), "lowerArm.innerFront", "lowerArm.innerRear",
            car_.pivot("lowerArm.innerFront"));
        ride(arm, "lower-arm", 0.5 * (car_.pivot("lowerArm.innerFront") + car_.pivot("lowerArm.outerRear")));
        spindle_ = hinge("lowerArm.outer", arm, "lowerArm.outerFront", "lowerArm.outerRear", car_.wheelCentre);
        link("upperLink", "upperLink");
    }

    void buildDoubleAArm() {
        const Vec3 lowerBall = car_.pivot("lowerArm.outer"), upperBall = car_.pivot("upperArm.outer");
        MobilizedBody lower = hinge("lowerArm.inner", matter_.updGround(), "lowerArm.innerFront", "lowerArm.innerRear",
            car_.pivot("lowerArm.innerFront"));
        MobilizedBody upper = hinge("upperArm.inner", matter_.updGround(), "upperArm.innerFront", "upperArm.innerRear",
            car_.pivot("upperArm.innerFront"));
        ride(lower, "lower-arm", 0.5 * (car_.pivot("lowerArm.innerRear") + lowerBall));
        spindle_ = MobilizedBody::Ball(
            lower, Transform(on(lower, lowerBall)), someBody(), Transform(lowerBall - car_.wheelCentre));
        origins_.push_back(car_.wheelCentre);
        mobilizers_.emplace_back("lowerArm.outer", spindle_.getMobilizedBodyIndex());
        balls_.emplace_back(
            "upperArm.outer", Constraint::Ball(upper, on(upper, upperBall), spindle_, on(spindle_, upperBall)));
        link("toeLink", "toeLink");
    }

    void buildTrailingArm() {
        spindle_ = hinge("trailingArm.pivots", matter_.updGround(), "trailingArm.inboardPivot",
            "trailingArm.outboardPivot", car_.wheelCentre);
        ride(spindle_, "trailing-arm", 0.5 * (car_.pivot("trailingArm.inboardPivot") + car_.wheelCentre));
    }

    void buildFiveLink() {
        spindle_ = MobilizedBody::Free(matter_.updGround(), Transform(car_.wheelCentre), someBody(), Transform());
        origins_.push_back(car_.wheelCentre);
        ride(spindle_, "spindle", car_.wheelCentre + Vec3(0.02, -0.1, -0.05));
        for (const std::string& name : car_.linkNames()) link(name, "links." + name);
    }

    void ride(const MobilizedBody& body, const std::string& name, const Vec3& lower) {
        shockBody_ = body.getMobilizedBodyIndex();
        shockOn_ = name;
        shockLower_ = lower;
    }

    MobilizedBody::Pin hinge(const std::string& name, MobilizedBody& parent, const std::string& frontName,
        const std::string& rearName, const Vec3& origin) {
        const Vec3 front = car_.pivot(frontName), rear = car_.pivot(rearName);
        const Rotation along(UnitVec3(front - rear), ZAxis);
        MobilizedBody::Pin body(parent, Transform(along, on(parent, front)), someBody(), Transform(along, front - origin));
        origins_.push_back(origin);
        mobilizers_.emplace_back(name, body.getMobilizedBodyIndex());
        return body;
    }

    void link(const std::string& name, const std::string& pivots) {
        const Vec3 inner = car_.pivot(pivots + ".inner"), outer = car_.pivot(pivots + ".outer");
        rods_.emplace_back(name,
            Constraint::Rod(matter_.updGround(), inner, spindle_, on(spindle_, outer), (outer - inner).norm()));
    }

    Vec3 on(const MobilizedBody& body, const Vec3& designPoint) const {
        return designPoint - origins_.at(body.getMobilizedBodyIndex());
    }

    const Car& car_;
    MultibodySystem system_;
    SimbodyMatterSubsystem matter_;
    GeneralForceSubsystem forces_;
    Force::DiscreteForces applied_;
    std::vector<Vec3> origins_;
    MobilizedBody::Slider height_;
    MobilizedBody spindle_;
    MobilizedBody::Pin wheel_;
    MobilizedBodyIndex shockBody_;
    std::string shockOn_;
    Vec3 shockLower_, shockUpper_;
    std::vector<std::pair<std::string, Constraint::Rod>> rods_;
    std::vector<std::pair<std::string, Constraint::Ball>> balls_;
    std::vector<std::pair<std::string, MobilizedBodyIndex>> mobilizers_;
};

static std::string text(double value) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.17g", value == 0 ? 0 : value);
    return buffer;
}

static std::string text(const Vec3& v) {
    return "{\"x\":" + text(v[0]) + ",\"y\":" + text(v[1]) + ",\"z\":" + text(v[2]) + "}";
}

static std::string text(const Load& load, const Result& result) {
    std::string links, joints;
    for (const auto& link : result.links)
        links += (links.empty() ? "" : ",") + ("\"" + link.first + "\":" + text(link.second));
    for (const Carried& joint : result.joints)
        joints += (joints.empty() ? "" : ",") + ("{\"name\":\"" + joint.name + "\",\"about\":" + text(joint.about)
            + ",\"force\":" + text(joint.force) + ",\"moment\":" + text(joint.moment) + "}");
    return "{\"travel\":" + text(result.travel) + ",\"contact\":" + text(load.contact) + ",\"centre\":"
        + text(load.centre) + ",\"turning\":\"" + (load.turning == Turning::Brake ? "brake" : "rolling")
        + "\",\"shockForce\":" + text(result.shockForce) + ",\"links\":{" + links + "},\"joints\":[" + joints + "]}";
}

int main(int count, char** words) {
    if (count != 3) {
        std::cerr << "usage: forces cars.txt forces.json\n";
        return 1;
    }
    try {
        const std::vector<Load> loads = {
            {Vec3(0, 0, 9000), Vec3(0), Turning::Rolling}, // straight up
            {Vec3(0, -4800, 6400), Vec3(0), Turning::Rolling}, // cornering with bump
            {Vec3(-3200, 300, 3200), Vec3(0), Turning::Brake},
            {Vec3(0, 0, 6400), Vec3(-6400, -200, 150), Turning::Rolling}, // a rock from the front
        };
        std::ofstream out(words[2]);
        out << "{\"loadedRadius\":" << text(loadedRadius) << ",\"cars\":[";
        bool first = true;
        double worst = 0;
        for (const Car& car : readCars(words[1])) {
            Corner corner(car);
            out << (first ? "\n" : ",\n") << "{\"kind\":\"" << car.kind << "\",\"geometry\":\"" << car.geometry
                << "\",\"shock\":{\"upper\":" << text(corner.shockUpper()) << ",\"lower\":" << text(corner.shockLower())
                << ",\"on\":\"" << corner.shockOn() << "\"},\"cases\":[\n";
            first = false;
            bool firstCase = true;
            for (const double travel : {-0.06, 0.0, 0.06})
                for (const Load& load : loads) {
                    const Result result = corner.carry(travel, load);
                    worst = std::max(worst, result.leftOver);
                    out << (firstCase ? "" : ",\n") << text(load, result);
                    firstCase = false;
                }
            out << "\n]}";
        }
        out << "\n]}\n";
        if (!out) throw std::runtime_error(std::string(words[2]) + ": cannot be written");
        std::printf("left over at most %.1e N of shock force\n", worst);
    } catch (const std::exception& error) {
        std::cerr << error.what() << "\n";
        return 1;
    }
    return 0;
}
