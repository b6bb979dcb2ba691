import { found, type Rule } from '../check/rule.ts';
import { list, terminalName } from '../check/say.ts';
import { trace } from '../check/trace.ts';
import type { MotorPhase } from '../types.ts';

const SAY: Readonly<Record<MotorPhase['of'], string>> = {
  brushed: 'a brushed motor',
  brushless: 'a brushless motor',
  stepper: 'a stepping motor',
  induction: 'an induction motor',
};

/** A winding of a motor and what feeds it. */
export const motorLead: Rule = {
  id: 'motor',
  title: 'Does the drive feed its motor, and nothing between them?',
  of: ['motor-phase'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const nature = terminal.nature as MotorPhase;
    if (nature.side !== 'takes' || view.wiresAt(id).length === 0) return [];
    const paths = trace(view, id);
    const name = terminalName(view, id);
    const own = paths.filter(({ source }) => view.terminal(source)!.nature.kind === 'motor-phase');
    const strange = paths.find(({ source }) => view.terminal(source)!.nature.kind !== 'motor-phase');
    if (strange && nature.of !== 'induction')
      return [
        found(
          motorLead,
          [id, strange.source],
          'fails',
          `${name} is joined to ${terminalName(view, strange.source)}, which is no drive.`,
          { remedy: 'Take that wire off.' },
        ),
      ];
    if (own.length === 0) {
      if (strange)
        return [
          found(
            motorLead,
            [id, strange.source],
            'fits',
            `${name} is fed straight from ${strange.source}, without a drive.`,
          ),
        ];
      return [
        found(motorLead, [id], 'fails', `${name} is connected, and no drive feeds it.`, {
          remedy: 'Connect it to its drive.',
        }),
      ];
    }
    if (own.length > 1)
      return [
        found(
          motorLead,
          [id, ...own.map(({ source }) => source)],
          'fails',
          `${name} is joined to ${list(own.map(({ source }) => source))}: outputs of a drive must never meet.`,
          { remedy: 'Leave one of them.' },
        ),
      ];
    const { source, contacts } = own[0]!;
    const from = view.terminal(source)!;
    const of = (from.nature as MotorPhase).of;
    if (of !== nature.of)
      return [
        found(
          motorLead,
          [id, source],
          'fails',
          `${from.device} feeds ${SAY[of]}, and ${terminal.device} is ${SAY[nature.of]}.`,
          { remedy: 'Take a drive for this motor.' },
        ),
      ];
    if (contacts.length > 0)
      return [
        found(
          motorLead,
          [id, source, ...contacts],
          of === 'brushed' ? 'tight' : 'fails',
          `The contact ${list(contacts)} lies between ${from.device} and ${terminal.device}. Opened while current flows, it makes a spike that kills output transistors; closed onto a running drive, it trips it.`,
          {
            source: 'common practice, and what makers of drives write in their manuals',
            remedy: 'Take it out; cut the supply of the drive, or use its safe torque off.',
          },
        ),
      ];
    if (from.signal !== '' && terminal.signal !== '' && from.signal !== terminal.signal)
      return [
        found(
          motorLead,
          [id, source],
          'tight',
          `${source} goes to ${id}: the leads are exchanged. ${of === 'induction' ? 'The motor turns the other way.' : of === 'brushed' ? 'The motor turns the other way, and a servo runs away.' : of === 'brushless' ? 'A brushless motor with the wrong order jerks or runs away.' : 'The motor turns the other way, or only hums.'}`,
          {
            remedy: 'Connect like to like, and change the direction in the settings.',
          },
        ),
      ];
    return [found(motorLead, [id, source], 'fits', `${source} feeds ${id}.`)];
  },
};
