// Suspension cycles from a general multibody library, to hold against our own.
//
//   cycle cars.txt cycle.json     writes the cycles, and to standard output what they are good to
//   cycle --time cars.txt         times the library's position solve on the `nice` geometries
#include "car.hpp"
#include "clock.hpp"
#include "follow.hpp"
#include "json.hpp"
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>

static void describe(const Car& car, const Cycle& cycle) {
    double residual = 0, spread = 0, turn = 0;
    for (const Position& position : cycle.positions) {
        residual = std::max(residual, position.residual);
        spread = std::max(spread, position.spread);
        turn = std::max(turn, std::abs(position.rotation.convertRotationToAngleAxis()[0]));
    }
    const auto limit = [](const std::optional<double>& travel) { return travel ? std::to_string(*travel) : "none"; };
    std::printf("%-13s %-11s %2zu positions %+.3f to %+.3f m, limits %s and %s, spindle turns up to %.1f deg, "
                "residual %.1e m, spread %.1e\n",
        car.kind.c_str(), car.geometry.c_str(), cycle.positions.size(), cycle.positions.front().travel,
        cycle.positions.back().travel, limit(cycle.droopLimit).c_str(), limit(cycle.bumpLimit).c_str(),
        turn * double(SimTK_RADIAN_TO_DEGREE), residual, spread);
}

static void writeAll(const std::string& carsPath, const std::string& outPath) {
    const std::vector<Car> cars = readCars(carsPath);
    std::vector<Cycle> cycles;
    for (const Car& car : cars) {
        cycles.push_back(followCycle(car));
        describe(car, cycles.back());
    }
    std::ofstream out(outPath);
    writeCycles(out, cars, cycles);
    if (!out) throw std::runtime_error(outPath + ": cannot be written");
}

static void timeAll(const std::string& carsPath) {
    for (const Car& car : readCars(carsPath))
        if (car.geometry == "nice" && car.kind != "trailing-arm") timeCar(car);
}

int main(int count, char** words) {
    try {
        if (count == 3 && std::string(words[1]) == "--time") timeAll(words[2]);
        else if (count == 3) writeAll(words[1], words[2]);
        else throw std::runtime_error("usage: cycle cars.txt cycle.json, or cycle --time cars.txt");
    } catch (const std::exception& error) {
        std::cerr << error.what() << "\n";
        return 1;
    }
    return 0;
}
