/** The spindle of a refit as threads, taps, cuts and the simulation in step want it. */

import { scopesOf } from '../assess/assess.ts';
import { type Assessment, assess, type ScopeFor, sayPath } from '../assess/index.ts';
import { optionOf, resolve, type Scope } from '../assess/resolve.ts';
import { weaker } from '../assess/value.ts';
import { fact, type Ref } from '../checks/refs.ts';
import { ENCODER_TURNS, wholeTurns } from '../checks/spindle-angle.ts';
import { inertias, RANGES, RATIOS, speeds, standing } from '../checks/spindle-chain.ts';
import { LIMITS } from '../checks/spindle-speed.ts';
import { BRAKING_POWER } from '../checks/spindle-time.ts';
import { kneesOf, motorTorque } from '../handbook/speed-ramp.ts';
import { spindleAtSpeed } from '../handbook/spindle-at-speed.ts';
import type { FactId, PlaceId } from '../parts/index.ts';
import { ok, type Result, refuse } from '../quantity/index.ts';
import type { Basis } from '../quantity/types.ts';
import { andList } from '../quantity/words.ts';
import { findPlace } from '../refit/place.ts';
import type { Chain, Refit } from '../refit/types.ts';
import { lanes } from '../sheet/index.ts';
import type { SpeedLimit, SpindleFeedbackModel, SpindleModel, SpindleRange, TorqueAtSpeed } from './types.ts';

export interface SpindleSetting {
  /** Id of the chain; null where the machine has no spindle to refit. */
  readonly chain: string | null;
  /** Null while something is missing without which nothing turns. */
  readonly model: SpindleModel | null;
  /** What keeps it from turning faster, also where there is no model. */
  readonly limits: readonly SpeedLimit[];
  /** Paths of the facts that would have to be known. */
  readonly needs: readonly string[];
  /** Why there is no model, in a sentence; empty where there is one. */
  readonly says: string;
}

/** Above this nothing is a limit: it stands for 'nothing there that could set one' (rad/s). */
const NEVER = 1e5;
/** Points of a curve between the corners. */
const BETWEEN = 24;
const NAMES = ['first range', 'second range', 'third range', 'fourth range'] as const;

class Reader {
  readonly needs = new Set<string>();
  readonly reasons = new Set<string>();
  basis: Basis | undefined;
  readonly scope: Scope;

  constructor(scope: Scope) {
    this.scope = scope;
  }

  /** A number, or undefined where it is unknown or does not apply. */
  value(ref: Ref): number | undefined {
    const value = resolve(this.scope, ref);
    if (value.state !== 'known') return undefined;
    this.basis = weaker(this.basis, value.basis);
    return value.value;
  }

  /** A number without which there is no model; NaN, and what it waits for noted, where there is none. */
  need(ref: Ref): number {
    const value = resolve(this.scope, ref);
    if (value.state === 'known') {
      this.basis = weaker(this.basis, value.basis);
      return value.value;
    }
    if (value.state === 'missing') for (const path of value.facts) this.needs.add(path);
    else if (value.state !== 'curve') this.reasons.add(value.reason);
    return Number.NaN;
  }

  /** The option of a choice, or undefined where it is unknown or does not apply. */
  option<P extends PlaceId>(place: P, name: FactId<P>): string | undefined {
    const chosen = optionOf(this.scope, place, name);
    return 'option' in chosen ? chosen.option : undefined;
  }

  applies(ref: Ref): boolean {
    return resolve(this.scope, ref).state !== 'inapplicable';
  }
}

interface Motor {
  readonly given: Readonly<Record<string, number>>;
  readonly eta: number;
  readonly lowest: number;
  readonly highest: number;
  readonly brakes: 'not' | 'alone' | 'whole';
  readonly brakingPower: number;
}

const MOTOR_SYMBOLS = ['T_r', 'n_b', 'k_c', 'k_p', 'k_k', 'k_s', 'k_f', 'n_f', 'n_h', 'eta', 'k_a'] as const;

function motorOf(read: Reader): Motor {
  const given: Record<string, number> = {};
  for (const symbol of MOTOR_SYMBOLS) given[symbol] = read.need(standing.bind[symbol]!);
  const braking = read.option('spindle-drive', 'braking');
  const isLine = read.option('spindle-drive', 'type') === 'line';
  return {
    given,
    eta: given.eta!,
    lowest: read.need(speeds.get('n_l')),
    highest: given.n_h!,
    brakes: isLine ? 'not' : braking === 'none' ? 'alone' : 'whole',
    brakingPower: read.need(BRAKING_POWER),
  };
}

