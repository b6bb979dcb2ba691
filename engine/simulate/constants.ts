/** A model's parameters in motor radians, as the equations want them. */
import { type AxisModel, inertias, travelPerRadian } from './model.ts';
import type { Constants, DriveKind } from './modes.ts';

export function constantsOf(model: AxisModel): Constants {
  const { motor, transmission, slide, feedback, drive, control } = model;
  const r = travelPerRadian(model);
  const { motorSide, slideSide } = inertias(model);
  const servo = motor.kind === 'servo' ? motor : null;
  const cascade = control.kind === 'cascade' ? control : null;
  return {
    R: servo?.resistance ?? 1,
    L: servo?.inductance ?? 0,
    K: servo?.constant ?? 0,
    J1: motorSide,
    J2: slideSide,
    stiffness: transmission.stiffness * r * r,
    damping: transmission.stiffness === Number.POSITIVE_INFINITY ? 0 : transmission.damping * r * r,
    gap: transmission.backlash / 2 / r,
    T1: motor.coulomb,
    b1: motor.viscous,
    Ts: Math.max(slide.staticFriction, slide.coulomb) * r,
    Tc: slide.coulomb * r,
    b2: slide.viscous * r * r,
    fall: slide.staticFriction > slide.coulomb ? slide.fallSpeed / r : 0,
    smooth: slide.smoothing / r,
    currentLimit: drive.currentLimit,
    Kp: cascade?.positionGain ?? 0,
    Kvp: cascade?.speedGain ?? 0,
    Kvi: cascade?.speedIntegral ?? 0,
    kff: cascade?.speedForward ?? 0,
    kaff: cascade?.accelerationForward ?? 0,
    Kcp: cascade?.currentGain ?? 0,
    Kci: cascade?.currentIntegral ?? 0,
    seesWind: feedback.on === 'slide' ? 1 : feedback.on === 'screw' ? transmission.couplingShare : 0,
    rotorTeeth: motor.kind === 'stepper' ? motor.rotorTeeth : 0,
    fieldDamping: motor.kind === 'stepper' ? motor.damping : 0,
  };
}

export function driveKindOf({ control, motor }: AxisModel): DriveKind {
  if (motor.kind === 'stepper' || control.kind === 'open') return 'stepper';
  if (control.kind === 'pid') return control.output;
  if (control.sample === 0) return control.current === 'ideal' ? 'analogue-ideal' : 'analogue';
  return control.current === 'ideal' ? 'current' : 'voltage';
}

/** N·m of the slide's weight along the axis, at the motor, positive when it pushes backward. */
export const STANDARD_GRAVITY = 9.80665;
export function weightTorque(model: AxisModel): number {
  const { mass, tilt, balance } = model.slide;
  const weight = mass * STANDARD_GRAVITY * Math.sin(tilt);
  // A balance holds against the weight, whichever way that is.
  return (weight - Math.sign(weight) * balance) * travelPerRadian(model);
}
