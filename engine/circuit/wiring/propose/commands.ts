/** Pulses from the control to a drive: the way that works is found by trying each and asking the rules. */
import { checkWiring } from '../check/checker.ts';
import type { Terminal } from '../types.ts';
import type { Build } from './build.ts';

const SIGNALS = ['step', 'dir'] as const;

/** One way of carrying pulses over: which terminals are joined, given the rails there are. */
interface Way {
  readonly id: 'pairs' | 'gives' | 'pulls' | 'buffer' | 'driver';
  readonly wires: (axis: string, drive: string, rails: Rails) => readonly (readonly [string, string])[];
}

export interface Rails {
  readonly control: string;
  /** Plus and 0 V of 24 V and of 5 V. */
  readonly plus24: string;
  readonly zero: string;
  readonly plus5: string;
  readonly buffer: string;
  /** First free channel of the buffer. */
  readonly channel: number;
}

const mark = (what: string) => what.toUpperCase();
const WAYS: readonly Way[] = [
  {
    id: 'pairs',
    wires: (axis, drive, { control }) =>
      SIGNALS.flatMap((what) =>
        ['+', '-'].map(
          (half) => [`${control}.${axis}-${what}${half}`, `${drive}.${mark(what)}${half}`] as const,
        ),
      ),
  },
  {
    id: 'gives',
    wires: (axis, drive, { control }) => [
      ...SIGNALS.flatMap((what) => [
        [`${control}.${axis}-${what}`, `${drive}.${mark(what)}+`] as const,
        [`${control}.GND`, `${drive}.${mark(what)}-`] as const,
        [`${control}.${axis}-${what}`, `${drive}.${mark(what)}`] as const,
      ]),
      [`${control}.GND`, `${drive}.GND`],
    ],
  },
  {
    id: 'pulls',
    wires: (axis, drive, { control, plus24, plus5, zero }) => [
      ...SIGNALS.flatMap((what) => [
        [drive === '' ? '' : plus24 === '' ? plus5 : plus24, `${drive}.${mark(what)}+`] as const,
        [`${control}.${axis}-${what}`, `${drive}.${mark(what)}-`] as const,
      ]),
      [`${control}.GND`, zero],
    ],
  },
  {
    id: 'buffer',
    wires: (axis, drive, { control, buffer, channel }) => [
      ...SIGNALS.flatMap((what, n) => [
        [`${control}.${axis}-${what}`, `${buffer}.I${channel + n}`] as const,
        [`${buffer}.O${channel + n}`, `${drive}.${mark(what)}+`] as const,
        [`${buffer}.0V`, `${drive}.${mark(what)}-`] as const,
      ]),
      [`${control}.GND`, `${buffer}.0V`],
    ],
  },
  {
    id: 'driver',
    wires: (axis, drive, { control, buffer, channel }) => [
      ...SIGNALS.flatMap((what, n) => [
        [`${control}.${axis}-${what}`, `${buffer}.${channel + n}`] as const,
        [`${buffer}.${channel + n}+`, `${drive}.${mark(what)}+`] as const,
        [`${buffer}.${channel + n}-`, `${drive}.${mark(what)}-`] as const,
      ]),
      [`${control}.GND`, `${buffer}.0V`],
    ],
  },
];

/** Lays the pulses of an axis; false where no way fits, which is then for a person. */
export function proposePulses(
  build: Build,
  axis: string,
  drive: string,
  rails: Omit<Rails, 'channel' | 'buffer' | 'plus5'>,
  number: number,
): boolean {
  // What is wired already was decided by somebody.
  if (
    [...build.wires.values()].some(({ from, to }) =>
      [from, to].some((end) => end.startsWith(`${drive}.STEP`)),
    )
  )
    return true;
  for (const way of WAYS) {
    const trial = new Trial(build, drive, rails.control);
    const fits = trial.fits(way, axis, drive);
    if (!fits) continue;
    const plus5 = way.id === 'pulls' && fits === 'five' ? fiveVolts(build) : '';
    const buffer = between(build, way.id);
    if (buffer !== '') {
      const five = fiveVolts(build);
      build.wire(`${five}.plus`, `${buffer}.5V`);
      build.wire(`${five}.minus`, `${buffer}.0V`);
      build.atLeast(buffer, 'channels', 2 * number);
    }
    for (const [from, to] of way.wires(axis, drive, {
      ...rails,
      plus24: plus5 === '' ? rails.plus24 : '',
      plus5: plus5 === '' ? '' : `${plus5}.plus`,
      zero: plus5 === '' ? rails.zero : `${plus5}.minus`,
      buffer,
      channel: 2 * number - 1,
    }))
      if (build.has(from) && build.has(to)) build.wire(from, to);
    return true;
  }
  return false;
}

