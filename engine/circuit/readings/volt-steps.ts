/** Volts to expect: mains off, control supply on, each output on, each unit with logic of its own on. */
import { andList } from '../../quantity/words.ts';
import type { Volts } from '../network/index.ts';
import { NEUTRAL } from '../power/sources.ts';
import type { ReadWiring } from '../wiring/types.ts';
import type { Commons } from './commons.ts';
import { type LiveState, liveState, liveWiring, type Switched } from './live.ts';
import { sayVolts } from './say.ts';
import { touched } from './touched.ts';
import type { Band, RingRow, RingStep } from './types.ts';

/** A hand meter's own error: 1 % and a tenth of a volt; common practice, no source. */
const METER = { share: 0.01, volts: 0.1 };
/** A reading that changes by less says nothing about a step. */
const CHANGE = 0.5;

const none: ReadonlySet<string> = new Set();

export function voltSteps(wiring: ReadWiring, commons: Commons, notes: string[]): readonly RingStep[] {
  const build = liveWiring(wiring);
  if (build.sources.length === 0) return [];
  const hasMains = build.sources.some(({ kind }) => kind === 'mains');
  if (!hasMains) notes.push('No mains inlet is drawn: supplies are taken as fed.');
  for (const { id, volts } of build.sources)
    if (volts === undefined)
      notes.push(`What ${id} gives in volts has not been said: readings behind it are missing.`);
  const steps: RingStep[] = [];
  const run = (state: Switched, before?: LiveState): LiveState | undefined => {
    const answer = liveState(build, state, before);
    if ('sentence' in answer) {
      const words = answer.sentence.replace(/\b(gives|load|contact|whole|resistor|drives|on) (?=\S+\.)/g, '');
      if (!notes.includes(words)) notes.push(words);
      return undefined;
    }
    return answer;
  };
  steps.push({
    id: 'off',
    title: 'Power still off',
    says: 'Meter on d.c. volts. Every supply and every capacitor must be empty before a screw is touched.',
    cautions: [],
    powered: false,
    rows: emptyRows(wiring, build.sources),
  });
  const base: Switched = { mains: true, outputs: none, logic: none };
  const on = run(base);
  if (!on) return steps;
  const nothing: LiveState = { ...on, pulled: none, giving: none };
  steps.push({
    id: 'control',
    title: 'Control supply on, all outputs off',
    says: 'Emergency stop pressed in and drives’ plugs off for the first time; then released. Red lead on each terminal, black lead on the one named.',
    cautions: [
      'Terminals of the mains are live now: leave them to the electrician, or keep away from them.',
      ...movers(wiring, nothing, on),
    ],
    powered: true,
    rows: voltRows(wiring, commons, 'control', on),
  });
  const outputs = [...wiring.terminals.values()].filter(
    ({ id, nature }) => nature.kind === 'output' && (wiring.netOf.get(id)?.wires.length ?? 0) > 0,
  );
  for (const { id, nature, name, device } of outputs) {
    if (nature.kind !== 'output') continue;
    const state = run({ ...base, outputs: new Set([id]) }, on);
    if (!state) continue;
    const rows = voltRows(wiring, commons, `output ${id}`, state, on);
    steps.push({
      id: `output:${id}`,
      title: `Output ${id} on`,
      says: `${howOn(wiring, id, name, device)} Only what changes is listed.`,
      cautions: [
        ...(nature.frequency === undefined
          ? []
          : ['Pulses turn the motor: its plug is off, or nobody and nothing is in the way.']),
        ...movers(wiring, on, state),
      ],
      powered: true,
      rows,
    });
  }
  const logic = new Set(
    [...wiring.terminals.values()].flatMap(({ nature, device }) =>
      nature.kind === 'contact' && nature.moved === 'logic' ? [device] : [],
    ),
  );
  for (const device of logic) {
    const state = run({ ...base, logic: new Set([device]) }, on);
    if (!state) continue;
    const name = wiring.devices.get(device)?.name || device;
    steps.push({
      id: `logic:${device}`,
      title: `${name} has switched on`,
      says: `${name} closes its contacts by itself once its own conditions hold (released, reset, ready). Only what changes is listed.`,
      cautions: movers(wiring, on, state),
      powered: true,
      rows: voltRows(wiring, commons, `logic ${device}`, state, on),
    });
  }
  return steps;
}

/** How a person makes an output switch on. */
function howOn(wiring: ReadWiring, id: string, name: string, device: string): string {
  const found = wiring.devices.get(device);
  const called = found?.name || device;
  if (found?.kind === 'sensor')
    return `Hold metal before ${called} until its lamp lights, or turn it by hand if it is one that opens.`;
  if (found?.kind === 'control')
    return `Switch on ${id} (${name}) from the control’s own page for inputs and outputs.`;
  return `Have ${called} switch ${id} (${name}) on.`;
}

