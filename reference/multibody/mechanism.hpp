// One corner built from the library's own bodies, mobilizers and constraints.
//
// Every body has axes parallel to the vehicle's in the design position, so a body's rotation there is the identity.
// A `height` body slides along z; a PointInPlane constraint keeps the wheel centre in its plane, so the slider's one
// coordinate is the travel.
#pragma once
#include "car.hpp"
#include "Simbody.h"
#include <vector>

enum class Travel {
    Free, // the corner moves with its one degree of freedom
    Driven // the travel, in metres, is the state's time
};

enum class Build {
    AsJointed, // a body for every arm, a joint for every joint
    // Leaner, for double-a-arm and five-link: spindle on the height body, an arm with a ball as two distances.
    OnHeight
};

class Mechanism {
public:
    Mechanism(const Car& car, Travel travel, Build build = Build::AsJointed);

    // The design position, realized to Stage::Model.
    SimTK::State designState(bool eulerAngles = false) const;
    const SimTK::MultibodySystem& system() const { return system_; }
    const SimTK::MobilizedBody& spindle() const { return spindle_; }
    const SimTK::MobilizedBody::Slider& height() const { return height_; }

    // Height of the wheel centre less its height in the design position, m. State at Stage::Position.
    double travelOf(const SimTK::State& state) const;
    // The worst of: a link's length less its design length; the gap at a ball or at either end of a hinge; m.
    // State at Stage::Position.
    double closureError(const SimTK::State& state) const;

private:
    // Two points, each fixed to a body, that keep their distance (0: they coincide).
    struct Member {
        SimTK::MobilizedBodyIndex bodyA, bodyB;
        SimTK::Vec3 pointA, pointB; // in the bodies' axes from the bodies' origins, m
        double length;
    };
    void buildHArm(const Car& car);
    void buildDoubleAArm(const Car& car);
    void buildTrailingArm(const Car& car);
    void buildFiveLink(const Car& car);
    void buildOnHeight(const Car& car);
    void addHeight(Travel travel);
    void keepSpindleAtHeight();

    SimTK::MobilizedBody::Pin hinge(
        SimTK::MobilizedBody& parent, const SimTK::Vec3& front, const SimTK::Vec3& rear, const SimTK::Vec3& origin);
    void addFiveLinks(const Car& car);
    void addLink(const SimTK::Vec3& inner, const SimTK::Vec3& outer);
    void addMember(const SimTK::MobilizedBody& bodyA, const SimTK::MobilizedBody& bodyB,
        const SimTK::Vec3& designA, const SimTK::Vec3& designB);
    // A point of the design position, measured from the origin of a body.
    SimTK::Vec3 on(const SimTK::MobilizedBody& body, const SimTK::Vec3& designPoint) const;

    SimTK::MultibodySystem system_;
    SimTK::SimbodyMatterSubsystem matter_;
    SimTK::Vec3 wheelCentre_; // design position; also the spindle's origin
    std::vector<SimTK::Vec3> origins_; // of the bodies in the design position, by body index
    SimTK::MobilizedBody spindle_;
    SimTK::MobilizedBody::Slider height_;
    std::vector<Member> members_;
};
