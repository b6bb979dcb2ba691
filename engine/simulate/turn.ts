/** What comes after an event: the mode that a plant goes over into. */
import { ENERGY } from './energy.ts';
import type { Ending } from './modes.ts';
import * as modes from './modes.ts';
import type { Plant } from './plant.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { LOAD, PHI, REF, W1, W2 } = modes;

/** Goes over into the mode that follows an ending. */
export function turn(plant: Plant, ending: Ending): void {
  const before = plant.spring();
  flags(plant, ending);
  plant.choose();
  plant.energy[ENERGY.switching]! += before - plant.spring();
  plant.log(ending === 'slide-still' && plant.s2 === 0 ? 'stuck' : ending, plant.time);
}

function flags(plant: Plant, ending: Ending): void {
  const near = plant.constants.fall > 0 ? 1 : 2;
  switch (ending) {
    case 'slide-still':
      slideStill(plant, near);
      return;
    case 'slide-breaks+':
      plant.s2 = near;
      return;
    case 'slide-breaks-':
      plant.s2 = -near as -1 | -2;
      return;
    case 'slide-fast':
      plant.s2 = plant.s2 > 0 ? 2 : -2;
      return;
    case 'slide-slow':
      plant.s2 = plant.s2 > 0 ? 1 : -1;
      return;
    case 'motor-still':
      motorStill(plant);
      return;
    case 'motor-breaks+':
      plant.s1 = 1;
      return;
    case 'motor-breaks-':
      plant.s1 = -1;
      return;
    case 'touch+':
      plant.contact = 1;
      return;
    case 'touch-':
      plant.contact = -1;
      return;
    case 'leave':
      plant.contact = 0;
      return;
    case 'current+':
      plant.satI = 1;
      return;
    case 'current-':
      plant.satI = -1;
      return;
    case 'current-free':
      plant.satI = 0;
      return;
    case 'voltage+':
      plant.satV = 1;
      return;
    case 'voltage-':
      plant.satV = -1;
      return;
    case 'voltage-free':
      plant.satV = 0;
      return;
  }
}

/** The motor has come to rest: it stays where its friction holds the torque, and turns back where not. */
function motorStill(plant: Plant): void {
  plant.x[W1] = 0;
  plant.s1 = 0;
  plant.choose();
  const net = driveTorque(plant) - plant.read(plant.mode.contactTorque);
  if (Math.abs(net) > plant.constants.T1) plant.s1 = net > 0 ? 1 : -1;
}

function slideStill(plant: Plant, near: 1 | 2): void {
  const { x, u, rigid, constants: c } = plant;
  x[W2] = 0;
  if (rigid) x[W1] = 0;
  plant.s2 = 0;
  plant.choose();
  const net = (rigid ? driveTorque(plant) : plant.read(plant.mode.contactTorque)) - u[LOAD]!;
  const hold = Math.max(c.Ts, c.Tc) + (rigid ? c.T1 : 0);
  if (Math.abs(net) > hold) plant.s2 = (net > 0 ? near : -near) as -2 | -1 | 1 | 2;
}

/** N·m of the motor, or of a stepper's field. */
function driveTorque(plant: Plant): number {
  const { constants: c, x, u } = plant;
  if (plant.drive !== 'stepper') return c.K * plant.read(plant.mode.current);
  const behind = c.rotorTeeth * (u[REF]! - x[PHI]!);
  return plant.fieldTorque * Math.sin(behind) + c.fieldDamping * (u[REF + 1]! - x[W1]!);
}
