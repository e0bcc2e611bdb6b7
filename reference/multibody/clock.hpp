// Times the library's position solve.
#pragma once
#include "car.hpp"

// Writes to standard output two lines of JSON for the car: the fastest ways found to solve a position from its
// neighbour, and from an extrapolation of the last ones; microseconds a position.
void timeCar(const Car& car);
