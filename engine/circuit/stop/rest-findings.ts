/** Nothing starts unasked. */
import type { Looked, StopFinding } from './findings.ts';

export function restart({ truth, base }: Looked): StopFinding {
  const unasked = truth.rows.find((row) => row.unasked);
  return {
    id: 'stop.restart',
    title: 'Does nothing start without a start?',
    verdict: unasked ? 'fails' : 'fits',
    sentence: unasked
      ? `In the state “${unasked.from}”, “${unasked.act}” starts ${unasked.starts.join(', ')}.`
      : `Nothing starts by pulling a button out, closing a door or the power coming back, in ${truth.states} states${truth.complete ? '' : ' (there are more)'}.${base.barred.length > 0 ? ` ${base.barred.map(({ act }) => `“${act.says}”`).join(', ')} is barred while it runs.` : ''}`,
    ...(unasked
      ? {
          remedy:
            'A start relay or contactor that holds itself and has to be started by a button of its own.',
        }
      : {}),
  };
}
