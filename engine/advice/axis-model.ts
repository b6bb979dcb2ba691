/** An axis of a refit as the simulation wants it: what is known, what is taken for want of better, what is missing. */

import { scopesOf } from '../assess/assess.ts';
import type { Assessment } from '../assess/index.ts';
import { sayPath } from '../assess/index.ts';
import { resolve, type Scope } from '../assess/resolve.ts';
import { uncertainty, type Value } from '../assess/value.ts';
import { BACK_EFFICIENCY, DRAG, EFFICIENCY, LEAD, MOTOR_FRICTION, RATIO } from '../checks/motion.ts';
import { BRUSH_DROP, HOT_RESISTANCE } from '../checks/motor-constants.ts';
import { fact, first, type Ref, when } from '../checks/refs.ts';
import { formatQuantity } from '../quantity/index.ts';
import { STANDARD_GRAVITY } from '../simulate/constants.ts';
import {
  type AxisModel,
  type Brake,
  inertias,
  type MoveKind,
  type Spread,
  type Supply,
  startingGains,
} from '../simulate/index.ts';
import { factsAround } from './part-facts.ts';

export interface Assumed {
  /** Parameter of the model: 'drive.followingLimit'. */
  readonly path: string;
  /** What was taken and why, in a sentence. */
  readonly says: string;
}

export interface MoveSetting {
  /** Absent while something is missing without which nothing can move. */
  readonly model?: AxisModel;
  readonly assumed: readonly Assumed[];
  /** Facts that would have to be known. */
  readonly missing: readonly { readonly path: string; readonly name: string }[];
  /** Moves as this axis is asked to make them, as a person would type them. */
  readonly usual: Readonly<Partial<Record<MoveKind, Readonly<Record<string, string>>>>>;
  /** How far the model's numbers may be off. */
  readonly spread: readonly Spread[];
  /** A the motor carries for hours, where it is known. */
  readonly continuousCurrent?: number;
  /** m within which the axis counts as arrived: half the tolerance that is asked for. */
  readonly settleBand: number;
  /** m from one hard stop to the other, where it is known. */
  readonly travel?: number;
  /** Another axis of the machine, to go round a circle with. */
  readonly second?: { readonly chain: string; readonly model: AxisModel };
}

/** m; where no tolerance is asked for. */
const USUAL_BAND = 1e-5;

const result = (working: string, symbol: string): Ref => ({ kind: 'result', working, symbol });

/** How far a number taken for want of better may be off, evenly. */
const ASSUMED_SHARE = 0.3;
/** Share of critical damping that steel parts and grease give. */
const STRUCTURE_DAMPING = 0.02;
/** Share of critical damping of a stepping motor's rotor in its field. */
const ROTOR_DAMPING = 0.05;

class Builder {
  readonly assumed: Assumed[] = [];
  readonly spread: Spread[] = [];
  private readonly lacking = new Set<string>();
  private readonly scope: Scope;

  constructor(scope: Scope) {
    this.scope = scope;
  }

  get missing(): { path: string; name: string }[] {
    return [...this.lacking].map((path) => ({ path, name: sayPath(path) }));
  }

  value(ref: Ref): number | undefined {
    const value = resolve(this.scope, ref);
    return value.state === 'known' ? value.value : undefined;
  }

  /** A number that has to be known; NaN, and its facts among the missing, where it is not. */
  need(path: string, ref: Ref): number {
    const value = resolve(this.scope, ref);
    if (value.state === 'known') return this.take(path, value);
    if (value.state === 'missing') for (const each of value.facts) this.lacking.add(each);
    return Number.NaN;
  }

  /** A number from the refit, or the one taken instead with its reason. */
  usual(path: string, ref: Ref, instead: number, says: string): number {
    const value = resolve(this.scope, ref);
    return value.state === 'known' ? this.take(path, value) : this.assume(path, instead, says);
  }

  assume(path: string, value: number, says: string): number {
    this.assumed.push({ path, says });
    if (
      value !== 0 &&
      Number.isFinite(value) &&
      !path.startsWith('control.') &&
      path !== 'drive.followingLimit'
    )
      this.spread.push({ path, share: ASSUMED_SHARE, form: 'even' });
    return value;
  }

