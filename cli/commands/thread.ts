/** `fettle thread`: sizes, limits and drills of a thread, and how to cut it on a machine. */
import { type Assessment, assess } from '../../engine/assess/index.ts';
import { PARTS } from '../../engine/parts/index.ts';
import { parseQuantity } from '../../engine/quantity/index.ts';
import { findFact, type Refit } from '../../engine/refit/index.ts';
import { readFact } from '../../engine/refit/read-fact.ts';
import {
  dimensionsOf,
  drillsFor,
  limitsOf,
  type Machine,
  parseThread,
  planTap,
  planThread,
  type Side,
  type TapPlan,
  type Thread,
  USUAL_GAIN,
} from '../../engine/threads/index.ts';
import { highestAllowed, spindleRefused, workMachineOf } from '../../engine/work/index.ts';
import { shown } from '../arguments.ts';
import type { Call, Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { threadJson } from '../json/thread.ts';
import { pageOn } from '../print/page.ts';
import { printThread } from '../print/thread.ts';
import { need, Refusal } from '../refusal.ts';
import { askBack } from '../words-asked.ts';

/** Length of thread where none was said: one and a half diameters. */
const USUAL_LENGTH = 1.5;
const CHAMFER = 3;
const CHIPS = 1e-3;
const HIGHEST_SPINDLE = '3000 r/min';

export const thread: Command = {
  name: 'thread',
  summary: 'sizes, limits and drills of a thread, and the passes to cut it',
  usage: [
    'thread NAME [--class CLASS] [--json]',
    'thread NAME --rapid SPEED --accel ACCELERATION [--spindle SPEED] [--length LENGTH] [--json]',
    'thread NAME --file FILE --axis AXIS [--json]',
  ],
  about:
    'NAME is what people write: M10, M10x1.25 LH, 1/4-20 UNC, 5/16 BSW, G 1/2, Rc 1/2, 1/2-14 NPT, Tr 40x14 (P7), “3-start pitch 2 mm ø20”. What can be read two ways is asked. With the speed and acceleration of the axis along the thread, or with a refit and its axis, the passes are planned and the spindle speed that the axis allows. With the inertia and braking torque of the spindle, rigid tapping is planned as well.',
  options: {
    class: { takes: 'a tolerance class', says: 'such as 6g, 4g6g, 6H, 2A, 3B, medium, A' },
    inside: { says: 'plan an internal thread' },
    length: { takes: 'a length', says: 'length of thread; one and a half diameters where it is not said' },
    rapid: { takes: 'a speed', says: 'fastest speed of the axis along the thread' },
    accel: { takes: 'an acceleration', says: 'acceleration of that axis' },
    gain: { takes: 'a gain', says: 'of the axis’s position loop, such as 30 1/s' },
    spindle: { takes: 'a speed', says: 'highest spindle speed' },
    speed: { takes: 'a cutting speed', says: 'such as 60 m/min' },
    room: { takes: 'a length', says: 'free length before the thread' },
    passes: { takes: 'a number', says: 'how many passes' },
    straight: { says: 'feed straight in instead of along a flank' },
    file: { takes: 'a refit', says: 'take speed and acceleration from it' },
    axis: { takes: 'an axis', says: 'the axis along the thread, such as Z' },
    inertia: { takes: 'an inertia', says: 'of the spindle with chuck or tool, for rigid tapping' },
    torque: { takes: 'a torque', says: 'that brakes the spindle' },
    base: { takes: 'a speed', says: 'above which that torque falls' },
    hole: { takes: 'a depth', says: 'deepest hole that may be drilled' },
    anyway: { says: 'plan with a number although it is far outside what is plausible' },
    json: { says: 'as JSON' },
  },
  examples: [
    "thread 'M10x1.25'",
    "thread '1/4-20 UNC' --class 2A",
    "thread 'Tr 40x14 (P7)' --rapid '3 m/min' --accel '0.5 m/s²'",
  ],
  words: [1, 1],
  run: (call) => {
    const { io, words, text, has } = call;
    const read = parseThread(words[0]!);
    if (!read.ok) {
      const { message, readings = [] } = read.problem;
      throw new Refusal(
        [message, ...(read.problem.code === 'ambiguous' ? readings.map((each) => `– ${each}`) : [])].join(
          '\n',
        ),
      );
    }
    const found = read.value;
    const limits = need(limitsOf(found, text('class')), 'class: ');
    const questions = askBack(typedOf(call), has('anyway'), (word) => `--${word}`);
    const side: Side = has('inside') || found.side === 'internal' ? 'internal' : 'external';
    const length = quantity(call, 'length', 'mm') ?? USUAL_LENGTH * found.diameter;
    const { machine, notes, refused } = machineOf(call);
    const passes = passCount(text('passes'));
    const plan =
      machine &&
      planThread(found, machine, {
        side,
        length,
        infeed: has('straight') ? 'straight' : 'flank',
        ...(passes === undefined ? {} : { passes }),
        ...optional('cuttingSpeed', quantity(call, 'speed', 'm/min')),
        ...optional('room', quantity(call, 'room', 'mm')),
      });
    const answer = {
      thread: found,
      dimensions: dimensionsOf(found),
      limits,
      drills: drillsFor(found),
      side,
      length,
      ...(plan ? { plan } : {}),
      ...(plan && refused ? { noPermission: refused } : {}),
      ...optional('tap', tapOf(call, found, length)),
      notes: [...found.notes, ...questions, ...notes],
    };
    if (has('json')) io.out(`${JSON.stringify(threadJson(answer), null, 2)}\n`);
    else printThread(pageOn(io), answer);
    return EXIT.fine;
  },
};

const optional = <K extends string, T>(key: K, value: T | undefined): { [P in K]?: T } =>
  (value === undefined ? {} : { [key]: value }) as { [P in K]?: T };

/** The options that were given with a text. */
const typedOf = ({ text }: Call): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.keys(thread.options).flatMap((option) => {
      const typed = text(option);
      return typed === undefined ? [] : [[option, typed]];
    }),
  );

