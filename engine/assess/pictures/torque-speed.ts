/** Torque against speed, for whichever motor it is. */
import { blank, type Ground, idsOf } from './ground.ts';
import { torqueServo } from './torque-servo.ts';
import { torqueStepper } from './torque-stepper.ts';
import type { ChartPicture } from './types.ts';

export function torqueSpeed(ground: Ground): ChartPicture | undefined {
  const type = ground.choice('motor', 'type');
  const head = {
    id: 'torque-speed',
    title: 'Torque against speed',
    question: 'Has the motor the torque at speed?',
  };
  if (typeof type === 'string')
    return type === 'stepper' ? torqueStepper(ground, head) : torqueServo(ground, head);
  if (type.why === 'inapplicable') return undefined;
  const scales = {
    x: { name: 'motor speed', unit: 'r/min' },
    y: { name: 'torque at the motor', unit: 'N·m' },
  };
  return blank({ ...head, ...scales }, idsOf([ground.finding('volts'), ground.finding('pull-out')]), type);
}