  private take(path: string, value: Extract<Value, { state: 'known' }>): number {
    const share = value.value === 0 ? 0 : uncertainty(value.doubt) / Math.abs(value.value);
    if (share > 1e-6) this.spread.push({ path, share, form: 'normal' });
    return value.value;
  }
}

/** Puts one axis together, with another beside it for a circle. `chainId`: 'X'. */
export function axisModel(assessment: Assessment, chainId: string): MoveSetting {
  const own = oneAxis(assessment, chainId);
  if (!own.model) return own;
  for (const { id } of assessment.refit.chains) {
    if (id === chainId) continue;
    const { model } = oneAxis(assessment, id);
    if (model?.motor.kind === own.model.motor.kind) return { ...own, second: { chain: id, model } };
  }
  return own;
}

function oneAxis(assessment: Assessment, chainId: string): MoveSetting {
  const chain = assessment.refit.chains.find(({ id }) => id === chainId);
  if (!chain) return { assumed: [], missing: [], usual: {}, spread: [], settleBand: USUAL_BAND };
  const scope = scopesOf(assessment)(chain);
  const facts = factsAround(assessment.refit, chainId);
  const b = new Builder(scope);

  const motorType = facts.choice('motor', 'type');
  if (motorType === undefined) b.need('motor.kind', when('motor', 'type', {}));
  const isStepper = motorType === 'stepper';
  const ratio = b.need('transmission.ratio', RATIO);
  const lead = b.need('transmission.lead', LEAD);
  const mass = b.need('slide.mass', result('mass', 'm_all'));

  const friction = b.usual(
    'slide.coulomb',
    result('forces', 'F_f'),
    0.02 * mass * STANDARD_GRAVITY,
    'Friction of the ways: two hundredths of the weight, as if it ran on rails; the friction of this slide is not known.',
  );
  const isPlain = !['ball-rail', 'roller-rail'].includes(facts.choice('slide', 'ways') ?? 'ball-rail');
  const staticFriction = b.assume(
    'slide.staticFriction',
    friction * (isPlain ? 1.4 : 1.1),
    isPlain
      ? 'Breaking free takes 1.4 times the sliding friction, as plain ways mostly do (common practice, no source).'
      : 'Breaking free takes 1.1 times the sliding friction, as rails mostly do (common practice, no source).',
  );

  const screwFriction = b.value(DRAG) ?? 0;
  const efficiency = b.value(EFFICIENCY) ?? 1;
  const loadLoss = ((friction * lead) / (2 * Math.PI)) * Math.max(0, 1 / efficiency - 1);
  const motorFriction = b.usual(
    'motor.coulomb',
    MOTOR_FRICTION,
    0,
    'The motor’s own friction is left out: it is not known.',
  );
  const coulomb = motorFriction + (screwFriction + loadLoss + selfLocking(b)) / ratio;
  const inertia =
    b.need('motor.inertia', fact('motor', 'inertia')) + (b.value(fact('reduction', 'motorSideInertia')) ?? 0);

  const motor: AxisModel['motor'] = isStepper
    ? stepper(b, inertia, coulomb)
    : {
        kind: 'servo',
        resistance: b.need('motor.resistance', HOT_RESISTANCE),
        inductance: b.usual(
          'motor.inductance',
          fact('motor', 'inductance'),
          0,
          'The winding’s inductance is not known: the current is taken to follow at once.',
        ),
        constant: b.need('motor.constant', result('servo', 'Kt')),
        inertia,
        coulomb,
        viscous: 0,
        brushDrop: b.value(BRUSH_DROP) ?? 0,
      };

  const screwInertia =
    (b.value(first(fact('screw', 'inertia'), result('screw-inertia', 'J_cyl'))) ??
      b.assume(
        'transmission.screwInertia',
        0,
        'The screw’s own inertia is left out: its length and diameter are not known.',
      )) + (b.value(fact('reduction', 'screwSideInertia')) ?? 0);
  const stiffness = b.usual(
    'transmission.stiffness',
    first(result('stiffness', 'K_min'), result('stiffness', 'K_twist')),
    5e7,
    'The stiffness of screw, nut and bearings is taken as 50 N/µm; give the stiffness of nut and bearings to have it worked out.',
  );
  const play = b.value(fact('screw', 'playWorst'));
  const rolls = ['ball', 'roller'].includes(facts.choice('screw', 'type') ?? '');
  const backlash =
    play ??
    b.assume(
      'transmission.backlash',
      rolls ? 5e-6 : 5e-5,
      rolls
        ? 'Free play is taken as 5 µm, as a preloaded nut with a little wear has; measure it.'
        : 'Free play is taken as 0.05 mm, as a plain nut in use has; measure it.',
    );

  const { drive, continuousCurrent } = driveOf(b, isStepper);
  const supply = supplyOf(b, facts.choice('supply', 'type'), facts.choice('supply', 'dumpFitted'));
  const on =
    facts.choice('feedback', 'type') === 'scale' ? 'slide' : (facts.choice('feedback', 'on') ?? 'motor');
  const lines = facts.value('feedback', 'lines');
  if (b.missing.length > 0)
    return { assumed: b.assumed, missing: b.missing, usual: {}, spread: [], settleBand: USUAL_BAND };

  const draft: AxisModel = {
    motor,
    transmission: {
      lead,
      ratio,
      screwInertia,
      stiffness,
      damping: 2 * STRUCTURE_DAMPING * Math.sqrt(stiffness * mass),
      backlash,
      couplingShare: 0,
    },
    slide: {
      mass,
      tilt: b.value(fact('slide', 'slope')) ?? 0,
      balance:
        (b.value(fact('slide', 'balanceForce')) ?? 0) +
        STANDARD_GRAVITY * (b.value(fact('slide', 'counterweight')) ?? 0),
      staticFriction: Math.max(staticFriction, friction),
      coulomb: friction,
      viscous: 0,
      fallSpeed: 0.005,
      smoothing: 0,
    },
    feedback: {
      on: on as AxisModel['feedback']['on'],
      countsPerTurn: isStepper || on === 'slide' ? 0 : 4 * (lines ?? 0),
      countLength: 0,
    },
    drive,
    control: isStepper ? { kind: 'open', sample: 1e-4 } : placeholder(facts.choice('drive', 'command')),
    brake: brakeOf(b, facts.fitted('brake') === true, facts.choice('brake', 'on'), ratio),
    supply,
  };
  const travel = b.value(fact('slide', 'travel'));
  const model = isStepper ? draft : withGains(b, draft, facts.choice('feedback', 'type'));
  return {
    model,
    assumed: b.assumed,
    missing: [],
    usual: usualMoves(b, model),
    settleBand: (b.value(fact('duty', 'tolerance')) ?? 2 * USUAL_BAND) / 2,
    spread: b.spread.filter(({ path }) => path !== 'motor.kind'),
    ...(continuousCurrent === undefined ? {} : { continuousCurrent }),
    ...(travel === undefined ? {} : { travel }),
  };
}

