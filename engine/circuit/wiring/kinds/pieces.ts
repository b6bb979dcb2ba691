import { known, numberOf, textOf, wiringKind } from '../kind.ts';
import { amount, choice, count } from '../setting.ts';
import {
  differentialInput,
  differentialOutput,
  levelOutput,
  logicInput,
  OPTO_SETTINGS,
  optoInput,
} from './io.ts';
import { HEATS } from './mains-side.ts';

export const resistor = wiringKind({
  id: 'resistor',
  name: 'resistor',
  says: 'A pull-up, a series resistor, a termination.',
  letter: 'R',
  settings: { ohms: amount('resistance', 'Ω'), watts: amount('rated power', 'W') },
  terminals: (s) => {
    const nature = {
      kind: 'resistor' as const,
      ...known({ ohms: numberOf(s, 'ohms'), watts: numberOf(s, 'watts') }),
    };
    return [
      { mark: '1', name: 'end', nature, with: '2' },
      { mark: '2', name: 'end', nature, with: '1' },
    ];
  },
});

export const dumpResistor = wiringKind({
  ...resistor,
  id: 'dump-resistor',
  name: 'dump resistor',
  says: 'Burns the energy of a braking motor. It gets hot.',
  exposed: true,
  settings: { ...resistor.settings, ...HEATS },
  terminals: (s) => [
    ...resistor.terminals(s, { value: () => undefined, choice: () => undefined, choices: () => [] }),
    { mark: 'PE', name: 'frame', nature: { kind: 'earth', role: 'metal' }, needed: true },
  ],
});

export const diode = wiringKind({
  id: 'diode',
  name: 'diode',
  says: 'Lets current through one way: across a coil it swallows the spike.',
  letter: 'R',
  settings: { volts: amount('reverse voltage it stands', 'V'), amps: amount('current', 'A') },
  terminals: (s) => {
    const nature = (leg: 'anode' | 'cathode') => ({
      kind: 'diode' as const,
      leg,
      ...known({ volts: numberOf(s, 'volts'), amps: numberOf(s, 'amps') }),
    });
    return [
      { mark: 'A', name: 'anode', nature: nature('anode'), with: 'K' },
      { mark: 'K', name: 'cathode, the ring', nature: nature('cathode'), with: 'A' },
    ];
  },
});

export const optoBoard = wiringKind({
  id: 'opto-board',
  name: 'opto board',
  says: 'Carries signals over without a wire between both sides: 24 V in, 5 V out, or the other way.',
  letter: 'A',
  settings: {
    channels: count('channels', '4', 32, 1),
    input: choice('made for', ['5 V', '24 V'], '24 V'),
    output: choice('gives', ['open collector', '24 V, PNP'], 'open collector'),
    'output-current': amount('current of one output', 'A'),
    'output-withstands': amount('voltage an output stands', 'V', '30 V'),
    ...OPTO_SETTINGS,
  },
  terminals: (s) => {
    const rated = textOf(s, 'input') === '5 V' ? 5 : 24;
    const pnp = textOf(s, 'output') !== 'open collector';
    const channels = Array.from({ length: numberOf(s, 'channels') ?? 0 }, (_, n) => n + 1);
    return [
      ...channels.flatMap((n) => [
        {
          mark: `I${n}+`,
          name: `input ${n}, plus`,
          nature: optoInput(s, rated, 'plus'),
          with: `I${n}-`,
          group: `in${n}`,
        },
        {
          mark: `I${n}-`,
          name: `input ${n}, minus`,
          nature: optoInput(s, rated, 'minus'),
          with: `I${n}+`,
          group: `in${n}`,
        },
        {
          mark: `O${n}`,
          name: `output ${n}`,
          nature: levelOutput(pnp ? '24v' : 'open-collector', s, 24),
          common: '0V',
          group: 'out',
        },
      ]),
      ...(pnp
        ? [
            {
              mark: 'V+',
              name: 'plus of the outputs',
              nature: { kind: 'feed' as const, pole: 'plus' as const, role: 'logic' as const, volts: 24 },
              with: '0V',
              group: 'out',
            },
          ]
        : []),
      {
        mark: '0V',
        name: '0 V of the outputs',
        nature: { kind: 'common' as const, of: 'outputs' as const },
        group: 'out',
      },
    ];
  },
});

