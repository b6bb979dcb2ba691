/**
 * The wiring of the samples, laid anew: what is wired stays, what the proposal adds is answered for and joined in.
 * `npm run build && node dist/samples/lay-wiring.js` writes both files.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { supplyDrawn } from '../engine/advice/supply-drawn.ts';
import { assess } from '../engine/assess/index.ts';
import { proposeWiring } from '../engine/circuit/wiring/index.ts';
import { dress } from '../engine/circuit/wiring/propose/dress.ts';
import { askedOfWiring } from '../engine/control/index.ts';
import { type Refit, readRefit, type Wiring } from '../engine/refit/index.ts';
import { SAMPLES } from './index.ts';

type Settings = Readonly<Record<string, string>>;

interface Answers {
  /** Of the wiring as a whole. */
  readonly whole: Settings;
  /** Terminals whose wires are taken off before anything is laid: what was wired another way. */
  readonly loose: readonly string[];
  /** Of devices by their id, and of those without an answer of their own by their kind. */
  readonly devices: Readonly<Record<string, Settings>>;
  readonly kinds: Readonly<Record<string, Settings>>;
  /** Of cables that the proposal adds. */
  readonly cables: Settings;
}

const COIL = { suppressor: 'clamp', 'clamp-volts': '36 V' } as const;
const RATED = { 'dc-volts': '24 V', 'dc-amps': '6 A', 'dc-coil-amps': '2 A' } as const;

/** What a wire bears by what it does, and by nothing else. */
const DRESS = ['number', 'colour', 'section', 'ferrule'];

const ANSWERS: Readonly<Record<string, Answers>> = {
  'carriage-works-lathe': {
    whole: { limits: 'switches to the control', 'spindle-filter': 'no', 'cabinet-wire-length': '2 m' },
    loose: [],
    devices: {
      A1: { 'dc-volts': '24 V', 'dc-amps': '2 A', 'dc-coil-amps': '0.5 A' },
      T3: { 'ready-output': 'yes', 'at-speed-output': 'no' },
    },
    kinds: {
      relay: { ...COIL, ...RATED, 'coil-current': '20 mA' },
      contactor: { ...COIL, 'coil-current': '0.12 A', 'main-ac-volts': '400 V', 'main-ac-amps': '9 A' },
      valve: { 'coil-current': '0.25 A', suppressor: 'diode' },
      sensor: { current: '10 mA', 'output-current': '0.2 A' },
      'opto-board': { 'output-current': '50 mA' },
      'mains-motor': { volts: '400 V', current: '0.8 A' },
      breaker: { amps: '6 A', 'ac-volts': '400 V' },
    },
    cables: { length: '5 m' },
  },
  'boatyard-mill': {
    whole: { limits: 'none', 'spindle-filter': 'yes', 'cabinet-wire-length': '2 m' },
    // The filter came later than the inverter.
    loose: ['T4.L', 'T4.N'],
    devices: {
      T4: { 'ready-output': 'no', 'at-speed-output': 'no' },
      Z1: { volts: '250 V', current: '10 A', leakage: '0.5 mA', 'leakage-volts': '120 V' },
    },
    kinds: {},
    cables: { length: '5 m' },
  },
};

/** The sample with its wiring laid; one that is laid already comes back as it is. */
export function layWiring(refit: Refit): Refit {
  const answers = ANSWERS[refit.id];
  if (!answers) return refit;
  const told = {
    ...refit,
    wiring: { ...refit.wiring, settings: { ...refit.wiring.settings, ...answers.whole } },
  };
  const asked = askedOfWiring(told);
  const drawn = supplyDrawn(assess(told));
  let now = { ...told, wiring: answered(told.wiring, answers, refit.wiring) };
  if (proposeWiring(now, asked, drawn).left.some((each) => each.includes('mains filter')))
    now = { ...now, wiring: loosened(now.wiring, answers) };
  // What is answered may call for more.
  for (let round = 0; round < 4; round++) {
    const { wiring, changes } = proposeWiring(now, asked, drawn);
    if (changes.length === 0) break;
    now = { ...now, wiring: answered(wiring, answers, refit.wiring) };
  }
  return { ...now, wiring: dressedAnew(now, drawn) };
}

/** Numbers, colours and sections as a proposal would give them to all wires at once, with every load known. */
function dressedAnew(refit: Refit, drawn: ReturnType<typeof supplyDrawn>): Wiring {
  const bare = mapped(refit.wiring.wires, (wire) => ({
    ...wire,
    settings: Object.fromEntries(Object.entries(wire.settings).filter(([name]) => !DRESS.includes(name))),
  }));
  const wiring = { ...refit.wiring, wires: bare };
  const { settings } = dress({ ...refit, wiring }, new Set(Object.keys(bare)), new Map(), drawn);
  return {
    ...wiring,
    wires: mapped(bare, (wire) => ({ ...wire, settings: { ...settings.get(wire.id), ...wire.settings } })),
  };
}

/** Devices and cables that are new get what is answered for their kind; the others only what is answered by name. */
function answered(wiring: Wiring, { devices, kinds, cables }: Answers, before: Wiring): Wiring {
  const isNew = (id: string) => !Object.hasOwn(before.devices, id);
  return {
    ...wiring,
    devices: mapped(wiring.devices, (device) => ({
      ...device,
      settings: {
        ...(isNew(device.id) ? kinds[device.kind] : {}),
        ...device.settings,
        ...devices[device.id],
      },
    })),
    cables: mapped(wiring.cables, (cable) =>
      Object.hasOwn(before.cables, cable.id)
        ? cable
        : { ...cable, settings: { ...cables, ...cable.settings } },
    ),
  };
}

function loosened(wiring: Wiring, { loose }: Answers): Wiring {
  const at = new Set(loose);
  return {
    ...wiring,
    wires: Object.fromEntries(
      Object.entries(wiring.wires).filter(([, { from, to }]) => !at.has(from) && !at.has(to)),
    ),
  };
}

const mapped = <T>(all: Readonly<Record<string, T>>, change: (each: T) => T): Record<string, T> =>
  Object.fromEntries(Object.entries(all).map(([id, each]) => [id, change(each)]));

function writeAll(): void {
  // Built, it lies in dist/samples.
  const folder = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'samples');
  for (const { file } of SAMPLES) {
    const path = join(folder, file);
    const text = readFileSync(path, 'utf8');
    const read = readRefit(text);
    if (!read.ok) throw new Error(`${file}: ${read.problem.message}`);
    // The rest of the file stays as it was written.
    const { wiring } = layWiring(read.value);
    writeFileSync(path, `${JSON.stringify({ ...JSON.parse(text), wiring }, null, 2)}\n`);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeAll();