/** N·m at the screw that a screw which its load cannot turn takes from that load; 0 where the load can turn it. */
function selfLocking(b: Builder): number {
  const [hold, back] = [b.value(result('forces', 'F_hold')), b.value(BACK_EFFICIENCY)];
  const lead = b.value(LEAD);
  if (hold === undefined || back === undefined || lead === undefined || back > 0) return 0;
  return ((hold * lead) / (2 * Math.PI)) * (1 - back);
}

function stepper(b: Builder, inertia: number, coulomb: number): AxisModel['motor'] {
  const holdingTorque = b.need('motor.holdingTorque', fact('motor', 'holdingTorque'));
  const step = b.usual(
    'motor.rotorTeeth',
    fact('motor', 'stepAngle'),
    (1.8 * Math.PI) / 180,
    'The motor is taken to make 200 full steps a turn.',
  );
  const rotorTeeth = Math.max(1, Math.round(Math.PI / 2 / step));
  return {
    kind: 'stepper',
    holdingTorque,
    ratedCurrent: b.need('motor.ratedCurrent', fact('motor', 'continuousCurrent')),
    resistance: b.need('motor.resistance', fact('motor', 'resistance')),
    inductance: b.need('motor.inductance', fact('motor', 'inductance')),
    rotorTeeth,
    inertia,
    coulomb,
    viscous: 0,
    damping: b.assume(
      'motor.damping',
      2 * ROTOR_DAMPING * Math.sqrt(holdingTorque * rotorTeeth * inertia),
      'The rotor’s swing in its field is taken to be damped by a twentieth of critical (common practice, no source).',
    ),
  };
}

