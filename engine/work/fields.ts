/** What is typed for a piece of work: the fields of each kind, in the words a person reads. */

import { CUTTING_MATERIALS } from '../tables/cutting-materials.ts';
import { TAP_KINDS } from '../tables/tapping-materials.ts';
import { OPERATIONS } from '../threads/index.ts';

export interface WorkField {
  readonly key: string;
  readonly name: string;
  /** Absent for a text. */
  readonly unit?: string;
  readonly options?: Readonly<Record<string, string>>;
  /** Must be filled in. */
  readonly needed?: boolean;
  /** What is taken where it is left empty. */
  readonly usual?: string;
  readonly example: string;
}

const MATERIALS = Object.fromEntries(CUTTING_MATERIALS.map(({ id, name }) => [id, name]));
const material: WorkField = {
  key: 'material',
  name: 'material',
  options: MATERIALS,
  usual: 'medium carbon steel',
  example: 'c45',
};
const axis: WorkField = { key: 'axis', name: 'axis along the work', usual: 'Z', example: 'Z' };
const thread: WorkField = { key: 'thread', name: 'thread', needed: true, example: 'M20x1.5' };
const speed = (usual: string): WorkField => ({
  key: 'speed',
  name: 'spindle speed or cutting speed',
  unit: 'r/min',
  usual,
  example: '300 r/min',
});

const THREAD: readonly WorkField[] = [
  thread,
  {
    key: 'side',
    name: 'where',
    options: { external: 'outside (bolt)', internal: 'inside (nut)' },
    usual: 'outside',
    example: 'external',
  },
  {
    key: 'way',
    name: 'how it is cut',
    options: { point: 'with a single point, axis and spindle in step', mill: 'milled, a cutter going round' },
    usual: 'with a single point',
    example: 'mill',
  },
  {
    key: 'length',
    name: 'length of thread',
    unit: 'mm',
    usual: 'one and a half diameters',
    example: '30 mm',
  },
  material,
  speed('the highest that every link allows'),
  {
    key: 'room',
    name: 'free length before the thread',
    unit: 'mm',
    usual: 'as much as the run-in needs',
    example: '8 mm',
  },
  {
    key: 'lead',
    name: 'travel of one turn, as it will be programmed',
    unit: 'mm',
    usual: 'the thread’s own',
    example: '1.5 mm',
  },
  { key: 'passes', name: 'passes', usual: 'as usual for the pitch', example: '8' },
  {
    key: 'infeed',
    name: 'how the tool goes in',
    options: { flank: 'along a flank', straight: 'straight' },
    usual: 'along a flank',
    example: 'flank',
  },
  {
    key: 'cutter',
    name: 'diameter of the thread mill',
    unit: 'mm',
    usual: 'six tenths of the bore',
    example: '12 mm',
  },
  { key: 'teeth', name: 'teeth round the thread mill', usual: '3', example: '3' },
  { key: 'rows', name: 'rows of teeth in the work', usual: 'one for each turn of the thread', example: '1' },
  { key: 'feed', name: 'feed a tooth of the thread mill', unit: 'mm', usual: '0.03 mm', example: '0.03 mm' },
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
  {
    key: 'depth',
    name: 'depth of full thread',
    unit: 'mm',
    usual: 'one and a half diameters',
    example: '15 mm',
  },
  {
    key: 'hole',
    name: 'depth of the hole, or “through”',
    unit: 'mm',
    usual: 'as deep as it needs',
    example: '25 mm',
  },
  material,
  {
    key: 'tap',
    name: 'kind of tap',
    options: Object.fromEntries(TAP_KINDS.map(({ id, name }) => [id, name])),
    usual: 'spiral flute',
    example: 'spiral-flute',
  },
  {
    key: 'holder',
    name: 'holder',
    options: { rigid: 'rigid', floating: 'with float in tension and compression' },
    usual: 'rigid',
    example: 'rigid',
  },
  { key: 'float', name: 'float of the holder, each way', unit: 'mm', usual: 'none', example: '3 mm' },
  {
    key: 'turned-by',
    name: 'turned by',
    options: { spindle: 'the spindle', tool: 'a tool with a motor of its own' },
    usual: 'the spindle',
    example: 'spindle',
  },
  speed('the highest that hole and links allow'),
  axis,
];

const CUT: readonly WorkField[] = [
  {
    key: 'operation',
    name: 'operation',
    options: Object.fromEntries(OPERATIONS.map((each) => [each, each])),
    needed: true,
    example: 'turning',
  },
  { ...material, needed: true },
  { key: 'thread', name: 'thread, when threading or tapping', example: 'M20x1.5' },
  { key: 'diameter', name: 'diameter of work or tool', unit: 'mm', example: '60 mm' },
  { key: 'depth', name: 'depth of cut', unit: 'mm', example: '2 mm' },
  { key: 'width', name: 'width of cut or blade', unit: 'mm', example: '3 mm' },
  { key: 'feed', name: 'feed a turn, or a tooth when milling', unit: 'mm', example: '0.2 mm' },
  { key: 'teeth', name: 'teeth of the cutter', example: '4' },
  { key: 'speed', name: 'cutting speed or spindle speed', unit: 'm/min', example: '120 m/min' },
  { key: 'bar', name: 'diameter of the boring bar', unit: 'mm', example: '20 mm' },
  { key: 'overhang', name: 'length the bar stands out', unit: 'mm', example: '80 mm' },
  { key: 'wear', name: 'wear of the tool', usual: '1.3', example: '1.3' },
  { key: 'edge', name: 'angle of the edge', unit: 'deg', usual: '95°', example: '95 deg' },
  { key: 'point', name: 'point angle of the drill', unit: 'deg', usual: '118°', example: '118 deg' },
  {
    key: 'grip',
    name: 'diameter the jaws grip',
    unit: 'mm',
    usual: 'the diameter being cut',
    example: '60 mm',
  },
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
  const used = BY_OPERATION[settings.operation ?? ''];
  return CUT.filter(({ key }) =>
    key === 'operation' || key === 'material' ? true : used?.includes(key) === true,
  );
}
