/** The lines of the test sheet on which something moves and is stopped. What the drawing lets fail is not tried. */
import { formatQuantity } from '../../quantity/index.ts';
import { andList, capital } from '../../quantity/words.ts';
import type { StopAnalysis } from './analyse.ts';
import type { DemandRun } from './baseline.ts';
import type { StopFinding } from './findings.ts';
import type { MotionUnit } from './model.ts';
import { canDrop, whyNotHeld } from './prop.ts';
import { stoppingVerdict } from './say-stopping.ts';
import { stopFindingId } from './stop-findings.ts';
import { type Stopping, stoppingOf } from './stops.ts';
import type { Draft } from './test-sheet.ts';
import { sayAt, slowModel, slowSpeed } from './test-slow.ts';

export const SLOW = 'A. Slowly, hand on the main switch.';

/** Blocks before anything else: nothing that can drop is stopped, or tried with its brake, over nothing. */
export function* blockLines({ base, stops }: StopAnalysis): Generator<Draft> {
  for (const unit of base.model.motions.filter(canDrop)) {
    const { id } = unit;
    const own = stops.flatMap((each) => each.stops).filter(({ motion }) => motion === id);
    const [why] = (own.length > 0 ? own : [undefined])
      .map((stop) => whyNotHeld(unit, stop))
      .filter((each) => each !== undefined);
    yield {
      part: `First of all: block ${id}`,
      act: `Put a block under ${id} that carries its whole weight, as close below it as the line lets it be. It stays there for every line of this sheet.`,
      expected: `The block stands firm; ${id} cannot fall further than onto it.`,
      caution: `${id} ${why ?? 'drops if its brake fails'}. Nobody under it, no hand between.`,
    };
  }
}

/** Each way of asking for a stop at slow speed, then each motion from its highest. */
export function* runLines(looked: StopAnalysis): Generator<Draft> {
  for (const demand of looked.base.demands) yield* demandLines(looked, demand);
  yield* topLines(looked);
}

function* demandLines(looked: StopAnalysis, demand: DemandRun): Generator<Draft> {
  const { base, findings } = looked;
  const { model } = base;
  const { act, back, role } = demand;
  const part = role === 'power' ? 'Power failure' : `Stop: ${act.says}`;
  const own = findings.find(({ id }) => id === stopFindingId(model, act));
  const slow = slowModel(model);
  const tried = demand.stops.map((at) => stoppingOf(slow, at, demand.order, act.mover));
  const left = leftOf(looked, demand);
  const told = tried.filter(({ category }) => role === 'emergency' && category === '2');
  const bad = tried.filter((stop) => stoppingVerdict(stop) === 'fails' && !told.includes(stop));
  yield* barredLines(part, findings, own, [
    ...bad,
    ...[...left, ...told.map(({ motion }) => motion)].map((motion) => ({ motion, load: 'none' as const })),
  ]);
  const good = tried.filter((stop) => !bad.includes(stop) && !told.includes(stop));
  if (good.length === 0) return;
  const unit = (id: string): MotionUnit => model.motions.find((each) => each.id === id)!;
  const still = model.motions.filter(
    ({ id }) => [...bad, ...told].some(({ motion }) => motion === id) || left.includes(id),
  );
  const stand = still.map((each) => `${each.id} stands still${canDrop(each) ? ' on its block' : ''}`);
  const runs = good.map(({ motion }) => {
    const each = unit(motion);
    return `${sayAt(each, slowSpeed(each))}${canDrop(each) ? ', upwards,' : ''}`;
  });
  const blocked = still.filter((each) => canDrop(each) && !left.includes(each.id)).map(({ id }) => id);
  yield {
    part,
    act: `${capital([andList(runs), ...stand].join('; '))}. ${capital(act.says)}.`,
    expected: [...good.map(sayExpected), ...blocked.map((id) => `${id} stays on its block.`)].join(' '),
    caution: `${SLOW}${blockedFirst(model.motions)}`,
  };
  yield { part, act: `${capital(back.says)}.`, expected: 'Nothing starts.' };
  yield {
    part,
    act: `Press start, let go, start a program${still.length > 0 ? ` that leaves ${andList(still.map(({ id }) => id))} alone` : ''}.`,
    expected: 'It starts, and only now.',
  };
}

