/** What would catch a fault, and what it means, in words. */
import { andList, capital } from '../../quantity/words.ts';
import type { NamedFault } from './faults.ts';
import type { Judgement } from './judge.ts';
import type { Model } from './model.ts';
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

/** 'K1 is welded: it still stops by K2, but nobody is told; the next fault ends stopping.' */
export function sayJudgement(fault: NamedFault, judged: Judgement): string {
  const { verdict, happenings, by, kept, noticedBy, hiddenByPower, atOnce, melted, restless } = judged;
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
      return `${fault.says}: it still stops${stopsBy}, but nobody is told; ${kept.length > 0 ? 'the next fault ends stopping' : 'it lies in wait for a second fault'}.${rest}`;
    case 'noticed':
      return `${fault.says}: it still stops${stopsBy}, and does not start again after “${noticedBy[0] ?? 'power off and on'}”.${hiddenByPower ? ' Switching the power off and on before the next start hides it.' : ''}${rest}`;
    case 'stops':
      return `${fault.says}: ${melted.length > 0 ? `fuse ${andList(melted)} melts and it stops` : atOnce ? 'it stops at once' : 'it cannot be started, or only what does not matter fails'}.${rest}`;
  }
}

/** What would notice it, or take its sting away. */
export function whatCatches(model: Model, fault: NamedFault, { verdict, happenings }: Judgement): string {
  if (fault.mayExclude) return fault.mayExclude;
  const does = (kind: string): boolean => happenings.some((each) => each.kind === kind);
  const [first] = fault.faults;
  const mover = first?.kind === 'stuck' ? model.movers[first.mover] : undefined;
  const contact = first?.kind === 'contact-closed' ? model.contacts[first.contact] : undefined;
  const contactMover = contact && contact.mover >= 0 ? model.movers[contact.mover] : undefined;
  if (fault.group === 'brake')
    return 'A brake test with the axis blocked from below, again after every change; a second brake where somebody must reach under. Block the axis before reaching under it.';
  if (does('drops'))
    return 'Let the brake lose its current first and on both sides of its coil, and keep the drive holding until it has closed.';
  if (does('unlocks'))
    return 'Switch both sides of the lock’s coil, through contacts that are open while a contactor is in; a standstill monitor. Test the lock while the spindle turns.';
  if (does('only-told') && fault.group !== 'input')
    return 'A second contactor in a row with the first, or safe torque off beside it: the control’s enable is no stop.';
  if (fault.group === 'input' || model.controls.some(({ element }) => element === contact?.element))
    return verdict === 'dangerous'
      ? 'Take the power away by contactors or safe torque off, not by asking the control or by the drive’s enable.'
      : 'The power is taken away without it; try the stop once with the drive enabled and once without.';
  if (
    mover?.does?.role === 'start' ||
    contactMover?.does?.role === 'start' ||
    (does('starts') && fault.element === 'S2')
  )
    return 'A start that acts only when the button is let go (falling edge): a safety relay with a watched reset.';
  if (contact?.main || mover?.kind === 'coil')
    return verdict === 'dangerous'
      ? 'A second contactor in a row with this one, each with a mirror contact in the start path.'
      : `A mirror contact of ${fault.element} in the start path.`;
  if (contact && contactMover?.kind === 'coil')
    return contact.closedAt === 0
      ? `A test once a year, power off and locked: push the armature of ${contact.element} in by hand, this contact must open.`
      : `Force-guided contacts, and one that opens with ${contact.element} in the start path or the enable.`;
  if (first?.kind === 'touch' && fault.id.startsWith('cable'))
    return 'A sheathed cable of its own for each channel; or channels of opposite polarity, so that the fuse melts.';
  if (first?.kind === 'touch' && first.nodes.includes(model.frame))
    return 'Earth 0 V at one point and fuse the plus, so that the first touch melts the fuse; contacts always on the plus side of coils.';
  if (first?.kind === 'touch')
    return 'A safety relay that notices when its channels touch; each channel in a cable of its own. Until then test each channel by itself.';
  if (first?.kind === 'no-latch') return 'The button is replaced; look at every use whether it stays in.';
  if (first?.kind === 'no-delay') return 'Time the stop whenever the machine is tested.';
  if (contactMover?.does || mover?.does)
    return 'A second contact in a channel of its own, and something that compares the two: a safety relay, or mirror contacts of two contactors.';
  return 'Nothing in this circuit; test it by hand, see the test sheet.';
}
