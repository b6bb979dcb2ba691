/** One finding for each way of asking for a stop. */
import type { Looked, StopFinding } from './findings.ts';
import { sayStopping } from './say-stopping.ts';

export function* stopFindings({ base, stops }: Looked): Generator<StopFinding> {
  if (!base.demands.some(({ role }) => role === 'emergency'))
    yield {
      id: 'stop.none',
      title: 'Is there an emergency stop?',
      verdict: 'fails',
      sentence: 'There is no emergency stop button in the circuit.',
      remedy: 'Add one where the operator stands, and one that is reached from the chuck side.',
    };
  const spindles = base.model.motions.some(({ kind }) => kind === 'spindle');
  if (spindles && base.demands.filter(({ role }) => role === 'emergency').length === 1)
    yield {
      id: 'stop.reach',
      title: 'Is an emergency stop in reach from everywhere?',
      verdict: 'tight',
      sentence:
        'There is one. It is common practice (no source) to have one where the operator stands and one that is reached from the side of the chuck or cutter.',
    };
  const kindOf = (id: string) => base.model.motions.find((each) => each.id === id)?.kind;
  for (const { act, role, stops: own, doesNotStop } of stops) {
    const said = own.map(sayStopping).join('. ');
    const limit = role === 'limit';
    const axis = base.model.limits.find(({ mover }) => mover === act.mover)?.axis ?? '';
    const left = !limit
      ? doesNotStop
      : axis !== ''
        ? doesNotStop.filter((id) => id === axis)
        : doesNotStop.filter((id) => kindOf(id) === 'axis' && own.length === 0);
    const onlyTold = role === 'emergency' && own.some(({ category }) => category === '2');
    const unknown = own.some(({ time }) => time === undefined);
    const endless = own.some(({ time }) => time === Number.POSITIVE_INFINITY);
    const drops = own.some(({ drop }) => drop !== undefined && drop > 0.001);
    const fails = left.length > 0 || onlyTold || endless;
    yield {
      id: `stop.${act.mover < 0 ? 'power' : base.model.movers[act.mover]!.id}`,
      title: `Does it stop: ${act.says}?`,
      verdict: fails ? 'fails' : drops ? 'tight' : unknown ? 'unknown' : 'fits',
      sentence: `${left.length > 0 ? `${left.join(', ')} does not stop. ` : ''}${said}${said ? '.' : ''}`,
      ...(onlyTold
        ? {
            remedy:
              'An emergency stop takes the power away (stop category 0 or 1, IEC 60204-1, 9.2.3.4.2; from memory): contactors or safe torque off.',
          }
        : {}),
    };
  }
}