/** What pulls in or gets power in a step. */
function movers(wiring: ReadWiring, before: LiveState, after: LiveState): readonly string[] {
  const named = (ids: readonly string[]): string =>
    andList([...new Set(ids.map((id) => wiring.devices.get(id)?.name || id))]);
  const pulled = [...after.pulled].filter((id) => !before.pulled.has(id));
  const giving = [...after.giving]
    .filter((id) => !before.giving.has(id))
    .map((id) => wiring.terminals.get(id)?.device ?? id);
  return [
    ...(pulled.length > 0 ? [`Pulled in now: ${named(pulled)}. Something may move, or get power.`] : []),
    ...(giving.length > 0 ? [`Alive now: ${named(giving)}.`] : []),
  ];
}

function emptyRows(
  wiring: ReadWiring,
  sources: ReturnType<typeof liveWiring>['sources'],
): readonly RingRow[] {
  return sources.flatMap((source): readonly RingRow[] =>
    source.ac || source.back.length === 0 || !wiring.terminals.has(source.live[0]!)
      ? []
      : [
          {
            id: `off:${source.id}`,
            measured: 'volts',
            at: source.live,
            against: source.back[0]!,
            expect: { low: 0, high: (source.volts ?? 0) > 60 ? 60 : 5 },
            says:
              (source.volts ?? 0) > 60 ? 'under 60 V after 5 s, and falling to nothing' : 'next to nothing',
            otherwise:
              'Still charged: the bleeder resistor is missing or burnt out. Wait, measure again, and mend it before anything else.',
          },
        ],
  );
}

const widened = (low: number, high: number): Band => {
  const [a, b] = [Math.min(low, high), Math.max(low, high)];
  return {
    low: a - METER.share * Math.abs(a) - METER.volts,
    high: b + METER.share * Math.abs(b) + METER.volts,
  };
};

function voltRows(
  wiring: ReadWiring,
  commons: Commons,
  step: string,
  state: LiveState,
  before?: LiveState,
): readonly RingRow[] {
  const node = (id: string): string => wiring.netOf.get(id)?.id ?? id;
  return wiring.nets.flatMap((net): readonly RingRow[] => {
    if (net.wires.length === 0) return [];
    const black = commons.of.get(net.id);
    if (black === undefined || node(black) === net.id) return [];
    const read = (point: Volts): number | undefined => {
      const there = point.volts(net.id, node(black));
      // A meter on a.c. knows no sign.
      return there !== undefined && commons.alternating.has(net.id) ? Math.abs(there) : there;
    };
    const [low, high] = [read(state.low), read(state.high)];
    const [wasLow, wasHigh] = before ? [read(before.low), read(before.high)] : [undefined, undefined];
    // Only once it is known that there is a row: of the many nets of a step few change.
    const shared = () => ({
      id: `${step}:${net.id}`,
      measured: 'volts' as const,
      at: touched(wiring, net),
      against: black,
    });
    if (low === undefined || high === undefined) {
      if (before)
        return wasLow === undefined
          ? []
          : [
              {
                ...shared(),
                says: 'cut off: it floats, the meter shows anything small',
                otherwise: 'The full voltage: something still feeds it.',
              },
            ];
      const mains =
        point(state.high, net.id) ||
        net.terminals.some((id) => wiring.terminals.get(id)?.nature.kind === 'mains');
      if (mains || onlyEarth(wiring, net.terminals)) return [];
      return [{ ...shared(), says: unjudged(wiring, net.terminals), otherwise: '' }];
    }
    if (
      before &&
      wasLow !== undefined &&
      wasHigh !== undefined &&
      Math.abs(low - wasLow) < CHANGE &&
      Math.abs(high - wasHigh) < CHANGE
    )
      return [];
    const expect = widened(low, high);
    return [
      {
        ...shared(),
        expect,
        says: `${sayVolts(expect)}${commons.alternating.has(net.id) ? ' a.c.' : ''}`,
        otherwise: meaning((low + high) / 2),
      },
    ];
  });
}

/** Whether a net hangs on the mains. */
const point = (state: Volts, net: string): boolean => state.pieceOf(net)?.nodes.includes(NEUTRAL) ?? false;

const onlyEarth = (wiring: ReadWiring, ids: readonly string[]): boolean =>
  ids.every((id) => {
    const kind = wiring.terminals.get(id)?.nature.kind;
    return kind === 'earth' || kind === 'shield' || kind === 'joint';
  });

function unjudged(wiring: ReadWiring, ids: readonly string[]): string {
  const kinds = new Set(ids.map((id) => wiring.terminals.get(id)?.nature.kind));
  if (kinds.has('motor-phase'))
    return 'nothing steady while the drive is off; once it is on, pulses of the full bus that a hand meter misreads';
  if (kinds.has('differential-output') || kinds.has('differential-input'))
    return 'moves with the signal: against its partner 2 V or more either way round, at rest';
  if (kinds.has('sensor')) return 'signals of the unit’s own: nothing a hand meter can judge';
  if (kinds.has('analogue-output') || kinds.has('analogue-input'))
    return 'about nothing until a command is given';
  return 'floats: nothing drives it in this step, the meter shows anything small';
}

function meaning(volts: number): string {
  if (Math.abs(volts) < 1)
    return 'The full voltage: something feeds it that should not (an output stuck on, a wire on the wrong terminal, a contact the wrong kind).';
  return 'Nothing: a fuse, a contact or a wire before it is open. Less: a bad joint, or too much hangs on it. The sign reversed: leads or poles swapped.';
}