/** Speeds at which the curves of a range have a corner or are sampled, rad/s at the spindle. */
function speedsOf(
  { given, highest, brakingPower }: Motor,
  ratio: number,
  peak: number,
  pullOut: number,
): Float64Array {
  const top = highest / ratio;
  const base = given.n_b! / ratio;
  const fan = given.n_f! / ratio;
  const continuous = given.T_r! * given.k_c! * ratio * given.eta!;
  const corners = [
    0,
    fan * (1 - 1e-9),
    fan,
    base,
    ...kneesOf(continuous, pullOut, base),
    ...kneesOf(peak, pullOut, base),
    brakingPower / peak,
    top,
  ];
  const from = Math.min(base, top);
  for (let k = 1; k < BETWEEN; k++) corners.push(from * (top / from) ** (k / BETWEEN));
  for (let k = 1; k < BETWEEN; k++) corners.push((top * k) / BETWEEN);
  const kept = corners.filter((w) => w >= 0 && w <= top).sort((a, b) => a - b);
  return Float64Array.from(kept.filter((w, k) => k === 0 || w > kept[k - 1]!));
}

function rangeOf(read: Reader, motor: Motor, at: number): SpindleRange | undefined {
  const ratio = read.need(RATIOS[at]!);
  const inertia = read.need(inertias[at]!.get('J'));
  const drag = read.need(fact('spindle', 'drag'));
  if (!(ratio > 0) || !(inertia > 0) || !(drag >= 0) || Object.values(motor.given).some(Number.isNaN))
    return undefined;
  const { given } = motor;
  const share = ratio * motor.eta;
  const peak = given.T_r! * given.k_p! * share;
  const pullOut = given.k_s! * given.k_k! * given.T_r! * share;
  const xs = speedsOf(motor, ratio, peak, pullOut);
  const { values } = lanes(spindleAtSpeed, { ...given, n_l: 0, i: ratio, n: xs }, xs.length);
  const line = (torque: (speed: number, k: number) => number): TorqueAtSpeed[] =>
    Array.from(xs, (speed, k) => ({ speed, torque: torque(speed, k) }));
  const of = (symbol: 'T_c' | 'T_p'): TorqueAtSpeed[] => {
    const torque = values[symbol]!;
    return line((_, k) => (typeof torque === 'number' ? torque : torque[k]!));
  };
  const brake = motorTorque(
    motor.brakes === 'whole' ? peak : given.k_a! * given.T_r! * share,
    pullOut,
    given.n_b! / ratio,
  );
  return {
    id: `range-${at + 1}`,
    name: NAMES[at]!,
    ratio,
    lowest: motor.lowest / ratio,
    highest: motor.highest / ratio,
    inertia,
    continuous: of('T_c'),
    peak: of('T_p'),
    braking: line((speed) =>
      motor.brakes === 'not'
        ? 0
        : Math.min(brake(speed), speed > 0 ? motor.brakingPower / speed : Number.POSITIVE_INFINITY),
    ),
    drag,
  };
}

function limitsOf(read: Reader, feedback: SpindleFeedbackModel | null): SpeedLimit[] {
  const limits: SpeedLimit[] = [];
  const add = (by: string, ref: Ref, scale = 1): void => {
    if (!read.applies(ref)) return;
    const value = read.value(ref);
    if (value !== undefined && value > NEVER) return;
    limits.push({ by, speed: value === undefined || Number.isNaN(scale) ? null : value * scale });
  };
  for (const [by, ref] of LIMITS) add(by, ref);
  const fastest = read.value(speeds.bind.i_fast!);
  add('motor', speeds.bind.n_t!, fastest === undefined ? Number.NaN : 1 / fastest);
  add('drive', speeds.get('S_d'));
  if (feedback?.highestFrequency) {
    const { encoder, spindle } = feedback.turns;
    const speed = (2 * Math.PI * feedback.highestFrequency * spindle) / (feedback.lines * encoder);
    limits.push({ by: 'feedback', speed });
  }
  return limits;
}

