/** What would catch a fault, and what it means, in words. */
import { andList, capital } from '../../quantity/words.ts';
import { domains } from './domains.ts';
import { placeOfFault } from './fault-place.ts';
import type { NamedFault } from './faults.ts';
import type { Judgement } from './judge.ts';
import type { Model } from './model.ts';
import { remedyFor } from './remedy.ts';
import { type HappeningKind, isDangerous } from './trial.ts';

/** 'X and Z do', 'spindle does'. */
const says = (motions: readonly string[], one: string, many: string): string =>
  `${andList(motions)} ${motions.length === 1 ? one : many}`;

const SAYS: Readonly<Record<HappeningKind, (motions: readonly string[]) => string>> = {
  'runs-on': (motions) => says(motions, 'does not stop', 'do not stop'),
  'only-told': (motions) =>
    `${says(motions, 'is', 'are')} only told to stop by the control; the power stays on`,
  starts: (motions) => says(motions, 'starts by itself', 'start by themselves'),
  drops: (motions) => `${says(motions, 'drops', 'drop')}: nothing holds`,
  unlocks: (motions) => `the door can be opened while ${says(motions, 'still turns', 'still move')}`,
  rougher: (motions) => `${says(motions, 'coasts', 'coast')} instead of braking`,
  'power-returns': (motions) => `${says(motions, 'gets its power', 'get their power')} back without a start`,
  ignored: (motions) => `${says(motions, 'does', 'do')} not heed the stop button for every day`,
};

/**
 * 'K1 is welded: it still stops by K2, but nobody is told; the next fault ends stopping: K2 welded.' `next`: that next fault,
 * absent where none that was tried ends stopping.
 */
export function sayJudgement(fault: NamedFault, judged: Judgement, next?: string): string {
  const { verdict, happenings, by, noticedBy, hiddenByPower, atOnce, melted, restless } = judged;
  const worst = happenings.filter(isDangerous).slice(0, 2);
  const mild = happenings.filter((each) => !isDangerous(each)).slice(0, 1);
  const also = mild.map(({ kind, motions }) => ` ${capital(SAYS[kind](motions))}.`).join('');
  const swings = restless.length > 0 ? ` ${andList(restless)} never comes to rest.` : '';
  const rest = `${also}${swings}`;
  const stopsBy = by.length > 0 ? ` by ${andList(by)}` : '';
  switch (verdict) {
    case 'dangerous':
      return `${fault.says}: ${worst.map(({ kind, motions, after }) => `after “${after}” ${SAYS[kind](motions)}`).join('; ')}.${rest}`;
    case 'unnoticed':
      return `${fault.says}: it still stops${stopsBy}, but nobody is told; ${next === undefined ? 'with any one fault more it still stops' : `the next fault ends stopping: ${next}`}.${rest}`;
    case 'noticed':
      return `${fault.says}: it still stops${stopsBy}, and does not start again after “${noticedBy[0] ?? 'power off and on'}”.${hiddenByPower ? ' Switching the power off and on before the next start hides it.' : ''}${rest}`;
    case 'stops':
      return `${fault.says}: ${melted.length > 0 ? `fuse ${andList(melted)} melts and it stops` : atOnce ? 'it stops at once' : 'it cannot be started, or only what does not matter fails'}.${rest}`;
  }
}

/** What would notice it, or take its sting away. */
export function whatCatches(model: Model, fault: NamedFault, { verdict, happenings }: Judgement): string {
  if (fault.mayExclude) return fault.mayExclude;
  if (verdict === 'stops') return 'It shows by itself: what has failed is mended before it is started again.';
  const does = (kind: HappeningKind): boolean => happenings.some((each) => each.kind === kind);
  const place = placeOfFault(model, fault);
  // A start that is fed for good gives the power back by itself, whoever notices it later.
  if (verdict === 'noticed' && !(place === 'start' && does('power-returns')))
    return 'The circuit as drawn: it does not start again until this is put right.';
  const [first] = fault.faults;
  if (fault.group === 'brake')
    return 'A brake test with the axis blocked from below, again after every change; a second brake where somebody must reach under. Block the axis before reaching under it.';
  const struck = does('drops') ? 'brake' : does('unlocks') ? 'lock' : place;
  const touches = first?.kind === 'touch';
  const source = touches ? model.sources[domains(model)[first.nodes[0]!]!] : undefined;
  return remedyFor({
    place: struck,
    element: fault.element,
    dangerous: verdict === 'dangerous',
    short: touches,
    frame: touches && first.nodes.includes(model.frame) && struck === place,
    earthed: source?.earthed,
    linked: model.contacts.some(({ element, linked }) => linked && element === fault.element),
  });
}
