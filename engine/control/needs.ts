/** What the machine asks of its control, each with why. */
import type { Assessment } from '../assess/index.ts';
import { ABILITIES, ABILITY_IDS, type AbilityId } from '../parts/control-abilities.ts';
import { formatQuantity } from '../quantity/index.ts';
import { andList } from '../quantity/words.ts';
import { parseThread } from '../threads/index.ts';
import { openAll } from './auxiliaries/open.ts';
import { type Census, censusOf } from './census.ts';
import { jobFacts } from './facts.ts';
import { outputsAsDrawn, wiredAt } from './wired.ts';

export type NeedGroup = 'Moves' | 'Threads and spindle' | 'Auxiliaries' | 'Inputs and outputs' | 'Program';

export interface Need {
  readonly id: string;
  readonly group: NeedGroup;
  readonly name: string;
  /** How it is answered: yes or no, so many, so fast, one of several codes, which pole its outputs switch, how much current. */
  readonly kind: 'ability' | 'count' | 'rate' | 'codes' | 'pole' | 'current';
  /** How many, or how fast or how much in SI; 1 for what is not a number. */
  readonly asked: number;
  readonly unit: string;
  /** For codes: which. For a pole: 'plus' or 'minus'. */
  readonly codes?: readonly string[];
  readonly why: readonly string[];
  /** From the refit, from its wiring as it is drawn, or because somebody wishes it. */
  readonly by: 'refit' | 'wiring' | 'wish';
  /** A person can do without. */
  readonly waived: boolean;
}

export interface Needs {
  readonly needs: readonly Need[];
  readonly census: Census;
  /** What could add a need and is not known. */
  readonly unsure: readonly string[];
}

const GROUP: Readonly<Record<AbilityId, NeedGroup>> = {
  'threading-straight': 'Threads and spindle',
  'threading-taper': 'Threads and spindle',
  'threading-multi-start': 'Threads and spindle',
  'rigid-tapping': 'Threads and spindle',
  'constant-surface-speed': 'Threads and spindle',
  orientation: 'Threads and spindle',
  'powered-tools': 'Threads and spindle',
  'free-sequences': 'Auxiliaries',
  probing: 'Program',
  handwheel: 'Moves',
  networking: 'Program',
};
const ORDER: readonly NeedGroup[] = [
  'Moves',
  'Threads and spindle',
  'Auxiliaries',
  'Program',
  'Inputs and outputs',
];