function driveOf(
  b: Builder,
  isStepper: boolean,
): { drive: AxisModel['drive']; continuousCurrent: number | undefined } {
  const limits = [b.value(result('servo', 'I_drive_peak')), b.value(result('servo', 'I_motor_peak'))].filter(
    (each) => each !== undefined,
  );
  const currentLimit = isStepper
    ? (b.value(fact('drive', 'peakCurrent')) ?? Number.POSITIVE_INFINITY)
    : limits.length > 0
      ? Math.min(...limits)
      : Number.POSITIVE_INFINITY;
  if (currentLimit === Number.POSITIVE_INFINITY)
    b.assume(
      'drive.currentLimit',
      currentLimit,
      'No current limit of drive or motor is known: none is drawn.',
    );
  const followingLimit = isStepper
    ? Number.POSITIVE_INFINITY
    : b.assume(
        'drive.followingLimit',
        1e-3,
        'The drive is taken to switch off 1 mm behind its command; set what yours does.',
      );
  return {
    drive: {
      currentLimit,
      duty: b.value(fact('drive', 'fullDuty')) ?? 1,
      overvoltage: b.value(fact('drive', 'highestVoltage')) ?? Number.POSITIVE_INFINITY,
      undervoltage: b.value(fact('drive', 'lowestVoltage')) ?? 0,
      followingLimit,
      whenOff: 'coast',
      pulse: b.value(result('pulse', 'res')) ?? 0,
    },
    continuousCurrent: b.value(result('servo', 'I_motor')),
  };
}

function supplyOf(b: Builder, type: string | undefined, dumpFitted: string | undefined): Supply {
  const common = {
    mains: 1,
    frequency: b.value(fact('site', 'frequency')) ?? 50,
    diodeDrop: 1,
    bleeder: b.value(fact('supply', 'bleeder')) ?? Number.POSITIVE_INFINITY,
    ...dumpOf(b, dumpFitted),
    otherLoad: 0,
  };
  if (type === 'transformer') {
    const voltage = b.need('supply.voltage', result('mains-tap', 'Vsec'));
    const rated = b.value(fact('supply', 'ratedCurrent'));
    const regulation = b.value(fact('supply', 'regulation'));
    const worked =
      rated !== undefined && regulation !== undefined ? (regulation * voltage) / rated : undefined;
    return {
      kind: 'transformer',
      voltage,
      sourceResistance:
        b.value(fact('supply', 'sourceResistance')) ??
        worked ??
        b.assume(
          'supply.sourceResistance',
          0.3,
          'Transformer and leads are taken as 0.3 Ω; measure the volts idle and loaded.',
        ),
      capacitance: b.need('supply.capacitance', fact('supply', 'capacitance')),
      ...common,
    };
  }
  return {
    kind: 'regulated',
    voltage: b.need('supply.voltage', fact('supply', 'ratedVoltage')),
    sourceResistance: 0.02,
    capacitance: b.usual(
      'supply.capacitance',
      fact('supply', 'capacitance'),
      2e-3,
      'The output capacitor of the supply is taken as 2000 µF.',
    ),
    ...common,
  };
}

function dumpOf(
  b: Builder,
  fitted: string | undefined,
): Pick<Supply, 'dumpOn' | 'dumpOff' | 'dumpResistance'> {
  const on = b.value(fact('supply', 'dumpVoltage'));
  if (fitted !== 'yes' || on === undefined)
    return {
      dumpOn: Number.POSITIVE_INFINITY,
      dumpOff: Number.POSITIVE_INFINITY,
      dumpResistance: Number.POSITIVE_INFINITY,
    };
  const resistance = b.usual(
    'supply.dumpResistance',
    fact('supply', 'dumpResistor'),
    10,
    'The dump resistor is taken as 10 Ω; its value is not known.',
  );
  return { dumpOn: on, dumpOff: 0.97 * on, dumpResistance: resistance };
}

function brakeOf(b: Builder, isFitted: boolean, on: string | undefined, ratio: number): Brake | null {
  if (!isFitted) return null;
  const torque = b.need('brake.torque', fact('brake', 'torque'));
  if (Number.isNaN(torque)) return null;
  return {
    torque: on === 'screw' ? torque / ratio : torque,
    delay: b.usual(
      'brake.delay',
      fact('brake', 'delay'),
      0.05,
      'The brake is taken to close in 50 ms; measure it.',
    ),
  };
}

