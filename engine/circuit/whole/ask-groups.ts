/** Questions that are alike, asked once: the same facts of devices of one kind; in the order of the job. */
import { andList } from '../../quantity/words.ts';
import type { Refit, Wiring } from '../../refit/types.ts';
import type { AnswerPlace, Question } from '../wiring/index.ts';
import { WIRING_KINDS } from '../wiring/index.ts';
import type { OpenQuestion } from './open-questions.ts';
import { specAt } from './setting-at.ts';

export const STAGES = [
  'Mains and supplies',
  'Stop circuit and drives',
  'Feedback',
  'Inputs and outputs',
  'Auxiliaries',
] as const;
export type Stage = (typeof STAGES)[number];

/** One thing asked of all members of a group. */
export interface AskedFact {
  /** 'coil-current' */
  readonly setting: string;
  /** 'current of the coil' */
  readonly name: string;
  readonly unit?: string;
  readonly options?: readonly string[];
  /** One of each member that is asked it. */
  readonly questions: readonly Question[];
}

export interface AskGroup {
  /** The id of its question where there is one, else 'relay: rating of its contacts, d.c.' and the like. */
  readonly id: string;
  readonly stage: Stage;
  /** A whole question, for people. */
  readonly asks: string;
  /** Whom it is asked of: ids with names. */
  readonly members: readonly string[];
  readonly facts: readonly AskedFact[];
  /** Ids of proposed wires that are not laid before it is answered. */
  readonly wires: readonly string[];
  /** What stays unmade, in a sentence. */
  readonly waits: string;
}

/** Facts that stand together on one plate and are answered together. */
const TOGETHER: readonly (readonly [match: RegExp, topic: string, of: RegExp])[] = [
  [/^main-dc-/, 'what its main contacts may switch, d.c.', /./],
  [/^main-ac-/, 'what its main contacts may switch, a.c.', /./],
  [/^dc-(volts|amps|coil-amps)$/, 'what its contacts may switch, d.c.', /./],
  [/^ac-(volts|amps|coil-amps)$/, 'what its contacts may switch, a.c.', /^(?!breaker|motor-breaker|fuse)/],
  [/^(amps|ac-volts|dc-volts|breaks)$/, 'what stands on it', /^(breaker|motor-breaker|fuse)$/],
  [/^(volts|current)$/, 'what its plate says', /^mains-motor$/],
  [/^(ready|at-speed)-output$/, 'what it tells the control', /./],
  [/^(suppressor|clamp-volts)$/, 'what swallows the spike of its coil', /./],
];

/** Worked by a hand, with the same blocks of contacts. */
const BY_HAND = new Set(['mushroom', 'button', 'key']);

export function groupsOf(open: readonly OpenQuestion[], wiring: Wiring, refit: Refit): readonly AskGroup[] {
  const by = new Map<string, OpenQuestion[]>();
  for (const each of open) {
    const key = groupKey(each.question.place, wiring, refit);
    by.set(key, [...(by.get(key) ?? []), each]);
  }
  return [...by]
    .map(([key, all]) => made(key, all, wiring, refit))
    .sort(
      (a, b) =>
        STAGES.indexOf(a.stage) - STAGES.indexOf(b.stage) ||
        Number(isWhole(b)) - Number(isWhole(a)) ||
        b.wires.length - a.wires.length,
    );
}

const isWhole = ({ facts }: AskGroup): boolean => facts[0]!.questions[0]!.place.of === 'wiring';

/** What is alike has one key. */
export function groupKey(place: AnswerPlace, wiring: Wiring, refit: Refit): string {
  switch (place.of) {
    case 'wiring':
      return `wiring.${place.setting}`;
    case 'cable':
      return `cable ${wiring.cables[place.id]?.settings.route ?? ''}: ${place.setting}`;
    case 'wire':
      return `wire: ${place.setting}`;
    case 'terminal':
      return `terminals of ${place.id}, ${place.kind}: ${place.setting}`;
    case 'device': {
      const { kind = '', settings = {} } = wiring.devices[place.id] ?? {};
      const topic = topicOf(place.setting, kind);
      const isSpike = topic === topicOf('suppressor', kind);
      // In the stop circuit it counts how fast a coil lets go; elsewhere one answer does for every coil.
      const inStop = Object.hasOwn(refit.stop?.elements ?? {}, place.id) ? 'in the stop circuit' : '';
      const of = isSpike
        ? `coils ${inStop}`.trim()
        : BY_HAND.has(kind)
          ? 'worked by hand'
          : kind === 'relay' || kind === 'contactor'
            ? `${kind} ${inStop}`.trim()
            : kind;
      // Two supplies for other volts are two products, though both may stand on the same mains.
      const volts = kind === 'supply' && place.setting === 'current' ? (settings.volts ?? place.id) : '';
      const coil = /coil|spike/.test(topic) ? (settings['coil-volts'] ?? '') : '';
      return [of, volts, coil, topic].filter((each) => each !== '').join(': ');
    }
  }
}

