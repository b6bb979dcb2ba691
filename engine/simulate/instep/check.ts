/** Whether spindle and axis in step can be simulated at all: every number in its range, each by its name. */
import { checkModel } from '../check-model.ts';
import { ModelError } from '../model-error.ts';
import type { InStepModel, TapStroke, ThreadPass, TorqueCurve } from './model.ts';

type Problem = ModelError['problems'][number];

/** s of simulated time, at most; a pass that takes longer is refused. */
export const LONGEST = 120;
const MOST_LOOKS = 1_000_000;

class Collected {
  readonly problems: Problem[] = [];

  above(where: string, value: number, name: string, most = 1e12): void {
    if (!(value > 0 && value <= most))
      this.problems.push({
        code: 'out-of-domain',
        where,
        message: `${name} must be a number above zero and not beyond ${most}.`,
      });
  }

  notBelow(where: string, value: number, name: string, most = 1e12): void {
    if (!(value >= 0 && value <= most))
      this.problems.push({
        code: 'out-of-domain',
        where,
        message: `${name} must be zero or more and not beyond ${most}.`,
      });
  }

  curve(where: string, curve: TorqueCurve, name: string): void {
    if (curve.length === 0) this.problems.push({ code: 'empty', where, message: `${name} has no point.` });
    let last = Number.NEGATIVE_INFINITY;
    for (const { speed, torque } of curve) {
      if (!(speed >= 0 && speed > last && torque >= 0 && torque <= 1e9)) {
        this.problems.push({
          code: 'out-of-domain',
          where,
          message: `${name} must rise in speed from point to point, and no torque of it may lie below zero.`,
        });
        return;
      }
      last = speed;
    }
  }

  done(): void {
    if (this.problems.length > 0) throw new ModelError(this.problems);
  }
}

function model(c: Collected, { spindle, feedback, control, axis }: InStepModel): void {
  c.above('spindle.inertia', spindle.inertia, 'The inertia of the spindle', 1e4);
  c.curve('spindle.driving', spindle.driving, 'The torque that drives the spindle');
  c.curve('spindle.braking', spindle.braking, 'The torque that brakes the spindle');
  c.notBelow('spindle.drag', spindle.drag, 'The drag of the spindle', 1e6);
  c.above('spindle.bandwidth', spindle.bandwidth, 'The bandwidth of the spindle’s drive', 1e4);
  c.notBelow('spindle.delay', spindle.delay, 'The delay of the spindle’s drive', 10);
  c.notBelow('feedback.counts', feedback.counts, 'The counts of a turn', 1e8);
  c.above('feedback.turns', feedback.turns, 'The encoder’s turns for one of the spindle', 1e3);
  c.notBelow('feedback.firstMark', feedback.firstMark, 'The angle of the first mark', 1e3);
  c.above('control.period', control.period, 'The time between two looks', 0.1);
  if (!(Number.isInteger(control.delay) && control.delay >= 0 && control.delay <= 64))
    c.problems.push({
      code: 'out-of-domain',
      where: 'control.delay',
      message: 'The delay must be a whole number of looks, 0 to 64.',
    });
  c.above('axis.acceleration', axis.acceleration, 'The acceleration of the axis', 1e4);
  c.above('axis.topSpeed', axis.topSpeed, 'The top speed of the axis', 1e3);
  if (axis.kind === 'trailing') c.above('axis.gain', axis.gain, 'The gain of the axis', 1e5);
  else c.problems.push(...checkModel(axis.model, 'axis'));
}

const looks = (c: Collected, { control }: InStepModel, seconds: number, where: string): void => {
  if (seconds > LONGEST || seconds / control.period > MOST_LOOKS)
    c.problems.push({
      code: 'out-of-domain',
      where,
      message: `This would take ${seconds.toPrecision(3)} s at the machine; at most ${LONGEST} s are simulated.`,
    });
};

export function checkPass(of: InStepModel, pass: ThreadPass): void {
  const c = new Collected();
  model(c, of);
  c.above('lead', pass.lead, 'The lead', 1);
  c.above('speed', pass.speed, 'The spindle speed', 1e4);
  c.notBelow('runIn', pass.runIn, 'The run-in', 10);
  c.above('length', pass.length, 'The length of thread', 100);
  c.notBelow('startAngle', pass.startAngle, 'The start angle', 1e3);
  c.notBelow('cutTorque', pass.cutTorque, 'The torque of the cut', 1e6);
  c.above('entry', pass.entry, 'The length of the entry', 10);
  if (!(pass.leadError > 0 && pass.leadError < 1))
    c.problems.push({
      code: 'out-of-domain',
      where: 'leadError',
      message: 'The lead error must lie between 0 and 1.',
    });
  if (c.problems.length === 0)
    looks(c, of, ((pass.runIn + pass.length) / pass.lead) * ((2 * Math.PI) / pass.speed), 'length');
  c.done();
}

export function checkStroke(of: InStepModel, stroke: TapStroke): void {
  const c = new Collected();
  model(c, of);
  c.above('lead', stroke.lead, 'The lead', 1);
  c.above('speed', stroke.speed, 'The spindle speed', 1e4);
  c.notBelow('clearance', stroke.clearance, 'The clearance', 1);
  c.above('depth', stroke.depth, 'The depth', 10);
  c.notBelow('cutTorque', stroke.cutTorque, 'The torque of the tap', 1e6);
  c.notBelow('rub', stroke.rub, 'The share that rubs', 1);
  if (c.problems.length === 0)
    looks(c, of, ((stroke.clearance + stroke.depth) / stroke.lead) * ((2 * Math.PI) / stroke.speed), 'depth');
  c.done();
}
