/** In which diagram a wire is drawn: with the mains, an axis, stopping, inputs and outputs, or the control voltage. */
import type { Refit } from '../../refit/types.ts';
import { deviceOf } from '../wiring/device-of.ts';
import type { Net, ReadWiring, Wire } from '../wiring/types.ts';
import type { CircuitTitle } from './types.ts';

const POWER: CircuitTitle = { id: 'power', title: 'Mains and power' };
const CONTROL: CircuitTitle = { id: 'control', title: 'Control voltage' };
const STOP: CircuitTitle = { id: 'stop', title: 'Stopping' };
const SIGNALS: CircuitTitle = { id: 'signals', title: 'Inputs and outputs' };

const chainCircuit = (id: string): string => `chain-${id}`;

/** Every circuit there can be, in the order of the sheets. */
export const circuitsOf = ({ chains }: Refit): readonly CircuitTitle[] => [
  POWER,
  CONTROL,
  ...chains.map(({ id, kind }) => ({
    id: chainCircuit(id),
    title: kind === 'spindle' ? `Spindle ${id}` : `${id} axis`,
  })),
  STOP,
  SIGNALS,
];

export function sorter(refit: Refit, read: ReadWiring): (wire: Wire) => string {
  const ofPart = new Map<string, string>();
  for (const { id, places } of refit.chains)
    for (const { options } of Object.values(places)) for (const part of options) ofPart.set(part, id);
  const chainOf = (device: string): string | undefined => {
    const part = read.devices.get(device)?.part;
    return part ? ofPart.get(part) : undefined;
  };
  const stops = new Set(
    Object.values(refit.stop?.elements ?? {}).flatMap(({ id, kind }) => (ONLY_STOPS.has(kind) ? [id] : [])),
  );
  const power = powerNets(read);
  const signals = signalsOf(read);
  return ({ from, to }) => {
    const net = read.netOf.get(from) ?? read.netOf.get(to);
    if (net && power.has(net)) return POWER.id;
    const devices = [deviceOf(from), deviceOf(to)];
    const chain = devices.map(chainOf).find((each) => each !== undefined);
    if (chain !== undefined) return chainCircuit(chain);
    if (devices.some((each) => stops.has(each))) return STOP.id;
    if ((net && signals.nets.has(net)) || devices.some((each) => signals.devices.has(each)))
      return SIGNALS.id;
    const natures = [from, to].map((each) => read.terminals.get(each)?.nature.kind);
    return natures.includes('earth') ? POWER.id : CONTROL.id;
  };
}

/** Elements of the stop circuit that are about little else; drives, supplies and the control have diagrams of their own. */
const ONLY_STOPS: ReadonlySet<string> = new Set([
  'button',
  'mushroom',
  'door',
  'locked-door',
  'limit',
  'home',
  'key',
  'contactor',
  'relay',
  'delayed-relay',
  'safety-relay',
  'brake',
]);

/** A device with more terminals is no single sensor, switch or valve. */
const SMALL = 8;

/** Nets that carry a signal, and the small devices that give or take one: their feeds are drawn with them. */
function signalsOf(read: ReadWiring): {
  readonly nets: ReadonlySet<Net>;
  readonly devices: ReadonlySet<string>;
} {
  const nets = new Set(
    read.nets.filter(({ terminals }) => {
      const kinds = terminals.map((id) => read.terminals.get(id)?.nature.kind ?? '');
      return (
        kinds.some((kind) => IS_SIGNAL.has(kind)) && !kinds.includes('supply') && !kinds.includes('earth')
      );
    }),
  );
  const devices = new Set<string>();
  for (const { id, terminals } of read.devices.values())
    if (
      terminals.length <= SMALL &&
      terminals.some((each) => {
        const net = read.netOf.get(each);
        return net !== undefined && net.wires.length > 0 && nets.has(net);
      }) &&
      // A strip stands between many devices and is none of them; what has a common serves several signals.
      terminals.some((each) => read.terminals.get(each)?.nature.kind !== 'joint') &&
      terminals.every((each) => read.terminals.get(each)?.nature.kind !== 'common')
    )
      devices.add(id);
  return { nets, devices };
}

const IS_SIGNAL: ReadonlySet<string> = new Set([
  'input',
  'output',
  'differential-input',
  'differential-output',
  'analogue-input',
  'analogue-output',
  'sensor',
]);

/** Nets on which the mains or the power of a motor's supply stands, and what lies between them and it. */
function powerNets(read: ReadWiring): ReadonlySet<Net> {
  const found = new Set<Net>();
  for (const net of read.nets)
    for (const id of net.terminals) {
      const nature = read.terminals.get(id)?.nature;
      if (
        nature?.kind === 'mains' ||
        nature?.kind === 'winding' ||
        (nature?.kind === 'rectifier' && nature.leg === 'ac') ||
        (nature?.kind === 'feed' && nature.role === 'power' && !isCommon(net, read))
      )
        found.add(net);
    }
  // Through fuses and main contacts it goes on; a set walks over what is added on the way.
  for (const net of found)
    for (const id of net.terminals) {
      const terminal = read.terminals.get(id);
      const nature = terminal?.nature;
      const through = nature?.kind === 'protection' || (nature?.kind === 'contact' && nature.role === 'main');
      const other = through && terminal?.with ? read.netOf.get(terminal.with) : undefined;
      if (other && !hasSupply(other, read)) found.add(other);
    }
  return found;
}

/** Whether it serves the control voltage as well. */
const isCommon = (net: Net, read: ReadWiring): boolean =>
  net.terminals.some((id) => {
    const nature = read.terminals.get(id)?.nature;
    return (
      nature?.kind === 'common' ||
      nature?.kind === 'earth' ||
      (nature?.kind === 'feed' && nature.role === 'logic')
    );
  });

const hasSupply = (net: Net, read: ReadWiring): boolean =>
  net.terminals.some((id) => read.terminals.get(id)?.nature.kind === 'supply');