export function needsOf(assessment: Assessment): Needs {
  const { refit } = assessment;
  const job = jobFacts(refit);
  const waived = new Set(job.choices('control-waived') ?? []);
  const unsure: string[] = [];
  const abilities = new Map<AbilityId, string[]>();
  const ask = (id: AbilityId, why: string): void => {
    const all = abilities.get(id) ?? [];
    if (!all.includes(why)) all.push(why);
    abilities.set(id, all);
  };

  const singlePoint = (text: string): void => {
    const read = parseThread(text);
    if (!read.ok) {
      unsure.push(`The wanted thread “${text.slice(0, 40)}” cannot be read: ${read.problem.message}`);
      return;
    }
    const why = `for the wanted ${read.value.designation}`;
    ask('threading-straight', why);
    if (read.value.taper > 0) ask('threading-taper', why);
    if (read.value.starts > 1) ask('threading-multi-start', why);
  };
  const lathe = refit.machine !== 'mill';
  for (const { kind, name, settings } of Object.values(refit.work)) {
    // A milled thread asks only for axes that move together, and that is asked in any case.
    if (kind === 'thread' && settings.way === 'mill') continue;
    if (kind === 'thread') singlePoint(settings.thread ?? '');
    else if (kind === 'tap') {
      if ((settings.holder ?? 'rigid') !== 'floating')
        ask('rigid-tapping', `for the wanted ${settings.thread ?? name}, tapped in a rigid holder`);
      if (settings['turned-by'] === 'tool')
        ask('powered-tools', `for ${name}, tapped by a tool with a motor of its own`);
    } else if (lathe && settings.operation === 'parting')
      ask('constant-surface-speed', `for ${name}: parting runs to the middle`);
  }
  // On a lathe threads typed with the job are cut with a single point; on a mill they may be tapped or milled.
  if (lathe)
    for (const text of (job.text('threads') ?? '').split(/[,;]| to | and /).map((each) => each.trim()))
      if (text !== '' && parseThread(text).ok) singlePoint(text);

  const codes = new Map<string, string>();
  for (const { auxiliary, opened } of openAll(refit)) {
    if (!opened) continue;
    const { kind, read, machine } = opened;
    for (const [id, why] of Object.entries(kind.abilities?.(read) ?? {}))
      ask(id as AbilityId, `${why} (${auxiliary.name})`);
    if (machine.operations.some(({ steps }) => steps.some(({ until }) => until)))
      ask('free-sequences', `for ${auxiliary.name}: outputs on, wait for inputs, give up after a time`);
    const code = kind.code?.(read);
    if (code) codes.set(code, auxiliary.name);
  }
  const wanted = new Set(job.choices('control-wanted') ?? []);
  for (const id of ABILITY_IDS) if (wanted.has(id)) ask(id, 'you asked for it');

  const needs: Need[] = [];
  const put = (need: Omit<Need, 'waived'>): void => {
    needs.push({ ...need, waived: waived.has(need.id) });
  };
  const axes = refit.chains.filter(({ kind }) => kind === 'axis').map(({ id }) => id);
  if (axes.length > 0)
    put({
      id: 'axes',
      group: 'Moves',
      name: 'axes',
      kind: 'count',
      asked: axes.length,
      unit: '1',
      why: [`for ${axes.join(', ')}`],
      by: 'refit',
    });
  const joined = Math.min(axes.length, refit.machine === 'mill' ? 3 : 2);
  if (joined > 1)
    put({
      id: 'coordinated-axes',
      group: 'Moves',
      name: 'axes moved together',
      kind: 'count',
      asked: joined,
      unit: '1',
      why: [
        joined > 2
          ? 'for shapes and helices: arcs in a plane while the third axis goes along'
          : 'for tapers and arcs',
      ],
      by: 'refit',
    });
  for (const [id, check, name, says] of [
    ['pulses', 'control-pulses', 'pulses a second', 'pulses'],
    ['edges', 'control-edges', 'encoder counts a second', 'counts'],
  ] as const) {
    const asking = assessment.findings.filter((each) => each.check === check);
    const known = asking.filter(({ asked }) => asked !== undefined);
    for (const { chain, asked } of asking)
      if (!asked) unsure.push(`How many ${says} a second ${chain} asks at rapid is not known.`);
    if (known.length === 0) continue;
    const most = Math.max(...known.map(({ asked }) => asked!.value));
    const which = known.filter(({ asked }) => asked!.value === most).map(({ chain }) => chain);
    put({
      id,
      group: 'Moves',
      name,
      kind: 'rate',
      asked: most,
      unit: 'kHz',
      why: [`for rapid on ${which.join(' and ')}`],
      by: 'refit',
    });
  }
  for (const id of ABILITY_IDS) {
    const why = abilities.get(id);
    if (why)
      put({
        id,
        group: GROUP[id],
        name: ABILITIES[id].name,
        kind: 'ability',
        asked: 1,
        unit: '1',
        why,
        by: why.every((each) => each === 'you asked for it') ? 'wish' : 'refit',
      });
  }
  if (codes.size > 0)
    put({
      id: 'turret-codes',
      group: 'Auxiliaries',
      name: 'reads the turret',
      kind: 'codes',
      asked: 1,
      unit: '1',
      codes: [...codes.keys()],
      why: [...codes].map(([code, name]) => `${name} tells its position in ${CODE_NAMES[code] ?? code}`),
      by: 'refit',
    });
  const wired = wiredAt(refit);
  const drawn = outputsAsDrawn(wired);
  const census = censusOf(refit, wired);
  const loads = census.signals.filter(({ sort }) => sort === '24v').length;
  const stated = job.choice('outputs-must');
  const pole = stated ?? drawn.gives?.pole;
  if (loads > 0 && pole !== undefined)
    put({
      id: 'outputs-give',
      group: 'Inputs and outputs',
      name: pole === 'plus' ? 'outputs that give plus' : 'outputs that pull to minus',
      kind: 'pole',
      asked: 1,
      unit: '1',
      codes: [pole],
      why: [
        stated === undefined
          ? drawn.gives!.why
          : `what hangs on its 24 V outputs shares a wire to ${pole === 'plus' ? 'minus' : 'plus'}`,
      ],
      by: stated === undefined ? 'wiring' : 'refit',
    });
  if (stated !== undefined && drawn.gives && drawn.gives.pole !== stated)
    unsure.push(
      `You say that the outputs must ${stated === 'plus' ? 'give plus' : 'pull to minus'}, but ${drawn.gives.why}. What you say counts here.`,
    );
  const told = job.value('output-load');
  const load = told ?? drawn.amps?.most;
  if (loads > 0 && load !== undefined && load > 0)
    put({
      id: 'output-current',
      group: 'Inputs and outputs',
      name: 'current of one output',
      kind: 'current',
      asked: load,
      unit: 'A',
      why: [told === undefined ? drawn.amps!.why : 'for the largest load that hangs straight on an output'],
      by: told === undefined ? 'wiring' : 'refit',
    });
  if (told !== undefined && drawn.amps && differ(told, drawn.amps.most))
    unsure.push(
      `You say that an output must switch ${sayAmps(told)} at most, but ${drawn.amps.why} and takes ${sayAmps(drawn.amps.most)}, the most of those drawn. What you say counts here.`,
    );
  if (told === undefined && drawn.open.length > 0)
    unsure.push(
      `What ${andList(drawn.open)} ${drawn.open.length === 1 ? 'carries' : 'carry'} is not known: give the current of what hangs there in the wiring, or the largest of all with the job.`,
    );
  const lines = job.value('longest-program');
  if (lines !== undefined && lines > 0)
    put({
      id: 'program-lines',
      group: 'Program',
      name: 'lines of program',
      kind: 'count',
      asked: Math.ceil(lines),
      unit: '1',
      why: ['for the longest program you will run'],
      by: 'wish',
    });
  if (refit.work && Object.keys(refit.work).length === 0 && job.text('threads') === undefined)
    unsure.push('No threads, taps or cuts are wanted yet: what they ask of the control is not in here.');
  return {
    needs: [...needs].sort((a, b) => ORDER.indexOf(a.group) - ORDER.indexOf(b.group)),
    census,
    unsure: [...unsure, ...census.unsure],
  };
}

/** A tenth apart is no difference worth a word: plates are rounded. */
const differ = (a: number, b: number): boolean => Math.abs(a - b) > 0.1 * Math.max(a, b);
const sayAmps = (amps: number): string => formatQuantity(amps, amps < 1 ? 'mA' : 'A', { digits: 3 });

export const CODE_NAMES: Readonly<Record<string, string>> = {
  binary: 'binary code',
  bcd: 'BCD',
  gray: 'Gray code',
  each: 'one switch a position',
};
