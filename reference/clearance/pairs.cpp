// Distances of random pairs of solids by FCL (the Flexible Collision Library), for the engine to be checked against.
// Writes JSON to standard output. Deterministic: its own generator, fixed seed.
//
// Every number that describes a solid is a whole number of 1e-4 (metres, or quaternion parts before they are
// normalised), so that both sides start from the same solids to the last bit that matters.
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include <fcl/fcl.h>
#include <fcl/narrowphase/detail/gjk_solver_libccd.h>

namespace {

constexpr std::uint64_t kSeed = 20240607;
constexpr int kPairsPerType = 450;
constexpr double kUnit = 1e-4;
constexpr double kLift = 16.0;  // m; see halfSpaceGap

// Knuth's MMIX linear congruential generator, upper bits.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}
  int between(int low, int high) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return low + static_cast<int>((state_ >> 33) % static_cast<std::uint64_t>(high - low + 1));
  }

 private:
  std::uint64_t state_;
};

// All in 1e-4. Sizes: capsule half length; box half x, y, z; wheel core radius, core half width; half-space none.
struct Solid {
  char kind;  // c, b, w, h
  int at[3];
  int turn[4];  // w, x, y, z
  int size[3];
  int radius;
};

Solid randomSolid(Random& random, char kind, int spread, bool square, bool flat) {
  Solid s{kind, {0, 0, 0}, {10000, 0, 0, 0}, {0, 0, 0}, 0};
  for (int& x : s.at) x = random.between(-spread, spread);
  // "Square" pairs lie along the axes in quarter turns: parallel edges, faces and axes.
  static const int kQuarterTurns[4][4] = {{1, 0, 0, 0}, {1, 1, 0, 0}, {1, 0, 1, 0}, {1, 0, 0, 1}};
  const int quarter = random.between(0, 3);
  for (int i = 0; i < 4; i++) s.turn[i] = square ? kQuarterTurns[quarter][i] : random.between(-10000, 10000);
  if (s.turn[0] == 0 && s.turn[1] == 0 && s.turn[2] == 0 && s.turn[3] == 0) s.turn[0] = 1;
  switch (kind) {
    case 'c':
      s.size[0] = flat ? 0 : random.between(50, 4000);
      s.radius = random.between(50, 600);
      break;
    case 'b':
      for (int& x : s.size) x = random.between(100, 4000);
      if (flat) s.size[2] = random.between(1, 20);
      s.radius = random.between(0, 1) * random.between(0, 200);
      break;
    case 'w':
      s.size[0] = random.between(1500, 4000);
      s.size[1] = flat ? random.between(1, 20) : random.between(300, 1500);
      s.radius = random.between(100, 600);
      break;
    default:
      break;
  }
  return s;
}

fcl::Transform3d poseOf(const Solid& s) {
  fcl::Quaterniond q(s.turn[0], s.turn[1], s.turn[2], s.turn[3]);
  q.normalize();
  fcl::Transform3d pose = fcl::Transform3d::Identity();
  pose.linear() = q.toRotationMatrix();
  pose.translation() = fcl::Vector3d(s.at[0] * kUnit, s.at[1] * kUnit, s.at[2] * kUnit);
  return pose;
}

// Calls `use` with the library's shape for the solid's core: a segment is a capsule of radius 0.
template <typename Use>
double withCore(const Solid& s, Use use) {
  const double x = s.size[0] * kUnit, y = s.size[1] * kUnit, z = s.size[2] * kUnit;
  if (s.kind == 'c') return use(fcl::Capsuled(0.0, 2 * x));
  if (s.kind == 'b') return use(fcl::Boxd(2 * x, 2 * y, 2 * z));
  return use(fcl::Cylinderd(x, 2 * y));
}

// Core distance; NaN where the library finds that the cores overlap.
double coreGap(const Solid& a, const Solid& b) {
  fcl::detail::GJKSolver_libccd<double> solver;
  solver.distance_tolerance = 1e-12;
  solver.max_distance_iterations = 5000;
  return withCore(a, [&](const auto& shapeA) {
    return withCore(b, [&](const auto& shapeB) {
      double distance = NAN;
      fcl::Vector3d onA, onB;
      if (!solver.shapeDistance(shapeA, poseOf(a), shapeB, poseOf(b), &distance, &onA, &onB)) return double(NAN);
      return distance;
    });
  });
}

// The library tells how deep a shape is in a half-space, not how far it is out of one. So the plane is lifted until
// the shape is well inside, and the lift taken off again: gap = lift - depth.
double halfSpaceGap(const Solid& a, const Solid& plane) {
  fcl::detail::GJKSolver_libccd<double> solver;
  const fcl::Halfspaced halfSpace(fcl::Vector3d(0, 0, 1), kLift);
  return withCore(a, [&](const auto& shape) {
    std::vector<fcl::ContactPointd> contacts;
    if (!solver.shapeIntersect(shape, poseOf(a), halfSpace, poseOf(plane), &contacts) || contacts.empty()) {
      std::fprintf(stderr, "the lifted half-space was missed\n");
      std::exit(1);
    }
    double depth = 0;
    for (const auto& contact : contacts) depth = std::max(depth, contact.penetration_depth);
    return kLift - depth;
  });
}

void printSolid(const Solid& s) {
  std::printf("[%d,%d,%d,%d,%d,%d,%d", s.at[0], s.at[1], s.at[2], s.turn[0], s.turn[1], s.turn[2], s.turn[3]);
  const int sizes = s.kind == 'c' ? 1 : s.kind == 'b' ? 3 : s.kind == 'w' ? 2 : 0;
  for (int i = 0; i < sizes; i++) std::printf(",%d", s.size[i]);
  if (s.kind != 'h') std::printf(",%d", s.radius);
  std::printf("]");
}

}  // namespace

int main() {
  const std::string types[] = {"cc", "cb", "cw", "ch", "bb", "bw", "bh", "ww", "wh"};
  Random random(kSeed);
  std::printf("{\"seed\":%llu,\"unit\":1e-4,\"pairs\":{", static_cast<unsigned long long>(kSeed));
  bool firstType = true;
  for (const std::string& type : types) {
    std::printf("%s\n\"%s\":[", firstType ? "" : ",", type.c_str());
    firstType = false;
    for (int i = 0; i < kPairsPerType; i++) {
      const bool square = i % 9 == 0;
      const bool flat = i % 15 == 0;
      const int spread = 2000 + 1500 * (i % 5);
      const Solid a = randomSolid(random, type[0], spread, square, flat);
      const Solid b = randomSolid(random, type[1], spread, square, flat);
      const double core = type[1] == 'h' ? halfSpaceGap(a, b) : coreGap(a, b);
      std::printf("%s\n[", i == 0 ? "" : ",");
      printSolid(a);
      std::printf(",");
      printSolid(b);
      if (std::isnan(core)) {
        std::printf(",null]");
      } else {
        std::printf(",%.12f]", core - (a.radius + b.radius) * kUnit);
      }
    }
    std::printf("]");
  }
  std::printf("}}\n");
}
