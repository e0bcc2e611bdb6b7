#include "mechanism.hpp"
#include <algorithm>
#include <cmath>
#include <stdexcept>

using namespace SimTK;

// Any mass does: positions and velocities do not depend on it.
static Body::Rigid someBody() { return Body::Rigid(MassProperties(1, Vec3(0), Inertia(1))); }

// Travel = time, so a velocity is per metre of travel.
class TravelIsTime : public Motion::Custom::Implementation {
public:
    Implementation* clone() const override { return new TravelIsTime(*this); }
    Motion::Level getLevel(const State&) const override { return Motion::Position; }
    void calcPrescribedPosition(const State& state, int, Real* q) const override { q[0] = state.getTime(); }
    void calcPrescribedPositionDot(const State&, int, Real* qdot) const override { qdot[0] = 1; }
    void calcPrescribedPositionDotDot(const State&, int, Real* qdotdot) const override { qdotdot[0] = 0; }
};

Mechanism::Mechanism(const Car& car, Travel travel, Build build) : matter_(system_), wheelCentre_(car.wheelCentre) {
    origins_.push_back(Vec3(0)); // ground is the chassis
    addHeight(travel);
    if (build == Build::OnHeight) buildOnHeight(car);
    else if (car.kind == "h-arm") buildHArm(car);
    else if (car.kind == "double-a-arm") buildDoubleAArm(car);
    else if (car.kind == "trailing-arm") buildTrailingArm(car);
    else if (car.kind == "five-link") buildFiveLink(car);
    else throw std::runtime_error("no such kind: " + car.kind);
    if (build == Build::AsJointed) keepSpindleAtHeight();
    system_.realizeTopology();
}

State Mechanism::designState(bool eulerAngles) const {
    State state = system_.getDefaultState();
    matter_.setUseEulerAngles(state, eulerAngles);
    system_.realizeModel(state);
    return state;
}

double Mechanism::travelOf(const State& state) const {
    return spindle_.getBodyOriginLocation(state)[2] - wheelCentre_[2];
}

double Mechanism::closureError(const State& state) const {
    double worst = 0;
    for (const Member& member : members_) {
        const Vec3 a = matter_.getMobilizedBody(member.bodyA).findStationLocationInGround(state, member.pointA);
        const Vec3 b = matter_.getMobilizedBody(member.bodyB).findStationLocationInGround(state, member.pointB);
        worst = std::max(worst, std::abs((b - a).norm() - member.length));
    }
    return worst;
}

// Lower arm: a body with a hinge at each end. Upper link: a distance.
void Mechanism::buildHArm(const Car& car) {
    const Vec3 innerFront = car.pivot("lowerArm.innerFront"), innerRear = car.pivot("lowerArm.innerRear");
    MobilizedBody arm = hinge(matter_.updGround(), innerFront, innerRear, innerFront);
    spindle_ = hinge(arm, car.pivot("lowerArm.outerFront"), car.pivot("lowerArm.outerRear"), wheelCentre_);
    addLink(car.pivot("upperLink.inner"), car.pivot("upperLink.outer"));
}

// The spindle rides on the lower arm's ball; the upper arm is closed onto it by a ball, the toe link by a distance.
void Mechanism::buildDoubleAArm(const Car& car) {
    const Vec3 lowerFront = car.pivot("lowerArm.innerFront"), lowerBall = car.pivot("lowerArm.outer");
    const Vec3 upperFront = car.pivot("upperArm.innerFront"), upperBall = car.pivot("upperArm.outer");
    MobilizedBody lowerArm = hinge(matter_.updGround(), lowerFront, car.pivot("lowerArm.innerRear"), lowerFront);
    MobilizedBody upperArm = hinge(matter_.updGround(), upperFront, car.pivot("upperArm.innerRear"), upperFront);
    spindle_ = MobilizedBody::Ball(
        lowerArm, Transform(on(lowerArm, lowerBall)), someBody(), Transform(lowerBall - wheelCentre_));
    origins_.push_back(wheelCentre_);
    Constraint::Ball(upperArm, on(upperArm, upperBall), spindle_, on(spindle_, upperBall));
    addMember(lowerArm, spindle_, lowerBall, lowerBall);
    addMember(upperArm, spindle_, upperBall, upperBall);
    addLink(car.pivot("toeLink.inner"), car.pivot("toeLink.outer"));
}

