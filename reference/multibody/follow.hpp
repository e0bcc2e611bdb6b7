// Follows a corner from its design position along its one branch, and records it at chosen travels.
#pragma once
#include "car.hpp"
#include <optional>
#include <vector>

struct Position {
    double travel; // height of the wheel centre less its design height, m
    SimTK::Vec3 wheelCentre; // m, vehicle axes
    SimTK::Rotation rotation; // of the spindle; the identity in the design position
    SimTK::Vec3 wheelCentreRate; // d(wheel centre)/d(travel), -
    SimTK::Vec3 angularRate; // spindle's angular velocity per travel, vehicle axes, rad/m
    double residual; // worst error of a length, a ball, a hinge or the travel, m
    double spread; // difference of the poses reached from the two neighbours along the branch, m and rad
};

struct Cycle {
    std::vector<Position> positions; // from droop to bump
    // Travel beyond which the linkage no longer assembles on this branch, where that lies inside the range; m.
    std::optional<double> droopLimit, bumpLimit;
};

Cycle followCycle(const Car& car);
