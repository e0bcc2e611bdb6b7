/* The mount search as a plain pruned loop: every candidate one after the other, cheapest test first, the obstacle that was
 * in the way last tried first, every station looked at until one fails. Same tests and numbers as the engine's; the numbers
 * come as a file of doubles. Writes feasible count, checksum and the least seconds of the runs asked for. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

typedef struct {
  int core, stride;
  double disc_radius, disc_half_width, radius;
  const double *data;
} Obstacle;

static const double *next;
static double take(void) { return *next++; }
static double unit_clamp(double t) { return t < 0 ? 0 : t > 1 ? 1 : t; }
static double beyond(double x, double h) { return x > h ? x - h : x < -h ? x + h : 0; }

static double to_segment(const double *u, const double *p, const double *c) {
  double ax = p[0] - u[0], ay = p[1] - u[1], az = p[2] - u[2];
  double bx = c[3] - c[0], by = c[4] - c[1], bz = c[5] - c[2];
  double rx = u[0] - c[0], ry = u[1] - c[1], rz = u[2] - c[2];
  double a = ax * ax + ay * ay + az * az, e = bx * bx + by * by + bz * bz;
  double f = bx * rx + by * ry + bz * rz, k = ax * rx + ay * ry + az * rz, b = ax * bx + ay * by + az * bz;
  double square = a * e - b * b;
  double s = unit_clamp(square > 1e-14 * a * e ? (b * f - k * e) / square : 0);
  double t = e > 0 ? (b * s + f) / e : 0;
  if (t < 0) { t = 0; s = unit_clamp(-k / a); }
  else if (t > 1) { t = 1; s = unit_clamp((b - k) / a); }
  double x = rx + s * ax - t * bx, y = ry + s * ay - t * by, z = rz + s * az - t * bz;
  return sqrt(x * x + y * y + z * z);
}

static double to_box(const double *f, const double *a, const double *h) {
  double low = 0, high = 1, t;
  double at_low = 0, at_high = 0;
  for (int i = 0; i < 3; i++) {
    at_low += a[i] * beyond(f[i], h[i]);
    at_high += a[i] * beyond(f[i] + a[i], h[i]);
  }
  if (at_low >= 0) t = 0;
  else if (at_high <= 0) t = 1;
  else {
    for (int i = 0; i < 6; i++) {
      double at = ((i & 1 ? -h[i / 2] : h[i / 2]) - f[i / 2]) / a[i / 2];
      if (!(at > low && at < high)) continue;
      double here = 0;
      for (int n = 0; n < 3; n++) here += a[n] * beyond(f[n] + at * a[n], h[n]);
      if (here < 0) { low = at; at_low = here; } else { high = at; at_high = here; }
    }
    t = at_high == 0 ? high : low + ((high - low) * at_low) / (at_low - at_high);
  }
  double sum = 0;
  for (int i = 0; i < 3; i++) { double x = beyond(f[i] + t * a[i], h[i]); sum += x * x; }
  return sqrt(sum);
}

static double to_disc(const double *f, const double *a, const double *s, double radius, double half_width) {
  double axial0 = f[0] * s[0] + f[1] * s[1] + f[2] * s[2], axial1 = a[0] * s[0] + a[1] * s[1] + a[2] * s[2];
  double r0 = 0, r1 = 0, r2 = 0;
  for (int i = 0; i < 3; i++) {
    double c = f[i] - axial0 * s[i], d = a[i] - axial1 * s[i];
    r0 += c * c; r1 += c * d; r2 += d * d;
  }
  double low = 0, high = 1, t = 0, best = INFINITY;
  for (int i = 0; i < 60; i++) {
    double axial = axial0 + t * axial1, square = r0 + t * (2 * r1 + t * r2);
    double across = square > 0 ? sqrt(square) : 0, value = 0, change = 0, gap = 0, over = beyond(axial, half_width);
    if (over != 0) { value = over * axial1; change = axial1 * axial1; gap = over * over; }
    if (across > radius) {
      double half = r1 + t * r2, inside = radius / across;
      value += half * (1 - inside);
      change += r2 * (1 - inside) + (inside * half * half) / square;
      gap += (across - radius) * (across - radius);
    }
    if (gap < best) best = gap;
    if (value == 0 || (t == 0 && value > 0) || (t == 1 && value < 0)) break;
    if (value < 0) low = t; else high = t;
    double then = i == 0 ? 1 : t - value / change;
    if (i > 0 && !(then > low && then < high)) then = 0.5 * (low + high);
    if (fabs(then - t) <= 1e-13) break;
    t = then;
  }
  return sqrt(best);
}

static double core_distance(const Obstacle *o, int k, const double *u, const double *p) {
  const double *d = o->data + k * o->stride;
  if (o->core == 0) return to_segment(u, p, d);
  double f[3], a[3];
  for (int i = 0; i < 3; i++) { f[i] = u[i] - d[i]; a[i] = p[i] - u[i]; }
  if (o->core == 1) {
    double g[3], b[3];
    for (int i = 0; i < 3; i++) {
      const double *x = d + 3 + 3 * i;
      g[i] = f[0] * x[0] + f[1] * x[1] + f[2] * x[2];
      b[i] = a[0] * x[0] + a[1] * x[1] + a[2] * x[2];
    }
    return to_box(g, b, d + 12);
  }
  if (o->core == 2) {
    double height = f[0] * d[3] + f[1] * d[4] + f[2] * d[5], change = a[0] * d[3] + a[1] * d[4] + a[2] * d[5];
    return change < 0 ? height + change : height;
  }
  return to_disc(f, a, d + 3, o->disc_radius, o->disc_half_width);
}

typedef struct {
  double radius, start, end;
  int looks[2];
} Socket;

/* A socket goes on a bolt where nothing is in its way from one side, in one of the two positions looked at. */
static int goes_on(const Obstacle *obstacles, const double *mask, int count, const Socket *s, const double *at, int moves,
                   const double *bolt, const int *row) {
  for (int l = 0; l < 2; l++) {
    int k = s->looks[l];
    const double *x = moves ? at + 3 * k : at, *b = bolt + 3 * row[l];
    for (int side = 1; side >= -1; side -= 2) {
      double u[3], p[3];
      int is_free = 1;
      for (int n = 0; n < 3; n++) {
        u[n] = x[n] + side * s->start * b[n];
        p[n] = x[n] + side * s->end * b[n];
      }
      for (int o = 0; o < count && is_free; o++)
        if (!mask || mask[o]) is_free = core_distance(obstacles + o, k, u, p) - s->radius - obstacles[o].radius >= 0;
      if (is_free) return 1;
    }
  }
  return 0;
}

