/** Yes-or-no questions: does the drive suit this motor and feedback, does the command suit both ends. */
import type { Check, Facts } from './check.ts';

/** All known, or undefined with every one of them read (so that all that is missing is named). */
const known = <T extends readonly unknown[]>(
  ...values: T
): { [K in keyof T]: NonNullable<T[K]> } | undefined =>
  values.every((value) => value !== undefined) ? (values as never) : undefined;

const motorKind = (facts: Facts) => {
  const read = known(facts.choice('motor', 'type'), facts.choices('drive', 'motors'));
  if (!read) return undefined;
  const [motor, motors] = read;
  const words = facts.say('motor', 'type', motor);
  return motors.includes(motor)
    ? { answer: 'yes' as const, sentence: `The drive is made for a ${words}.` }
    : { answer: 'no' as const, sentence: `The motor is a ${words}; the drive cannot run one.` };
};

const commutation = (facts: Facts) => {
  const motor = facts.choice('motor', 'type');
  if (motor !== 'brushless') return undefined;
  const read = known(facts.choice('feedback', 'commutation'), facts.choices('drive', 'commutations'));
  if (!read) return undefined;
  const [sensor, accepted] = read;
  if (sensor !== 'none' && accepted.includes(sensor)) {
    return {
      answer: 'yes' as const,
      sentence: `The drive finds the rotor by ${facts.say('feedback', 'commutation', sensor)}.`,
    };
  }
  if (accepted.includes('start-up')) {
    return {
      answer: 'tight' as const,
      sentence:
        'The drive has to find the rotor by itself at start-up: the motor jerks a little each time. On a vertical axis that needs a brake that is still closed.',
    };
  }
  return {
    answer: 'no' as const,
    sentence:
      sensor === 'none'
        ? 'Nothing tells the drive where the rotor stands. A brushless motor cannot start without that: fit an encoder with U V W tracks, or a drive that finds the rotor itself.'
        : `The drive cannot read ${facts.say('feedback', 'commutation', sensor)}.`,
  };
};

/** Which input of drive or control this feedback needs. */
const inputFor = (type: string, output: string | undefined): string | undefined => {
  if (type === 'resolver' || type === 'tacho') return type;
  if (output === undefined) return undefined;
  return output === 'differential' ? 'encoder-differential' : 'encoder-single';
};

const feedbackWords: Readonly<Record<string, string>> = {
  resolver: 'a resolver',
  tacho: 'a tachogenerator',
  'encoder-differential': 'an encoder with differential lines',
  'encoder-single': 'an encoder with single-ended lines',
};

const feedbackSuits = (facts: Facts) => {
  if (facts.fitted('feedback') === false) {
    return {
      answer: 'no' as const,
      sentence:
        'Nothing reports speed or position. A servo motor cannot run in a loop without that: fit an encoder.',
    };
  }
  const read = known(
    facts.choice('motor', 'type'),
    facts.choice('feedback', 'type'),
    facts.choices('drive', 'feedbacks'),
    facts.choice('drive', 'command'),
  );
  if (!read) return undefined;
  const [motor, type, accepted, command] = read;
  const output = type === 'resolver' || type === 'tacho' ? undefined : facts.choice('feedback', 'output');
  const needed = inputFor(type, output);
  if (needed === undefined) return undefined;
  const what = feedbackWords[needed] ?? needed;
  if (type === 'tacho' && command === 'pulses') {
    return {
      answer: 'no' as const,
      sentence:
        'A tachogenerator tells only the speed; a drive that takes pulses must know the position. Fit an encoder.',
    };
  }
  if (accepted.includes(needed)) return { answer: 'yes' as const, sentence: `The drive reads ${what}.` };
  if (command === 'volts' && accepted.includes('none')) {
    const control = facts.choices('control', 'feedbacks');
    if (!control) return undefined;
    return control.includes(needed)
      ? {
          answer: 'yes' as const,
          sentence: `The drive runs without feedback, and the control reads ${what}.`,
        }
      : { answer: 'no' as const, sentence: `Neither drive nor control reads ${what}.` };
  }
  return {
    answer: 'no' as const,
    sentence: `The drive cannot read ${what}. ${
      motor === 'brushed'
        ? 'On a brushed motor any position feedback will do: another encoder is the cheap way out.'
        : 'A brushless motor also needs commutation from it.'
    }`,
  };
};

