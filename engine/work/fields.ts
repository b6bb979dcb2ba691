/** What is typed for a piece of work: the fields of each kind, in the words a person reads. */

import { own } from '../quantity/own.ts';
import { amount, choiceOf, count, type SettingSpec, text } from '../quantity/settings.ts';
import { CUTTING_MATERIALS } from '../tables/cutting-materials.ts';
import { TAP_KINDS } from '../tables/tapping-materials.ts';
import { OPERATIONS } from '../threads/index.ts';

/** A field: its setting, by which name it is given, and how it is shown while it is empty. */
export type WorkField = SettingSpec & {
  readonly key: string;
  /** Must be filled in. */
  readonly needed?: boolean;
  /** What is taken where it is left empty, in words. */
  readonly usually?: string;
  readonly example: string;
};

const field = (key: string, spec: SettingSpec, example: string, usually?: string): WorkField => ({
  ...spec,
  key,
  example,
  ...(usually === undefined ? {} : { usually }),
});

/** Without one that is usual: where it is left empty, what else is typed decides. */
const choiceFrom = (name: string, words: Readonly<Record<string, string>>) => ({
  ...choiceOf(name, words),
  usual: '',
});
const named = (all: readonly { readonly id: string; readonly name: string }[]) =>
  Object.fromEntries(all.map(({ id, name }) => [id, name]));

const material = field(
  'material',
  choiceFrom('material', named(CUTTING_MATERIALS)),
  'c45',
  'medium carbon steel',
);
const axis = field('axis', text('axis along the work'), 'Z', 'Z');
const thread: WorkField = { ...field('thread', text('thread'), 'M20x1.5'), needed: true };
const speed = (usually: string): WorkField =>
  field('speed', amount('spindle speed or cutting speed', 'r/min'), '300 r/min', usually);

const THREAD: readonly WorkField[] = [
  thread,
  field(
    'side',
    choiceOf('where', { external: 'outside (bolt)', internal: 'inside (nut)' }),
    'external',
    'outside',
  ),
  field(
    'way',
    choiceOf('how it is cut', {
      point: 'with a single point, axis and spindle in step',
      mill: 'milled, a cutter going round',
    }),
    'mill',
    'with a single point',
  ),
  field('length', amount('length of thread', 'mm', '', 100), '30 mm', 'one and a half diameters'),
  material,
  speed('the highest that every link allows'),
  field(
    'room',
    amount('free length before the thread', 'mm', '', 100),
    '8 mm',
    'as much as the run-in needs',
  ),
  field(
    'lead',
    amount('travel of one turn, as it will be programmed', 'mm', '', 1),
    '1.5 mm',
    'the thread’s own',
  ),
  field('passes', count('passes', '', 200, 1), '8', 'as usual for the pitch'),
  field(
    'infeed',
    choiceOf('how the tool goes in', { flank: 'along a flank', straight: 'straight' }),
    'flank',
    'along a flank',
  ),
  field('cutter', amount('diameter of the thread mill', 'mm', '', 0.5), '12 mm', 'six tenths of the bore'),
  field('teeth', count('teeth round the thread mill', '', 20, 1), '3', '3'),
  field('rows', count('rows of teeth in the work', '', 200, 1), '1', 'one for each turn of the thread'),
  field('feed', amount('feed a tooth of the thread mill', 'mm', '', 0.01), '0.03 mm', '0.03 mm'),
  axis,
];
/** Fields of a thread that only one way of cutting it has. */
const BY_WAY: Readonly<Record<string, 'point' | 'mill'>> = {
  room: 'point',
  lead: 'point',
  passes: 'point',
  infeed: 'point',
  cutter: 'mill',
  teeth: 'mill',
  rows: 'mill',
  feed: 'mill',
};