void Mechanism::buildTrailingArm(const Car& car) {
    spindle_ = hinge(matter_.updGround(), car.pivot("trailingArm.inboardPivot"),
        car.pivot("trailingArm.outboardPivot"), wheelCentre_);
}

void Mechanism::buildFiveLink(const Car& car) {
    spindle_ = MobilizedBody::Free(matter_.updGround(), Transform(wheelCentre_), someBody(), Transform());
    origins_.push_back(wheelCentre_);
    addFiveLinks(car);
}

void Mechanism::addFiveLinks(const Car& car) {
    for (const std::string& name : car.linkNames())
        addLink(car.pivot("links." + name + ".inner"), car.pivot("links." + name + ".outer"));
}

// Along x and y and about z by one mobilizer, about x and y by another; five distances.
void Mechanism::buildOnHeight(const Car& car) {
    MobilizedBody::Planar carrier(height_, Transform(), someBody(), Transform());
    origins_.push_back(wheelCentre_);
    spindle_ = MobilizedBody::Universal(carrier, Transform(), someBody(), Transform());
    origins_.push_back(wheelCentre_);
    if (car.kind == "five-link") {
        addFiveLinks(car);
    } else if (car.kind == "double-a-arm") {
        for (const std::string arm : {"lowerArm", "upperArm"})
            for (const std::string end : {".innerFront", ".innerRear"})
                addLink(car.pivot(arm + end), car.pivot(arm + ".outer"));
        addLink(car.pivot("toeLink.inner"), car.pivot("toeLink.outer"));
    } else {
        throw std::runtime_error("cannot be built of distances alone: " + car.kind);
    }
}

void Mechanism::addHeight(Travel travel) {
    const Rotation xToZ(UnitVec3(ZAxis), XAxis); // a slider slides along its frame's x
    height_ = MobilizedBody::Slider(
        matter_.updGround(), Transform(xToZ, wheelCentre_), someBody(), Transform(xToZ, Vec3(0)));
    origins_.push_back(wheelCentre_);
    if (travel == Travel::Driven) Motion::Custom(height_, new TravelIsTime());
}

void Mechanism::keepSpindleAtHeight() {
    Constraint::PointInPlane(height_, UnitVec3(ZAxis), 0, spindle_, Vec3(0));
}

// A new body on a hinge through two points of the design position.
MobilizedBody::Pin Mechanism::hinge(MobilizedBody& parent, const Vec3& front, const Vec3& rear, const Vec3& origin) {
    const Rotation zAlongHinge(UnitVec3(front - rear), ZAxis); // a pin turns about its frame's z
    MobilizedBody::Pin body(
        parent, Transform(zAlongHinge, on(parent, front)), someBody(), Transform(zAlongHinge, front - origin));
    origins_.push_back(origin);
    addMember(parent, body, front, front);
    addMember(parent, body, rear, rear);
    return body;
}

// A link from the chassis to the spindle.
void Mechanism::addLink(const Vec3& inner, const Vec3& outer) {
    Constraint::Rod(matter_.updGround(), inner, spindle_, on(spindle_, outer), (outer - inner).norm());
    addMember(matter_.getGround(), spindle_, inner, outer);
}

void Mechanism::addMember(
    const MobilizedBody& bodyA, const MobilizedBody& bodyB, const Vec3& designA, const Vec3& designB) {
    members_.push_back({bodyA.getMobilizedBodyIndex(), bodyB.getMobilizedBodyIndex(), on(bodyA, designA),
        on(bodyB, designB), (designB - designA).norm()});
}

Vec3 Mechanism::on(const MobilizedBody& body, const Vec3& designPoint) const {
    return designPoint - origins_.at(body.getMobilizedBodyIndex());
}
