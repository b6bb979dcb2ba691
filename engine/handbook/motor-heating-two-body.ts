import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { numbers } from './numbers.ts';

const TWO = 'derived: linear heat balance of winding and housing, closed form';

/** Bisects the time at which the winding has risen by dT; the rise grows steadily under constant heat. */
function timeToRise(...x: readonly unknown[]): number {
  const [P, Rwh, Rha, Cw, l1, l2, dT] = x as [number, number, number, number, number, number, number];
  const rise = (t: number): number => {
    const end = P * (Rwh + Rha);
    const fast = (l2 * end - P / Cw) / (l1 - l2);
    return end + fast * Math.exp(-l1 * t) - (end + fast) * Math.exp(-l2 * t);
  };
  let low = 0;
  let high = 1 / l1;
  while (rise(high) < dT) high *= 2;
  for (let k = 0; k < 200 && high - low > 1e-13 * high; k++) {
    const mid = (low + high) / 2;
    if (rise(mid) < dT) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}

/** Winding and housing as two bodies, starting cold. */
export const motorHeatingTwoBody = defineSheet({
  id: 'motor-heating-two-body',
  title: 'Heating of winding and housing',
  about:
    'The winding is small and heats in minutes, the housing is heavy and takes the better part of an hour. A hand on the housing, or a thermal switch there, says little about the winding.',
  symbols: {
    P: input('heat made in the winding', 'W', {
      domain: 'not negative',
      note: 'Current squared times resistance.',
    }),
    t: input('time since cold', 's', { domain: 'not negative' }),
    Rwh: input('thermal resistance, winding to housing', 'K/W', { tex: 'R_{wh}', domain: 'positive' }),
    Rha: input('thermal resistance, housing to room', 'K/W', { tex: 'R_{ha}', domain: 'positive' }),
    Cw: input('heat capacity of the winding', 'J/K', { tex: 'C_w', domain: 'positive' }),
    Ch: input('heat capacity of the housing', 'J/K', { tex: 'C_h', domain: 'positive' }),
    dT: input('rise the winding may have', 'K', { tex: '\\Delta T', domain: 'positive' }),
    s: formula('sum of the two rates', '1/s', '1/(Rwh*Cw) + 1/(Rwh*Ch) + 1/(Rha*Ch)', TWO, {
      says: 'Only a step in the working.',
    }),
    d: formula('product of the two rates', '1/s²', '1/(Rwh*Cw*Rha*Ch)', TWO, {
      says: 'Only a step in the working.',
    }),
    l1: formula('fast rate', '1/s', '(s + sqrt(s^2 - 4*d)) / 2', TWO, {
      tex: '\\lambda_1',
      says: 'How quickly the winding follows.',
    }),
    l2: formula('slow rate', '1/s', 'd / l1', TWO, {
      tex: '\\lambda_2',
      says: 'How quickly the whole motor follows.',
    }),
    tau1: formula('short time constant', 's', '1 / l1', TWO, { tex: '\\tau_1', says: 'Mostly the winding.' }),
    tau2: formula('long time constant', 's', '1 / l2', TWO, { tex: '\\tau_2', says: 'Mostly the housing.' }),
    Tw_end: formula('rise of the winding once settled', 'K', 'P * (Rwh + Rha)', TWO, {
      tex: 'T_{w\\infty}',
      says: 'All the heat has to pass both resistances.',
    }),
    Th_end: formula('rise of the housing once settled', 'K', 'P * Rha', TWO, {
      tex: 'T_{h\\infty}',
      says: 'All the heat has to leave the housing.',
    }),
    Tw: formula(
      'rise of the winding',
      'K',
      'Tw_end + (l2*Tw_end - P/Cw)/(l1 - l2)*exp(-l1*t) - (l1*Tw_end - P/Cw)/(l1 - l2)*exp(-l2*t)',
      TWO,
      { tex: 'T_w', says: 'How much hotter than the room the winding is after that time.' },
    ),
    Th: formula(
      'rise of the housing',
      'K',
      'Th_end + Th_end*(l2*exp(-l1*t) - l1*exp(-l2*t))/(l1 - l2)',
      TWO,
      {
        tex: 'T_h',
        says: 'How much hotter than the room the housing is after that time.',
      },
    ),
    t_lim: procedure('time until the winding has risen that far', 's', {
      tex: 't_{lim}',
      reads: ['P', 'Rwh', 'Rha', 'Cw', 'l1', 'l2', 'dT'],
      run: timeToRise,
      refuses: (...x) => {
        const [P, Rwh, Rha, , , , dT] = numbers<7>(x);
        return P * (Rwh + Rha) > dT ? undefined : 'this heat never warms the winding that far';
      },
      says: 'How long this current may flow from cold.',
      source: TWO,
    }),
  },
});
