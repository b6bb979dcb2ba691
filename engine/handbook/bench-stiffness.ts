import { defineSheet, formula, input } from '../sheet/index.ts';

/** How far something gives way under a known force: stiffness, and the play before it bears. */
export const benchStiffness = defineSheet({
  id: 'bench-stiffness',
  title: 'Stiffness by force and indicator',
  about:
    'A known force pushes and an indicator reads how far it gives way. What it gives for each newton is the slope of the readings; what it jumps when the push turns to a pull is play, and no part of the slope.',
  symbols: {
    P: input('pull on the scale', 'N', { domain: 'positive' }),
    n: input('times the lever multiplies it', '1', { domain: 'positive' }),
    s_push: input('slope of the readings while pushed', 'µm/N', { tex: 's_{push}' }),
    s_pull: input('slope of the readings while pulled', 'µm/N', { tex: 's_{pull}' }),
    x_push: input('reading without load on the line of the pushes', 'µm', { tex: 'x_{push}' }),
    x_pull: input('reading without load on the line of the pulls', 'µm', { tex: 'x_{pull}' }),
    s: input('slope of the readings', 'µm/N', { domain: 'positive' }),
    F: formula('force at the part', 'N', 'n*P', 'derived: lever', {
      says: 'A lever multiplies the pull by the ratio of its arms.',
    }),
    s_both: formula('mean of both slopes', 'µm/N', '(s_push + s_pull)/2', 'derived: mean', {
      tex: 's_{both}',
      says: 'An arm or a stand that favours one way is halved in the mean of both.',
    }),
    play: formula('play', 'µm', 'x_push - x_pull', 'derived: difference of the lines at no load', {
      says: 'How far it jumps where the push turns to a pull.',
    }),
    k: formula('stiffness', 'N/µm', '1/s', 'definition of stiffness', {
      says: 'Newtons for each micrometre it gives way.',
    }),
  },
});
