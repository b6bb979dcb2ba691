/** The machine as its work wants it: axes with their pace and thrust, the spindle, the chuck, what the control can do. */
import { axisModel } from '../advice/axis-model.ts';
import { scopesOf } from '../assess/assess.ts';
import { type Assessment, type ScopeFor, sayPath } from '../assess/index.ts';
import { resolve, type Scope } from '../assess/resolve.ts';
import { DRAG, EFFICIENCY, LEAD, RATIO, REDUCTION_EFFICIENCY } from '../checks/motion.ts';
import { CONTINUOUS_TORQUE, PEAK_TORQUE } from '../checks/motor-constants.ts';
import { fact, type Ref } from '../checks/refs.ts';
import { chosenPart, findPlace } from '../refit/place.ts';
import type { Chain, Refit } from '../refit/types.ts';
import type { AxisModel, Spread } from '../simulate/index.ts';
import { type InTime, inTimeOf } from './following.ts';
import { type Habits, habitsOf, withFacts } from './habits.ts';
import { from, type Known, NONE } from './known.ts';
import { spindleAt, spindleSetting } from './spindle-model.ts';
import type { SpeedLimit, SpindleModel } from './types.ts';

export interface WorkAxis {
  readonly id: string;
  /** m/s, m/s², m. */
  readonly rapid: Known;
  readonly acceleration: Known;
  readonly travel: Known;
  /** 1/s: gain of the plain lag that needs as much run-in. */
  readonly gain: Known;
  /** s by which it trails the spindle once settled. */
  readonly lag: Known;
  /** Where these two come from. */
  readonly gainSays: string;
  /** N that it can push with beside friction and weight: for hours, and for a moment. */
  readonly thrust: Known;
  readonly peakThrust: Known;
  /** Which part of it gives way first. */
  readonly weakest: 'motor' | 'drive';
  /** N at which the screw buckles, its own margin taken off. */
  readonly buckling: Known;
  /** m/s at which the pulses of control or drive run out; null value and no needs where it is not led by pulses. */
  readonly pulseSpeed: Known;
  readonly isStepper: boolean;
  /** For the simulation; null while something is missing. */
  readonly model: AxisModel | null;
  /** How far the numbers of that model may be off. */
  readonly spread: readonly Spread[];
}

export type Ability = 'yes' | 'no' | null;

export interface WorkMachine {
  readonly refit: Refit;
  readonly axes: ReadonlyMap<string, WorkAxis>;
  readonly spindle: SpindleModel | null;
  /** What keeps the spindle from turning faster: known also where the spindle itself is not. */
  readonly spindleLimits: readonly SpeedLimit[];
  /** Facts without which there is no spindle model. */
  readonly spindleNeeds: readonly string[];
  /** Id of the spindle's chain, if there is one. */
  readonly spindleChain: string | null;
  readonly feedbackFitted: 'yes' | 'no' | null;
  /** Kind of the spindle's feedback and how it is driven, as the parts call them. */
  readonly feedbackType: string | null;
  readonly feedbackDriven: string | null;
  readonly can: (ability: string) => Ability;
  /** Axes the control moves together. */
  readonly coordinated: Known;
  readonly chuck: ChuckFacts;
  /** Margin below which something is tight. */
  readonly tight: number;
  /** The policies this room reckons with. */
  readonly habits: Habits;
  /** One draw of many: only margins are wanted, and what serves pictures and advice is left out. */
  readonly isDraw: boolean;
  /** What a cut asks in this draw, over what it asks by the tables; 1 for the machine as it stands. */
  readonly cutting: number;
}

export interface ChuckFacts {
  readonly fitted: 'yes' | 'no' | null;
  readonly type: string | null;
  /** N, 1, kg, m. */
  readonly grip: Known;
  readonly jaws: Known;
  readonly jawMass: Known;
  readonly jawRadius: Known;
  readonly surface: string | null;
}

const result = (working: string, symbol: string): Ref => ({ kind: 'result', working, symbol });