const topicOf = (setting: string, kind: string): string =>
  TOGETHER.find(([match, , of]) => match.test(setting) && of.test(kind))?.[1] ?? setting;

function made(key: string, all: readonly OpenQuestion[], wiring: Wiring, refit: Refit): AskGroup {
  const sorted = [...all].sort((a, b) => BY_NUMBER.compare(a.question.id, b.question.id));
  const facts = new Map<string, Question[]>();
  for (const { question } of all) {
    const { setting } = question.place;
    facts.set(setting, [...(facts.get(setting) ?? []), question]);
  }
  const members = [...new Set(sorted.map(({ question }) => memberOf(question.place, wiring)))];
  const [first] = all as [OpenQuestion, ...OpenQuestion[]];
  const wires = [...new Set(all.flatMap((each) => each.wires))];
  const shared = [...facts].map(([setting, questions]): AskedFact => {
    const { unit, options, place, asks } = questions[0]!;
    return {
      setting,
      name: specAt(place, wiring)?.name ?? asks,
      ...(unit === undefined ? {} : { unit }),
      ...(options === undefined ? {} : { options }),
      questions: questions.sort((a, b) => BY_NUMBER.compare(a.id, b.id)),
    };
  });
  return {
    id: all.length === 1 ? first.question.id : key,
    stage: stageOf(first.question.place, wiring, refit),
    asks:
      all.length === 1
        ? first.question.asks
        : `${sayMembers(sorted, members, wiring)}: ${topicIn(key, shared)}?`,
    members,
    facts: shared,
    wires,
    waits:
      all.length === 1
        ? first.waits
        : wires.length === 0
          ? 'No wire waits for it; what hangs on it stays unknown.'
          : wires.length === 1
            ? 'One wire is not laid before it is told.'
            : `${wires.length} wires are not laid before it is told.`,
  };
}

function sayMembers(all: readonly OpenQuestion[], members: readonly string[], wiring: Wiring): string {
  if (members.length === 1) return members[0]!;
  const ids = [
    ...new Set(
      all.map(({ question: { place } }) =>
        place.of === 'wiring' ? '' : place.of === 'terminal' ? `${place.id}.${place.mark}` : place.id,
      ),
    ),
  ];
  const kinds = new Set(
    all.map(({ question: { place } }) =>
      place.of === 'device' ? (WIRING_KINDS[wiring.devices[place.id]!.kind]?.name ?? '') : place.of,
    ),
  );
  const [kind = ''] = kinds;
  return kinds.size === 1 && kind !== '' ? `Each ${kind} (${andList(ids)})` : `Each of ${andList(ids)}`;
}

/** What several facts are asked for together; one fact by its own name. */
const topicIn = (key: string, facts: readonly AskedFact[]): string =>
  facts.length === 1
    ? facts[0]!.name
    : (TOGETHER.find(([, topic]) => key.endsWith(topic))?.[1] ?? andList(facts.map(({ name }) => name)));

/** K2 before K10. */
export const BY_NUMBER = new Intl.Collator('en', { numeric: true });

function memberOf(place: AnswerPlace, wiring: Wiring): string {
  if (place.of === 'wiring') return '';
  const name =
    place.of === 'device' || place.of === 'terminal'
      ? wiring.devices[place.id]?.name
      : place.of === 'cable'
        ? wiring.cables[place.id]?.name
        : '';
  const id = place.of === 'terminal' ? `${place.id}.${place.mark}` : place.id;
  return name ? `${id} (${name})` : id;
}

const OF_WHOLE: Readonly<Record<string, Stage>> = { 'spindle-filter': 'Mains and supplies' };
const SUPPLIES =
  /^(mains-inlet|main-switch|mains-filter|breaker|motor-breaker|fuse|residual|supply|transformer|rectifier|bus)/;
const FEEDBACK = /^(encoder-|termination$|tacho|excitation|halls)/;

function stageOf(place: AnswerPlace, wiring: Wiring, refit: Refit): Stage {
  switch (place.of) {
    case 'wiring':
      return OF_WHOLE[place.setting] ?? 'Inputs and outputs';
    case 'wire':
      return 'Auxiliaries';
    case 'cable':
      return /^WE/.test(place.id) ? 'Feedback' : 'Inputs and outputs';
    default: {
      const kind = wiring.devices[place.id]?.kind ?? '';
      if (SUPPLIES.test(kind)) return 'Mains and supplies';
      if (FEEDBACK.test(place.setting) || /^(encoder|tacho|resolver|halls)/.test(kind)) return 'Feedback';
      if (/^(ready|at-speed)-output$/.test(place.setting)) return 'Inputs and outputs';
      if (/^(control|opto-board|sensor|probe|handwheel|home|limit|buffer|line-unit)$/.test(kind))
        return 'Inputs and outputs';
      if (Object.hasOwn(refit.stop?.elements ?? {}, place.id) || /^(drive|inverter)$/.test(kind))
        return 'Stop circuit and drives';
      return 'Auxiliaries';
    }
  }
}
