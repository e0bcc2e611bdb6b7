#include "car.hpp"
#include <cmath>
#include <fstream>
#include <sstream>
#include <stdexcept>

using SimTK::Vec3;

const Vec3& Car::pivot(const std::string& wanted) const {
    for (const Pivot& pivot : pivots)
        if (pivot.name == wanted) return pivot.point;
    throw std::runtime_error(kind + " " + geometry + ": no pivot " + wanted);
}

std::vector<std::string> Car::linkNames() const {
    std::vector<std::string> names;
    const std::string begin = "links.", end = ".inner";
    for (const Pivot& pivot : pivots) {
        const std::string& name = pivot.name;
        if (name.size() <= begin.size() + end.size() || name.compare(0, begin.size(), begin) != 0) continue;
        if (name.compare(name.size() - end.size(), end.size(), end) != 0) continue;
        names.push_back(name.substr(begin.size(), name.size() - begin.size() - end.size()));
    }
    return names;
}

// Spin axis s with camber = -asin(s.z) and toe = atan2(s.x, s.y), both in rad.
static SimTK::UnitVec3 spinAxisOf(double camber, double toe) {
    return SimTK::UnitVec3(Vec3(std::cos(camber) * std::sin(toe), std::cos(camber) * std::cos(toe), -std::sin(camber)));
}

static std::vector<std::string> wordsOf(const std::string& line) {
    std::istringstream in(line);
    std::vector<std::string> words;
    for (std::string word; in >> word;) words.push_back(word);
    return words;
}

static std::string joined(const std::vector<std::string>& words, std::size_t from, std::size_t to) {
    std::string text;
    for (std::size_t i = from; i < to; ++i) text += (i > from ? " " : "") + words[i];
    return text;
}

std::vector<Car> readCars(const std::string& path) {
    std::ifstream in(path);
    if (!in) throw std::runtime_error(path + ": cannot be opened");
    std::vector<Car> cars;
    double camber = 0, toe = 0; // of the car being read, rad
    int lineNumber = 0;
    for (std::string line; std::getline(in, line);) {
        ++lineNumber;
        const std::vector<std::string> words = wordsOf(line);
        const std::size_t n = words.size();
        if (n == 0 || words[0][0] == '#') continue;
        try {
            if (words[0] == "car" && n >= 4) {
                cars.push_back(Car());
                cars.back().kind = words[1];
                cars.back().geometry = words[2];
                cars.back().name = joined(words, 3, n);
                camber = toe = 0;
            } else if (cars.empty()) {
                throw std::runtime_error("expected `car` first");
            } else if ((words[0] == "camber" || words[0] == "toe") && n == 2) {
                (words[0] == "camber" ? camber : toe) = std::stod(words[1]) * double(SimTK_DEGREE_TO_RADIAN);
                cars.back().spinAxis = spinAxisOf(camber, toe);
            } else if (n >= 4) {
                const Vec3 point(std::stod(words[n - 3]), std::stod(words[n - 2]), std::stod(words[n - 1]));
                const std::string name = joined(words, 0, n - 3);
                if (name == "wheelCentre") cars.back().wheelCentre = point;
                else cars.back().pivots.push_back({name, point});
            } else {
                throw std::runtime_error("expected a name and three numbers");
            }
        } catch (const std::exception& error) {
            throw std::runtime_error(path + ":" + std::to_string(lineNumber) + ": " + error.what());
        }
    }
    return cars;
}