/** What stands between control and drive where they do not understand each other; '' where nothing has to. */
function between(build: Build, way: Way['id']): string {
  const settings = { channels: '8' };
  if (way === 'buffer') return build.device('A2', 'buffer', 'Buffer of the pulses', { settings });
  if (way === 'driver') return build.device('A3', 'line-unit', 'Line driver of the pulses', { settings });
  return '';
}

/** A small 5 V supply for signals, where one is needed. */
const fiveVolts = (build: Build): string =>
  build.device('G3', 'supply', '5 V for signals', { settings: { volts: '5 V', tolerance: '5 %' } });

/** A way tried on the two devices alone. */
class Trial {
  private readonly build: Build;
  private readonly drive: string;
  private readonly control: string;

  constructor(build: Build, drive: string, control: string) {
    this.build = build;
    this.drive = drive;
    this.control = control;
  }

  fits(way: Way, axis: string, drive: string): 'five' | 'twenty-four' | undefined {
    for (const volts of ['5 V', '24 V'] as const) {
      const found = this.tried(way, axis, drive, volts);
      if (found) return volts === '5 V' ? 'five' : 'twenty-four';
    }
    return undefined;
  }

  private tried(way: Way, axis: string, drive: string, volts: string): boolean {
    const plain = { part: null, where: '', name: '', terminals: {}, pins: {} };
    const devices = {
      [this.drive]: this.build.devices.get(this.drive)!,
      [this.control]: this.build.devices.get(this.control)!,
      G: { ...plain, id: 'G', kind: 'supply', settings: { volts } },
      U: { ...plain, id: 'U', kind: way.id === 'driver' ? 'line-unit' : 'buffer', settings: {} },
      F: { ...plain, id: 'F', kind: 'supply', settings: { volts: '5 V' } },
    };
    const pairs = [
      ...way.wires(axis, drive, {
        control: this.control,
        plus24: 'G.plus',
        plus5: 'G.plus',
        zero: 'G.minus',
        buffer: 'U',
        channel: 1,
      }),
      ['F.plus', 'U.5V'] as const,
      ['F.minus', 'U.0V'] as const,
    ].filter(([from, to]) => [from, to].every((end) => /^[GFU]\./.test(end) || this.build.has(end)));
    const wires = Object.fromEntries(
      pairs.map(([from, to], n) => [`w${n}`, { id: `w${n}`, from, to, cable: null, settings: {} }]),
    );
    const findings = checkWiring({ devices, wires, cables: {}, settings: {} }, this.build.refit);
    const inputs = [...this.build.terminals(this.drive).values()].filter(isPulse).map(({ id }) => id);
    if (inputs.length === 0) return false;
    const about = findings.filter(
      ({ about: [subject = ''], rule }) =>
        (rule === 'levels' || rule === 'pair') && (inputs.includes(subject) || subject.startsWith('U.')),
    );
    const judged = new Set(about.map(({ about: [subject] }) => subject));
    // Every input must have an answer, and none may fail.
    return (
      about.every(
        ({ verdict, needs = [] }) => verdict !== 'fails' && (verdict !== 'unknown' || needs.length > 0),
      ) && inputs.every((id) => judged.has(id))
    );
  }
}

/** The terminals a pulse input is judged at. */
const isPulse = ({ mark: own, nature }: Terminal): boolean =>
  /^(STEP|DIR)\+?$/.test(own) && (nature.kind === 'input' || nature.kind === 'differential-input');
