import { textOf, wiringKind } from '../kind.ts';
import { choice } from '../setting.ts';
import { contact, RATING } from './contacts.ts';
import { sensor } from './sensor.ts';

export const PROBE_OUTPUTS = [
  'contact that opens at the touch',
  'contact that closes at the touch',
  'PNP',
  'NPN',
] as const;

export const probe = wiringKind({
  id: 'probe',
  name: 'touch probe',
  says: 'Switches at the touch of its tip. A plain one is a contact with two wires; one with electronics has brown to plus, blue to minus, and black is its output.',
  letter: 'B',
  settings: { ...sensor.settings, output: choice('what it gives', PROBE_OUTPUTS), ...RATING },
  terminals: (s, part) => {
    const output = textOf(s, 'output');
    if (output === '') return [];
    if (output === 'PNP' || output === 'NPN') return sensor.terminals(s, part);
    const closes = output === PROBE_OUTPUTS[1] ? 'when-on' : 'when-off';
    return contact('1', '2', { closes, role: 'signal', moved: 'machine' }, s);
  },
});
