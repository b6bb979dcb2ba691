import { partKind } from './types.ts';

/** What the spindle must do. These are wishes: a person chooses them and remedies may change them. */
export const spindleDuty = partKind({
  id: 'spindle-duty',
  name: 'duty of the spindle',
  about:
    'What you want of the spindle: how fast, how slow, how hard it cuts, how quickly it starts and stops.',
  facts: {
    topSpeed: {
      kind: 'quantity',
      name: 'top speed wanted',
      unit: 'r/min',
      domain: 'positive',
      plausible: ['200 r/min', '30000 r/min'],
      chosen: true,
      trouble: 1,
      findOut:
        'Cutting speed over diameter: turns a minute = 318 × metres a minute ÷ millimetres of diameter, for the smallest diameter you cut.',
    },
    lowestSpeed: {
      kind: 'quantity',
      name: 'lowest speed wanted',
      unit: 'r/min',
      domain: 'not negative',
      plausible: ['10 r/min', '1000 r/min'],
      chosen: true,
      trouble: 1,
      findOut:
        'The slowest work: large diameters, reaming, coarse threads, tapping. 0 r/min means that the spindle must hold itself at rest, as for orienting a tool.',
    },
    runUp: {
      kind: 'quantity',
      name: 'time to reach top speed',
      unit: 's',
      domain: 'positive',
      plausible: ['0.3 s', '60 s'],
      chosen: true,
      trouble: 1,
      findOut: 'Choose it. 3 to 6 s suits old lathes; with a tool changer shorter.',
    },
    stopTime: {
      kind: 'quantity',
      name: 'time to stop from top speed',
      unit: 's',
      domain: 'positive',
      plausible: ['0.3 s', '120 s'],
      chosen: true,
      trouble: 1,
      findOut:
        'Choose it: how long may the spindle still turn after you press stop? The guard must stay shut at least that long.',
    },
    stopsPerMinute: {
      kind: 'quantity',
      name: 'stops from top speed a minute',
      unit: '1/min',
      domain: 'positive',
      plausible: ['0.05 1/min', '20 1/min'],
      chosen: true,
      trouble: 1,
      findOut: 'Think of your busiest work: one part in five minutes with two stops is 0.4 1/min.',
    },
    cutPower: {
      kind: 'quantity',
      name: 'power of the heaviest cut',
      unit: 'kW',
      domain: 'positive',
      plausible: ['0.05 kW', '40 kW'],
      chosen: true,
      trouble: 2,
      findOut:
        'Work it with a cut of your own, depth × feed × cutting speed × cutting force; in steel about 1 kW removes 20 cm³ a minute.',
    },
    cutSpeed: {
      kind: 'quantity',
      name: 'spindle speed of the heaviest cut',
      unit: 'r/min',
      domain: 'positive',
      plausible: ['10 r/min', '20000 r/min'],
      chosen: true,
      trouble: 1,
      findOut:
        'The speed that goes with that cut: large diameters turn slowly, and there the torque is asked.',
    },
    gripDiameter: {
      kind: 'quantity',
      name: 'diameter the jaws grip for the heaviest cut',
      unit: 'mm',
      of: 'diameter',
      domain: 'positive',
      plausible: ['3 mm', '1000 mm'],
      chosen: true,
      trouble: 1,
      findOut:
        'The diameter between the jaws, not the one being cut. The smaller, the harder they must grip.',
    },
    workInertia: {
      kind: 'quantity',
      name: 'inertia of the heaviest work or tool',
      unit: 'kg·m²',
      domain: 'not negative',
      plausible: ['0 kg·m²', '20 kg·m²'],
      chosen: true,
      trouble: 2,
      findOut:
        'A round bar: half its mass times its radius squared. A steel disc of 150 mm across and 50 mm thick: 0.02 kg·m².',
    },
    threading: {
      kind: 'choice',
      name: 'threads it shall cut',
      trouble: 1,
      options: {
        none: 'none',
        passes: 'with a single point, in several passes',
        tapping: 'single point, and taps held rigidly',
      },
      findOut:
        'Threads in several passes need the control to know the angle of the spindle each time; rigid tapping needs it all the time, also while the spindle turns round.',
    },
    threadPitch: {
      kind: 'quantity',
      name: 'coarsest pitch of those threads',
      unit: 'mm',
      of: 'pitch',
      domain: 'positive',
      plausible: ['0.2 mm', '12 mm'],
      chosen: true,
      trouble: 1,
      findOut: 'The coarsest thread you cut: M20 has 2.5 mm.',
    },
  },
});
