import { headOf, MAINS } from './head.ts';
import { drivesFor, lay, type Pattern } from './pattern.ts';

export const safetyRelay: Pattern = {
  id: 'safety-relay',
  name: 'Two channels with a safety relay',
  need: 'A machine that may coast to a stop and that can hurt badly.',
  reach:
    'Touching channels, a stuck start button and a welded contactor are noticed by the unit. The power goes by two contactors in a row.',
  limits:
    'It rests on the maker of the unit for what is inside it. It coasts: how long, you must measure. A mirror contact stuck closed is not noticed: test once a year.',
  make: (motions) => {
    const head = headOf({ outputs: 3 });
    return lay(
      'safety-relay',
      { elements: head.elements, runs: [...head.runs, 'F1.2 U1.33', 'U1.34 A1.stop'] },
      drivesFor(motions, { power: MAINS, enable: 'A1.enable' }),
    );
  },
};
