/** A wanted cut, judged on this machine: which link gives way first, and at which depth or feed. */
import type { Work } from '../refit/types.ts';
import { torqueAt } from '../simulate/instep/index.ts';
import { type Cut, cutOf, OPERATIONS, type Operation } from '../threads/index.ts';
import { missing, ratio, told, type WorkFinding } from './finding.ts';
import { baseSpeed, rangeAt, spindleLimits } from './limits.ts';
import { noSpindle, speedFinding } from './links.ts';
import { from, type Known, type WorkAxis, type WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';
import { Settings } from './settings.ts';

/** A link, what the cut asks of it, what it has, and where it would give way. */
export interface CutLink {
  readonly id: string;
  readonly name: string;
  readonly asked: number;
  readonly there: number;
  readonly unit: string;
  readonly margin: number;
  /** Depth (or width) and feed at which it gives way, the rest of the cut as it is; m. */
  readonly depth?: number;
  readonly feed?: number;
}

export interface CutDetail {
  readonly kind: 'cut';
  readonly cut: Cut;
  /** rad/s. */
  readonly speed: number;
  readonly range: string | null;
  /** The first that gives way at the head. */
  readonly links: readonly CutLink[];
}

export interface JudgedCut {
  readonly findings: readonly WorkFinding[];
  readonly detail: CutDetail | null;
}

/** Settings that are ours and not the cut's. */
const OWN = new Set(['operation', 'grip']);
/** Friction of jaws on steel: common practice, no source. */
const JAW_FRICTION: Readonly<Record<string, number>> = { smooth: 0.1, serrated: 0.25 };
const STEPS_BEYOND = 20;
const MOST_TRIES = 20;

/** Which row of a cut presses on which axis. */
const PUSHES: Readonly<Record<Operation, readonly (readonly [axis: string, row: string, what: string])[]>> = {
  turning: [
    ['Z', 'Ff', 'feed force'],
    ['X', 'Fp', 'push away from the work'],
  ],
  boring: [
    ['Z', 'Ff', 'feed force'],
    ['X', 'Fp', 'push away from the wall'],
  ],
  parting: [['X', 'Ff', 'push into the work']],
  drilling: [['Z', 'Ff', 'thrust']],
  milling: [
    ['X', 'F_axis', 'force on the table'],
    ['Y', 'F_axis', 'force across the table'],
  ],
  threading: [
    ['Z', 'Ff', 'feed force'],
    ['X', 'Fp', 'push away from the work'],
  ],
  tapping: [],
};

export function judgeCut(machine: WorkMachine, work: Work): JudgedCut {
  const s = new Settings(work);
  const grip = s.quantity('grip', 'mm', 10);
  const operation = s.text('operation')?.toLowerCase();
  if (operation === undefined) s.refuse('operation', `The operation is missing: ${OPERATIONS.join(', ')}.`);
  const typed = Object.fromEntries(
    Object.entries(work.settings)
      .filter(([key, value]) => !OWN.has(key) && value.trim() !== '')
      .map(([key, value]) => [key, value.trim()]),
  );
  if (s.findings.length > 0 || operation === undefined) return { findings: s.findings, detail: null };
  if (/^0+([.,]0*)?\s*([a-z/]+.*)?$/i.test(typed.speed ?? '')) {
    s.refuse(
      'speed',
      'The speed is 0: nothing is cut while it stands. Give a cutting speed such as 120 m/min or a spindle speed.',
    );
    return { findings: s.findings, detail: null };
  }
  const made = cutOf(operation, typed);
  if (!made.ok) {
    s.refuse(/^(\w+):/.exec(made.problem.message)?.[1] ?? 'cut', made.problem.message);
    return { findings: s.findings, detail: null };
  }
  const cut = made.value;
  const row = (of: Cut, key: string): number =>
    [...of.found, ...of.given].find((each) => each.key === key)?.value ?? 0;
  const speed = row(cut, 'n');
  const torqueKey = cut.found.some(({ key }) => key === 'Mc') ? 'Mc' : 'T';
  const found: WorkFinding[] = [];
  const links: CutLink[] = [];
  const bend = bender(cut.operation, typed, row);
  const link = (id: string, name: string, key: string, there: number, unit: string): CutLink => {
    const asked = row(cut, key);
    const made: CutLink = {
      id,
      name,
      asked,
      there,
      unit,
      margin: asked > 0 ? there / asked : Number.POSITIVE_INFINITY,
      ...bend(key, there),
    };
    links.push(made);
    return made;
  };
  const where = ({ depth, feed }: CutLink): readonly string[] => [
    ...(depth === undefined
      ? []
      : [
          `It gives way at ${mm(depth)} ${cut.operation === 'parting' ? 'width' : 'depth'}, the feed as it is.`,
        ]),
    ...(feed === undefined ? [] : [`It gives way at ${mm(feed)} feed, the depth as it is.`]),
  ];

  const { spindle } = machine;
  let rangeName: string | null = null;
  if (!spindle) found.push(noSpindle(work.id, machine));
  else {
    const limits = spindleLimits(spindle);
    found.push(...speedFinding(work.id, machine, limits, speed));
    const range = rangeAt(spindle, speed);
    rangeName = range?.name ?? null;
    if (range) {
      const isPower = speed > baseSpeed(range) * 1.02;
      const there = Math.max(0, torqueAt(range.continuous, speed) - range.drag);
      const made = link(
        'spindle',
        isPower ? 'power of the spindle' : 'torque of the spindle',
        torqueKey,
        there,
        'N·m',
      );
      found.push(
        ratio(work.id, {
          check: 'spindle-torque',
          link: 'spindle',
          title: isPower ? 'Power of the spindle' : 'Torque of the spindle',
          asked: made.asked,
          there,
          unit: 'N·m',
          tight: machine.tight,
          says: {
            fits: `The cut takes {asked} at ${rpm(speed)} (${say(made.asked * speed, 'kW')}); the spindle holds {there} (${say(there * speed, 'kW')}).`,
            fails: `The cut takes {asked} at ${rpm(speed)} (${say(made.asked * speed, 'kW')}), but the spindle holds only {there} (${say(there * speed, 'kW')}).`,
          },
          because: [
            `In the ${range.name}; for some seconds it gives ${say(Math.max(0, torqueAt(range.peak, speed) - range.drag), 'N·m')}.`,
            ...where(made),
          ],
          basis: spindle.basis,
        }),
      );
      if (machine.refit.machine === 'lathe')
        found.push(
          ...gripFindings(machine, work, cut, row(cut, torqueKey), grip, speed, links, (key, there) =>
            bend(key, there),
          ),
        );
    }
  }
  for (const [id, key, what] of PUSHES[cut.operation]) {
    const axis = machine.axes.get(id);
    if (!axis) continue;
    if (row(cut, key) <= 0) continue;
    found.push(
      ...axisFindings(
        machine,
        work,
        axis,
        what,
        (name, there) => link(`axis-${id}`, name, key, there, 'N'),
        where,
      ),
    );
  }
  found.push(...feedFindings(machine, work, cut, row(cut, 'vf')));
  for (const note of cut.notes)
    if (/diameters|thinner/.test(note))
      found.push(
        told(work.id, { check: 'note', link: 'hole', title: 'Tool', verdict: 'tight', sentence: note }),
      );
  if (cut.operation === 'boring' && row(cut, 'slender') > 4)
    found.push(
      told(work.id, {
        check: 'bar',
        link: 'hole',
        title: 'Boring bar',
        verdict: 'tight',
        sentence: `The bar stands out ${say(row(cut, 'slender'), '1')} times its diameter: a steel bar chatters beyond about four. It gives way by ${say(row(cut, 'push'), 'µm')} from the wall.`,
      }),
    );
  return {
    findings: found,
    detail: {
      kind: 'cut',
      cut,
      speed,
      range: rangeName,
      links: [...links].sort((a, b) => a.margin - b.margin),
    },
  };
}

/** Depth (or width) and feed at which a row of the cut comes to what there is; absent where that lies far beyond. */
function bender(
  operation: Operation,
  typed: Readonly<Record<string, string>>,
  row: (cut: Cut, key: string) => number,
): (key: string, there: number) => { depth?: number; feed?: number } {
  const symbols: Readonly<Record<string, string>> = {
    depth: 'ap',
    width: 'w',
    feed: operation === 'milling' ? 'fz' : 'f',
  };
  const solve = (word: string, key: string, there: number): number | undefined => {
    if (typed[word] === undefined || !(there > 0)) return undefined;
    const now = cutOf(operation, typed);
    const start = now.ok ? row(now.value, symbols[word]!) : 0;
    if (!(start > 0)) return undefined;
    return reach(start, there, (value) => {
      const made = cutOf(operation, { ...typed, [word]: `${value * 1e3} mm` });
      return made.ok ? row(made.value, key) : Number.NaN;
    });
  };
  const deep = operation === 'parting' ? 'width' : 'depth';
  return (key, there) => {
    const depth = solve(deep, key, there);
    const feed = solve('feed', key, there);
    return { ...(depth === undefined ? {} : { depth }), ...(feed === undefined ? {} : { feed }) };
  };
}

/** Where a force that grows about as a power of the value comes to a target, by the power of the last two tries. */
function reach(start: number, target: number, force: (value: number) => number): number | undefined {
  let [value, power] = [start, 1];
  let at = force(value);
  for (let turn = 0; turn < MOST_TRIES; turn++) {
    if (!(at > 0)) return undefined;
    if (Math.abs(at / target - 1) < 1e-9) return value;
    const next = value * (target / at) ** (1 / power);
    if (!(next < STEPS_BEYOND * start && next > start / 1e6)) return undefined;
    const then = force(next);
    const found = Math.log(then / at) / Math.log(next / value);
    if (found > 0.1) power = found;
    [value, at] = [next, then];
  }
  return Math.abs(at / target - 1) < 1e-3 ? value : undefined;
}

function axisFindings(
  machine: WorkMachine,
  work: Work,
  axis: WorkAxis,
  what: string,
  link: (name: string, there: number) => CutLink,
  where: (of: CutLink) => readonly string[],
): readonly WorkFinding[] {
  const { thrust, peakThrust, buckling } = axis;
  const of = {
    check: `thrust-${axis.id.toLowerCase()}`,
    link: 'axis',
    title: `Push of the ${axis.id} axis`,
  } as const;
  if (thrust.value === null)
    return [
      missing(work.id, {
        ...of,
        sentence: `How hard the ${axis.id} axis can push is not known.`,
        needs: thrust.needs,
      }),
    ];
  const isScrew = buckling.value !== null && buckling.value < thrust.value;
  const there = isScrew ? buckling.value! : thrust.value;
  const name = isScrew ? `screw of ${axis.id} (buckling)` : `${axis.weakest} of ${axis.id}`;
  const made = link(name, there);
  return [
    ratio(work.id, {
      ...of,
      asked: made.asked,
      there,
      unit: 'N',
      tight: machine.tight,
      says: {
        fits: `The ${what} is {asked}; the ${name} gives {there} beside friction and weight.`,
        fails: `The ${what} is {asked}, but the ${name} gives only {there} beside friction and weight.`,
      },
      because: [
        peakThrust.value === null || isScrew
          ? 'What it can push for hours.'
          : `What it can push for hours; for a moment ${say(peakThrust.value, 'N')}.`,
        ...where(made),
      ],
      basis: thrust.basis,
    }),
  ];
}

/** Whether the feeding axis is fast enough. */
function feedFindings(machine: WorkMachine, work: Work, cut: Cut, speed: number): readonly WorkFinding[] {
  const id = cut.operation === 'parting' || cut.operation === 'milling' ? 'X' : 'Z';
  const axis = machine.axes.get(id);
  if (!axis || speed <= 0 || axis.rapid.value === null) return [];
  return [
    ratio(work.id, {
      check: 'feed',
      link: 'axis',
      title: `Feed of the ${id} axis`,
      asked: speed,
      there: axis.rapid.value,
      unit: 'mm/min',
      tight: 1,
      says: {
        fits: `The feed is {asked}; ${id} runs at {there} at most.`,
        fails: `The feed is {asked}, but ${id} runs at {there} at most.`,
      },
      basis: axis.rapid.basis,
    }),
  ];
}

function gripFindings(
  machine: WorkMachine,
  work: Work,
  cut: Cut,
  torque: number,
  gripTyped: number | undefined,
  speed: number,
  links: CutLink[],
  bend: (key: string, there: number) => { depth?: number; feed?: number },
): readonly WorkFinding[] {
  const { chuck } = machine;
  const chain = machine.spindleChain ?? 'S';
  const of = { check: 'grip', link: 'chuck', title: 'Grip of the chuck' } as const;
  if (chuck.fitted === null)
    return [
      missing(work.id, {
        ...of,
        sentence: 'Which chuck holds the work is not known: it decides the speed and how hard may be cut.',
        needs: [`${chain}.chuck`],
      }),
    ];
  if (chuck.fitted === 'no' || chuck.type === 'holder') return [];
  const diameter = gripTyped ?? cut.given.find(({ key }) => key === 'D' || key === 'd')?.value ?? undefined;
  if (diameter === undefined) return [];
  const friction = chuck.surface === null ? null : (JAW_FRICTION[chuck.surface] ?? null);
  const thrown: Known =
    chuck.type === 'collet'
      ? { value: 0, needs: [] }
      : from([chuck.jaws, chuck.jawMass, chuck.jawRadius], (z, m, r) => z! * m! * r! * speed ** 2);
  const surface: Known =
    friction === null
      ? { value: null, needs: [`${chain}.chuck.jawSurface`] }
      : { value: friction, needs: [] };
  const { grip: ofGrip, gripCut: ofCut } = machine.habits;
  const needed = from(
    [thrown, surface],
    (F, mu) => ofGrip.value * ((ofCut.value * 2 * torque) / (mu! * diameter) + F!),
  );
  const needs = [...new Set([...needed.needs, ...chuck.grip.needs])];
  if (needed.value === null || chuck.grip.value === null)
    return [
      missing(work.id, { ...of, sentence: 'How hard the chuck grips at that speed is not known.', needs }),
    ];
  // The torque at which the grip is just enough.
  const most = Math.max(
    0,
    ((chuck.grip.value / ofGrip.value - thrown.value!) * friction! * diameter) / (2 * ofCut.value),
  );
  const key = cut.found.some((each) => each.key === 'Mc') ? 'Mc' : 'T';
  links.push({
    id: 'chuck',
    name: 'grip of the chuck',
    asked: needed.value,
    there: chuck.grip.value,
    unit: 'kN',
    margin: chuck.grip.value / needed.value,
    ...bend(key, most),
  });
  return [
    ratio(work.id, {
      ...of,
      asked: needed.value,
      there: chuck.grip.value,
      unit: 'kN',
      tight: 1,
      says: {
        fits: 'The cut and the jaws flying outwards ask {asked} of grip at rest; the chuck has {there}.',
        fails:
          'The cut and the jaws flying outwards ask {asked} of grip at rest, but the chuck has only {there}: the work slips or comes out. Cut less, or turn slower.',
      },
      because: [
        `Gripped at ⌀ ${mm(diameter)}, friction ${friction}, safety of the grip ${ofGrip.says}, of the cut ${ofCut.says}. At ${rpm(speed)} the jaws throw ${say(thrown.value!, 'kN')} outwards.`,
      ],
      basis: chuck.grip.basis,
    }),
  ];
}
