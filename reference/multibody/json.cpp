#include "json.hpp"
#include <cstdio>

using SimTK::Vec3;

static std::string text(double value) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.17g", value == 0 ? 0 : value); // -0 is written 0
    return buffer;
}

static std::string text(const std::optional<double>& value) { return value ? text(*value) : "null"; }

static std::string text(const Vec3& v) {
    return "{\"x\":" + text(v[0]) + ",\"y\":" + text(v[1]) + ",\"z\":" + text(v[2]) + "}";
}

static std::string text(const SimTK::Rotation& R) {
    std::string rows;
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j) rows += (rows.empty() ? "" : ",") + text(R[i][j]);
    return "[" + rows + "]";
}

// The names in cars.txt hold no character that JSON would have escaped.
static std::string quoted(const std::string& word) { return "\"" + word + "\""; }

static std::string linksOf(const Car& car) {
    std::string links;
    for (const std::string& name : car.linkNames()) {
        const Vec3 inner = car.pivot("links." + name + ".inner"), outer = car.pivot("links." + name + ".outer");
        if (!links.empty()) links += ",";
        links += "{\"name\":" + quoted(name) + ",\"inner\":" + text(inner) + ",\"outer\":" + text(outer) + "}";
    }
    return "\"links\":[" + links + "]";
}

// `lowerArm.innerFront` becomes field innerFront of field lowerArm.
static std::string membersOf(const Car& car) {
    std::string fields, open;
    for (const Pivot& pivot : car.pivots) {
        const std::size_t dot = pivot.name.find('.');
        const std::string member = pivot.name.substr(0, dot), end = pivot.name.substr(dot + 1);
        if (member == open) fields += ",";
        else fields += (open.empty() ? "" : "},") + quoted(member) + ":{";
        fields += quoted(end) + ":" + text(pivot.point);
        open = member;
    }
    return fields + "}";
}

static std::string linkageOf(const Car& car) {
    return "{\"kind\":" + quoted(car.kind) + "," + (car.kind == "five-link" ? linksOf(car) : membersOf(car)) + "}";
}

static std::string text(const Position& position) {
    return "{\"travel\":" + text(position.travel) + ",\"wheelCentre\":" + text(position.wheelCentre)
        + ",\"rotation\":" + text(position.rotation) + ",\"wheelCentreRate\":" + text(position.wheelCentreRate)
        + ",\"angularRate\":" + text(position.angularRate) + ",\"residual\":" + text(position.residual) + "}";
}

static void writeCar(std::ostream& out, const Car& car, const Cycle& cycle) {
    out << "{\"name\":" << quoted(car.name) << ",\"kind\":" << quoted(car.kind)
        << ",\"geometry\":" << quoted(car.geometry)
        << ",\n\"linkage\":" << linkageOf(car) << ",\n\"wheelCentre\":" << text(car.wheelCentre)
        << ",\"spinAxis\":" << text(Vec3(car.spinAxis)) << ",\n\"droopLimit\":" << text(cycle.droopLimit)
        << ",\"bumpLimit\":" << text(cycle.bumpLimit) << ",\n\"positions\":[\n";
    for (std::size_t i = 0; i < cycle.positions.size(); ++i) out << (i ? ",\n" : "") << text(cycle.positions[i]);
    out << "\n]}";
}

void writeCycles(std::ostream& out, const std::vector<Car>& cars, const std::vector<Cycle>& cycles) {
    out << "{\"program\":\"reference/multibody/cycle.cpp\",\"library\":\"libsimbody 3.7\",\"cars\":[\n";
    for (std::size_t i = 0; i < cars.size(); ++i) {
        out << (i ? ",\n" : "");
        writeCar(out, cars[i], cycles[i]);
    }
    out << "\n]}\n";
}