/** A loop of the right kind; its gains are worked out from the whole axis afterwards. */
function placeholder(command: string | undefined): AxisModel['control'] {
  if (command === 'pulses')
    return {
      kind: 'pid',
      proportional: 1,
      integral: 0,
      derivative: 0,
      derivativeOn: 'error',
      speedForward: 0,
      accelerationForward: 0,
      output: 'voltage',
      sample: 1e-4,
      delay: 1,
    };
  return {
    kind: 'cascade',
    positionGain: 1,
    speedGain: 1,
    speedIntegral: 0,
    speedForward: 0,
    accelerationForward: 0,
    current: 'ideal',
    currentGain: 0,
    currentIntegral: 0,
    sample: 1e-4,
    speedEvery: 1,
    positionEvery: 10,
    delay: 1,
    speedFrom: 'encoder',
  };
}

function withGains(b: Builder, draft: AxisModel, feedback: string | undefined): AxisModel {
  const gains = startingGains(draft);
  if (!gains || draft.motor.kind !== 'servo') return draft;
  if (draft.control.kind === 'pid') {
    b.assume(
      'control.proportional',
      0,
      'The drive is taken as one loop on the position, set by gains worked out from this axis.',
    );
    const { motorSide, slideSide } = inertias(draft);
    const { constant, resistance } = draft.motor;
    return {
      ...draft,
      control: {
        ...draft.control,
        ...gains.single,
        speedForward: constant,
        accelerationForward: (resistance * (motorSide + slideSide)) / constant,
      },
    };
  }
  b.assume(
    'control.positionGain',
    0,
    'Control and drive are taken as position, speed and current loop, sampled ten thousand times a second, position a thousand times, with gains worked out from this axis.',
  );
  const hasInductance = draft.motor.inductance > 0;
  return {
    ...draft,
    control: {
      ...(draft.control as Extract<AxisModel['control'], { kind: 'cascade' }>),
      ...gains.cascade,
      current: hasInductance ? 'pi' : 'ideal',
      speedFrom: feedback === 'tacho' ? 'tacho' : 'encoder',
    },
  };
}

/** s that a circle should take: long enough to be at speed, short enough to wait for. */
const CIRCLE_TIME = 6;
const LARGEST_RADIUS = 0.025;

/** Moves with the speeds, accelerations and lengths that the duty asks for. */
function usualMoves(b: Builder, model: AxisModel): MoveSetting['usual'] {
  const say = (value: number | undefined, unit: string): string | undefined =>
    value === undefined ? undefined : formatQuantity(value, unit, { digits: 3 });
  const set = (entries: Readonly<Record<string, string | undefined>>): Record<string, string> =>
    Object.fromEntries(
      Object.entries(entries).filter((each): each is [string, string] => each[1] !== undefined),
    );
  const feedSpeed = b.value(fact('duty', 'feed'));
  const acceleration = say(b.value(fact('duty', 'acceleration')), 'm/s²');
  const rapid = set({ speed: say(b.value(fact('duty', 'rapid')), 'm/min'), acceleration });
  const feed = set({ speed: say(feedSpeed, 'mm/min'), acceleration });
  const radius =
    feedSpeed === undefined ? undefined : Math.min(LARGEST_RADIUS, (feedSpeed * CIRCLE_TIME) / (2 * Math.PI));
  // A stepping motor is moved step by step: a jump of more than one would only throw it out.
  const { motor, transmission } = model;
  const step =
    motor.kind === 'stepper' ? transmission.lead / transmission.ratio / (8 * motor.rotorTeeth) : undefined;
  return {
    rapid: { ...rapid, ...set({ distance: say(b.value(fact('duty', 'moveLength')), 'mm') }) },
    step: set({ distance: say(step, 'µm') }),
    reversal: feed,
    circle: { ...feed, ...set({ radius: say(radius, 'mm') }) },
    'brake-from-rapid': { ...rapid, ...set({ stop: acceleration }) },
    'power-cut': rapid,
    'force-step': set({ force: say(b.value(fact('duty', 'cutForce')), 'N') }),
  };
}
