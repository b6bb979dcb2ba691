/*
 * The rival of the simulation: the same sampled cascade, two masses, dry friction that sticks and falls, play, and
 * S-curve, by the classical fourth-order Runge-Kutta method. Friction events are located by halving the step.
 *
 * gcc -O3 -march=native -o simulate-axis simulate-axis.c -lm
 * simulate-axis STEPS REPEATS SAMPLES < parameters      prints peak following error (m), slips, nanoseconds a run
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

typedef struct {
  double R, L, K, J1, J2, k, c, gap, T1, b1, Ts, Tc, b2, fall, r;
  double Kp, Kvp, Kvi, kff, Kcp, Kci, limit, volt, T, count;
  double every, positionEvery, delay;
  double speed, acceleration, jerkTime, steady, cruise, tacho;
} Model;

typedef struct { double w1, w2, wind, i, phi; } State;
typedef struct { int s1, s2; } Mode;

static Model m;

static inline double contact(double wind, double w1, double w2) {
  double t = m.k * wind + m.c * (w1 - w2);
  if (m.gap == 0) return t;
  double up = t - m.k * m.gap, down = t + m.k * m.gap;
  return up > 0 ? up : down < 0 ? down : 0;
}

static inline State rate(State x, double v, Mode mode) {
  State d;
  double t = contact(x.wind, x.w1, x.w2);
  double f1 = mode.s1 * m.T1 + m.b1 * x.w1;
  int sign = mode.s2 > 0 ? 1 : -1;
  int slow = mode.s2 == 1 || mode.s2 == -1;
  double f2 = slow ? sign * m.Ts + (m.b2 - (m.Ts - m.Tc) / m.fall) * x.w2 : sign * m.Tc + m.b2 * x.w2;
  d.w1 = mode.s1 == 0 ? 0 : (m.K * x.i - t - f1) / m.J1;
  d.w2 = mode.s2 == 0 ? 0 : (t - f2) / m.J2;
  d.wind = x.w1 - x.w2;
  d.i = (v - m.R * x.i - m.K * x.w1) / m.L;
  d.phi = x.w1;
  return d;
}

static inline State along(State x, State d, double h) {
  State y = {x.w1 + h * d.w1, x.w2 + h * d.w2, x.wind + h * d.wind, x.i + h * d.i, x.phi + h * d.phi};
  return y;
}

static inline State runge(State x, double v, Mode mode, double h) {
  State a = rate(x, v, mode);
  State b = rate(along(x, a, h / 2), v, mode);
  State c = rate(along(x, b, h / 2), v, mode);
  State d = rate(along(x, c, h), v, mode);
  State y;
  y.w1 = x.w1 + h / 6 * (a.w1 + 2 * b.w1 + 2 * c.w1 + d.w1);
  y.w2 = x.w2 + h / 6 * (a.w2 + 2 * b.w2 + 2 * c.w2 + d.w2);
  y.wind = x.wind + h / 6 * (a.wind + 2 * b.wind + 2 * c.wind + d.wind);
  y.i = x.i + h / 6 * (a.i + 2 * b.i + 2 * c.i + d.i);
  y.phi = x.phi + h / 6 * (a.phi + 2 * b.phi + 2 * c.phi + d.phi);
  return y;
}

/* Which part of the mode no longer holds: 1 the motor's, 2 the slide's; 0 while it holds. */
static inline int broken(State x, Mode mode) {
  if (mode.s1 == 0) {
    if (fabs(m.K * x.i - contact(x.wind, 0, x.w2)) > m.T1) return 1;
  } else if (m.T1 > 0 && mode.s1 * x.w1 < 0) return 1;
  if (mode.s2 == 0) {
    if (fabs(contact(x.wind, x.w1, 0)) > m.Ts) return 2;
  } else if (mode.s2 == 1 || mode.s2 == -1) {
    double w = mode.s2 * x.w2;
    if (w < 0 || w > m.fall) return 2;
  } else {
    double w = (mode.s2 > 0 ? 1 : -1) * x.w2;
    if (w < m.fall) return 2;
  }
  return 0;
}

static long slips;

static void turn(State *x, Mode *mode, int which) {
  if (which == 1) {
    if (mode->s1 != 0) {
      x->w1 = 0;
      double net = m.K * x->i - contact(x->wind, 0, x->w2);
      mode->s1 = fabs(net) <= m.T1 ? 0 : net > 0 ? 1 : -1;
    } else mode->s1 = m.K * x->i - contact(x->wind, 0, x->w2) > 0 ? 1 : -1;
    return;
  }
  if (mode->s2 == 0) {
    mode->s2 = contact(x->wind, x->w1, 0) > 0 ? 1 : -1;
    slips++;
  } else if (mode->s2 == 2 || mode->s2 == -2) mode->s2 /= 2;
  else if (mode->s2 * x->w2 > 0) mode->s2 *= 2;
  else {
    x->w2 = 0;
    double net = contact(x->wind, x->w1, 0);
    mode->s2 = fabs(net) <= m.Ts ? 0 : net > 0 ? 1 : -1;
  }
}

