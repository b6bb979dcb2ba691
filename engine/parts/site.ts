import { partKind } from './types.ts';

export const site = partKind({
  id: 'site',
  name: 'workshop',
  about: 'Where the machine will stand: mains, floor and the way in.',
  facts: {
    mains: {
      kind: 'quantity',
      name: 'mains voltage',
      unit: 'V',
      domain: 'positive',
      plausible: ['90 V', '690 V'],
      trouble: 1,
      findOut:
        'What the transformer’s primary is connected to: 230 V or 400 V in most of Europe, 120 V or 240 V in North America.',
      caution:
        'Only measure mains with a meter and leads rated for it; if you are not sure, ask an electrician to read it for you.',
    },
    frequency: {
      kind: 'quantity',
      name: 'mains frequency',
      unit: 'Hz',
      domain: 'positive',
      plausible: ['50 Hz', '60 Hz'],
      trouble: 1,
      findOut: '50 Hz in most of the world, 60 Hz in North America and parts of Asia.',
    },
    transformerRated: {
      kind: 'quantity',
      name: 'mains voltage the transformer is made for',
      unit: 'V',
      domain: 'positive',
      plausible: ['90 V', '690 V'],
      trouble: 1,
      findOut: 'Transformer plate: primary volts of the tap in use.',
    },
    phases: {
      kind: 'choice',
      name: 'phases of the mains there',
      trouble: 1,
      options: {
        single: 'one phase',
        converter: 'one phase, with a converter to three',
        three: 'three phases',
      },
      findOut: 'Look at the board: one or three main fuses. Ask whoever wired it.',
      caution: 'Look only: the board is for an electrician.',
    },
    lineVoltage: {
      kind: 'quantity',
      name: 'voltage between two phases (three-phase mains)',
      unit: 'V',
      domain: 'positive',
      plausible: ['190 V', '690 V'],
      trouble: 1,
      findOut:
        '400 V in most of Europe; 208 V, 240 V or 480 V in North America. √3 times the volts between one phase and neutral.',
      caution: 'Ask an electrician: between two phases is the worst place to try a meter.',
    },
    available: {
      kind: 'quantity',
      name: 'power that can be drawn there',
      unit: 'kW',
      domain: 'positive',
      plausible: ['1 kW', '100 kW'],
      trouble: 2,
      findOut:
        'Fuse amperes × mains volts for one phase, × 1.7 more for three; ask whoever wired it what may be drawn for long.',
    },
    breaker: {
      kind: 'quantity',
      name: 'fuse or breaker for the machine',
      unit: 'A',
      domain: 'positive',
      plausible: ['6 A', '125 A'],
      trouble: 1,
      findOut: 'Printed on it: B16 or C16 is 16 A. In North America 15 A or 20 A on most outlets.',
      caution: 'Look only: the board is for an electrician.',
    },
    door: {
      kind: 'quantity',
      name: 'narrowest way in',
      unit: 'mm',
      domain: 'positive',
      plausible: ['500 mm', '6000 mm'],
      trouble: 1,
      findOut: 'Every door, turn and gate from the road to where it will stand.',
    },
    floor: {
      kind: 'quantity',
      name: 'weight the floor bears there',
      unit: 'kg',
      domain: 'positive',
      plausible: ['200 kg', '50000 kg'],
      trouble: 3,
      findOut:
        'A slab on the ground bears most machines; a floor over a cellar, boards or a trailer may not: ask somebody who can reckon it.',
    },
    lift: {
      kind: 'quantity',
      name: 'weight your lifting gear bears',
      unit: 'kg',
      domain: 'positive',
      plausible: ['100 kg', '50000 kg'],
      trouble: 1,
      findOut:
        'Printed on hoist, crane, slings and jack: the least of them counts, and the beam they hang from.',
      caution: 'Never under a hanging load.',
    },
  },
});
