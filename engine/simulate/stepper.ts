/** What a stepping motor's field can pull, by its speed. */
import type { StepperMotor } from './model.ts';

/**
 * Greatest torque (N·m) before the rotor falls out of step, at `speed` (rad/s) from a supply of `voltage` (V): the lower
 * of what the current allows and what the voltage allows. First order: no iron loss, no chopper ripple. Derived from the
 * phasor diagram; P. P. Acarnley, Stepping Motors (from memory).
 */
export function pullOutTorque(motor: StepperMotor, speed: number, voltage: number): number {
  const { holdingTorque, ratedCurrent, resistance, inductance, rotorTeeth } = motor;
  const k = holdingTorque / (Math.SQRT2 * ratedCurrent);
  const w = Math.abs(speed);
  const Z = Math.hypot(resistance, rotorTeeth * w * inductance);
  const byCurrent = k * ratedCurrent;
  const byVoltage = Z > 0 ? (k / Z) * (voltage - (k * w * resistance) / Z) : byCurrent;
  return Math.max(0, Math.min(byCurrent, byVoltage));
}
