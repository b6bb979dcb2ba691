/** The same axis by a general-purpose solver of the registry, sample by sample; friction events by halving. */
import { Solver } from 'odex';

/** Trapezoid only. */
function reference(m, t) {
  const up = m.steady;
  if (t < up) return [(m.acceleration * t * t) / 2, m.acceleration * t];
  if (t < up + m.cruise) return [(m.speed * up) / 2 + m.speed * (t - up), m.speed];
  const s = t - up - m.cruise;
  const before = m.speed * (up / 2 + m.cruise);
  if (s < up) return [before + m.speed * s - (m.acceleration * s * s) / 2, m.speed - m.acceleration * s];
  return [before + (m.speed * up) / 2, 0];
}

/** Peak following error in m at the runs of the speed loop, and rows at the samples asked for. */
export function byOdex(m, until, tolerance, marks = []) {
  const solver = new Solver(5);
  solver.relativeTolerance = tolerance;
  solver.absoluteTolerance = tolerance * 1e-3;
  let s1 = m.T1 > 0 ? 0 : 1;
  let s2 = 0;
  let v = 0;
  const spring = (y) => m.k * y[2] + m.c * (y[0] - y[1]);
  const rates = (_, y) => {
    const torque = spring(y);
    const sign = Math.sign(s2);
    const slow = Math.abs(s2) === 1;
    const friction = slow ? sign * m.Ts + (m.b2 - (m.Ts - m.Tc) / m.fall) * y[1] : sign * m.Tc + m.b2 * y[1];
    return [
      s1 === 0 ? 0 : (m.K * y[3] - torque - s1 * m.T1 - m.b1 * y[0]) / m.J1,
      s2 === 0 ? 0 : (torque - friction) / m.J2,
      y[0] - y[1],
      (v - m.R * y[3] - m.K * y[0]) / m.L,
      y[0],
    ];
  };
  const broken = (y) => {
    if (s1 === 0 ? Math.abs(m.K * y[3] - spring(y)) > m.T1 : s1 * y[0] < 0) return 1;
    if (s2 === 0) return Math.abs(spring(y)) > m.Ts ? 2 : 0;
    const w = Math.sign(s2) * y[1];
    if (Math.abs(s2) === 1) return w < 0 || w > m.fall ? 2 : 0;
    return w < m.fall ? 2 : 0;
  };
  const solve = (y, h) => {
    solver.initialStepSize = h;
    return solver.solve(rates, 0, y, h).y;
  };
  const turn = (y, which) => {
    if (which === 1) {
      if (s1 !== 0) {
        y[0] = 0;
        const net = m.K * y[3] - spring(y);
        s1 = Math.abs(net) <= m.T1 ? 0 : Math.sign(net);
      } else s1 = Math.sign(m.K * y[3] - spring(y));
    } else if (s2 === 0) s2 = Math.sign(spring(y));
    else if (Math.abs(s2) === 2) s2 /= 2;
    else if (s2 * y[1] > 0) s2 *= 2;
    else {
      y[1] = 0;
      const net = spring(y);
      s2 = Math.abs(net) <= m.Ts ? 0 : Math.sign(net);
    }
  };
  let y = [0, 0, 0, 0, 0];
  let zv = 0;
  let zc = 0;
  let want = 0;
  let last = 0;
  let queue = 0;
  let peak = 0;
  const rows = [];
  const samples = Math.round(until / m.T);
  for (let k = 0; k <= samples; k++) {
    const [ref, ref1] = reference(m, k * m.T);
    if (k % m.every === 0) peak = Math.max(peak, Math.abs(ref - y[4]));
    if (marks.includes(k))
      rows.push({
        t: k * m.T,
        following: (ref - y[4]) * m.r,
        slide: (y[4] - y[2]) * m.r,
        speed: y[0],
        current: y[3],
      });
    if (k === samples) break;
    if (k % m.every === 0) {
      const seen = m.count > 0 ? Math.floor(y[4] / m.count + 0.5) * m.count : y[4];
      const w = m.tacho ? y[0] : (seen - last) / (m.T * m.every);
      const e = m.Kp * (ref - seen) + m.kff * ref1 - w;
      last = seen;
      const asked = m.Kvp * e + m.Kvi * zv;
      want = Math.max(-m.limit, Math.min(m.limit, asked));
      zv += m.T * m.every * (e - (asked - want) / m.Kvp);
    }
    const e = want - y[3];
    const asked = m.Kcp * e + m.Kci * zc;
    const had = Math.max(-m.volt, Math.min(m.volt, asked));
    zc += m.T * (e - (asked - had) / m.Kcp);
    v = queue;
    queue = had;
    let left = m.T;
    for (let events = 0; left > 0 && events < 50; events++) {
      const end = solve(y, left);
      let which = broken(end);
      if (!which) {
        y = end;
        break;
      }
      let low = 0;
      let high = left;
      for (let halving = 0; halving < 40; halving++) {
        const middle = (low + high) / 2;
        const here = broken(solve(y, middle));
        if (here) {
          high = middle;
          which = here;
        } else low = middle;
      }
      y = solve(y, high);
      turn(y, which);
      left -= high;
    }
  }
  return { peak: peak * m.r, rows };
}
