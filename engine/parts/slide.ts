import { partKind } from './types.ts';

export const slide = partKind({
  id: 'slide',
  name: 'slide',
  about: 'The moving mass on its ways: carriage, cross slide, table or head.',
  facts: {
    mass: {
      kind: 'quantity',
      name: 'moving mass',
      unit: 'kg',
      domain: 'positive',
      plausible: ['5 kg', '3000 kg'],
      trouble: 3,
      findOut:
        'Weigh it when it is off, or reckon its volume: iron is 7.2 kg per litre. Add turret, vice, work and tool.',
      caution: 'A slide is heavier than it looks: lift it with a hoist and never reach under it.',
    },
    slope: {
      kind: 'quantity',
      name: 'slope of the axis to the horizontal',
      unit: '°',
      domain: 'not negative',
      plausible: ['0 °', '90 °'],
      trouble: 1,
      findOut:
        'A level axis is 0°, a vertical one 90°. On a slant bed the cross slide runs on the slope (30, 45 or 60°), the long slide is level: 0°.',
    },
    ways: {
      kind: 'choice',
      name: 'kind of ways',
      trouble: 1,
      options: {
        'ball-rail': 'ball profile rails',
        'roller-rail': 'roller profile rails',
        'ptfe-box': 'box ways lined with PTFE-bronze',
        moulded: 'moulded epoxy lining',
        'cast-iron': 'scraped cast iron on cast iron',
        'hardened-box': 'hardened steel box ways',
        dovetail: 'dovetail with gib',
      },
      findOut:
        'Wipe the ways and look under the wipers: rails with running blocks, flat box ways, or a dovetail with a gib strip.',
    },
    friction: {
      kind: 'quantity',
      name: 'running friction coefficient',
      unit: '1',
      domain: 'not negative',
      plausible: ['0.001', '0.4'],
      trouble: 3,
      findOut:
        'Screw uncoupled, pull the slide along with a spring scale at a steady crawl: friction is pull ÷ weight. A level slide only; on a slope pull up and down and take half the difference.',
      caution: 'A slide on a slope runs away when its screw is uncoupled: prop it first.',
    },
    sealDrag: {
      kind: 'quantity',
      name: 'drag of seals and wipers',
      unit: 'N',
      domain: 'not negative',
      plausible: ['0 N', '300 N'],
      trouble: 3,
      findOut:
        'Spring-scale pull with the wipers on less the pull with them off. If you measured friction with the wipers on, put 0 N.',
    },
    balance: {
      kind: 'choice',
      name: 'balance of the weight',
      trouble: 1,
      options: {
        none: 'none',
        weight: 'a counterweight on a chain',
        force: 'gas spring or hydraulic balance',
      },
      findOut: 'Look behind a vertical head for chains, or a cylinder between head and column.',
    },
    counterweight: {
      kind: 'quantity',
      name: 'mass of the counterweight',
      unit: 'kg',
      domain: 'not negative',
      plausible: ['5 kg', '3000 kg'],
      trouble: 4,
      findOut: 'Weigh it when it is out, or reckon its volume: iron is 7.2 kg per litre.',
      caution: 'Prop the head before you touch chain or counterweight.',
    },
    balanceForce: {
      kind: 'quantity',
      name: 'balancing force',
      unit: 'N',
      domain: 'not negative',
      plausible: ['50 N', '30 kN'],
      trouble: 3,
      findOut: 'Gas spring: printed on its tube. Cylinder: gauge pressure × piston area.',
      caution:
        'A gas spring or accumulator holds its force with the power off: prop the head and let the pressure down first.',
    },
    travel: {
      kind: 'quantity',
      name: 'travel',
      unit: 'mm',
      domain: 'positive',
      plausible: ['20 mm', '5 m'],
      trouble: 1,
      findOut: 'Measure from hard stop to hard stop.',
    },
    housingStiffness: {
      kind: 'quantity',
      name: 'stiffness of the bearing housing and its seat',
      unit: 'N/µm',
      domain: 'positive',
      plausible: ['20 N/µm', '3000 N/µm'],
      trouble: 3,
      findOut:
        'Push the screw end with a known force (a lever and spring scale) and read the housing against the bed with an indicator.',
    },
  },
});
