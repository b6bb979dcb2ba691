/** Gains to begin with, worked from the model, and why. Policies of ours, each said in its sentence. */
import { constantsOf } from './constants.ts';
import { type AxisModel, inertias } from './model.ts';

export interface CascadeGains {
  readonly currentGain: number;
  readonly currentIntegral: number;
  readonly speedGain: number;
  readonly speedIntegral: number;
  readonly positionGain: number;
}

export interface SingleGains {
  readonly proportional: number;
  readonly integral: number;
  readonly derivative: number;
}

export interface StartingGains {
  readonly cascade: CascadeGains;
  readonly single: SingleGains;
  /** One sentence a decision, by the structure it is of. */
  readonly reasons: Readonly<Record<'cascade' | 'single', readonly string[]>>;
}

const show = (value: number): string => `${Number(value.toPrecision(3))}`;

/**
 * Poles of (s + w0)(s² + 2 z w0 s + w0²) for a voltage on a motor without inductance: V/rad, V/(rad·s), V·s/rad. Where the
 * loop sets a current instead, that current makes the torque and no back-EMF damps: A/rad, A/(rad·s), A·s/rad.
 */
export function placedGains(model: AxisModel, w0: number, z = 1): SingleGains {
  const c = constantsOf(model);
  const { motorSide, slideSide } = inertias(model);
  if (model.control.kind === 'pid' && model.control.output === 'current') {
    const perAcceleration = (motorSide + slideSide) / c.K;
    return {
      proportional: perAcceleration * w0 * w0 * (1 + 2 * z),
      derivative: perAcceleration * w0 * (1 + 2 * z),
      integral: perAcceleration * w0 ** 3,
    };
  }
  const tm = (c.R * (motorSide + slideSide)) / (c.K * c.K);
  const Km = 1 / c.K;
  return {
    proportional: (tm * w0 * w0 * (1 + 2 * z)) / Km,
    derivative: Math.max(0, (tm * w0 * (1 + 2 * z) - 1) / Km),
    integral: (tm * w0 ** 3) / Km,
  };
}

/** Starting gains of both structures for a servo axis; null for a stepping motor, which has no loop. */
export function startingGains(model: AxisModel): StartingGains | null {
  if (model.motor.kind !== 'servo') return null;
  const c = constantsOf(model);
  const { motorSide, slideSide } = inertias(model);
  const J = motorSide + slideSide;
  const { control } = model;
  const sample = control.sample > 0 ? control.sample : 1e-4;
  const delay = 'delay' in control && control.sample > 0 ? control.delay : 1;
  const [reasons, why]: [string[], string[]] = [[], []];

  const T1 = (delay + 0.5) * sample;
  const wc = 0.3 / T1;
  const currentGain = Math.max(c.L, c.R * T1) * wc;
  const currentIntegral = c.R * wc;
  reasons.push(
    `The current loop follows at ${show(wc)} rad/s: three tenths of what a delay of ${show(T1 * 1e3)} ms leaves steady, with the winding’s own time constant cancelled.`,
  );
  const every = control.kind === 'cascade' ? control.speedEvery : 1;
  const Tv = T1 + sample * every;
  const wa =
    c.stiffness < Number.POSITIVE_INFINITY ? Math.sqrt(c.stiffness / c.J2) : Number.POSITIVE_INFINITY;
  const choices: readonly (readonly [number, string])[] = [
    [wc / 4, 'a quarter of the current loop, so that the two do not fight'],
    [0.25 / Tv, 'a quarter of what its own delay leaves steady'],
    [wa / 3, `a third of ${show(wa / 2 / Math.PI)} Hz, at which the slide swings on its screw`],
  ];
  const [wv, whySpeed] = choices.reduce((least, each) => (each[0] < least[0] ? each : least));
  reasons.push(`The speed loop follows at ${show(wv)} rad/s: ${whySpeed}.`);
  const speedGain = (J / c.K) * wv;
  const speedIntegral = (speedGain * wv) / 5;
  reasons.push('Its integral takes hold at a fifth of that: friction is worked off without ringing.');
  const positionGain = wv / 4;
  reasons.push(
    `The position gain is a quarter of the speed loop: ${show(positionGain)} 1/s (${show((positionGain * 60) / 1000)} m/min for each mm of lag), the most that does not overshoot by itself.`,
  );

  const te = c.R > 0 ? c.L / c.R : 0;
  const single: readonly (readonly [number, string])[] = [
    [te > 0 ? 1 / (3 * te) : Number.POSITIVE_INFINITY, 'a third of what the winding’s time constant allows'],
    [0.1 / T1, 'a tenth of what the delay of the drive allows'],
    [wa / 10, 'a tenth of the frequency at which the slide swings on its screw'],
  ];
  const [w0, whySingle] = single.reduce((least, each) => (each[0] < least[0] ? each : least));
  const placed = placedGains(model, w0);
  why.push(`The loop answers at ${show(w0)} rad/s: ${whySingle}.`);
  if (placed.derivative === 0)
    why.push('Its derivative comes out as nothing: the back-EMF of this motor damps more than that already.');
  return {
    cascade: { currentGain, currentIntegral, speedGain, speedIntegral, positionGain },
    single: placed,
    reasons: { cascade: reasons, single: why },
  };
}
