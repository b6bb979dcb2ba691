/** A cut described in workshop words, worked out by its sheet: what it asks of spindle and axes. */
import { tapTorqueSimple } from '../handbook/tap-torque-simple.ts';
import { parseQuantity, type Result } from '../quantity/index.ts';
import { nearest } from '../quantity/nearest.ts';
import { capital } from '../quantity/words.ts';
import { evaluate, type Sheet } from '../sheet/index.ts';
import { TAP_KINDS } from '../tables/tapping-materials.ts';
import { largest } from './bisect.ts';
import { materialOf } from './cut-material.ts';
import { OPERATIONS, type Operation, SHAPES, type Shape } from './cut-shapes.ts';
import { basicSizes } from './dimensions.ts';
import { drillsFor } from './drills.ts';
import { parseThread } from './parse.ts';
import { usualPasses } from './passes.ts';
import { LONGEST, orList, problem } from './text.ts';
import type { Thread } from './types.ts';

/** What a machine has, SI. */
export interface Capacity {
  readonly power?: number;
  readonly torque?: number;
  readonly force?: number;
}

export interface Asked {
  readonly id: 'power' | 'torque' | 'force';
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly capacity?: number;
  /** Capacity over what is asked. */
  readonly margin?: number;
  /** Highest feed that stays within the capacity, metres; absent without a capacity or a feed. */
  readonly feed?: number;
}

export interface CutRow {
  readonly key: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly says?: string;
}

export interface Cut {
  readonly operation: Operation;
  readonly sheet: string;
  readonly title: string;
  readonly material: string;
  readonly given: readonly CutRow[];
  readonly found: readonly CutRow[];
  readonly asked: readonly Asked[];
  /** What was taken as usual, and what to mind. Whole sentences. */
  readonly notes: readonly string[];
}

/**
 * Works a cut out from texts: `cutOf('turning', { material: 'steel', diameter: '60 mm', … })`.
 * Refuses an unknown word, a missing or impossible value by its word.
 */
export function cutOf(
  operation: string,
  typed: Readonly<Record<string, string>>,
  capacity: Capacity = {},
): Result<Cut> {
  const name = OPERATIONS.find((each) => each === operation.trim().toLowerCase());
  if (!name)
    return problem(
      'unknown-name',
      `“${operation.slice(0, LONGEST)}” is not a cut the book has: ${orList(OPERATIONS)}.`,
      [...OPERATIONS],
    );
  const shape = SHAPES[name];
  const extra = [
    'material',
    ...(shape.needsThread ? ['thread'] : []),
    ...(name === 'tapping' ? ['tap'] : []),
    ...(name === 'threading' ? ['side'] : []),
  ];
  const known = [...extra, ...Object.keys(shape.words)];
  for (const word of Object.keys(typed))
    if (!known.includes(word)) {
      const near = nearest(word.slice(0, LONGEST), known);
      return problem(
        'unknown-name',
        `${name} has no “${word.slice(0, LONGEST)}”.${near ? ` Did you mean ${near}?` : ''} It takes ${orList(known)}.`,
      );
    }
  const material = materialOf(typed.material, name);
  if (!material.ok) return material;
  const values: Record<string, number> = { ...material.value.values };
  const notes = [...material.value.notes];
  let thread: Thread | undefined;
  if (shape.needsThread) {
    const read = parseThread(typed.thread ?? '');
    if (!read.ok)
      return { ok: false, problem: { ...read.problem, message: `thread: ${read.problem.message}` } };
    thread = read.value;
    notes.push(...thread.notes);
    const basic = basicSizes(thread);
    values.d = basic.major;
    values.alpha = thread.flankAngle / 2;
    if (name === 'threading') {
      const side = typed.side?.trim().toLowerCase() ?? 'external';
      if (side !== 'external' && side !== 'internal')
        return problem(
          'unknown-name',
          `side: there is external (bolt) and internal (nut), not “${side.slice(0, LONGEST)}”.`,
        );
      values.a = basic.depth[side];
      // The heaviest pass: the first of a usual series.
      values.da = values.a / Math.sqrt(usualPasses(thread));
      if (typed.depth === undefined && typed.infeed === undefined) {
        values.a = values.da;
        notes.push(`Worked for the first of ${usualPasses(thread)} passes, the deepest one.`);
      }
      // A nut is cut from its bore outwards: it bites at the bore and as deep as the pass goes.
      const deep = typed.depth === undefined ? undefined : readAs(typed.depth, 'mm');
      if (side === 'internal') values.d = basic.bore + 2 * (deep ?? values.a);
    }
    if (name === 'tapping') {
      values.P = thread.pitch;
      const drill = drillsFor(thread).find(({ use }) => use === 'cutting tap');
      if (drill) values.D0 = drill.diameter;
      if (typed.hole === undefined && drill) notes.push(`Hole taken as ${drill.name}.`);
      if (thread.taper > 0)
        notes.push('A taper tap cuts along its whole length and needs more torque than comes out here.');
      const kind = TAP_KINDS.find(({ id }) => id === (typed.tap ?? 'spiral-flute'));
      if (!kind) return problem('unknown-name', `tap: there is ${orList(TAP_KINDS.map(({ id }) => id))}.`);
      values.K = material.value.soft ? kind.soft : kind.steel;
      if (typed.tap === undefined) notes.push('Tap taken as spiral flute.');
    }
  }
  for (const [word, key] of Object.entries(shape.words)) {
    const text = typed[word];
    const usual = shape.usual[key];
    if (text === undefined) {
      if (values[key] !== undefined) continue;
      if (!usual)
        return problem(
          'empty',
          `${word} is missing: ${shape.sheet.symbols[key]!.name}, such as ${word}=${example(word)}.`,
        );
      values[key] = readAs(usual[0], shape.sheet.symbols[key]!.unit)!;
      const { name: says, unit } = shape.sheet.symbols[key]!;
      const as = unit === 'deg' || unit === '°' ? usual[0].replace(' deg', '°') : usual[0];
      notes.push(`${capital(says)} (${word}) taken as ${as}: ${usual[1]}.`);
      continue;
    }
    if (text.length > LONGEST) return problem('too-long', `${word}: that is too long to be a value.`);
    const { unit, name: says } = shape.sheet.symbols[key]!;
    const value = word === 'speed' ? readSpeed(text, unit, values[shape.diameter]) : parsed(text, unit, says);
    if (!value.ok)
      return { ok: false, problem: { ...value.problem, message: `${word}: ${value.problem.message}` } };
    values[key] = value.value;
  }
  const sheet = material.value.byPitch ? (tapTorqueSimple as Sheet) : shape.sheet;
  const used = Object.fromEntries(Object.entries(values).filter(([key]) => sheet.inputs.includes(key)));
  return worked(name, shape, sheet, used, material.value.name, notes, capacity);
}