/** A reference as a number, with its basis or what is missing. */
function known(scope: Scope, ref: Ref): Known {
  const value = resolve(scope, ref);
  if (value.state === 'known') return { value: value.value, needs: [], basis: value.basis };
  return value.state === 'missing' ? { value: null, needs: [...value.facts] } : NONE;
}

/** The smaller of those that are known; unknown where none is. */
function least(...parts: readonly Known[]): Known {
  const there = parts.filter(({ value }) => value !== null);
  if (there.length === 0) return { value: null, needs: [...new Set(parts.flatMap(({ needs }) => needs))] };
  return there.reduce((a, b) => (b.value! < a.value! ? b : a));
}

function axisOf(refit: Refit, chain: Chain, scope: Scope, inTime: InTime): WorkAxis {
  const get = (ref: Ref): Known => known(scope, ref);
  const isStepper =
    inTime.model?.motor.kind === 'stepper' || choice(refit, chain.id, 'motor', 'type') === 'stepper';
  const byMotor = isStepper ? get(result('stepper-feed-usable', 'T_use')) : get(CONTINUOUS_TORQUE);
  const byDrive = isStepper ? NONE : get(result('servo', 'T_drive'));
  const peak = isStepper ? byMotor : least(get(PEAK_TORQUE), get(result('servo', 'T_drive_peak')));
  const run = from([get(result('forces', 'F_up_run')), get(result('forces', 'F_dn_run'))], (up, down) =>
    Math.max(up, down, 0),
  );
  const train = [get(RATIO), get(REDUCTION_EFFICIENCY), get(DRAG), get(EFFICIENCY), get(LEAD), run];
  const push = (torque: Known): Known =>
    from([torque, ...train], (T, i, etaG, drag, eta, lead, friction) =>
      Math.max(0, ((T! * i! * etaG! - drag!) * 2 * Math.PI * eta!) / lead! - friction!),
    );
  const continuous = least(byMotor, byDrive);
  return {
    id: chain.id,
    rapid: get(fact('duty', 'rapid')),
    acceleration: get(fact('duty', 'acceleration')),
    travel: get(fact('slide', 'travel')),
    get gain() {
      return inTime.gain;
    },
    get lag() {
      return inTime.lag;
    },
    get gainSays() {
      return inTime.gainSays;
    },
    thrust: push(continuous),
    peakThrust: push(peak),
    weakest: byDrive.value !== null && byDrive.value === continuous.value ? 'drive' : 'motor',
    buckling: get(result('buckling', 'F_allow')),
    pulseSpeed: pulseSpeed(refit, chain.id, get),
    isStepper,
    model: inTime.model,
    spread: inTime.spread,
  };
}

function pulseSpeed(refit: Refit, chain: string, get: (ref: Ref) => Known): Known {
  if (choice(refit, chain, 'drive', 'command') !== 'pulses') return NONE;
  return from(
    [
      get(result('pulse', 'res')),
      least(get(fact('control', 'highestPulseRate')), get(fact('drive', 'highestPulseRate'))),
    ],
    (travel, rate) => travel * rate,
  );
}

/** A choice as it stands in the refit, whatever kind of part it is; null where it is not known. */
export function choice(refit: Refit, chain: string | null, place: string, name: string): string | null {
  const value = ownFact(refit, chain, place, name)?.value;
  return value?.kind === 'choice' ? value.option : null;
}

function ownFact(refit: Refit, chain: string | null, place: string, name: string) {
  const part = chosenPart(refit, chain, place);
  return part && Object.hasOwn(part.facts, name) ? part.facts[name] : undefined;
}

/** Whether the control says that it can. */
function ability(refit: Refit, name: string): Ability {
  const found = choice(refit, null, 'control', name);
  return found === 'yes' || found === 'no' ? found : null;
}

const fittedAt = (refit: Refit, chain: string | null, place: string): 'yes' | 'no' | null => {
  const chosen = chain === null ? null : (findPlace(refit, chain, place)?.chosen ?? null);
  return chosen === null ? null : chosen === 'none' ? 'no' : 'yes';
};

