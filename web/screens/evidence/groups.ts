/** What a bench test is on, and on which axis or part of this refit it can be made. */
import { PLACES, type PlaceId } from '../../../engine/parts/index.ts';
import { findPlace } from '../../../engine/refit/place.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import type { BenchSheet } from '../../worker/bench-protocol.ts';

interface Group {
  readonly title: string;
  /** Where a test of the group is made that settles no fact of its own. */
  readonly place: PlaceId | undefined;
  readonly methods: readonly string[];
}

const GROUPS: readonly Group[] = [
  {
    title: 'Screw and slide',
    place: 'screw',
    methods: ['travel-per-turn', 'backlash-split', 'axial-stiffness', 'breakaway'],
  },
  {
    title: 'Motor',
    place: 'motor',
    methods: [
      'which-motor',
      'insulation',
      'winding-resistance',
      'back-emf',
      'no-load-current',
      'coast-down',
      'locked-rotor',
      'weak-magnet',
      'inductance',
      'pole-pairs',
      'holding-brake',
    ],
  },
  {
    title: 'Feedback',
    place: 'feedback',
    methods: ['which-feedback', 'encoder-lines', 'lost-counts', 'resolver-ratio', 'tacho-constant'],
  },
  { title: 'Spindle', place: undefined, methods: ['run-out', 'spindle-delay'] },
  { title: 'Mains', place: 'site', methods: ['mains-voltage'] },
];

/** The tests by group, each in the order they are usually made; what stands in no group comes last. */
export function grouped(sheets: readonly BenchSheet[]): { title: string; sheets: BenchSheet[] }[] {
  const named = new Set(GROUPS.flatMap(({ methods }) => methods));
  const groups = [
    ...GROUPS.map(({ title, methods }) => ({
      title,
      sheets: sheets.filter(({ id }) => methods.includes(id)),
    })),
    { title: 'Other', sheets: sheets.filter(({ id }) => !named.has(id)) },
  ];
  return groups.filter((group) => group.sheets.length > 0);
}

/** Places whose facts it settles, or the place it is made on. */
export function placesOf({ id, settles }: BenchSheet): readonly PlaceId[] {
  const own = [...new Set(settles.map(({ place }) => place as PlaceId))];
  if (own.length > 0) return own;
  const place = GROUPS.find(({ methods }) => methods.includes(id))?.place;
  return place ? [place] : [];
}

export interface Subject {
  /** 'X', 'X.motor', 'X.motor@x-motor-2', 'site'. */
  readonly value: string;
  readonly words: string;
}

/** Everything in the refit that the test can be made on; empty where it is of the machine as a whole. */
export function subjectsOf(refit: Refit, sheet: BenchSheet): readonly Subject[] {
  const places = placesOf(sheet);
  if (places.length > 1)
    return refit.chains
      .filter((chain) => places.some((place) => chain.places[place]))
      .map(({ id }) => ({ value: id, words: `${id} axis` }));
  const [place] = places;
  if (place === undefined) return [];
  return [...refit.chains.map(({ id }) => id), null].flatMap((chain): Subject[] => {
    const at = findPlace(refit, chain, place);
    if (!at) return [];
    const path = chain === null ? place : `${chain}.${place}`;
    const words = chain === null ? PLACES[place].name : `${chain} ${PLACES[place].name}`;
    const others = at.options.filter((id) => id !== at.chosen);
    return [
      { value: path, words },
      ...others.map((id) => ({
        value: `${path}@${id}`,
        words: `${words}, not the one built in: ${refit.parts[id]?.name ?? id}`,
      })),
    ];
  });
}

/** 'X.slide' for a test of several places is 'X'; undefined where there is no such thing. */
export function subjectFor(subjects: readonly Subject[], wanted: string): string | undefined {
  const word = wanted.toLowerCase();
  const found =
    subjects.find(({ value }) => value.toLowerCase() === word) ??
    subjects.find(({ value }) => value.toLowerCase() === word.split('.')[0]);
  return found?.value;
}

/** Where a recorded measurement was made, as a subject. */
export function subjectOfPart(refit: Refit, sheet: BenchSheet, part: string | null): string | undefined {
  const subjects = subjectsOf(refit, sheet);
  if (part === null) return subjects.length === 1 ? subjects[0]!.value : undefined;
  for (const chain of [...refit.chains, null])
    for (const [place, at] of Object.entries(chain?.places ?? refit.places)) {
      if (!at.options.includes(part)) continue;
      const path = chain ? `${chain.id}.${place}` : place;
      return (
        subjects.find(({ value }) => value === `${path}@${part}` && at.chosen !== part)?.value ??
        subjectFor(subjects, path)
      );
    }
  return undefined;
}