const TAP: readonly WorkField[] = [
  thread,
  field('depth', amount('depth of full thread', 'mm', '', 10), '15 mm', 'one and a half diameters'),
  field(
    'hole',
    { ...amount('depth of the hole, or “through”', 'mm', '', 10), instead: ['through'] },
    '25 mm',
    'as deep as it needs',
  ),
  material,
  field(
    'tap',
    { ...choiceOf('kind of tap', named(TAP_KINDS)), usual: 'spiral-flute' },
    'spiral-flute',
    'spiral flute',
  ),
  field(
    'holder',
    choiceOf('holder', { rigid: 'rigid', floating: 'with float in tension and compression' }),
    'rigid',
    'rigid',
  ),
  field('float', amount('float of the holder, each way', 'mm', '', 1), '3 mm', 'none'),
  field(
    'turned-by',
    choiceOf('turned by', { spindle: 'the spindle', tool: 'a tool with a motor of its own' }),
    'spindle',
    'the spindle',
  ),
  speed('the highest that hole and links allow'),
  axis,
];

/** All but the grip are read by the thread book, which says itself what it cannot take. */
const CUT: readonly WorkField[] = [
  {
    ...field(
      'operation',
      choiceFrom('operation', Object.fromEntries(OPERATIONS.map((each) => [each, each]))),
      'turning',
    ),
    needed: true,
  },
  { ...material, needed: true },
  field('thread', text('thread, when threading or tapping'), 'M20x1.5'),
  field('diameter', amount('diameter of work or tool', 'mm'), '60 mm'),
  field('depth', amount('depth of cut', 'mm'), '2 mm'),
  field('width', amount('width of cut or blade', 'mm'), '3 mm'),
  field('feed', amount('feed a turn, or a tooth when milling', 'mm'), '0.2 mm'),
  field('teeth', amount('teeth of the cutter', '1'), '4'),
  field('speed', amount('cutting speed or spindle speed', 'm/min'), '120 m/min'),
  field('bar', amount('diameter of the boring bar', 'mm'), '20 mm'),
  field('overhang', amount('length the bar stands out', 'mm'), '80 mm'),
  field('wear', amount('wear of the tool', '1'), '1.3', '1.3'),
  field('edge', amount('angle of the edge', 'deg'), '95 deg', '95°'),
  field('point', amount('point angle of the drill', 'deg'), '118 deg', '118°'),
  field('grip', amount('diameter the jaws grip', 'mm', '', 10), '60 mm', 'the diameter being cut'),
];

export const WORK_FIELDS = { cut: CUT, thread: THREAD, tap: TAP } as const;
export type WorkKind = keyof typeof WORK_FIELDS;
export const WORK_KINDS: Readonly<Record<WorkKind, string>> = {
  thread: 'thread with a single point, or milled',
  tap: 'tapped hole',
  cut: 'cut',
};

/** Fields of a cut that its operation does not use at all. */
const BY_OPERATION: Readonly<Record<string, readonly string[]>> = {
  turning: ['diameter', 'depth', 'feed', 'speed', 'wear', 'edge', 'grip'],
  boring: ['diameter', 'depth', 'feed', 'speed', 'bar', 'overhang', 'wear', 'edge', 'grip'],
  parting: ['diameter', 'width', 'feed', 'speed', 'wear', 'grip'],
  drilling: ['diameter', 'feed', 'speed', 'wear', 'point', 'grip'],
  milling: ['diameter', 'teeth', 'feed', 'width', 'depth', 'speed', 'wear'],
  threading: ['thread', 'speed', 'wear', 'grip'],
  tapping: ['thread', 'speed', 'grip'],
};

/** The fields that matter for what has been filled in so far. */
export function fieldsOf(kind: WorkKind, settings: Readonly<Record<string, string>>): readonly WorkField[] {
  if (kind === 'thread') {
    const way = settings.way === 'mill' ? 'mill' : 'point';
    return THREAD.filter(({ key }) => (BY_WAY[key] ?? way) === way);
  }
  if (kind !== 'cut') return WORK_FIELDS[kind];
  const used = own(BY_OPERATION, settings.operation ?? '');
  return CUT.filter(({ key }) =>
    key === 'operation' || key === 'material' ? true : used?.includes(key) === true,
  );
}
