/** What the meter should show, step by step, with room for what it does show. */
import { type RingRow, type RingSheet, type RingStep, ringItOut, seekRingOut } from '../readings/index.ts';
import type { ReadWiring } from '../wiring/types.ts';
import { type PlaceNames, placeNames } from './places.ts';
import { type Line, sectionsOf } from './ring-sections.ts';
import type { List, ListGroup } from './types.ts';
import { inOrder } from './words.ts';

export const ringOut = (read: ReadWiring): List => listOf(read, ringItOut(read));

/** The same in pieces, so that it can be shown how far it is, or ended; yields the share done. */
export function* seekRingOutList(read: ReadWiring): Generator<number, List, void> {
  return listOf(read, yield* seekRingOut(read));
}

const COLUMNS = [
  'First',
  'Red lead on',
  'Black lead on',
  'Wire',
  'Should show',
  'If it shows something else',
  'Measured',
] as const;

function listOf(read: ReadWiring, { cautions, earth, steps, notes }: RingSheet): List {
  const places = placeNames(read);
  const left = steps.flatMap(({ powered, rows }) =>
    powered ? [] : rows.filter((row) => !isTold(row)),
  ).length;
  return {
    id: 'ring-out',
    title: 'Ring it out',
    about: [
      'In this order, from the first line to the last. Write down what you measure; a reading that disagrees is found out before the next step.',
      'Terminals with a stroke between them are joined: put the lead on any of them.',
      left > 0
        ? `${left} readings are left out, at terminals where electronics hang and ohms say nothing.`
        : '',
      ...notes,
    ]
      .filter(Boolean)
      .join(' '),
    caution: cautions.join(' '),
    columns: COLUMNS,
    groups: batches(steps).flatMap((batch): readonly ListGroup[] => groupsOf(read, places, earth, batch)),
  };
}

/** Steps that stand in one table; one of its own where a step is in no batch. */
function batches(steps: readonly RingStep[]): readonly (readonly RingStep[])[] {
  const found = new Map<string, RingStep[]>();
  for (const step of steps) {
    const key = step.batch ? `batch ${step.batch.id}` : `step ${step.id}`;
    const own = found.get(key);
    if (own) own.push(step);
    else found.set(key, [step]);
  }
  return [...found.values()];
}

/** Whether a reading tells anything: it can be judged, or it is said what another one means. */
const isTold = ({ expect, otherwise }: RingRow): boolean => expect !== undefined || otherwise !== '';

function groupsOf(
  read: ReadWiring,
  places: PlaceNames,
  earth: string | undefined,
  steps: readonly RingStep[],
): readonly ListGroup[] {
  const [{ batch, ...first }] = steps as readonly [RingStep, ...RingStep[]];
  const { title, says, cautions } = batch ?? first;
  const lines = steps.flatMap((step) =>
    (step.id === 'contacts' ? movedTogether(step.rows) : step.rows)
      .filter((row) => isTold(row) && !isSaidBefore(read, step, row, earth))
      .map((row): Line => lineOf(read, places, step, row)),
  );
  const live = first.powered ? ' (live)' : '';
  return sectionsOf(lines, batch !== undefined).map(({ name, shared, lines: own }, at) => ({
    title: `${title}${live}${name ? `: ${name}` : ''}`,
    note: at === 0 ? says : '',
    // What begins the live part stands with its first step, whatever table that is in.
    cautions: at === 0 ? [...new Set([...(batch ? first.cautions.filter(isLong) : []), ...cautions])] : [],
    shared,
    rows: own.map(({ id, cells }) => ({ id, cells: [...cells, ''] })),
  }));
}

/** Cautions of a single step in a batch are said in its line. */
const isLong = (caution: string): boolean => !/^(Pulled in|Alive|Pulses)/.test(caution);

/** Against a 0 V that is joined to earth each reading is the one against earth once more. */
function isSaidBefore(
  read: ReadWiring,
  { id }: RingStep,
  { against }: RingRow,
  earth: string | undefined,
): boolean {
  const net = read.netOf.get(against);
  return id === 'common' && earth !== undefined && net !== undefined && net === read.netOf.get(earth);
}

/** A contact at rest and moved on one line. */
function movedTogether(rows: readonly RingRow[]): readonly RingRow[] {
  const byContact = new Map<string, RingRow[]>();
  for (const row of rows) {
    const key = `${row.at[0]} ${row.against}`;
    byContact.set(key, [...(byContact.get(key) ?? []), row]);
  }
  return [...byContact.values()].map(([rest, moved]): RingRow => {
    if (!moved || !rest!.expect || !moved.expect) return (rest!.expect ? rest : (moved ?? rest))!;
    return {
      ...rest!,
      when: moved.when!,
      says: `at rest ${rest!.says}; moved ${moved.says}`,
      otherwise:
        'The same both times: it does not move, or something beside it bridges it. The other way round: it is the other kind (opening for closing). Some ohms: burnt or dirty.',
    };
  });
}

function lineOf(
  read: ReadWiring,
  places: PlaceNames,
  step: RingStep,
  { id, at, against, wire, when = '', says, otherwise }: RingRow,
): Line {
  const wired = wire !== undefined;
  const [red, black] = wired ? [at[0]!, against].sort(inOrder) : [places.best(at), against];
  return {
    id,
    sort: red!,
    cells: [
      [step.first ?? '', when].filter(Boolean).join(', '),
      wired ? red! : places.say(at),
      black!,
      wired ? read.wires.get(wire)?.number || wire : '',
      says,
      otherwise,
    ],
  };
}