const lineFeed = (pole: 'plus' | 'minus', current: number | undefined) => ({
  kind: 'feed' as const,
  pole,
  role: 'logic' as const,
  volts: 5,
  least: 4.75,
  most: 5.25,
  ...known({ amps: current }),
});

/** Makes pairs from single lines, or single lines from pairs. */
export const lineUnit = wiringKind({
  id: 'line-unit',
  name: 'line driver or receiver',
  says: 'Turns single 5 V lines into differential pairs, or pairs into single lines.',
  letter: 'A',
  settings: {
    way: choice('it', ['drives pairs', 'receives pairs'], 'drives pairs'),
    channels: count('channels', '3', 16, 1),
    current: amount('current it takes', 'A'),
    termination: amount('resistor across each pair inside', 'Ω', '120 Ω'),
    'output-current': amount('current of one output', 'A'),
  },
  terminals: (s) => {
    const drives = textOf(s, 'way') === 'drives pairs';
    return [
      {
        mark: '5V',
        name: 'supply',
        nature: lineFeed('plus', numberOf(s, 'current')),
        with: '0V',
        needed: true,
      },
      {
        mark: '0V',
        name: '0 V',
        nature: lineFeed('minus', numberOf(s, 'current')),
        with: '5V',
        needed: true,
      },
      ...Array.from({ length: numberOf(s, 'channels') ?? 0 }, (_, n) => n + 1).flatMap((n) => [
        {
          mark: `${n}`,
          name: `single line ${n}`,
          nature: drives ? logicInput('ttl-5v') : levelOutput('ttl-5v', s, 5),
          common: '0V',
        },
        ...(['plus', 'minus'] as const).map((half) => ({
          mark: `${n}${half === 'plus' ? '+' : '-'}`,
          name: `pair ${n}, ${half}`,
          nature: drives ? differentialOutput(half) : differentialInput(half, numberOf(s, 'termination')),
          with: `${n}${half === 'plus' ? '-' : '+'}`,
          common: '0V',
        })),
      ]),
    ];
  },
});

/** Lifts weak logic to outputs that drive opto-couplers. */
export const buffer = wiringKind({
  id: 'buffer',
  name: 'buffer',
  says: 'Takes 5 V or 3.3 V logic and gives strong 5 V outputs, which light the LEDs of opto inputs.',
  letter: 'A',
  settings: {
    channels: count('channels', '4', 32, 1),
    current: amount('current it takes', 'A', '0.1 A'),
    // Of the AC and ACT families at 24 mA, from memory.
    'output-high': amount('lowest voltage of an output when high', 'V', '3.76 V'),
    'output-low': amount('highest voltage of an output when low', 'V', '0.44 V'),
    'output-current': amount('current of one output', 'A', '24 mA'),
  },
  terminals: (s) => [
    {
      mark: '5V',
      name: 'supply',
      nature: lineFeed('plus', numberOf(s, 'current')),
      with: '0V',
      needed: true,
    },
    {
      mark: '0V',
      name: '0 V',
      nature: lineFeed('minus', numberOf(s, 'current')),
      with: '5V',
      needed: true,
      holds: 4,
    },
    ...Array.from({ length: numberOf(s, 'channels') ?? 0 }, (_, n) => n + 1).flatMap((n) => [
      { mark: `I${n}`, name: `input ${n}`, nature: logicInput('ttl-5v'), common: '0V' },
      {
        mark: `O${n}`,
        name: `output ${n}`,
        nature: {
          kind: 'output' as const,
          stage: 'push-pull' as const,
          top: 5.25,
          ...known({
            high: numberOf(s, 'output-high'),
            low: numberOf(s, 'output-low'),
            gives: numberOf(s, 'output-current'),
            swallows: numberOf(s, 'output-current'),
          }),
        },
        common: '0V',
      },
    ]),
  ],
});
