/** Volts to expect: mains off, control supply on, each output on, each unit with logic of its own on. */
import { andList } from '../../quantity/words.ts';
import type { ReadWiring } from '../wiring/types.ts';
import type { Commons } from './commons.ts';
import { asBase, liveState, liveWiring } from './live.ts';
import type { LiveState, Switched } from './live-types.ts';
import type { Batch, RingRow, RingStep } from './types.ts';
import { VoltRows } from './volt-rows.ts';

const none: ReadonlySet<string> = new Set();

/** Yields the share done. */
export function* voltSteps(
  wiring: ReadWiring,
  commons: Commons,
  notes: string[],
): Generator<number, readonly RingStep[]> {
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
  const first = run(base);
  if (!first) return steps;
  const on = asBase(build, first);
  const volts = new VoltRows(wiring, commons, build.order);
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
    rows: volts.all('control', on),
  });
  const logic = new Set(
    [...wiring.terminals.values()].flatMap(({ nature, device }) =>
      nature.kind === 'contact' && nature.moved === 'logic' ? [device] : [],
    ),
  );
  const outputs = [...wiring.terminals.values()].filter(
    ({ id, nature }) => nature.kind === 'output' && (wiring.netOf.get(id)?.wires.length ?? 0) > 0,
  );
  const all = outputs.length + logic.size;
  let done = 0;
  for (const { id, nature, name, device } of outputs) {
    yield done++ / all;
    if (nature.kind !== 'output') continue;
    const state = run({ ...base, outputs: new Set([id]) }, on);
    if (!state) continue;
    const rows = volts.changed(`output ${id}`, state, on);
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
      batch: outputBatch(wiring, device),
      first: begins(
        wiring,
        on,
        state,
        `${beginsBy(wiring, id, device)}${nature.frequency === undefined ? '' : ' (pulses: the motor’s plug off)'}`,
      ),
      rows,
    });
  }
  for (const device of logic) {
    yield done++ / all;
    const state = run({ ...base, logic: new Set([device]) }, on);
    if (!state) continue;
    const name = wiring.devices.get(device)?.name || device;
    steps.push({
      id: `logic:${device}`,
      title: `${name} has switched on`,
      says: `${name} closes its contacts by itself once its own conditions hold (released, reset, ready). Only what changes is listed.`,
      cautions: movers(wiring, on, state),
      powered: true,
      batch: LOGIC,
      first: begins(wiring, on, state, `${device} (${name}) on`),
      rows: volts.changed(`logic ${device}`, state, on),
    });
  }
  return steps;
}

const LOGIC: Batch = {
  id: 'logic',
  title: 'Units that switch on by themselves, one after another',
  says: 'Each closes its contacts once its own conditions hold (released, reset, ready). Only what changes is listed.',
  cautions: ['What is said to pull in may move something or give it power.'],
};

/** Outputs that are switched on in the same way. */
function outputBatch(wiring: ReadWiring, device: string): Batch {
  const found = wiring.devices.get(device);
  const called = found?.name && found.name !== device ? `${device} (${found.name})` : device;
  const of = (id: string, title: string, says: string): Batch => ({
    id: `outputs ${id}`,
    title,
    says: `${says} Only what changes is listed.`,
    cautions: ['What is said to pull in may move something or give it power: look before you switch.'],
  });
  if (found?.kind === 'sensor')
    return of(
      'sensors',
      'Sensors, one after another',
      'Hold metal before each until its lamp lights, or turn it by hand if it is one that opens; then take it away.',
    );
  return of(
    device,
    `Outputs of ${called}, one after another`,
    found?.kind === 'control'
      ? 'Switch each on from the control’s own page for inputs and outputs, measure, and switch it off again.'
      : 'Have each switched on by what stands before it, measure, and switch it off again.',
  );
}

const beginsBy = (wiring: ReadWiring, output: string, device: string): string => {
  const found = wiring.devices.get(device);
  return found?.kind === 'sensor' ? `${device} (${found.name || found.kindName})` : `${output} on`;
};

/** What begins a step and what pulls in by it, in short. */
function begins(wiring: ReadWiring, before: LiveState, after: LiveState, first: string): string {
  const pulled = [...after.pulled].filter((id) => !before.pulled.has(id));
  const named = pulled.map((id) => wiring.devices.get(id)?.name || id);
  return named.length === 0
    ? first
    : `${first}: ${andList([...new Set(named)])} ${named.length > 1 ? 'pull' : 'pulls'} in`;
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
