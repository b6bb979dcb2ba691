import { known, numberOf, textOf, wiringKind } from '../kind.ts';
import { amount, choice, level } from '../setting.ts';

export const sensor = wiringKind({
  id: 'sensor',
  name: 'proximity sensor',
  says: 'Sees metal without touching it. Three wires: brown to plus, blue to minus, black is its output.',
  letter: 'B',
  settings: {
    output: choice('its output', ['PNP', 'NPN']),
    volts: amount('voltage it is made for', 'V', '24 V'),
    'least-volts': amount('lowest supply voltage', 'V', '10 V'),
    'most-volts': amount('highest supply voltage', 'V', '30 V'),
    current: amount('current it takes itself', 'A'),
    'output-current': amount('current its output can switch', 'A'),
    drop: level('voltage its output leaves', 'V', '2 V'),
    leaks: level('current that leaks while off', 'A', '0.1 mA'),
  },
  terminals: (s) => {
    const feed = (pole: 'plus' | 'minus') => ({
      kind: 'feed' as const,
      pole,
      role: 'logic' as const,
      ...known({
        volts: numberOf(s, 'volts'),
        least: numberOf(s, 'least-volts'),
        most: numberOf(s, 'most-volts'),
        amps: numberOf(s, 'current'),
      }),
    });
    const volts = numberOf(s, 'volts');
    const drop = numberOf(s, 'drop') ?? 0;
    const current = numberOf(s, 'output-current');
    const shared = { kind: 'output' as const, ...known({ leaks: numberOf(s, 'leaks') }) };
    return [
      { mark: 'BN', name: 'brown: plus', nature: feed('plus'), with: 'BU', needed: true },
      { mark: 'BU', name: 'blue: minus', nature: feed('minus'), with: 'BN', needed: true },
      {
        mark: 'BK',
        name: 'black: output',
        nature:
          textOf(s, 'output') === 'PNP'
            ? {
                ...shared,
                stage: 'sourcing',
                ...known({
                  high: volts === undefined ? undefined : volts - drop,
                  top: volts,
                  gives: current,
                }),
              }
            : textOf(s, 'output') === 'NPN'
              ? {
                  ...shared,
                  stage: 'sinking',
                  low: drop,
                  ...known({ swallows: current, withstands: numberOf(s, 'most-volts') }),
                }
              : { kind: 'unclear' },
        common: 'BU',
        signal: 'sensor',
        needed: true,
      },
    ];
  },
});
