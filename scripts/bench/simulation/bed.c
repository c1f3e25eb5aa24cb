// The loop of src/simulation/bed/pass-air.ts in C, for the bench: once with the formulas as they are (libm), once with the same
// tables. One column, air from below. The heat that binds water is a table in both, for it has no closed form. Reads doubles from
// the file that c-loop.ts writes; prints for each way ns per layer-step and the last temperature and moisture of each layer.
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

typedef struct {
  double low, per_unit, end;
  const double *cubics;
} table;

static const double DRY_AIR = 1006, VAPOUR = 1860, VAPORISATION = 2501000, WATER_PER_DRY_AIR = 0.621945;
// Of pass-air.ts.
static const double CLOSE_DB = 1e-5, CLOSE_SURFACE_DB = 5e-4, CLOSE_RATIO = 5e-5;
static double seconds, pressure, heat_dry, heat_per_moisture, a, b, c;
static table by_temp, by_moisture, humidity, binding, rate, saturation;

static inline double place_in(const table *t, double x) {
  double place = (x - t->low) * t->per_unit;
  return place < 0 ? 0 : place > t->end ? t->end : place;
}
static inline void at_place(const table *t, double place, double *value, double *slope) {
  int i = (int)place;
  double u = place - i;
  const double *k = t->cubics + 4 * i;
  *value = k[0] + u * (k[1] + u * (k[2] + u * k[3]));
  *slope = t->per_unit * (k[1] + u * (2 * k[2] + 3 * u * k[3]));
}
static inline double in_table(const table *t, double x) {
  double value, slope;
  at_place(t, place_in(t, x), &value, &slope);
  return value;
}

// Saturation over water and its slope, ashrae-2017 ch. 1 eq. 6.
static inline void saturation_direct(double temp_c, double *value, double *slope) {
  double k = temp_c + 273.15;
  *value = exp(-5.8002206e3 / k + 1.3914993 - 4.8640239e-2 * k + 4.1764768e-5 * k * k - 1.4452093e-8 * k * k * k +
               6.5459673 * log(k));
  *slope = *value * (5.8002206e3 / (k * k) - 4.8640239e-2 + 2 * 4.1764768e-5 * k - 3 * 1.4452093e-8 * k * k + 6.5459673 / k);
}
// Rate of corn, misra-brooker-1980, as src/simulation/bed/thin-layer.ts.
static inline double rate_at(double t) {
  double k = exp(-7.1735 + 1.2793 * log(1.8 * t + 32) + 0.1378 * 0.1);
  double n = 0.0811 * log(65) + 0.0078 * 25;
  return log(2) / pow(log(2) / k, 1 / n) / 3600;
}
static double rate_direct(double t) {
  const double coldest = 2.2;
  if (t >= coldest) return rate_at(t);
  return rate_at(coldest) * exp(log(rate_at(coldest + 0.01) / rate_at(coldest)) / 0.01 * (t - coldest));
}

