/** What a person does to each kind of thing under a hand. */
import type { Doing } from './model.ts';
import type { Read } from './settings.ts';

export function doing(
  kind: 'button' | 'mushroom' | 'door' | 'limit' | 'key',
  id: string,
  read: Read,
  place = '',
): Doing {
  const common = { springsBack: false, normal: 0 as const, needs: -1, direct: read.direct === 0 };
  switch (kind) {
    case 'button':
      return {
        ...common,
        role: (['start', 'stop', 'other'] as const)[read.role!]!,
        on: `press ${id}`,
        off: `let go of ${id}`,
        springsBack: true,
        direct: false,
      };
    case 'mushroom':
      return {
        ...common,
        role: 'emergency',
        on: `press ${id}`,
        off: `pull ${id} out`,
        springsBack: read.latching === 1,
      };
    case 'door':
      return { ...common, role: 'door', on: `open the door ${id}`, off: `close the door ${id}` };
    case 'limit':
      return { ...common, role: 'limit', on: `run onto ${id}${place}`, off: `come off ${id}${place}` };
    case 'key': {
      // A key that stands on while the machine runs stops it when it is turned off; another only lets something be done.
      const on = read.running === 0;
      return {
        ...common,
        role: on ? 'key' : 'other',
        on: `turn ${id} on`,
        off: `turn ${id} off`,
        normal: on ? 1 : 0,
        direct: false,
      };
    }
  }
}
