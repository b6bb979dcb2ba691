/** The benchmark axis of the tests, and ways to change it. Numbers of our own choice; see docs/simulation.md. */
import type { AxisModel, Cascade, SingleLoop } from './index.ts';

const r = 0.005 / (2 * Math.PI);

export const AX1_RADIUS = r;

/** 120 kg on a 5 mm screw, rigid, without friction but b; analogue cascade; 75 V, no limits reached. */
export const AX1: AxisModel = {
  motor: {
    kind: 'servo',
    resistance: 1.2,
    inductance: 3e-3,
    constant: 0.35,
    inertia: 8e-4,
    coulomb: 0,
    viscous: 1e-3,
    brushDrop: 0,
  },
  transmission: {
    lead: 0.005,
    ratio: 1,
    screwInertia: 4e-4,
    stiffness: Number.POSITIVE_INFINITY,
    damping: 0,
    backlash: 0,
    couplingShare: 0,
  },
  slide: {
    mass: 120,
    tilt: 0,
    balance: 0,
    staticFriction: 0,
    coulomb: 0,
    viscous: 0,
    fallSpeed: 0,
    smoothing: 0,
  },
  feedback: { on: 'motor', countsPerTurn: 0, countLength: 0 },
  drive: {
    currentLimit: Number.POSITIVE_INFINITY,
    duty: 1,
    overvoltage: Number.POSITIVE_INFINITY,
    undervoltage: 0,
    followingLimit: Number.POSITIVE_INFINITY,
    whenOff: 'coast',
    pulse: 0,
  },
  control: {
    kind: 'cascade',
    positionGain: 40,
    speedGain: 0.9,
    speedIntegral: 45,
    speedForward: 0,
    accelerationForward: 0,
    current: 'pi',
    currentGain: 9.5,
    currentIntegral: 3800,
    sample: 0,
    speedEvery: 1,
    positionEvery: 1,
    delay: 0,
    speedFrom: 'tacho',
  },
  brake: null,
  supply: {
    kind: 'constant',
    voltage: 1e9,
    mains: 1,
    frequency: 50,
    sourceResistance: 0,
    diodeDrop: 0,
    capacitance: 0.022,
    bleeder: Number.POSITIVE_INFINITY,
    dumpOn: Number.POSITIVE_INFINITY,
    dumpOff: Number.POSITIVE_INFINITY,
    dumpResistance: Number.POSITIVE_INFINITY,
    otherLoad: 0,
  },
};

type Changes = { readonly [G in keyof AxisModel]?: Partial<AxisModel[G]> };

/** The model with some values of its groups changed. */
export function changed(model: AxisModel, changes: Changes): AxisModel {
  const out: Record<string, unknown> = { ...model };
  for (const [group, values] of Object.entries(changes))
    out[group] = { ...(model[group as keyof AxisModel] as object), ...(values as object) };
  return out as unknown as AxisModel;
}

export const cascade = (changes: Partial<Cascade>): { control: Partial<Cascade> } => ({ control: changes });

/** The compliance of the benchmark: 60 N/µm, damping ratio 0.03 on stiffness and mass. */
export const COMPLIANT = changed(AX1, {
  transmission: { stiffness: 6e7, damping: 2 * 0.03 * Math.sqrt(6e7 * 120) },
});

/** Published single-loop gains for the same axis. */
export const PID: SingleLoop = {
  kind: 'pid',
  proportional: 47.248119654,
  integral: 944.96239308,
  derivative: 0.43746866162,
  derivativeOn: 'error',
  speedForward: 0,
  accelerationForward: 0,
  output: 'voltage',
  sample: 0.0005,
  delay: 1,
};

/** Value of a trace at a recorded time. */
export function at(time: Float64Array, values: Float64Array, t: number): number {
  let best = 0;
  for (let k = 1; k < time.length; k++) if (Math.abs(time[k]! - t) < Math.abs(time[best]! - t)) best = k;
  if (Math.abs(time[best]! - t) > 1e-9) throw new Error(`nothing was recorded at ${t} s`);
  return values[best]!;
}
