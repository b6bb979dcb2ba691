/** A stepper's pull-out torque against its speed, measured or worked, and the share of it that may be used. */
import { torque as axisTorque, motorAtRapid } from '../../checks/motion.ts';
import { draw, type Line } from './chart.ts';
import { blank, type Ground, idsOf, isCurve, numberOf, stopped, worst } from './ground.ts';
import { markOf, momentsOf } from './moments.ts';
import { sweep } from './sweep.ts';
import { MAINS } from './torque-servo.ts';
import type { ChartPicture, Scale } from './types.ts';

const CHECKS = ['pull-out', 'pull-out-cut', 'stepper-current', 'stepper-heat'];

export function torqueStepper(
  ground: Ground,
  head: Pick<ChartPicture, 'id' | 'title' | 'question'>,
): ChartPicture | undefined {
  const findings = CHECKS.map((id) => ground.finding(id));
  const x: Scale = { name: 'motor speed', unit: 'r/min' };
  const y: Scale = { name: 'torque at the motor', unit: 'N·m' };
  const usable = ground.worked('stepper-rapid-usable');
  const read = ground.worked('stepper-rapid-curve');
  const points = read.inputs.get('pullOut');
  const speed = ground.value(motorAtRapid.get('n_m'));
  const torque = ground.value(axisTorque.get('T_acc'));
  const there = usable.results.get('T_use')!;
  const stop = stopped([speed, torque, there]);
  if (stop?.why === 'inapplicable') return undefined;
  if (stop) return blank({ ...head, x, y }, idsOf(findings), stop);
  const [rapid, asked, counted] = [speed, torque, there].map(numberOf) as [number, number, number];
  const share = numberOf(usable.inputs.get('k')!);

  // As the check has it: a curve that reaches the rapid counts before what is worked from the winding.
  const curve = isCurve(points) ? points.curve : undefined;
  const reaches = curve !== undefined && read.results.get('T_po')?.state === 'known';
  const workedAt = MAINS.map(([mains, name]) => ({
    name,
    mains,
    worked: ground.worked('stepper-rapid', mains),
  }));
  const pullOut: Line[] = reaches
    ? []
    : workedAt
        .filter(({ worked }) => worked.results.get('T_po')?.state === 'known')
        .map(({ name, mains, worked }) => ({
          name,
          role: mains,
          at: (xs) => sweep(worked, 'w', xs, 'T_po'),
        }));
  if (curve)
    pullOut.push({
      name: 'stalls above, from its curve',
      role: 'nominal',
      at: (xs) => sweep(read, 'w', xs, 'T_po'),
    });
  const lines: Line[] = [
    ...pullOut,
    {
      name: 'may be counted on',
      role: 'limit',
      at: (xs) => sweep(usable, 'T_po', pullOut[0]!.at(xs), 'T_use'),
    },
  ];
  const marks = momentsOf(ground, { gaining: ['pull-out'], running: [], cutting: ['pull-out-cut'] }).map(
    markOf,
  );
  const through = [...(curve?.x ?? []), rapid];
  if (!reaches) through.push(...workedAt.flatMap(({ worked }) => numberOf(worked.results.get('w_c')!) ?? []));
  const to = Math.max(...through, ...marks.map((mark) => mark.x)) * (reaches ? 1.02 : 1.4);
  const { series, table } = draw(x, y, { from: 0, to, through }, lines, marks);

  const n = ground.say(rapid, 'r/min');
  const t = (value: number): string => ground.say(value, 'N·m');
  const part = share === undefined ? 'a share' : ground.say(share, '%');
  const says = `At ${n} the stepper can be counted on for ${t(counted)}, ${part} of the torque at which it stalls; gaining speed takes ${t(asked)}${counted >= asked ? '' : ': it stalls'}.`;
  const last = curve?.x.at(-1);
  const short =
    last === undefined ? '' : ` Its curve ends at ${ground.say(last, 'r/min')}, before the rapid.`;
  return {
    kind: 'chart',
    ...head,
    x,
    y,
    says,
    note: reaches
      ? 'The curve holds for the voltage and current at which it was taken.'
      : `Worked from the winding, and kind to the motor: it can show that a stepper is too weak, never that it is strong enough. What may be counted on is reckoned with the mains low.${short}`,
    verdict: worst(findings) ?? 'unknown',
    findings: idsOf(findings),
    missing: [],
    series,
    marks,
    table,
  };
}
