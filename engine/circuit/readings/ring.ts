/** The whole sheet: wires end to end, paths to 0 V and to earth, contacts moved by hand, then volts step by step. */
import { wireOhms } from '../power/conductors.ts';
import { flowOf } from '../power/flow.ts';
import { guardsOf } from '../power/guards.ts';
import { sourcesOf } from '../power/sources.ts';
import type { ReadWiring } from '../wiring/types.ts';
import { commonsOf } from './commons.ts';
import { contactSteps } from './contact-steps.ts';
import { diodeStep } from './diode-step.ts';
import { OhmPaths } from './ohms.ts';
import { pathSteps } from './path-steps.ts';
import { ohms, SHORT } from './say.ts';
import type { RingRow, RingSheet, RingStep } from './types.ts';
import { voltSteps } from './volt-steps.ts';

const DEAD: readonly string[] = [
  'Plug out or main switch off and locked. Then measure that nothing is live, with a meter you have just tried on something live.',
  'Capacitors of the drives stay charged: wait, measure their plus against their minus, and go on only below 60 V, better below 5 V.',
];
const LIVE: readonly string[] = [
  'From here on the machine is live. If you are not sure, have somebody who is do this with you; mains parts are for a licensed electrician.',
  'One hand only, the other behind your back; never alone; nothing conducting on wrists and neck.',
  'A meter and leads for category III, 600 V or more; on volts, and looked at once more before each touch.',
  'Chuck empty, axes free to stop anywhere, motors’ plugs off if you can, emergency stop within reach and tried.',
];

/** How far the work is after each part, about, of a wiring of some thousand wires. */
const SHARES = { sources: 0.1, flow: 0.35, ohms: 0.55, diodes: 0.6 };

/** Readings to expect at every terminal of a wired network. Deterministic; an empty wiring gives empty steps. */
export function ringItOut(wiring: ReadWiring): RingSheet {
  const pieces = seekRingOut(wiring);
  for (;;) {
    const next = pieces.next();
    if (next.done) return next.value;
  }
}

/** The same in pieces, so that it can be shown how far it is, or ended; yields the share done. */
export function* seekRingOut(wiring: ReadWiring): Generator<number, RingSheet, void> {
  yield 0;
  const sources = sourcesOf(wiring);
  const guards = guardsOf(wiring, sources);
  const returns = guardsOf(wiring, sources, ({ back }) => back);
  const commons = commonsOf(wiring, sources, guards, returns);
  const notes: string[] = [];
  yield SHARES.sources;
  const { trouble } = flowOf(wiring);
  if (trouble) notes.push(`${trouble.sentence} No power before that is mended, and no volts are worked out.`);
  yield SHARES.flow;
  const paths = OhmPaths.of(wiring);
  const dead = [
    { ...wireStep(wiring), cautions: DEAD },
    ...pathSteps(wiring, commons, paths),
    ...contactSteps(wiring, paths),
  ];
  yield SHARES.ohms;
  const diodes = diodeStep(wiring);
  yield SHARES.diodes;
  const powered: RingStep[] = [];
  if (!trouble) {
    const working = voltSteps(wiring, commons, notes);
    for (;;) {
      const next = working.next();
      if (next.done) {
        powered.push(...next.value);
        break;
      }
      yield SHARES.diodes + (1 - SHARES.diodes) * next.value;
    }
  }
  const first = powered.findIndex((each) => each.powered);
  const steps: readonly RingStep[] = [
    ...dead,
    ...diodes,
    ...powered.map((step, k) => (k === first ? { ...step, cautions: [...LIVE, ...step.cautions] } : step)),
  ].filter(({ rows }) => rows.length > 0);
  return {
    cautions: [
      'Measured beats worked out: where a reading disagrees, stop and find out why before the next step.',
      ...DEAD,
    ],
    ...(commons.main === undefined ? {} : { common: commons.main }),
    ...(commons.earth === undefined ? {} : { earth: commons.earth }),
    steps,
    notes,
  };
}

/** Every wire by itself, both ends still on: others in parallel can only make it less. */
function wireStep(wiring: ReadWiring): Omit<RingStep, 'cautions'> {
  const rows = [...wiring.wires.values()]
    .filter(({ from, to }) => wiring.terminals.has(from) && wiring.terminals.has(to) && from !== to)
    .map((wire): RingRow => {
      const own = wireOhms(wire);
      const most = Math.max(SHORT, own === undefined ? SHORT : 1.5 * own + 0.5);
      return {
        id: `wire:${wire.id}`,
        measured: 'ohms',
        at: [wire.from],
        against: wire.to,
        wire: wire.id,
        expect: { low: 0, high: most },
        says: most <= SHORT ? `under ${SHORT} Ω: it beeps` : `under ${ohms(most)}: it is long and thin`,
        otherwise:
          'OL: broken, a ferrule pressed on insulation, or the other end is landed elsewhere. Some ohms: a loose screw or a strand alone.',
      };
    });
  return {
    id: 'wires',
    title: 'Each wire, end to end',
    says: 'Meter on ohms, leads held together first: what they show is taken off. Then both ends of each wire, tugging at them.',
    powered: false,
    rows,
  };
}