static double dot3(const double *a, const double *b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

int main(int argc, char **argv) {
  FILE *file = fopen(argv[1], "rb");
  int runs = argc > 2 ? atoi(argv[2]) : 5;
  fseek(file, 0, SEEK_END);
  long size = ftell(file);
  rewind(file);
  double *all = malloc(size);
  if (fread(all, 1, size, file) != (size_t)size) return 1;
  next = all;
  int stations = (int)take(), ride = (int)take(), uppers = (int)take(), lowers = (int)take(), count = (int)take();
  double used_least = take(), used_most = take(), ratio_least = take(), ratio_most = take(), may_fall = take();
  double most = take(), least = take(), stroke = take(), cos_lean = take(), sin_eye = take();
  Socket socket;
  socket.radius = take();
  socket.start = take();
  socket.end = take();
  for (int l = 0; l < 2; l++) socket.looks[l] = (int)take();
  int lower_row[2] = {socket.looks[0] != 0, socket.looks[1] != 0}, upper_row[2] = {0, 0};
  const double *upper = next;
  next += 3 * uppers;
  Obstacle *obstacles = malloc(count * sizeof *obstacles);
  for (int i = 0; i < count; i++) {
    Obstacle *o = obstacles + i;
    o->core = (int)take();
    o->stride = (int)take();
    o->disc_radius = take();
    o->disc_half_width = take();
    o->radius = take();
    int n = (int)take();
    o->data = next;
    next += n;
  }
  const double *lower = next;
  int per_lower = 3 * stations + 9 + 9 + 3 + 2 * count;
  int *order = malloc(count * sizeof *order);
  double best = INFINITY, sum = 0;
  long feasible = 0;
  for (int run = 0; run < runs; run++) {
    struct timespec from, to;
    clock_gettime(CLOCK_MONOTONIC, &from);
    feasible = 0;
    sum = 0;
    for (int j = 0; j < lowers; j++) {
      const double *at = lower + (long)j * per_lower, *v = at + 3 * stations, *bolt = v + 9, *own = bolt + 9, *needs = own + 3;
      const double *others = needs + count;
      int lower_goes_on = -1;
      for (int i = 0; i < count; i++) order[i] = i;
      for (int i = 0; i < uppers; i++) {
        const double *u = upper + 3 * i, *pr = at + 3 * ride, *pb = at + 3 * (stations - 1);
        double d[3], r[3], b[3];
        for (int n = 0; n < 3; n++) d[n] = u[n] - at[n];
        double ld2 = dot3(d, d);
        if (ld2 > most * most) continue;
        for (int n = 0; n < 3; n++) b[n] = u[n] - pb[n];
        double lb2 = dot3(b, b);
        if (lb2 < least * least) continue;
        double ld = sqrt(ld2), lb = sqrt(lb2), used = (ld - lb) / stroke;
        if (used < used_least || used > used_most) continue;
        double ratio_droop = dot3(d, v) / ld, ratio_bump = dot3(b, v + 6) / lb;
        if (!(ratio_droop > 0 && ratio_bump > 0)) continue;
        for (int n = 0; n < 3; n++) r[n] = u[n] - pr[n];
        double lr = sqrt(dot3(r, r)), ratio = dot3(r, v + 3) / lr;
        if (ratio < ratio_least || ratio > ratio_most) continue;
        if (ratio_bump < ratio - may_fall) continue;
        if (fmin(fmin(d[2] / ld, r[2] / lr), b[2] / lb) < cos_lean) continue;
        double eye = fmax(fmax(fabs(dot3(d, own)) / ld, fabs(dot3(r, own)) / lr), fabs(dot3(b, own)) / lb);
        eye = fmax(eye, fmax(fmax(fabs(dot3(d, bolt)) / ld, fabs(dot3(r, bolt + 3)) / lr), fabs(dot3(b, bolt + 6)) / lb));
        if (eye > sin_eye) continue;
        int blocked = 0;
        for (int o = 0; o < count && !blocked; o++) {
          int index = order[o];
          for (int k = 0; k < stations && !blocked; k++)
            blocked = core_distance(obstacles + index, k, u, at + 3 * k) < needs[index];
          if (!blocked) continue;
          for (int n = o; n > 0; n--) order[n] = order[n - 1];
          order[0] = index;
        }
        if (blocked) continue;
        if (socket.radius >= 0) {
          if (lower_goes_on < 0) lower_goes_on = goes_on(obstacles, others, count, &socket, at, 1, bolt, lower_row);
          if (!lower_goes_on || !goes_on(obstacles, NULL, count, &socket, u, 0, own, upper_row)) continue;
        }
        feasible++;
        double key = (double)j * uppers + i;
        sum += (key + 1) * (1 + fmod(key, 97));
      }
    }
    clock_gettime(CLOCK_MONOTONIC, &to);
    double seconds = (to.tv_sec - from.tv_sec) + 1e-9 * (to.tv_nsec - from.tv_nsec);
    if (seconds < best) best = seconds;
  }
  printf("%ld %.0f %.9g\n", feasible, sum, best);
  return 0;
}
