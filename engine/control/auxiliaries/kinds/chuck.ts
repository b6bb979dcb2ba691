import { choiceOf } from '../../../quantity/settings.ts';
import { besideSpindle, SPINDLE_MOVES } from '../beside-spindle.ts';
import { happens, moveTo, switches, twoEnds, VALVE, valveOf, watch } from '../common.ts';
import { yesNo } from '../settings.ts';

export const chuck = besideSpindle({
  id: 'chuck',
  name: 'power chuck',
  says: 'A cylinder behind the spindle, moved by oil or air, closes and opens the jaws.',
  machines: ['lathe', 'other'],
  states: ['closed', 'open'],
  settings: {
    'moved-by': choiceOf('moved by', { oil: 'oil', air: 'air' }),
    valve: {
      ...VALVE,
      help: 'With one coil choose which way the spring goes: a chuck that opens when the power fails lets the work fly.',
    },
    spring: choiceOf('with one coil, the spring', { closes: 'closes it', opens: 'opens it' }),
    'closed-switch': yesNo(
      'a switch tells that it grips',
      'yes',
      'It must be off both when it is open and when the jaws have closed on nothing.',
    ),
    'open-switch': yesNo('a switch tells that it is open', 'no'),
    'pressure-switch': yesNo('a switch tells that the pressure is there', 'yes'),
  },
  moveTime: ['2 s'],
  make: (read, standing) => {
    const valve = valveOf(read);
    const opens = valve === 'one' && read.choice('spring') === 'opens';
    const jaws = twoEnds({
      id: 'jaws',
      name: 'Jaws',
      rest: opens ? 'open' : 'closed',
      work: opens ? 'closed' : 'open',
      start: opens ? 'work' : 'rest',
      restOutput: opens ? 'open the chuck' : 'close the chuck',
      workOutput: opens ? 'close the chuck' : 'open the chuck',
      valve,
    });
    const { inputs, shows } = switches({
      closed: {
        there: read.yes('closed-switch'),
        name: 'chuck grips',
        on: { jaws: 'closed', work: 'there' },
      },
      open: { there: read.yes('open-switch'), name: 'chuck open', on: { jaws: 'open' } },
      pressure: { there: read.yes('pressure-switch'), name: 'chuck pressure', on: { oil: 'there' } },
    });
    const gripped = shows({ closed: true, open: false, pressure: true });
    return {
      part: {
        ...jaws,
        rules: jaws.rules.map((rule) => ({ ...rule, when: { ...rule.when, oil: 'there' } })),
      },
      variables: [
        { id: 'work', values: ['there', 'missed'], start: 'there' },
        { id: 'oil', values: ['there', 'gone'], start: 'there' },
      ],
      inputs,
      startsOn: opens ? ['jaws-closed'] : [],
      operations: [
        {
          id: 'open',
          name: 'open the chuck',
          ...standing,
          steps: [
            moveTo(
              'open',
              'Open the jaws',
              opens ? jaws.to.rest : jaws.to.work,
              shows({ closed: false, open: true }),
              read,
            ),
          ],
          ends: 'held',
          shows: 'open',
        },
        {
          id: 'close',
          name: 'close the chuck',
          ...standing,
          steps: [moveTo('close', 'Close the jaws', opens ? jaws.to.work : jaws.to.rest, gripped, read)],
          ends: 'ready',
          shows: 'closed',
        },
      ],
      watches: watch(
        shows({ pressure: true, closed: true }),
        'The chuck no longer shows that it grips: the control stops the spindle',
      ),
      hazards: [
        {
          id: 'opens-turning',
          says: 'the jaws let go while the spindle turns',
          when: [{ jaws: ['between', 'open'], spindle: SPINDLE_MOVES }],
          cure: 'Let it open only when something has seen the spindle stand: a standstill signal, not the mere command. Take a valve with two coils, or a spring that closes, so that lost power does not open it. Start the spindle only when the chuck is ready.',
        },
        {
          id: 'grips-nothing',
          says: 'the spindle is let go though the jaws closed on nothing',
          when: [{ step: 'ready', jaws: 'closed', work: 'missed', spindle: 'turning' }],
          cure: 'A switch on the drawbar that is on only in the middle of its travel: off when open, off when closed on nothing.',
        },
        {
          id: 'no-pressure',
          says: 'the spindle is started without pressure behind the jaws',
          when: [{ step: 'ready', oil: 'gone', spindle: 'turning' }],
          cure: 'A pressure switch that has to be on for the spindle to start and stops it when it goes. A check valve at the cylinder holds the grip meanwhile.',
        },
      ],
      troubles: [
        {
          id: 'missed',
          says: 'the jaws close on nothing',
          adds: [
            happens('There is no work between the jaws', { jaws: 'open', work: 'there' }, { work: 'missed' }),
          ],
        },
        {
          id: 'no-oil',
          says: 'the pressure goes',
          adds: [happens('The pressure goes', { oil: 'there' }, { oil: 'gone' })],
        },
      ],
      readyWhen: [{ inputs: gripped }],
    };
  },
});
