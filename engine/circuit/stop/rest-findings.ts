/** Nothing starts unasked, nothing chatters or races, nothing is of no use. */
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

export function* rest({ base, truth, races }: Looked): Generator<StopFinding> {
  const restless = [...new Set([...base.restless, ...truth.rows.flatMap((row) => row.restless)])];
  if (restless.length > 0)
    yield {
      id: 'stop.rest',
      title: 'Does it come to rest?',
      verdict: 'fails',
      sentence: `${restless.join(', ')} chatters: a contact breaks its own coil.`,
    };
  if (races.length > 0)
    yield {
      id: 'stop.races',
      title: 'Does it depend on which relay is quicker?',
      verdict: 'fails',
      sentence: races
        .map(({ mover, how, after }) => `If ${mover} is ${how} than written, ${after} ends otherwise.`)
        .join(' '),
      remedy: 'Let one contact wait for the other, or take a relay that lets go late.',
    };
  if (truth.neverOn.length > 0 || truth.neverMoves.length > 0)
    yield {
      id: 'stop.idle',
      title: 'Is everything in it of use?',
      verdict: 'tight',
      sentence: `${[...truth.neverOn.map((id) => `${id} never pulls in`), ...truth.neverMoves.map((id) => `contact ${id} never changes`)].join('; ')}.`,
    };
}
