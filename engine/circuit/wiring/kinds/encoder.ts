import { known, numberOf, textOf, wiringKind } from '../kind.ts';
import { amount, choice } from '../setting.ts';
import { encoderOutputs } from './encoder-lines.ts';

const LINES = ['differential', 'single-ended', 'open collector', '24 V'] as const;

export const encoder = wiringKind({
  id: 'encoder',
  name: 'encoder',
  says: 'Reports position as pulses on two channels; a third gives one pulse a turn.',
  letter: 'B',
  exposed: false,
  settings: {
    lines: choice('its output lines', LINES),
    volts: amount('voltage it is fed with', 'V', '5 V'),
    'least-volts': amount('lowest voltage it works with', 'V', '4.75 V'),
    'most-volts': amount('highest voltage it stands', 'V', '5.25 V'),
    current: amount('current it takes', 'A'),
    rate: amount('highest line rate at top speed', 'Hz'),
  },
  fromPart: (part) => {
    const volts = part.value('supplyVoltage');
    const output = part.choice('output');
    return {
      lines:
        output === 'single'
          ? 'single-ended'
          : output === 'open-collector'
            ? 'open collector'
            : output === '24v'
              ? '24 V'
              : output,
      ...(volts === undefined
        ? {}
        : { volts: `${volts} V`, 'least-volts': `${volts * 0.95} V`, 'most-volts': `${volts * 1.05} V` }),
    };
  },
  terminals: (s) =>
    encoderOutputs(
      textOf(s, 'lines'),
      known({
        volts: numberOf(s, 'volts'),
        least: numberOf(s, 'least-volts'),
        most: numberOf(s, 'most-volts'),
        amps: numberOf(s, 'current'),
        frequency: numberOf(s, 'rate'),
      }),
    ),
});
