import { money } from './money.ts';
import { partKind } from './types.ts';

export const spindle = partKind({
  id: 'spindle',
  name: 'spindle',
  about: 'The spindle in its bearings.',
  facts: {
    topSpeed: {
      kind: 'quantity',
      name: 'highest speed of the bearings',
      unit: 'r/min',
      domain: 'positive',
      plausible: ['200 r/min', '40000 r/min'],
      trouble: 2,
      findOut:
        'The machine’s plate or manual: its top spindle speed when it was new. Without it Fettle works it from the bearing’s size.',
    },
    bearings: {
      kind: 'choice',
      name: 'kind of bearings',
      trouble: 3,
      options: {
        plain: 'plain bearings (bronze or white metal)',
        taper: 'taper rollers, grease',
        ball: 'angular contact balls, grease',
        precision: 'precision balls made for spindles, grease',
      },
      findOut: 'The manual’s drawing; else numbers on the bearings where a cover can be taken off.',
    },
    bore: {
      kind: 'quantity',
      name: 'mean diameter of the front bearing',
      unit: 'mm',
      of: 'diameter',
      domain: 'positive',
      plausible: ['10 mm', '400 mm'],
      trouble: 2,
      findOut: 'Half of bore and outside diameter together; the bearing’s number gives both.',
    },
    inertia: {
      kind: 'quantity',
      name: 'inertia',
      unit: 'kg·m²',
      domain: 'positive',
      plausible: ['1e-5 kg·m²', '5 kg·m²'],
      trouble: 2,
      findOut:
        'A round steel bar: half its mass times its radius squared. Or time how long it takes to run down, once with a known disc on it and once without.',
    },
    drag: {
      kind: 'quantity',
      name: 'drag of bearings, seals and belts',
      unit: 'N·m',
      domain: 'not negative',
      plausible: ['0.02 N·m', '20 N·m'],
      trouble: 3,
      findOut:
        'Belts on, motor off: a cord round the chuck and a spring scale, pull × radius while it just keeps turning.',
      caution: 'Lock off the mains first; nobody but you near the switch.',
    },
    ...money,
  },
});
