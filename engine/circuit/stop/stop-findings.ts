/** One finding for each way of asking for a stop. */
import type { StopCircuit } from '../../refit/types.ts';
import type { Looked, StopFinding } from './findings.ts';
import { sayStopping } from './say-stopping.ts';
import type { Stopping } from './stops.ts';

export function* stopFindings({ base, stops }: Looked, circuit: StopCircuit): Generator<StopFinding> {
  if (!base.demands.some(({ role }) => role === 'emergency'))
    yield {
      id: 'stop.none',
      title: 'Is there an emergency stop?',
      verdict: 'fails',
      sentence: 'There is no emergency stop button in the circuit.',
      remedy: 'Add one where the operator stands, and one that is reached from the chuck side.',
    };
  const spindles = Object.values(circuit.motions).some(({ kind }) => kind === 'spindle');
  if (spindles && base.demands.filter(({ role }) => role === 'emergency').length === 1)
    yield {
      id: 'stop.reach',
      title: 'Is an emergency stop in reach from everywhere?',
      verdict: 'tight',
      sentence:
        'There is one. It is common practice (no source) to have one where the operator stands and one that is reached from the side of the chuck or cutter.',
    };
  for (const { act, role, stops: own, doesNotStop } of stops) {
    const spindle = (stop: Stopping) => circuit.motions[stop.motion]?.kind === 'spindle';
    const said = own.map((stop) => sayStopping(stop, spindle(stop))).join('. ');
    const limit = role === 'limit';
    const left = limit
      ? doesNotStop.filter((id) => circuit.motions[id]?.kind === 'axis' && own.length === 0)
      : doesNotStop;
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
