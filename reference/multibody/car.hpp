// The invented corners of cars.txt as read: pivots, wheel centre and spin axis in the design position.
#pragma once
#include "Simbody.h"
#include <string>
#include <vector>

struct Pivot {
    std::string name; // as in a car's linkage, e.g. `lowerArm.innerFront`, `links.front lower.inner`
    SimTK::Vec3 point; // m, vehicle axes
};

struct Car {
    std::string name, kind, geometry;
    std::vector<Pivot> pivots;
    SimTK::Vec3 wheelCentre; // m
    SimTK::UnitVec3 spinAxis; // pointing outboard

    // The pivot of that name; throws std::runtime_error where the car has none.
    const SimTK::Vec3& pivot(const std::string& name) const;
    // What the links are called, in order: `front lower`, ... Empty for a car of another kind than five-link.
    std::vector<std::string> linkNames() const;
};

// Throws std::runtime_error that names the line where the file cannot be read.
std::vector<Car> readCars(const std::string& path);