function chuckOf(refit: Refit, chain: Chain | undefined, scope: Scope | null): ChuckFacts {
  const id = chain?.id ?? null;
  const number = (name: 'grip' | 'jaws' | 'jawMass' | 'jawRadius'): Known =>
    scope && id ? known(scope, fact('chuck', name)) : { value: null, needs: ['S.chuck'] };
  return {
    fitted: fittedAt(refit, id, 'chuck'),
    type: choice(refit, id, 'chuck', 'type'),
    grip: number('grip'),
    jaws: number('jaws'),
    jawMass: number('jawMass'),
    jawRadius: number('jawRadius'),
    surface: choice(refit, id, 'chuck', 'jawSurface'),
  };
}

interface SpindleKnown {
  readonly model: SpindleModel | null;
  readonly limits: readonly SpeedLimit[];
  readonly needs: readonly string[];
}

function machineAt(
  refit: Refit,
  scopeFor: ScopeFor,
  { model: spindle, limits, needs }: SpindleKnown,
  habitsAt: (spindle: Scope | null) => Habits,
  inTime: (chain: Chain, scope: Scope, habits: Habits) => InTime,
  draw: { readonly cutting: number } | null,
): WorkMachine {
  const chain = refit.chains.find(({ kind }) => kind === 'spindle');
  const id = spindle?.chain ?? chain?.id ?? null;
  const habits = habitsAt(chain ? scopeFor(chain) : null);
  const axis = (each: Chain): WorkAxis => {
    const scope = scopeFor(each);
    return axisOf(refit, each, scope, inTime(each, scope, habits));
  };
  return {
    refit,
    axes: new Map(
      refit.chains.filter(({ kind }) => kind === 'axis').map((each) => [each.id, axis(each)] as const),
    ),
    spindle,
    spindleLimits: limits,
    spindleNeeds: spindle ? [] : needs.length > 0 ? needs : [id ?? 'S'],
    spindleChain: id,
    feedbackFitted: fittedAt(refit, id, 'spindle-feedback'),
    feedbackType: choice(refit, id, 'spindle-feedback', 'type'),
    feedbackDriven: choice(refit, id, 'spindle-feedback', 'driven'),
    can: (name) => ability(refit, name),
    coordinated: known(scopeFor(null), fact('control', 'coordinated-axes')),
    chuck: chuckOf(refit, chain, chain ? scopeFor(chain) : null),
    tight: habits.margin.value,
    habits,
    isDraw: draw !== null,
    cutting: draw?.cutting ?? 1,
  };
}

/** `spindle`: the model of the spindle, or null with the facts it waits for and the limits that are known all the same. */
export const workMachine = (
  assessment: Assessment,
  spindle: SpindleModel | null,
  spindleNeeds: readonly string[] = [],
  limits: readonly SpeedLimit[] = spindle?.limits ?? [],
): WorkMachine =>
  machineAt(
    assessment.refit,
    scopesOf(assessment),
    { model: spindle, limits, needs: spindleNeeds },
    (spindleScope) => habitsOf(assessment.refit, spindleScope),
    (chain, scope, { look }) =>
      inTimeOf(
        axisModel(assessment, chain.id),
        known(scope, fact('duty', 'acceleration')),
        known(scope, fact('duty', 'rapid')),
        look.value,
      ),
    null,
  );

/** The machine of an assessed refit, with the spindle it has. */
export function workMachineOf(assessment: Assessment): WorkMachine {
  const { model, needs, limits } = spindleSetting(assessment);
  return workMachine(assessment, model, needs, limits);
}

/** The same machine with its facts, and how its axes follow, as one draw has them. */
export const machineDrawn = (
  machine: WorkMachine,
  scopeFor: ScopeFor,
  cutting = 1,
  follows: (axis: WorkAxis) => InTime = (axis) => axis,
): WorkMachine =>
  machineAt(
    machine.refit,
    scopeFor,
    spindleAt(machine.refit, scopeFor),
    (spindle) => withFacts(machine.habits, spindle),
    (chain) => follows(machine.axes.get(chain.id)!),
    { cutting },
  );

/** The path a person sets for an ability of the control. */
export const abilityPath = (name: string): string => `control.${name}`;

export const sayNeeds = (needs: readonly string[]): readonly string[] => needs.map(sayPath);
