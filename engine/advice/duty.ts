/** A proposal of what to ask of each axis: guesses where nothing is entered, for one edit that can be undone. */
import { factSpec } from '../parts/index.ts';
import { applyEdit } from '../refit/edit.ts';
import { findFact, findPlace, placeOf } from '../refit/place.ts';
import { set } from '../refit/set.ts';
import type { Change, Refit } from '../refit/types.ts';
import { machineState } from './machine-state.ts';
import { SIZES, type Size, usualDuty } from './usual-duty.ts';

export { SIZES, type Size } from './usual-duty.ts';

export interface ProposedFact {
  readonly path: string;
  /** 'rapid speed wanted'. */
  readonly name: string;
  readonly text: string;
  readonly source: string;
}

export interface DutyProposal {
  readonly size: Size;
  readonly facts: readonly ProposedFact[];
  /** All of them as one edit. */
  readonly changes: readonly Change[];
  /** What no habit can tell, in sentences. */
  readonly notes: readonly string[];
  /** Paths of facts that only the person can tell, as those notes ask for. */
  readonly wanted: readonly string[];
}

const PRACTICE = 'common practice, no source';
const FORCE = 'from memory: about 2000 N/mm² on the cut, four tenths along the feed';
const MAINS = 'IEC 60038 (from memory)';

/** What the machine's weight says of its size; undefined where that is not known. */
export function sizeByWeight(refit: Refit): Size | undefined {
  const { weight } = machineState(refit);
  if (weight === undefined) return undefined;
  return weight < 300 ? 'bench' : weight < 1000 ? 'small' : 'medium';
}

export const isSize = (text: string): text is Size => Object.hasOwn(SIZES, text);

/** Axes of which no wish is known. */
export const emptyDuties = (refit: Refit): readonly string[] =>
  refit.chains
    .filter(({ kind, places }) => {
      if (kind !== 'axis') return false;
      const chosen = places.duty?.chosen;
      const part = chosen ? refit.parts[chosen] : undefined;
      return !part || Object.keys(part.facts).length === 0;
    })
    .map(({ id }) => id);

/** Only what is not known yet is proposed; nothing entered is ever written over. */
export function proposeDuty(refit: Refit, size: Size): DutyProposal {
  const facts: ProposedFact[] = [];
  const changes: Change[] = [];
  const notes: string[] = [];
  const wanted: string[] = [];
  let now = refit;
  const propose = (path: string, text: string, source: string): void => {
    if (findFact(now, path)) return;
    const steps = path.split('.');
    const spec = factSpec(steps.at(-2)!, steps.at(-1)!);
    const setting = set(now, path, text, { basis: 'guess', note: `usual for this size: ${source}` });
    const applied = setting.ok ? applyEdit(now, { changes: setting.value.changes }) : undefined;
    if (!setting.ok || !applied?.ok || !spec) return;
    now = applied.value;
    changes.push(...setting.value.changes);
    facts.push({ path, name: spec.name, text, source });
  };
  for (const { id, kind } of refit.chains) {
    if (kind !== 'axis') continue;
    const usual = usualDuty(refit.machine, id, size);
    if (!usual) {
      notes.push(`Nothing usual is known of an axis ${id}: say yourself what you want of it.`);
      continue;
    }
    const { cut, mass, ...duty } = usual;
    for (const [fact, text] of Object.entries(duty))
      propose(
        `${id}.duty.${fact}`,
        text,
        fact === 'cutForce' ? `${cut}; ${refit.machine === 'lathe' ? FORCE : PRACTICE}` : PRACTICE,
      );
    if (findPlace(refit, id, 'slide')?.chosen !== 'none') propose(`${id}.slide.mass`, mass, PRACTICE);
  }
  const frequency = findFact(refit, 'site.frequency')?.value;
  const mains = findFact(refit, 'site.mains');
  if (mains === null) {
    if (frequency?.kind === 'quantity' && /^\s*50\b/.test(frequency.text))
      propose('site.mains', '230 V', MAINS);
    else if (frequency?.kind === 'quantity' && /^\s*60\b/.test(frequency.text))
      propose('site.mains', '120 V', MAINS);
    else {
      notes.push('Volts and hertz of the mains depend on where you are: enter both yourself.');
      wanted.push('site.mains', ...(frequency ? [] : ['site.frequency']));
    }
  }
  const cuts = ['job.materials', 'job.threads'].filter((path) => !findFact(refit, path));
  if (cuts.length > 0) {
    notes.push('Say which materials and threads it shall cut: nobody else can.');
    wanted.push(...cuts);
  }
  return { size, facts, changes, notes, wanted };
}

/** Proposed facts that still stand as guesses, to be confirmed one by one. */
export function guessedDuties(refit: Refit): readonly ProposedFact[] {
  const found: ProposedFact[] = [];
  for (const { id, places } of refit.chains) {
    const chosen = places.duty?.chosen;
    const part = chosen ? refit.parts[chosen] : undefined;
    if (!part || placeOf(refit, part.id)?.name !== 'duty') continue;
    for (const [fact, { value, basis, note }] of Object.entries(part.facts)) {
      const spec = factSpec('duty', fact);
      if (basis !== 'guess' || !spec || (value.kind !== 'quantity' && value.kind !== 'choice')) continue;
      const text = value.kind === 'choice' ? value.option : value.text;
      found.push({ path: `${id}.duty.${fact}`, name: spec.name, text, source: note ?? '' });
    }
  }
  return found;
}
