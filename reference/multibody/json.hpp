// Writes the cycles as JSON, every number with 17 significant digits, so that it reads back to the same double.
#pragma once
#include "car.hpp"
#include "follow.hpp"
#include <ostream>

void writeCycles(std::ostream& out, const std::vector<Car>& cars, const std::vector<Cycle>& cycles);