/** ' X blocked from below.' */
function blockedFirst(motions: readonly MotionUnit[]): string {
  const can = motions.filter(canDrop).map(({ id }) => id);
  return can.length > 0 ? ` ${andList(can)} blocked from below.` : '';
}

/** Motions that this asks to stop and that go on. */
function leftOf({ base, stops }: StopAnalysis, { act, role }: DemandRun): readonly string[] {
  const doesNotStop = stops.find((each) => each.act === act)?.doesNotStop ?? [];
  if (role !== 'limit') return doesNotStop;
  const axis = base.model.limits.find(({ mover }) => mover === act.mover)?.axis;
  return doesNotStop.filter((id) => id === axis);
}

/** A test of which it is known beforehand that it fails is not done: it says what to mend first. */
function* barredLines(
  part: string,
  findings: readonly StopFinding[],
  own: StopFinding | undefined,
  bad: readonly Pick<Stopping, 'motion' | 'load'>[],
): Generator<Draft> {
  const by = new Map<StopFinding | undefined, string[]>();
  for (const { motion, load } of bad) {
    const brake = findings.find(({ id }) => id === `stop.${motion}.brake`);
    const first = load === 'drops' && brake?.verdict === 'fails' ? brake : own;
    by.set(first, [...(by.get(first) ?? []), motion]);
  }
  for (const [finding, motions] of by)
    yield {
      part,
      act: `Do not do this test with ${andList(motions)} until this is mended: ${finding ? `${finding.title} (${finding.id})` : 'it does not stop'}`,
      expected: [finding?.sentence, finding?.remedy].filter((each) => each !== undefined).join(' '),
      barred: true,
    };
}

/** What is written down for the next time: how long each runs on from its highest speed. */
function* topLines(looked: StopAnalysis): Generator<Draft> {
  const { base, findings } = looked;
  const part = 'Run-on from the highest speed';
  const demand = base.demands.find(({ role }) => role === 'emergency');
  if (!demand) return;
  const own = findings.find(({ id }) => id === stopFindingId(base.model, demand.act));
  const slow = slowModel(base.model);
  for (const at of demand.stops) {
    const unit = base.model.motions[at]!;
    const stop = stoppingOf(base.model, at, demand.order, demand.act.mover);
    const isTold = stop.category === '2';
    // What fails at slow speed has been said there.
    if (isTold || stoppingVerdict(stoppingOf(slow, at, demand.order, demand.act.mover)) === 'fails') continue;
    if (stoppingVerdict(stop) === 'fails') {
      yield* barredLines(part, findings, own, [stop]);
      continue;
    }
    yield {
      part,
      act: `${sayAt(unit, unit.numbers.read.speed)}, ${unit.kind === 'spindle' ? 'guard closed, nothing in it that can fly off' : canDrop(unit) ? 'upwards, away from its block' : 'in the middle of its travel'}. ${capital(demand.act.says)}.`,
      expected: `${sayExpected(stop)} Measured: ______ s`,
      caution: `Only after the lines above are signed.${blockedFirst(base.model.motions)}`,
    };
  }
}

const HOW: Readonly<Record<Stopping['category'], string>> = {
  '0': 'coasts',
  '1': 'brakes, then its power goes',
  '2': 'brakes, its power stays on',
  none: 'goes on',
};

const millimetres = (metres: number): string => formatQuantity(metres, 'mm', { digits: 2 });

/** 'Z coasts; stands after 0.05 s, 0.6 mm.' */
function sayExpected({ motion, kind, category, time, distance, drop }: Stopping): string {
  if (time === undefined || distance === undefined)
    return `${motion} ${HOW[category]} and stands; how soon is not known: ______ s.`;
  const far = kind === 'spindle' ? formatQuantity(distance, 'rev', { digits: 2 }) : millimetres(distance);
  const sags = drop !== undefined && drop > 0 ? `; sags at most ${millimetres(drop)}` : '';
  return `${motion} ${HOW[category]}; stands after ${formatQuantity(time, 's', { digits: 2 })}, ${far}${sags}.`;
}
