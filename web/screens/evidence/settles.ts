/** Which facts of this refit a bench test would settle or sharpen. */
import { sayPath } from '../../../engine/assess/words.ts';
import type { PlaceId } from '../../../engine/parts/index.ts';
import { findPlace } from '../../../engine/refit/place.ts';
import type { Fact } from '../../../engine/refit/types.ts';
import type { View } from '../../state/session.ts';
import type { BenchSheet } from '../../worker/bench-protocol.ts';

export interface Wanted {
  /** 'X.motor.resistance'. */
  readonly path: string;
  /** 'winding resistance of the X motor'. */
  readonly name: string;
  readonly state: 'unknown' | 'doubtful';
  /** Findings that wait for it or rest on it. */
  readonly answers: number;
}

const WEAK = new Set<Fact['basis']>(['guess', 'told', 'handbook']);

/** The most wanted first. What nothing asks about is left out. */
export function wantedOf({ refit, recorded }: View, sheet: BenchSheet): Wanted[] {
  const all = [...refit.chains.map(({ id }) => id), null].flatMap((chain) =>
    sheet.settles.flatMap(({ place, fact }): Wanted[] => {
      const at = findPlace(refit, chain, place as PlaceId);
      if (!at || at.chosen === 'none' || (chain === null) !== Object.hasOwn(refit.places, place)) return [];
      const path = chain === null ? `${place}.${fact}` : `${chain}.${place}.${fact}`;
      const known = at.chosen === null ? undefined : refit.parts[at.chosen]?.facts[fact];
      const name = sayPath(path);
      if (!known) {
        const answers = recorded.findings.filter(({ missing }) => missing.includes(path)).length;
        return answers > 0 ? [{ path, name, state: 'unknown', answers }] : [];
      }
      const isAsked = recorded.next.some((step) => step.path === path && step.doubtful);
      if (!isAsked && !WEAK.has(known.basis)) return [];
      const answers = recorded.findings.filter(({ facts }) => facts.includes(path)).length;
      return answers > 0 ? [{ path, name, state: 'doubtful', answers }] : [];
    }),
  );
  return all.sort(
    (a, b) => Number(b.state === 'unknown') - Number(a.state === 'unknown') || b.answers - a.answers,
  );
}