static void pass_air(int layers, double dry, double *temp, double *moisture, double air, double t0, double w0, int direct) {
  double r = dry / air;
  for (int i = 0; i < layers; i++) {
    double g0 = temp[i], m0 = moisture[i];
    double slower = 1 / ((direct ? rate_direct(g0) : in_table(&rate, g0)) * seconds);
    double heat0 = (DRY_AIR + VAPOUR * w0) * t0 + r * (heat_dry + heat_per_moisture * m0) * g0;
    double close = fmin(CLOSE_DB, fmin(CLOSE_SURFACE_DB / (1 + slower), CLOSE_RATIO / r));
    double low = 0, high = m0 + w0 / r, m1 = m0, move = NAN, w1, t1, bound, bound_per;
    at_place(&binding, place_in(&binding, m0), &bound, &bound_per);
    double bound0 = bound;
    for (int n = 0;; n++) {
      w1 = w0 + r * (m0 - m1);
      double held = DRY_AIR + VAPOUR * w1 + r * (heat_dry + heat_per_moisture * m1);
      t1 = (heat0 - r * ((m0 - m1) * VAPORISATION + bound0 - bound)) / held;
      if ((move < close && move > -close) || n == 40) break;
      double t_per = r * (VAPORISATION + bound_per - t1 * (heat_per_moisture - VAPOUR)) / held;
      double star = m1 + (m1 - m0) * slower;
      double q, q_per, p, p_per, s, s_per, rh, rh_per;
      if (direct) {
        double m = star < 0.01 ? 0.01 : star > 0.8 ? 0.8 : star;
        q = a * (t1 + c);
        q_per = a;
        p = pow(100 * m, b);
        p_per = m == star ? b * p / m : 0;
        rh_per = exp(-q * p);
        rh = 1 - rh_per;
        saturation_direct(t1, &s, &s_per);
      } else {
        double t = place_in(&by_temp, t1);
        at_place(&by_temp, t, &q, &q_per);
        double m = place_in(&by_moisture, star);
        at_place(&by_moisture, m, &p, &p_per);
        if (m <= 0 || m >= by_moisture.end) p_per = 0;
        at_place(&humidity, place_in(&humidity, q * p), &rh, &rh_per);
        at_place(&saturation, t, &s, &s_per);
      }
      rh_per *= q_per * t_per * p + q * p_per * (1 + slower);
      double wet = WATER_PER_DRY_AIR + w1;
      double gap = pressure * w1 - wet * s * rh;
      double gap_per = r * (s * rh - pressure) - wet * (s_per * t_per * rh + s * rh_per);
      if (gap > 0) low = m1;
      else high = m1;
      double next = m1 - gap / gap_per;
      if (!(next > low && next < high)) next = 0.5 * (low + high);
      move = next - m1;
      m1 = next;
      at_place(&binding, place_in(&binding, m1), &bound, &bound_per);
    }
    temp[i] = t1;
    moisture[i] = m1;
    t0 = t1;
    w0 = w1;
  }
}

static const double *next_table(const double *in, table *t) {
  int n = (int)in[3];
  *t = (table){in[0], in[1], in[2], in + 4};
  return in + 4 + n;
}

int main(int count, char **names) {
  FILE *file = count == 2 ? fopen(names[1], "rb") : NULL;
  if (!file) return 2;
  fseek(file, 0, SEEK_END);
  long bytes = ftell(file);
  rewind(file);
  double *in = malloc(bytes);
  if (fread(in, 1, bytes, file) != (size_t)bytes) return 2;
  fclose(file);
  int layers = (int)in[0], hours = (int)in[1], rounds = (int)in[2];
  double dry = in[3], air = in[4], start_c = in[6], start_db = in[7];
  seconds = in[5], pressure = in[8], heat_dry = in[9], heat_per_moisture = in[10];
  a = in[11], b = in[12], c = in[13];
  const double *temp_in = in + 14, *ratio_in = temp_in + hours, *at = ratio_in + hours;
  at = next_table(at, &by_temp);
  at = next_table(at, &by_moisture);
  at = next_table(at, &humidity);
  at = next_table(at, &binding);
  at = next_table(at, &rate);
  next_table(at, &saturation);
  double *temp = malloc(layers * sizeof *temp), *moisture = malloc(layers * sizeof *moisture);
  for (int direct = 1; direct >= 0; direct--) {
    double best = INFINITY;
    for (int round = 0; round < rounds; round++) {
      struct timespec from, to;
      for (int i = 0; i < layers; i++) temp[i] = start_c, moisture[i] = start_db;
      clock_gettime(CLOCK_MONOTONIC, &from);
      for (int hour = 0; hour < hours; hour++)
        pass_air(layers, dry, temp, moisture, air, temp_in[hour], ratio_in[hour], direct);
      clock_gettime(CLOCK_MONOTONIC, &to);
      double ns = ((to.tv_sec - from.tv_sec) * 1e9 + (to.tv_nsec - from.tv_nsec)) / hours / layers;
      if (ns < best) best = ns;
    }
    printf("%.17g", best);
    for (int i = 0; i < layers; i++) printf(" %.17g %.17g", temp[i], moisture[i]);
    printf("\n");
  }
  return 0;
}
