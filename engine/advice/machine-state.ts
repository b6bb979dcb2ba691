/** What is known of the machine and of where it goes: facts first, else what the survey found. */

import { parseQuantity } from '../quantity/index.ts';
import { own } from '../quantity/own.ts';
import type { Refit } from '../refit/types.ts';
import { factsAround } from './part-facts.ts';

export type Wear = 'good' | 'worn' | 'beyond' | undefined;

export interface MachineState {
  /** Kilograms. */
  readonly weight: number | undefined;
  /** Metres. */
  readonly width: number | undefined;
  readonly door: number | undefined;
  readonly floor: number | undefined;
  readonly lift: number | undefined;
  /** Watts. */
  readonly power: number | undefined;
  readonly available: number | undefined;
  readonly needs: string | undefined;
  readonly mains: string | undefined;
  readonly ways: Wear;
  readonly spindle: Wear;
  readonly screws: Wear;
  readonly missing: Wear;
}

const OF_SURVEY: Readonly<Record<string, Wear>> = { works: 'good', worn: 'worn', dead: 'beyond' };

export function machineState(refit: Refit): MachineState {
  const facts = factsAround(refit, null);
  const found = (id: string) => own(refit.survey, id);
  const answer = (item: string, question: string, unit: string): number | undefined => {
    const text = found(item)?.answers[question];
    const read = text === undefined ? undefined : parseQuantity(text, unit);
    return read?.ok && read.value.value > 0 ? read.value.value : undefined;
  };
  const wear = (fact: 'ways' | 'spindle', item: string): Wear =>
    (facts.choice('job', fact) as Wear) ?? OF_SURVEY[found(item)?.state ?? ''];
  const conditions = refit.chains.map(({ places }) => {
    const chosen = places.screw?.chosen;
    return chosen ? refit.parts[chosen]?.condition : undefined;
  });
  const job = refit.places.job?.chosen ? refit.parts[refit.places.job.chosen] : undefined;
  const missing = job?.facts.missing?.value;
  return {
    weight: facts.value('job', 'weight') ?? answer('access', 'weight', 'kg'),
    width: facts.value('job', 'width'),
    door: facts.value('site', 'door') ?? answer('access', 'door', 'mm'),
    floor: facts.value('site', 'floor'),
    lift: facts.value('site', 'lift'),
    power: facts.value('job', 'power'),
    available: facts.value('site', 'available'),
    needs: facts.choice('job', 'phases'),
    mains: facts.choice('site', 'phases'),
    ways: wear('ways', 'ways'),
    spindle: wear('spindle', 'spindle-bearings'),
    screws: conditions.some((each) => each === 'worn' || each === 'dead')
      ? 'worn'
      : conditions.length > 0 && conditions.every((each) => each === 'works')
        ? 'good'
        : undefined,
    missing:
      missing?.kind !== 'text'
        ? undefined
        : /^(no|none|nothing)\b/i.test(missing.text.trim())
          ? 'good'
          : 'worn',
  };
}
