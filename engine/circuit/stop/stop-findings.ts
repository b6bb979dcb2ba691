/** One finding for each way of asking for a stop. */
import { worstVerdict } from '../../quantity/verdict.ts';
import { andList } from '../../quantity/words.ts';
import type { Act } from './acts.ts';
import type { Looked, StopFinding } from './findings.ts';
import type { Model } from './model.ts';
import { propCaution } from './prop.ts';
import { saidOf } from './said.ts';
import { sayStopping, stoppingVerdict } from './say-stopping.ts';
import type { Stopping } from './stops.ts';
import { sayTorqueOff } from './torque-off-findings.ts';

/** The name of the finding of one way of asking for a stop: 'stop.power', 'stop.act.S1'. */
export const stopFindingId = ({ movers }: Model, { mover }: Act): string =>
  mover < 0 ? 'stop.power' : `stop.act.${movers[mover]!.id}`;

export function* stopFindings({ base, stops }: Looked): Generator<StopFinding> {
  if (!base.demands.some(({ role }) => role === 'emergency'))
    yield {
      id: 'stop.emergency',
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
    const pieces = own.map((stop) => `${sayStopping(stop)}.`);
    const limit = role === 'limit';
    const axis = base.model.limits.find(({ mover }) => mover === act.mover)?.axis ?? '';
    const left = !limit
      ? doesNotStop
      : axis !== ''
        ? doesNotStop.filter((id) => id === axis)
        : doesNotStop.filter((id) => kindOf(id) === 'axis' && own.length === 0);
    const onlyTold = role === 'emergency' && own.some(({ category }) => category === '2');
    const drops = own.filter(({ load }) => load === 'drops').map(({ motion }) => motion);
    // An axis that a stop is not there for goes on; only a stop that is asked of everything says that of it.
    const asked = base.model.motions.filter(
      ({ id }) => own.some(({ motion }) => motion === id) || left.includes(id) || !limit,
    );
    const caution = propCaution(base.model, own, asked);
    yield {
      id: stopFindingId(base.model, act),
      title: `Does it stop: ${act.says}?`,
      verdict: left.length > 0 || onlyTold ? 'fails' : (worstVerdict(own.map(judged)) ?? 'fits'),
      ...saidOf([
        ...(left.length > 0 ? [`${andList(left)} ${left.length === 1 ? 'does' : 'do'} not stop.`] : []),
        ...pieces,
      ]),
      ...(onlyTold
        ? {
            remedy: `An emergency stop takes the power away (stop category 0 or 1, IEC 60204-1, 9.2.3.4.2; from memory): contactors or safe torque off. Safe torque off at the drives: ${sayTorqueOff(base.model.motions)}.`,
          }
        : drops.length > 0
          ? {
              remedy: `A brake on ${andList(drops)} that a spring closes before the drive lets go.`,
            }
          : {}),
      ...(caution === undefined ? {} : { caution }),
    };
  }
}

const judged = (stop: Stopping) => ({ verdict: stoppingVerdict(stop) });
