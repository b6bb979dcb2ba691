/** What the axis is asked to do. Lengths in m, times in s; every move starts from rest with the loop closed. */

/** How a distance is covered: never faster than `speed`, never steeper than `acceleration`; jerk 0 changes it at once. */
export interface Profile {
  /** m/s. */
  readonly speed: number;
  /** m/s². */
  readonly acceleration: number;
  /** m/s³; 0 for a trapezoid, above it an S-curve. */
  readonly jerk: number;
}

export type Move =
  /** A positioning move. */
  | ({ readonly kind: 'rapid'; readonly distance: number } & Profile)
  /** The command jumps. */
  | { readonly kind: 'step'; readonly distance: number }
  /** The command sets off at full speed. */
  | { readonly kind: 'ramp'; readonly speed: number; readonly duration: number }
  /** There and back, with a pause at the end of each: lost motion shows. */
  | ({ readonly kind: 'reversal'; readonly distance: number; readonly pause: number } & Profile)
  /** Many small jumps one way: stick-slip shows. */
  | { readonly kind: 'small-steps'; readonly size: number; readonly count: number; readonly pause: number }
  /** Two axes in step round a circle; the second is this one's twin unless `second` is given in the options. */
  | ({ readonly kind: 'circle'; readonly radius: number; readonly turns: number } & Profile)
  /** The axis stands; a force pushes against it from `at` for `duration`. */
  | { readonly kind: 'force-step'; readonly force: number; readonly at: number; readonly duration: number }
  /** Up to speed, and then brought to rest as hard as `stop` (m/s²) says. */
  | ({ readonly kind: 'brake-from-rapid'; readonly stop: number; readonly cruise: number } & Profile)
  /** Up to speed, and then the mains fail; `room` is the m that are left then to the end stop, Infinity where not known. */
  | ({ readonly kind: 'power-cut'; readonly cruise: number; readonly room?: number } & Profile)
  /** The axis is held by its motor, and the drive is switched off at `at`, with its brake or as if it had none. */
  | { readonly kind: 'drop'; readonly at: number; readonly brake?: 'fitted' | 'none' };

export type MoveKind = Move['kind'];

export interface MoveField {
  readonly name: string;
  readonly unit: string;
  readonly domain: 'positive' | 'not negative' | 'any' | 'count';
  /** As a person would type it. */
  readonly usual: string;
  /** The word for not having it, where a move can do without: it stands for Infinity. */
  readonly none?: string;
  /** The words that may be typed, for a choice instead of a number. */
  readonly options?: readonly string[];
}

interface MoveSpec {
  /** One sentence for lists. */
  readonly says: string;
  readonly fields: Readonly<Record<string, MoveField>>;
}

const PROFILE = {
  speed: { name: 'speed', unit: 'm/s', domain: 'positive', usual: '6 m/min' },
  acceleration: { name: 'acceleration', unit: 'm/s²', domain: 'positive', usual: '1 m/s²' },
  jerk: {
    name: 'jerk (0 for a trapezoid)',
    unit: 'm/s³',
    domain: 'not negative',
    usual: '0 m/s³',
  },
} as const;

const distance = (usual: string): MoveField => ({ name: 'distance', unit: 'm', domain: 'any', usual });
const time = (name: string, usual: string): MoveField => ({
  name,
  unit: 's',
  domain: 'not negative',
  usual,
});

/** Every move with what it asks for; the command line, the checks and the page read this one list. */
export const MOVES: Readonly<Record<MoveKind, MoveSpec>> = {
  rapid: {
    says: 'One positioning move; shows following error, trips and what the bus does.',
    fields: { distance: distance('50 mm'), ...PROFILE },
  },
  step: {
    says: 'The command jumps; shows ringing and how fast the loop is.',
    fields: { distance: distance('0.1 mm') },
  },
  ramp: {
    says: 'The command sets off at full speed; shows the steady following error and creep at low speed.',
    fields: {
      speed: { ...PROFILE.speed, domain: 'any', usual: '50 mm/min' },
      duration: { ...time('duration', '1 s'), domain: 'positive' },
    },
  },
  reversal: {
    says: 'There and back with pauses; shows the motion lost when the direction turns.',
    fields: {
      distance: distance('5 mm'),
      pause: time('pause', '0.3 s'),
      ...PROFILE,
      speed: { ...PROFILE.speed, usual: '1 m/min' },
    },
  },
  'small-steps': {
    says: 'Small jumps one way; shows whether the slide follows or waits and then jumps.',
    fields: {
      size: distance('2 µm'),
      count: { name: 'how many', unit: '1', domain: 'count', usual: '10' },
      pause: { ...time('pause after each', '0.2 s'), domain: 'positive' },
    },
  },
  circle: {
    says: 'Two axes round a circle; shows roundness and the marks where an axis turns.',
    fields: {
      radius: { name: 'radius', unit: 'm', domain: 'positive', usual: '25 mm' },
      turns: { name: 'turns', unit: '1', domain: 'positive', usual: '1.25' },
      ...PROFILE,
      speed: { ...PROFILE.speed, usual: '1 m/min' },
    },
  },
  'force-step': {
    says: 'The axis stands and a force pushes against it; shows how far it yields and how it comes back.',
    fields: {
      force: { name: 'force', unit: 'N', domain: 'any', usual: '500 N' },
      at: time('when it begins', '0.05 s'),
      duration: { ...time('how long it lasts', '0.3 s'), domain: 'positive' },
    },
  },
  'brake-from-rapid': {
    says: 'Up to speed and a hard stop; shows how high the bus rises.',
    fields: {
      cruise: time('time at speed', '0.1 s'),
      stop: { name: 'deceleration of the stop', unit: 'm/s²', domain: 'positive', usual: '3 m/s²' },
      ...PROFILE,
    },
  },
  'power-cut': {
    says: 'Up to speed, and then the mains fail; shows how far the axis runs on.',
    fields: {
      cruise: time('time at speed', '0.1 s'),
      ...PROFILE,
      room: {
        name: 'way left to the end stop',
        unit: 'm',
        domain: 'not negative',
        usual: 'unknown',
        none: 'unknown',
      },
    },
  },
  drop: {
    says: 'The drive is switched off while it holds the axis; shows how far the axis falls, with its brake and without.',
    fields: {
      at: time('when it is switched off', '0.05 s'),
      brake: { name: 'brake', unit: '1', domain: 'any', usual: 'fitted', options: ['fitted', 'none'] },
    },
  },
};

export const MOVE_KINDS = Object.keys(MOVES) as readonly MoveKind[];