static void advance(State *x, Mode *mode, double v, double h) {
  double left = h;
  for (int events = 0; left > 0;) {
    State y = runge(*x, v, *mode, left);
    int which = events < 50 ? broken(y, *mode) : 0;
    if (!which) {
      *x = y;
      return;
    }
    double low = 0, high = left;
    for (int turn = 0; turn < 40; turn++) {
      double middle = (low + high) / 2;
      State z = runge(*x, v, *mode, middle);
      int here = broken(z, *mode);
      if (here) {
        high = middle;
        which = here;
      } else low = middle;
    }
    *x = runge(*x, v, *mode, high);
    turn(x, mode, which);
    left -= high;
    events++;
  }
}

/* Rise, cruise and fall with limited jerk, and rest; position and speed of the motor. */
static double ends[7], starts[7][4];
static int piece;
static void plan(void) {
  double j = m.jerkTime > 0 ? m.acceleration / m.jerkTime : 0;
  double dt[7] = {m.jerkTime, m.steady, m.jerkTime, m.cruise, m.jerkTime, m.steady, m.jerkTime};
  double jerk[7] = {j, 0, -j, 0, -j, 0, j};
  double a[7] = {0, m.acceleration, m.acceleration, 0, 0, -m.acceleration, -m.acceleration};
  double p = 0, v = 0, t = 0;
  for (int k = 0; k < 7; k++) {
    starts[k][0] = p; starts[k][1] = v; starts[k][2] = a[k]; starts[k][3] = jerk[k];
    p += dt[k] * (v + dt[k] * (a[k] / 2 + dt[k] * jerk[k] / 6));
    v += dt[k] * (a[k] + dt[k] * jerk[k] / 2);
    t += dt[k];
    ends[k] = t;
  }
}
static void wanted(double t, double *p, double *v) {
  while (piece < 7 && t >= ends[piece]) piece++;
  int k = piece < 7 ? piece : 6;
  double s = piece < 7 ? t - (k ? ends[k - 1] : 0) : ends[6] - ends[5];
  *p = starts[k][0] + s * (starts[k][1] + s * (starts[k][2] / 2 + s * starts[k][3] / 6));
  *v = piece < 7 ? starts[k][1] + s * (starts[k][2] + s * starts[k][3] / 2) : 0;
}

static double run(int steps, long samples) {
  State x = {0, 0, m.gap, 0, 0};
  Mode mode = {m.T1 > 0 ? 0 : 1, 0};
  double zv = 0, zc = 0, speedWanted = 0, currentWanted = 0, last = 0, held = 0, peak = 0;
  int every = (int)m.every, positionEvery = (int)m.positionEvery, delay = (int)m.delay;
  double queue[16] = {0};
  int slot = 0;
  piece = 0;
  slips = 0;
  for (long k = 0; k <= samples; k++) {
    double ref, ref1;
    wanted(k * m.T, &ref, &ref1);
    double error = ref - x.phi;
    if (k % every == 0 && fabs(error) > peak) peak = fabs(error);
    if (k == samples) break;
    if (k % every == 0) {
      double seen = m.count > 0 ? floor(x.phi / m.count + 0.5) * m.count : x.phi;
      if (k % positionEvery == 0) speedWanted = m.Kp * (ref - seen) + m.kff * ref1;
      double w = m.tacho ? x.w1 : (seen - last) / (m.T * every);
      last = seen;
      double e = speedWanted - w;
      double want = m.Kvp * e + m.Kvi * zv;
      currentWanted = want > m.limit ? m.limit : want < -m.limit ? -m.limit : want;
      zv += m.T * every * (e - (want - currentWanted) / m.Kvp);
    }
    double e = currentWanted - x.i;
    double want = m.Kcp * e + m.Kci * zc;
    double had = want > m.volt ? m.volt : want < -m.volt ? -m.volt : want;
    zc += m.T * (e - (want - had) / m.Kcp);
    if (delay == 0) held = had;
    else {
      held = queue[slot];
      queue[slot] = had;
      slot = slot + 1 == delay ? 0 : slot + 1;
    }
    for (int s = 0; s < steps; s++) advance(&x, &mode, held, m.T / steps);
  }
  return peak * m.r;
}

int main(int argc, char **argv) {
  if (argc < 4) return 2;
  int steps = atoi(argv[1]), repeats = atoi(argv[2]);
  long samples = atol(argv[3]);
  double *field = (double *)&m;
  for (unsigned k = 0; k < sizeof m / sizeof(double); k++)
    if (scanf("%lf", field + k) != 1) return 2;
  plan();
  double peak = 0, best = 1e30;
  for (int k = 0; k < repeats; k++) {
    struct timespec a, b;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &a);
    peak = run(steps, samples);
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &b);
    double ns = (b.tv_sec - a.tv_sec) * 1e9 + (b.tv_nsec - a.tv_nsec);
    if (ns < best) best = ns;
  }
  printf("%.17g %ld %.0f\n", peak, slips, best);
  return 0;
}
