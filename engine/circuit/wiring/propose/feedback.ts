/** Resolvers, tachogenerators and Hall sensors to the drive that reads them. */
import { chosenPart } from '../../../refit/place.ts';
import { partFacts } from '../part-facts.ts';
import type { Build } from './build.ts';
import type { Question } from './questions.ts';

export interface Felt {
  readonly questions: readonly Question[];
  /** What was left out and why, in sentences. */
  readonly left: readonly string[];
}

const NOTHING: Felt = { questions: [], left: [] };

/** What tells the drive of a chain speed and angle besides an encoder. */
export function proposeSenses(
  build: Build,
  chain: string,
  number: number,
  drive: string,
  spindle: boolean,
): Felt {
  const part = chosenPart(build.refit, chain, spindle ? 'spindle-feedback' : 'feedback');
  if (!part) return NOTHING;
  const facts = partFacts(part);
  const type = facts.choice('type');
  const phases = facts.choice('commutation');
  const felt = [
    ...(type === 'resolver' || phases === 'resolver'
      ? [proposeResolver(build, chain, number, drive, type === 'resolver' ? part.id : null)]
      : []),
    ...(type === 'tacho' ? [proposeTacho(build, chain, number, drive, part.id)] : []),
    ...(phases === 'halls' ? [proposeHalls(build, chain, number, drive)] : []),
  ];
  return {
    questions: felt.flatMap(({ questions }) => questions),
    left: felt.flatMap(({ left }) => left),
  };
}

/** What the drive is said to read; nothing said is not the same as none. */
function reads(build: Build, drive: string, fact: 'feedbacks' | 'commutations', what: string): boolean {
  const part = build.refit.parts[build.devices.get(drive)!.part ?? ''];
  const said = part ? partFacts(part).choices(fact) : [];
  return said.length === 0 || said.includes(what);
}

/** Every mark of the one to the same mark, with its prefix, of the other. */
function join(build: Build, from: string, drive: string, prefix: string, cable: string): void {
  for (const mark of build.terminals(from).keys())
    build.wire(`${from}.${mark}`, `${drive}.${prefix}${mark}`, cable);
}

const REFUSED = (of: string, drive: string, what: string): Felt => ({
  questions: [],
  left: [
    `The ${what} of ${of} is left out: ${drive} is not said to read one. A converter, or another drive, belongs there.`,
  ],
});

function proposeResolver(
  build: Build,
  chain: string,
  number: number,
  drive: string,
  part: string | null,
): Felt {
  if (!reads(build, drive, part === null ? 'commutations' : 'feedbacks', 'resolver'))
    return REFUSED(chain, drive, 'resolver');
  build.settle(drive, { resolver: 'yes' });
  const own = build.device(`B${number}`, 'resolver', `Resolver of ${chain}`, { part, where: 'machine' });
  const cable = build.cable(`WR-${chain}`, `Resolver of ${chain}`, {
    cores: '6',
    section: '0.25 mm²',
    shield: 'braid',
    twisted: 'yes',
    route: 'signals',
    laid: 'moved',
  });
  join(build, own, drive, 'RS-', cable);
  return NOTHING;
}

function proposeTacho(build: Build, chain: string, number: number, drive: string, part: string): Felt {
  if (!reads(build, drive, 'feedbacks', 'tacho')) return REFUSED(chain, drive, 'tachogenerator');
  build.settle(drive, { tacho: 'yes' });
  const own = build.device(`B${number}`, 'tacho', `Tacho of ${chain}`, { part, where: 'machine' });
  const cable = build.cable(`WT-${chain}`, `Tacho of ${chain}`, {
    cores: '2',
    section: '0.25 mm²',
    shield: 'braid',
    twisted: 'yes',
    route: 'signals',
    laid: 'moved',
  });
  for (const [mark, to] of [
    ['T+', 'TA+'],
    ['T-', 'TA-'],
    ['SH', 'TA-SH'],
  ])
    build.wire(`${own}.${mark}`, `${drive}.${to}`, cable);
  return NOTHING;
}

function proposeHalls(build: Build, chain: string, number: number, drive: string): Felt {
  if (!reads(build, drive, 'commutations', 'halls')) return REFUSED(chain, drive, 'set of Hall sensors');
  build.settle(drive, { halls: 'yes' });
  const own = build.device(`B${60 + number}`, 'halls', `Hall sensors of ${chain}`, { where: 'machine' });
  const cable = build.cable(`WU-${chain}`, `Hall sensors of ${chain}`, {
    cores: '5',
    section: '0.25 mm²',
    shield: 'braid',
    route: 'signals',
    laid: 'moved',
  });
  build.wire(`${own}.5V`, `${drive}.HA-5V`, cable);
  build.wire(`${own}.0V`, `${drive}.HA-0V`, cable);
  build.wire(`${own}.SH`, `${drive}.HA-SH`, cable);
  const output = build.terminal(`${own}.H1`)?.nature;
  const pulls = output?.kind === 'output' && output.stage === 'sinking';
  const inside = build.devices.get(drive)!.settings['hall-pull-up'];
  if (pulls && inside !== 'yes' && inside !== 'no')
    return {
      questions: [
        {
          id: `${drive}.hall-pull-up`,
          asks: `${drive}: does it pull its three Hall inputs up to 5 V inside, by resistors of its own? Without, the wiring gets three.`,
          place: { of: 'device', id: drive, setting: 'hall-pull-up' },
          options: ['yes', 'no'],
        },
      ],
      left: [],
    };
  for (const n of [1, 2, 3]) {
    build.wire(`${own}.H${n}`, `${drive}.HA-${n}`, cable);
    if (!pulls || inside === 'yes') continue;
    // 5 mA through the sensor, and fast enough for any motor: common practice, no source.
    const resistor = build.named('R', 'resistor', `Pull-up ${n} of the Hall sensors of ${chain}`, {
      settings: { ohms: '1 kohm', watts: '0.25 W' },
    });
    build.wire(`${drive}.HA-5V`, `${resistor}.1`);
    build.wire(`${resistor}.2`, `${drive}.HA-${n}`);
  }
  return NOTHING;
}
