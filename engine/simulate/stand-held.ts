/** How an axis stands before its move. */
import type { Controller } from './control.ts';
import type { StepperMotor } from './model.ts';
import * as modes from './modes.ts';
import type { Plant } from './plant.ts';
import { pullOutTorque } from './stepper.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CURRENT, HELD, LOAD, PHI, WIND, ZC, ZV } = modes;

/** The axis hangs on its motor as if it had done so for long; `weight` is N·m at the motor. */
export function standHeld(
  plant: Plant,
  controller: Controller | null,
  stepper: StepperMotor | null,
  weight: number,
): void {
  const { x, u, drive, constants: c } = plant;
  u[LOAD] = weight;
  if (!plant.rigid) x[WIND] = (weight < 0 ? -c.gap : c.gap) + weight / c.stiffness;
  const i = c.K > 0 ? weight / c.K : 0;
  let lag = 0;
  if (controller) {
    lag = controller.hold(weight);
    u[HELD] = drive === 'current' ? i : c.R * i;
  } else if (stepper) {
    plant.fieldTorque = pullOutTorque(stepper, 0, Number.POSITIVE_INFINITY);
    lag = Math.asin(Math.max(-1, Math.min(1, weight / plant.fieldTorque))) / c.rotorTeeth;
  } else if (c.Kvi > 0) x[ZV] = i / c.Kvi;
  else if (c.Kvp * c.Kp > 0) lag = i / (c.Kvp * c.Kp);
  if (drive === 'analogue' && c.Kci > 0) x[ZC] = (c.R * i) / c.Kci;
  x[CURRENT] = stepper ? 0 : i;
  x[PHI] = -lag + c.seesWind * x[WIND]!;
  plant.settleModes();
}
