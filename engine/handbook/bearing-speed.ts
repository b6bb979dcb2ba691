import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const CATALOGUE =
  'bearing catalogue practice, from memory: mean diameter in millimetres times speed in r/min';

export const bearingSpeed = defineSheet({
  id: 'bearing-speed',
  title: 'Speed limit of spindle bearings',
  about:
    'Bearings are held to a speed factor: mean diameter in millimetres times turns a minute. It tells what usual grease and a usual preload bear, not what this worn bearing bears: feel for heat while you run it in.',
  symbols: {
    A: input('speed factor', '1', { domain: 'positive' }),
    d: input('mean diameter', 'mm', { domain: 'positive' }),
    c: constant('unit of the speed factor', 'mm·r/min', '1 mm·r/min', CATALOGUE),
    n: formula('speed limit of the bearing', 'r/min', 'A * c / d', CATALOGUE, {
      says: 'The thicker the spindle, the slower it may turn.',
    }),
  },
});