const controlFeedback = (facts: Facts) => {
  if (facts.fitted('feedback') === false) {
    return {
      answer: 'no' as const,
      sentence: 'With ±10 V the control closes the position loop, and nothing tells it the position.',
    };
  }
  const read = known(
    facts.choice('drive', 'command'),
    facts.choice('feedback', 'type'),
    facts.choices('control', 'feedbacks'),
  );
  if (!read) return undefined;
  const [command, type, accepted] = read;
  if (command !== 'volts') return undefined;
  const output = type === 'resolver' || type === 'tacho' ? undefined : facts.choice('feedback', 'output');
  const needed = inputFor(type, output);
  if (needed === undefined) return undefined;
  const what = feedbackWords[needed] ?? needed;
  if (needed === 'tacho') {
    return {
      answer: 'no' as const,
      sentence:
        'With ±10 V the control closes the position loop, and a tachogenerator cannot tell it the position. Add an encoder.',
    };
  }
  return accepted.includes(needed)
    ? { answer: 'yes' as const, sentence: `The control reads ${what}.` }
    : {
        answer: 'no' as const,
        sentence: `With ±10 V the control must read the position, but it cannot read ${what}.`,
      };
};

const commandSuits = (facts: Facts) => {
  const read = known(
    facts.choices('control', 'commands'),
    facts.choices('drive', 'commands'),
    facts.choice('drive', 'command'),
  );
  if (!read) return undefined;
  const [gives, takes, used] = read;
  const words = used === 'pulses' ? 'step and direction pulses' : '±10 V';
  if (!takes.includes(used))
    return {
      answer: 'no' as const,
      sentence: `You mean to command the drive by ${words}, but it does not take that.`,
    };
  if (!gives.includes(used))
    return {
      answer: 'no' as const,
      sentence: `The drive is to be commanded by ${words}, but the control does not give that.`,
    };
  return { answer: 'yes' as const, sentence: `Control and drive both know ${words}.` };
};

const LEVELS: Readonly<Record<string, Readonly<Record<string, readonly ['yes' | 'tight' | 'no', string]>>>> =
  {
    'logic-3v3': {
      'ttl-5v': [
        'tight',
        '3.3 V logic just reaches what a 5 V logic input asks (2.4 V against 2.0 V). Keep the lines short or use a buffer.',
      ],
      'opto-5v': [
        'no',
        '3.3 V drives an opto-coupler meant for 5 V with a third of its current: pulses are lost. Use a 5 V buffer.',
      ],
      'opto-24v': ['no', '3.3 V cannot light an opto-coupler meant for 24 V.'],
      differential: [
        'no',
        'The drive wants differential pairs. A line driver (RS-422) between them makes it right.',
      ],
    },
    'ttl-5v': {
      'ttl-5v': ['yes', 'Both ends are 5 V logic.'],
      'opto-5v': ['yes', '5 V logic lights the opto-coupler if it can give its 10 mA; look that up.'],
      'opto-24v': ['no', '5 V cannot light an opto-coupler meant for 24 V. A driver stage is needed.'],
      differential: [
        'no',
        'The drive wants differential pairs. A line driver (RS-422) between them makes it right.',
      ],
    },
    'open-collector': {
      'ttl-5v': [
        'tight',
        'An open collector needs a pull-up resistor at a 5 V logic input, and its rise limits the pulse rate.',
      ],
      'opto-5v': ['yes', 'An open collector pulls the opto-coupler’s current from 5 V.'],
      'opto-24v': [
        'yes',
        'An open collector pulls the opto-coupler’s current from 24 V, if it stands that voltage; look it up.',
      ],
      differential: [
        'no',
        'The drive wants differential pairs. A line driver (RS-422) between them makes it right.',
      ],
    },
    differential: {
      'ttl-5v': ['tight', 'One line of each pair can drive a 5 V logic input over a short cable.'],
      'opto-5v': ['yes', 'A differential pair drives an opto-coupler for 5 V well.'],
      'opto-24v': ['no', 'A differential pair swings 5 V: it cannot light an opto-coupler meant for 24 V.'],
      differential: ['yes', 'Both ends are differential pairs.'],
    },
    '24v': {
      'ttl-5v': ['no', '24 V onto a 5 V input destroys it. A divider or an opto-coupler must stand between.'],
      'opto-5v': [
        'no',
        '24 V onto an opto-coupler for 5 V burns it, unless a series resistor (about 1.9 kΩ for 10 mA) stands in each line.',
      ],
      'opto-24v': [
        'yes',
        'Both ends are made for 24 V; look up whether the output is quick enough for the pulse rate.',
      ],
      differential: ['no', '24 V onto a differential receiver destroys it.'],
    },
  };