/** A value above zero, SI; undefined where the option was not given. */
function quantity({ text }: Call, option: string, unit: string): number | undefined {
  const typed = text(option);
  if (typed === undefined) return undefined;
  const { value } = need(parseQuantity(typed, unit), `--${option}: `);
  if (!(value > 0)) throw new Refusal(`--${option} must be above zero.`);
  if (value > 1e12) throw new Refusal(`--${option}: that is more than any machine has.`);
  return value;
}

function passCount(typed: string | undefined): number | undefined {
  if (typed === undefined) return undefined;
  const count = Number(typed);
  if (!/^\d{1,3}$/.test(typed.trim()) || count < 1 || count > 200)
    throw new Refusal(`--passes takes a whole number from 1 to 200, not “${shown(typed)}”.`);
  return count;
}

function machineOf(call: Call): { machine?: Machine; notes: readonly string[]; refused?: string | null } {
  const { text } = call;
  const rapid = quantity(call, 'rapid', 'm/min');
  const acceleration = quantity(call, 'accel', 'm/s²');
  const more = {
    ...optional('gain', quantity(call, 'gain', '1/s')),
    ...optional('spindle', quantity(call, 'spindle', 'r/min')),
  };
  const [path, axis] = [text('file'), text('axis')];
  if ((path === undefined) !== (axis === undefined))
    throw new Refusal('--file and --axis go together: --file lathe.refit --axis Z.');
  if (path !== undefined && axis !== undefined) {
    const { refit } = openRefit(path);
    const axes = refit.chains.filter(({ kind }) => kind === 'axis');
    const chain = axes.find(({ id }) => id.toLowerCase() === axis.trim().toLowerCase());
    if (!chain)
      throw new Refusal(
        `--axis: “${shown(axis)}” is not an axis of it; it has ${axes.map(({ id }) => id).join(', ')}.`,
      );
    const assessment = assess(refit);
    const failing = assessment.findings.filter(
      ({ chain: of, verdict }) => of === chain.id && verdict === 'fails',
    );
    const { refused, ...own } = ofRefit(assessment, chain.id);
    return {
      // Whoever types a speed of the spindle answers for it.
      refused: more.spindle === undefined ? refused : null,
      machine: {
        rapid: rapid ?? dutyOf(refit, chain.id, 'rapid'),
        acceleration: acceleration ?? dutyOf(refit, chain.id, 'acceleration'),
        ...own,
        ...more,
      },
      notes:
        failing.length > 0
          ? [
              `${chain.id} cannot yet do what is wanted of it (${failing.map(({ title }) => title).join(', ')}); the plan holds once that is mended.`,
            ]
          : [],
    };
  }
  if (rapid === undefined && acceleration === undefined) return { notes: [] };
  if (rapid === undefined || acceleration === undefined)
    throw new Refusal('--rapid and --accel go together: both say how fast the axis gets going.');
  return { machine: { rapid, acceleration, ...more }, notes: [] };
}

/** What the refit tells besides its duty: how the axis follows, and how fast the spindle may turn. */
function ofRefit(
  assessment: Assessment,
  axis: string,
): Pick<Machine, 'gain' | 'spindle'> & { readonly refused: string | null } {
  const machine = workMachineOf(assessment);
  const gain = machine.axes.get(axis)?.gain.value ?? undefined;
  const spindle = highestAllowed(machine) ?? undefined;
  return { ...optional('gain', gain), ...optional('spindle', spindle), refused: spindleRefused(machine) };
}

function dutyOf(refit: Refit, axis: string, name: 'rapid' | 'acceleration'): number {
  const path = `${axis}.duty.${name}`;
  const fact = findFact(refit, path);
  if (!fact)
    throw new Refusal(`${path} is not known yet; set it, or give --${name === 'rapid' ? 'rapid' : 'accel'}.`);
  const read = need(readFact(PARTS['axis-duty']!.facts[name]!, fact.value), `${path}: `);
  if (read.kind !== 'quantity') throw new TypeError('a duty reads as a quantity');
  return read.value;
}

function tapOf(call: Call, found: Thread, length: number): TapPlan | undefined {
  const inertia = quantity(call, 'inertia', 'kg·m²');
  const torque = quantity(call, 'torque', 'N·m');
  if (inertia === undefined && torque === undefined) return undefined;
  if (inertia === undefined || torque === undefined)
    throw new Refusal('--inertia and --torque go together, for rigid tapping.');
  if (found.taper > 0)
    throw new Refusal('Rigid tapping is planned for parallel threads; a taper tap stops by its torque.');
  const highest = quantity(call, 'spindle', 'r/min') ?? need(parseQuantity(HIGHEST_SPINDLE, 'r/min')).value;
  const gain = quantity(call, 'gain', '1/s') ?? USUAL_GAIN;
  return planTap(
    found,
    {
      inertia,
      torque,
      baseSpeed: quantity(call, 'base', 'r/min') ?? highest,
      delay: 0,
      highest,
      gains: [gain, gain],
    },
    { thread: length, chamfer: CHAMFER, chips: CHIPS, ...optional('deepest', quantity(call, 'hole', 'mm')) },
    highest,
  );
}
