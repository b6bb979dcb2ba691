/** What one device or wire is to the supply: metal, contacts, fuses, sources, loads. */

import type { Cable, Device, ReadWiring, Terminal, Wire } from '../../wiring/types.ts';
import {
  CONTACT_OHMS,
  closedRunning,
  conductorElements,
  SHORT_OHMS,
  wireElement,
  wireOhms,
} from '../conductors.ts';
import { type Load, loadsOf } from '../loads.ts';
import { outputElements } from '../outputs.ts';
import { NEUTRAL, type Source, sourceElements, sourcesOf } from '../sources.ts';
import type { Arrow, Link } from './forest.ts';

export interface Pieces {
  readonly sources: readonly Source[];
  readonly loads: readonly Load[];
  readonly links: readonly Link[];
  /** Diodes with both ends, as they stand: from anode to cathode. */
  readonly diodes: readonly Link[];
}

/** °C at which wires share currents and lose volts. */
const WARM = 70;

const NO_WIRES: ReadonlyMap<string, Wire> = new Map();
const NO_CABLES: ReadonlyMap<string, Cable> = new Map();

/** Reads one device alone: nothing in it hangs on another. */
export function piecesOf(device: Device, terminal: (id: string) => Terminal | undefined): Pieces {
  const own = device.terminals.map((id) => terminal(id)!);
  const alone: ReadWiring = {
    devices: new Map([[device.id, device]]),
    terminals: new Map(own.map((each) => [each.id, each])),
    wires: NO_WIRES,
    cables: NO_CABLES,
    nets: [],
    netOf: new Map(),
    problems: [],
  };
  const sources = sourcesOf(alone);
  const links = new Map<string, Link>();
  for (const element of [
    ...conductorElements(alone, { closed: (_, contact) => closedRunning(contact) }),
    ...outputElements(alone),
  ]) {
    if (element.kind !== 'resistor') continue;
    const { id, a, b, ohms } = element;
    const kind = alone.terminals.get(a)!.nature.kind;
    const rank = ohms < CONTACT_OHMS ? 0 : kind === 'protection' ? 2 : 1;
    links.set(id, { id, a, b, rank, ohms });
  }
  for (const element of sourceElements(sources)) {
    const live = element.kind === 'voltage';
    if (element.kind !== 'resistor' && !live) continue;
    const [a, b] = live ? [element.plus, element.minus] : [element.a, element.b];
    const source = sources.find((each) => each.live.includes(a) || each.back.includes(b))!;
    links.set(element.id, {
      id: element.id,
      a,
      b,
      rank: 3,
      ohms: element.ohms,
      source: source.id,
      ...(live ? { lifts: liftsOf(source, a) } : {}),
    });
  }
  const diodes = own.flatMap(({ id, nature, with: other }): readonly Link[] =>
    nature.kind === 'diode' && nature.leg === 'anode' && other !== null && other !== id
      ? [{ id: `diode ${id}`, a: id, b: other, rank: 1, ohms: CONTACT_OHMS }]
      : [],
  );
  return {
    sources,
    loads: loadsOf(alone, sources),
    links: [...links.values()].filter(({ a, b }) => a !== b),
    diodes,
  };
}

/** Undefined where it leads nowhere. */
export function wireLink(wire: Wire, has: (terminal: string) => boolean): Link | undefined {
  if (wire.from === wire.to || !has(wire.from) || !has(wire.to)) return undefined;
  return {
    id: wireElement(wire.id),
    a: wire.from,
    b: wire.to,
    rank: 0,
    ohms: Math.max(1e-6, wireOhms(wire, WARM) ?? SHORT_OHMS),
    wire: wire.id,
  };
}

/** A third of a period between the phases of the mains, in the order L1, L2, L3. */
function liftsOf(source: Source, live: string): Arrow {
  // Where its volts are not known one volt stands in: how the current is shared does not depend on it.
  const micro = (source.volts ?? 1) * 1e6;
  const phase = source.kind === 'mains' ? Math.max(0, source.live.indexOf(live)) : 0;
  const angle = (-2 * Math.PI * phase) / 3;
  return { re: Math.round(micro * Math.cos(angle)), im: Math.round(micro * Math.sin(angle)) };
}

export { NEUTRAL };
