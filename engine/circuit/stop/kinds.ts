/** Kinds of element of a stop circuit: their terminals, what they ask for, and what the hand does to them. */
import {
  amount,
  choice as choiceIn,
  count,
  level,
  type SettingSpecs,
  text,
} from '../../quantity/settings.ts';

export interface KindSpec {
  readonly name: string;
  readonly says: string;
  readonly settings: SettingSpecs;
}

/** The longest time a delay may have, in seconds. */
const LONGEST = 600;
const time = (name: string, usual: string) => level(name, 's', usual, 0, LONGEST);
/** The first is usual. */
const choice = (name: string, options: readonly string[]) => choiceIn(name, options, options[0]);
/** Operations until 10 % of a lot have failed dangerously: from the maker's sheet. Empty is not known. */
const b10d = amount('operations until one in ten fails (B10d)', '1');
/** Mean years to a dangerous failure where the maker gives that instead. Empty is not known. */
const mttfd = amount('years to a dangerous failure (MTTFd)', '1');

/** What it is called; not read as anything. */
const whichAxis = text('on the axis', '', 40);
/** Where a limit switch stands; 'either' where one switch is run onto from both ends. */
export const ENDS = ['either', 'lower', 'upper'] as const;
/** What a supply gives; the mains part of a machine is a supply too. */
export const GIVES = ['direct current', 'one phase of the mains', 'three phases of the mains'] as const;
const direct = choice('contacts opened directly by the push', ['yes', 'no']);
const switchSettings = (nc: string) => ({
  nc: count('contacts that open', nc, 4),
  no: count('contacts that close', '0', 4),
  direct,
  b10d,
});
const driveSettings = {
  phases: choice('phases by which its power comes (one: two wires)', ['one', 'three']),
  enable: choice('has an enable input that is used', ['yes', 'no']),
  sto: count('channels of safe torque off', '0', 2),
  'on-disable': choice('when the enable goes it', ['lets go', 'brakes, then lets go']),
  'hold-up': time('time it can still move after its power is cut', '0 s'),
  reaction: time('time until it obeys its enable', '5 ms'),
  'sto-reaction': time('time until it obeys safe torque off', '10 ms'),
  'brake-output': choice('has a contact for the brake', ['no', 'yes']),
  mttfd,
};

export const KINDS = {
  supply: {
    name: 'supply',
    says: 'Where current comes from and goes back to: a 24 V supply, or the mains for the power part.',
    settings: {
      gives: choice('it gives', GIVES),
      earthed: choice('its minus, or neutral, is joined to the frame at one point', ['yes', 'no']),
    },
  },
  fuse: {
    name: 'fuse',
    says: 'Melts when plus meets minus, or one phase another.',
    settings: { poles: count('poles', '1', 4, 1) },
  },
  button: {
    name: 'push button',
    says: 'Springs back when let go.',
    settings: {
      role: choice('it is there to', ['start', 'stop', 'other']),
      no: count('contacts that close', '1', 4),
      nc: count('contacts that open', '0', 4),
      b10d,
    },
  },
  mushroom: {
    name: 'emergency stop button',
    says: 'A red mushroom head that stays in until it is turned or pulled out.',
    settings: { ...switchSettings('2'), latching: choice('stays in when pressed', ['yes', 'no']) },
  },
  door: {
    name: 'door switch',
    says: 'Its contacts open when the door is opened.',
    settings: switchSettings('2'),
  },
  'locked-door': {
    name: 'door switch with lock',
    says: 'A spring locks the door; current in its coil lets it be opened.',
    settings: { ...switchSettings('2'), release: time('time the lock takes to let go', '50 ms') },
  },
  limit: {
    name: 'limit switch',
    says: 'Its contacts open when the slide runs onto it, just before the hard stop.',
    settings: { ...switchSettings('1'), axis: whichAxis, end: choice('it stands at the end', ENDS) },
  },
  home: {
    name: 'home switch',
    says: 'Tells the control where zero is. It stops nothing; it is drawn so that it is not forgotten.',
    settings: { axis: whichAxis },
  },
  key: {
    name: 'key switch',
    says: 'Turned on and off with a key.',
    settings: {
      no: count('contacts that close', '1', 4),
      nc: count('contacts that open', '0', 4),
      running: choice('while the machine runs it stands', ['on', 'off']),
      b10d,
    },
  },
  contactor: {
    name: 'contactor',
    says: 'A heavy switch pulled in by a coil. A mirror contact cannot be closed while a main contact is stuck.',
    settings: {
      main: count('main contacts', '3', 8, 1),
      no: count('auxiliary contacts that close', '1', 4),
      nc: count('auxiliary contacts that open', '1', 4),
      linked: choice('those that open are mirror contacts', ['yes', 'no']),
      'pick-up': time('time to pull in', '25 ms'),
      'drop-out': time('time to let go', '20 ms'),
      b10d,
    },
  },
  relay: {
    name: 'relay',
    says: 'A small switch pulled in by a coil. Force-guided contacts cannot contradict each other.',
    settings: {
      no: count('contacts that close', '2', 6),
      nc: count('contacts that open', '1', 4),
      linked: choice('its contacts are force-guided', ['yes', 'no']),
      'pick-up': time('time to pull in', '12 ms'),
      'drop-out': time('time to let go', '10 ms'),
      b10d,
    },
  },
  'delayed-relay': {
    name: 'relay that lets go late',
    says: 'Pulls in at once and lets go some time after its coil lost current.',
    settings: {
      no: count('contacts that close', '1', 4),
      nc: count('contacts that open', '0', 4),
      linked: choice('its contacts are force-guided', ['yes', 'no']),
      'pick-up': time('time to pull in', '12 ms'),
      delay: time('time until it lets go', '1 s'),
      mttfd,
    },
  },
  'safety-relay': {
    name: 'safety relay',
    says: 'A bought unit that watches one or two channels and the contactors behind it, and lets nothing start until all is well.',
    settings: {
      channels: count('channels', '2', 2, 1),
      'cross-fault': choice('notices when its two channels touch', ['yes', 'no']),
      reset: choice('starts', ['when the start button is let go', 'as soon as the start loop is closed']),
      outputs: count('outputs that open at once', '2', 4, 1),
      delayed: count('outputs that open late', '0', 2),
      delay: time('time until those open', '1 s'),
      'pick-up': time('time to switch on', '50 ms'),
      'drop-out': time('time to switch off', '20 ms'),
      mttfd,
    },
  },
  drive: { name: 'drive', says: 'Feeds a servo or stepper motor.', settings: driveSettings },
  inverter: { name: 'inverter', says: 'Feeds the spindle motor.', settings: driveSettings },
  brake: {
    name: 'brake closed by a spring',
    says: 'Current opens it; without current a spring closes it. It holds; it is not there to stop motion.',
    settings: { engage: time('time to close', '50 ms'), release: time('time to open', '80 ms'), mttfd },
  },
  control: {
    name: 'control',
    says: 'The computer of the machine. It asks the drives to move; it is no safe means to stop them.',
    settings: {
      restart: choice('after a stop request it', ['waits for a program start', 'goes on by itself']),
      homes: count('inputs for home switches', '0', 6),
      'stop-input': choice('has a stop input that is used', ['yes', 'no']),
    },
  },
} as const satisfies Readonly<Record<string, KindSpec>>;

export type Kind = keyof typeof KINDS;
export const isKind = (kind: string): kind is Kind => Object.hasOwn(KINDS, kind);

export const kindSpec = (kind: Kind): KindSpec => KINDS[kind];