const levelsSuit = (facts: Facts) => {
  const read = known(facts.choice('control', 'outputLevel'), facts.choice('drive', 'inputLevel'));
  if (!read) return undefined;
  const [answer, sentence] = LEVELS[read[0]]![read[1]]!;
  return { answer, sentence };
};

const checks: readonly Check[] = [
  {
    form: 'fact',
    id: 'drive-motor',
    scope: 'axis',
    title: 'Drive and motor',
    place: 'drive',
    judge: motorKind,
    why: 'A drive is built for one way of feeding a motor: two leads, three in turn, or two phases. The wrong one does not turn the motor, and may burn it.',
  },
  {
    form: 'fact',
    id: 'commutation',
    scope: 'axis',
    title: 'Commutation of the brushless motor',
    place: 'feedback',
    judge: commutation,
    onlyIf: [{ place: 'motor', fact: 'type', is: ['brushless'] }],
    why: 'A brushless motor has no brushes to switch its windings; the drive must know where the rotor stands to do it. Without that it jerks, runs away or does nothing.',
    caution: 'First run of a brushless motor: uncoupled, low current limit, hand on the stop button.',
  },
  {
    form: 'fact',
    id: 'feedback-drive',
    scope: 'axis',
    title: 'Drive and feedback',
    place: 'feedback',
    judge: feedbackSuits,
    onlyIf: [{ place: 'motor', fact: 'type', is: ['brushed', 'brushless'] }],
    why: 'A loop that is not closed runs away. The drive or the control must be able to read what sits on the motor.',
  },
  {
    form: 'fact',
    id: 'feedback-control',
    scope: 'axis',
    title: 'Control and feedback',
    place: 'feedback',
    judge: controlFeedback,
    onlyIf: [{ place: 'drive', fact: 'command', is: ['volts'] }],
    why: 'With ±10 V the control closes the position loop, so it must read the position itself.',
  },
  {
    form: 'fact',
    id: 'command',
    scope: 'axis',
    title: 'Command from control to drive',
    place: 'drive',
    judge: commandSuits,
    why: 'A control that gives pulses cannot speak to a drive that wants ±10 V, and the other way round. This is the dearest mistake in buying.',
  },
  {
    form: 'fact',
    id: 'levels',
    scope: 'axis',
    title: 'Levels of the pulses',
    place: 'drive',
    judge: levelsSuit,
    onlyIf: [{ place: 'drive', fact: 'command', is: ['pulses'] }],
    why: 'Too little voltage and pulses are lost; too much and the input burns.',
  },
];

export const suits = { workings: [], checks };
