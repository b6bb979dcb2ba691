/** Rules of thumb for load inertia over rotor inertia. */

export interface InertiaRatioRule {
  readonly id: 'highest-dynamics' | 'contouring' | 'general' | 'modest' | 'stepper';
  readonly name: string;
  /** Largest ratio by the rule. */
  readonly most: number;
  readonly note: string;
  readonly source: string;
  readonly status: 'published' | 'from memory';
}

const source = 'common practice of feed drives, no source';

export const INERTIA_RATIO_RULES: readonly InertiaRatioRule[] = [
  {
    id: 'highest-dynamics',
    name: 'highest dynamics',
    most: 1,
    note: 'The motor rules the load.',
    source,
    status: 'from memory',
  },
  {
    id: 'contouring',
    name: 'good contouring feed axis',
    most: 3,
    note: 'Follows a path closely.',
    source,
    status: 'from memory',
  },
  {
    id: 'general',
    name: 'general use',
    most: 5,
    note: 'Positions well, contours fairly.',
    source,
    status: 'from memory',
  },
  {
    id: 'modest',
    name: 'modest wishes',
    most: 10,
    note: 'Only with a stiff coupling and a softly tuned loop.',
    source,
    status: 'from memory',
  },
  {
    id: 'stepper',
    name: 'step motor',
    most: 10,
    note: 'Better 4; keep away from the mid-band resonance.',
    source,
    status: 'from memory',
  },
];
