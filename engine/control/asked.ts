/** What the auxiliaries of a refit ask of its wiring: which switches, valves, motors and locks, and how each is joined. */
import type { AskedAuxiliary, AskedInput, AskedOutput } from '../circuit/wiring/index.ts';
import type { Refit } from '../refit/types.ts';
import { type Opened, openAll } from './auxiliaries/open.ts';

/** One switch serves all that ask for these. */
const SHARED = new Set(['standstill', 'shut']);
/** Outputs that put a motor on the mains; the rest move valves. */
const MOTORS = new Set(['pump', 'forward', 'back']);

/** In the order of the kinds; one whose settings cannot be read is left out, and says so where it is shown. */
export const askedOfWiring = (refit: Refit): readonly AskedAuxiliary[] =>
  openAll(refit).flatMap(({ opened }) => (opened ? [askedBy(opened)] : []));

function askedBy({ auxiliary, kind, machine, read }: Opened): AskedAuxiliary {
  const sensors = read.choice('sensors');
  const sensor = sensors === 'pnp' ? 'PNP' : sensors === 'npn' ? 'NPN' : 'switch';
  const by = ({ contact: 'contact', '5v': '5 V' } as const)[read.choice('outputs-by')] ?? '24 V';
  const both =
    machine.outputs.some(({ id }) => id === 'forward') && machine.outputs.some(({ id }) => id === 'back');
  return {
    id: auxiliary.id,
    name: auxiliary.name,
    inputs: machine.inputs
      .filter(({ inside }) => !inside)
      .map(
        ({ id, name }): AskedInput => ({
          id,
          name: name.replace(/ \(.*\)$/, ''),
          sensor: id === 'standstill' ? 'switch' : sensor,
          shared: SHARED.has(id),
        }),
      ),
    outputs: machine.outputs.map(
      ({ id, name }): AskedOutput => ({
        id,
        name,
        by,
        moves: kind.id === 'door' ? 'lock' : MOTORS.has(id) ? 'motor' : id === 'rock' ? 'relay' : 'valve',
        ...(both && id === 'back' ? { against: 'forward' } : {}),
      }),
    ),
  };
}