const EXAMPLES: Readonly<Record<string, string>> = {
  diameter: '60mm',
  depth: '2mm',
  feed: '0.2mm',
  speed: '120m/min',
  width: '3mm',
  teeth: '4',
  bar: '20mm',
  overhang: '80mm',
};
const example = (word: string): string => EXAMPLES[word] ?? '1';

function parsed(text: string, unit: string, name: string): Result<number> {
  const of = /\bdiameter\b/.test(name) ? ({ of: 'diameter' } as const) : {};
  // Teeth are counted, so a plain number says enough.
  const read = parseQuantity(unit === 'teeth' && /^\d{1,3}$/.test(text) ? `${text} teeth` : text, {
    unit,
    ...of,
  });
  return read.ok ? { ok: true, value: read.value.value } : read;
}

const readAs = (text: string, unit: string): number | undefined => {
  const read = parseQuantity(text, unit);
  return read.ok ? read.value.value : undefined;
};

/** A cutting speed, or a spindle speed where the diameter is known; `unit` says which the sheet wants. */
function readSpeed(text: string, unit: string, diameter: number | undefined): Result<number> {
  const asWanted = parseQuantity(text, unit);
  if (asWanted.ok || diameter === undefined)
    return asWanted.ok ? { ok: true, value: asWanted.value.value } : asWanted;
  const other = parseQuantity(text, unit === 'r/min' ? 'm/min' : 'r/min');
  if (!other.ok) return asWanted;
  return {
    ok: true,
    value: unit === 'r/min' ? (2 * other.value.value) / diameter : (other.value.value * diameter) / 2,
  };
}

function worked(
  operation: Operation,
  shape: Shape,
  sheet: Sheet,
  given: Readonly<Record<string, number>>,
  material: string,
  notes: readonly string[],
  capacity: Capacity,
): Result<Cut> {
  const at = (override: Readonly<Record<string, number>>) => evaluate(sheet, { ...given, ...override });
  const outcomes = at({});
  for (const key of sheet.order) {
    const outcome = outcomes[key]!;
    if (outcome.state === 'known') continue;
    const word = Object.entries(shape.words).find(([, symbol]) => symbol === key)?.[0];
    const reason = outcome.state === 'undefined' ? outcome.reason : `${outcome.needs.join(', ')} is missing`;
    return problem('out-of-domain', `${word ?? sheet.symbols[key]!.name}: ${reason}.`);
  }
  const row = (key: string): CutRow => {
    const spec = sheet.symbols[key]!;
    const outcome = outcomes[key]!;
    return {
      key,
      name: spec.name,
      value: outcome.state === 'known' ? outcome.value : 0,
      unit: spec.unit,
      ...('says' in spec && spec.says ? { says: spec.says } : {}),
    };
  };
  const asked: Asked[] = [];
  const ask = (id: Asked['id'], key: string, unit: string, name: string): void => {
    if (!sheet.derived.includes(key)) return;
    const { value } = row(key);
    const has = capacity[id];
    const feedKey = shape.feed;
    const now = feedKey === undefined ? undefined : given[feedKey];
    asked.push({
      id,
      name,
      value,
      unit,
      ...(has === undefined ? {} : { capacity: has, margin: has / value }),
      ...(has === undefined || feedKey === undefined || now === undefined
        ? {}
        : {
            feed: largest(20 * now, (f) => {
              if (f === 0) return true;
              const outcome = at({ [feedKey]: f })[key]!;
              return outcome.state === 'known' && outcome.value <= has;
            }),
          }),
    });
  };
  ask('power', sheet.derived.includes('Pm') ? 'Pm' : 'Pc', 'kW', 'spindle power');
  ask('torque', sheet.derived.includes('Mc') ? 'Mc' : 'T', 'N·m', 'spindle torque');
  ask('force', sheet.derived.includes('Ff') ? 'Ff' : 'F_axis', 'N', 'axis force');
  const chip = outcomes.h;
  return {
    ok: true,
    value: {
      operation,
      sheet: sheet.id,
      title: sheet.title,
      material,
      given: sheet.inputs.map(row),
      found: sheet.derived.map(row),
      asked,
      notes: [
        ...notes,
        ...(chip?.state === 'known' && chip.value < 5e-5
          ? ['The chip is thinner than 0.05 mm: it needs more force than comes out here.']
          : []),
      ],
    },
  };
}