/** Turns of the encoder against the spindle's; undefined where it slips or its wheels are not known. */
function turnsOf(read: Reader, driven: string): SpindleFeedbackModel['turns'] | undefined {
  if (driven === 'spindle') return { encoder: 1, spindle: 1 };
  if (driven === 'v-belt') return undefined;
  if (driven === 'toothed') {
    const [spindle, encoder] = [
      read.value(fact('spindle-feedback', 'spindleTeeth')),
      read.value(fact('spindle-feedback', 'encoderTeeth')),
    ];
    return spindle === undefined || encoder === undefined ? undefined : wholeTurns(spindle, encoder);
  }
  const ratio = read.value(ENCODER_TURNS);
  return ratio === undefined ? undefined : { encoder: ratio, spindle: 1 };
}

function feedbackOf(read: Reader): SpindleFeedbackModel | null {
  const type = read.option('spindle-feedback', 'type');
  const driven = read.option('spindle-feedback', 'driven');
  if ((type !== 'encoder' && type !== 'pulse') || driven === undefined) return null;
  const lines = read.value(fact('spindle-feedback', 'lines')) ?? (type === 'pulse' ? 1 : undefined);
  const turns = turnsOf(read, driven);
  if (lines === undefined || turns === undefined) return null;
  const isOnSpindle = driven !== 'motor' || read.option('belts', 'type') === 'direct';
  return {
    lines,
    turns,
    index: isOnSpindle && (type === 'pulse' || read.option('spindle-feedback', 'index') === 'yes'),
    highestFrequency: read.value(fact('spindle-feedback', 'highestRate')) ?? null,
  };
}

const spindles = (refit: Refit): readonly Chain[] => refit.chains.filter(({ kind }) => kind === 'spindle');

/** The spindle of an assessed refit, the first one unless `chainId` names another, or what it waits for. */
export const spindleSetting = (assessment: Assessment, chainId?: string): SpindleSetting =>
  spindleAt(assessment.refit, scopesOf(assessment), chainId);

/** The same from scopes, whatever values these give. */
export function spindleAt(refit: Refit, scopeFor: ScopeFor, chainId?: string): SpindleSetting {
  const chain = spindles(refit).find(({ id }) => chainId === undefined || id === chainId);
  if (!chain)
    return {
      chain: null,
      model: null,
      limits: [],
      needs: [],
      says:
        chainId === undefined
          ? 'This refit has no spindle yet: add one to it.'
          : `This refit has no spindle called “${chainId.slice(0, 40)}”.`,
    };
  const read = new Reader(scopeFor(chain));
  const motor = motorOf(read);
  // Whether there is a second range at all may be unknown: then its ratio names the fact that tells.
  const ranges = RANGES.flatMap((range) => {
    if (!read.applies(RATIOS[range - 1]!)) return [];
    return rangeOf(read, motor, range - 1) ?? [];
  });
  const feedback =
    findPlace(refit, chain.id, 'spindle-feedback')?.chosen === 'none' ? null : feedbackOf(read);
  const limits = limitsOf(read, feedback);
  if (read.needs.size > 0 || read.reasons.size > 0 || ranges.length === 0) {
    const needs = [...read.needs];
    const [reason] = read.reasons;
    return {
      chain: chain.id,
      model: null,
      limits,
      needs,
      says:
        needs.length > 0
          ? `The spindle cannot be worked out yet. Not known: ${andList(needs.map(sayPath))}.`
          : `The spindle cannot be worked out: ${(reason ?? 'it has no range').replace(/\.?$/, '.')}`,
    };
  }
  return {
    chain: chain.id,
    model: {
      chain: chain.id,
      ranges: [...ranges].sort((a, b) => b.ratio - a.ratio),
      limits,
      feedback,
      basis: read.basis ?? 'guess',
    },
    limits,
    needs: [],
    says: '',
  };
}

/** The same as a result: the model, or a sentence that names every fact it waits for. */
export function spindleModel(
  refit: Refit,
  options: { readonly chain?: string; readonly assessment?: Assessment } = {},
): Result<SpindleModel> {
  const { model, says, needs, chain } = spindleSetting(options.assessment ?? assess(refit), options.chain);
  if (model) return ok(model);
  return refuse({
    code: chain === null ? 'unknown-name' : 'undefined-result',
    message: says,
    where: needs[0] ?? chain ?? 'chains',
  });
}
