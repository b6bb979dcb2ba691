/** A spindle and an axis of our own for the tests of what runs in step. */
import type { InStepModel, TapStroke, ThreadPass } from './model.ts';

export const RPM = (2 * Math.PI) / 60;

/** Constant torque, no drag, seen without steps; an axis that trails by 1/30 s. */
export const PLAIN: InStepModel = {
  spindle: {
    inertia: 0.015,
    driving: [
      { speed: 0, torque: 15 },
      { speed: 500, torque: 15 },
    ],
    braking: [
      { speed: 0, torque: 15 },
      { speed: 500, torque: 15 },
    ],
    drag: 0,
    bandwidth: 200,
    delay: 0,
  },
  feedback: { counts: 0, turns: 1, firstMark: 0 },
  control: { period: 1e-4, delay: 0, start: 'ramp' },
  axis: { kind: 'trailing', gain: 30, acceleration: 100, topSpeed: 10 },
};

export const PASS: ThreadPass = {
  lead: 2e-3,
  speed: 500 * RPM,
  runIn: 6e-3,
  length: 20e-3,
  startAngle: 0,
  cutTorque: 0,
  entry: 1e-3,
  leadError: 0.01,
};

export const STROKE: TapStroke = {
  lead: 1.5e-3,
  speed: 1000 * RPM,
  clearance: 5e-3,
  depth: 20e-3,
  cutTorque: 0,
  rub: 0.3,
};
