import { money } from './money.ts';
import { partKind } from './types.ts';

const FLIES =
  'A chuck or a jaw that lets go at speed goes through sheet metal. Nobody in its plane, and never faster than the least of what is marked on chuck, jaws and work allows.';

export const chuck = partKind({
  id: 'chuck',
  name: 'chuck',
  about: 'What holds the work, or the tool, on the spindle nose.',
  facts: {
    type: {
      kind: 'choice',
      name: 'kind',
      trouble: 1,
      options: {
        power: 'power chuck (hydraulic or air)',
        manual: 'chuck with a key',
        collet: 'collet chuck or face plate, without jaws that move',
        holder: 'tool holder of a mill',
      },
      findOut: 'Look at the spindle nose.',
    },
    topSpeed: {
      kind: 'quantity',
      name: 'highest speed marked',
      unit: 'r/min',
      domain: 'positive',
      plausible: ['200 r/min', '40000 r/min'],
      trouble: 1,
      findOut:
        'Stamped on its face or body: “max r/min”. No mark means no permission: ask its maker with the numbers that are on it.',
      caution: FLIES,
    },
    grip: {
      kind: 'quantity',
      name: 'grip at rest, all jaws together',
      unit: 'kN',
      domain: 'positive',
      plausible: ['1 kN', '300 kN'],
      trouble: 3,
      findOut:
        'A grip gauge between the jaws. Or its plate: total gripping force at the draw-bar pull or key torque you use. Old, dry chucks give half of it.',
      caution: 'Measure with the spindle locked off.',
    },
    jaws: {
      kind: 'quantity',
      name: 'number of jaws',
      unit: '1',
      domain: 'positive',
      plausible: ['2', '8'],
      trouble: 1,
      findOut: 'Count them.',
    },
    jawMass: {
      kind: 'quantity',
      name: 'mass of one jaw, base and top jaw together',
      unit: 'kg',
      domain: 'positive',
      plausible: ['0.03 kg', '15 kg'],
      trouble: 2,
      findOut: 'Kitchen scales. Soft jaws are heavier, and it is they that count when they are on.',
    },
    jawRadius: {
      kind: 'quantity',
      name: 'radius of a jaw’s centre of gravity',
      unit: 'mm',
      of: 'radius',
      domain: 'positive',
      plausible: ['8 mm', '400 mm'],
      trouble: 2,
      findOut:
        'Balance the jaw on a rod, mark the point, mount it for your largest work and measure from the centre.',
    },
    jawSurface: {
      kind: 'choice',
      name: 'gripping faces of the jaws',
      trouble: 1,
      options: { smooth: 'smooth, or soft jaws turned to fit', serrated: 'serrated hard jaws' },
      findOut: 'Look at them.',
    },
    inertia: {
      kind: 'quantity',
      name: 'inertia',
      unit: 'kg·m²',
      domain: 'not negative',
      plausible: ['1e-5 kg·m²', '20 kg·m²'],
      trouble: 2,
      findOut:
        'Half its mass times its radius squared: a 160 mm chuck of 9 kg has 0.029 kg·m², a 250 mm one of 30 kg 0.23 kg·m².',
    },
    ...money,
  },
});
