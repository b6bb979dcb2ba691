/** Every single thing that can go wrong with a stop circuit, named. */
import type { Model } from './model.ts';
import { type Fault, networkOf } from './network.ts';

export type FaultGroup = 'contact' | 'wire' | 'coil' | 'mechanical' | 'input' | 'supply' | 'brake' | 'unit';

export interface NamedFault {
  /** 'K1 1-2 welded' */
  readonly id: string;
  readonly group: FaultGroup;
  readonly element: string;
  /** In words, as the beginning of a sentence: 'Contact 1-2 of K1 is welded'. */
  readonly says: string;
  readonly faults: readonly Fault[];
  /** Why it may be left out of account by a standard, where it may. */
  readonly mayExclude?: string;
}

const EXCLUDED =
  'A direct-opening device that is firmly fixed may be trusted mechanically (ISO 13849-2, table D.8; from memory). No wiring catches this fault: check it by hand.';

/** Wires of one cable beyond which only neighbours are taken as pairs. */
const MOST_PAIRED = 12;

export function singleFaults(model: Model): readonly NamedFault[] {
  return [
    ...contactFaults(model),
    ...moverFaults(model),
    ...wireFaults(model),
    ...touchFaults(model),
    ...supplyFaults(model),
  ];
}

function* contactFaults({ contacts, movers, safety }: Model): Generator<NamedFault> {
  for (const [contact, { id, element, fuse, doubled, main, mover }] of contacts.entries()) {
    const kind = mover < 0 ? 'hand' : movers[mover]!.kind;
    if (fuse) {
      yield {
        id: `${element} melted`,
        group: 'supply',
        element,
        says: `Fuse ${element} is open`,
        faults: [{ kind: 'contact-open', contact }],
      };
      continue;
    }
    if (main) {
      const poles = contacts.flatMap((each, at) => (each.main && each.mover === mover ? [at] : []));
      // A welded contact holds the armature, and with it the others: the worst case.
      if (poles[0] === contact)
        yield {
          id: `${element} welded`,
          group: 'contact',
          element,
          says: `The main contacts of ${element} are welded`,
          faults: poles.map((pole) => ({ kind: 'contact-closed', contact: pole })),
        };
    } else if (!doubled) {
      const hand = kind === 'hand';
      yield {
        id: `${id} ${hand ? 'stays closed' : 'welded'}`,
        group: 'contact',
        element,
        says: hand ? `Contact ${id} does not open` : `Contact ${id} is stuck closed (welded)`,
        faults: [{ kind: 'contact-closed', contact }],
      };
    }
    yield {
      id: `${id} does not close`,
      group: 'contact',
      element,
      says: `Contact ${id} does not close`,
      faults: [{ kind: 'contact-open', contact }],
    };
  }
  for (const [unit, { element }] of safety.entries())
    yield {
      id: `${element} inside`,
      group: 'unit',
      element,
      says: `One of the two contacts inside the outputs of ${element} is stuck closed`,
      faults: [{ kind: 'unit-contact', unit }],
    };
}

function* moverFaults({ movers, controls, drives, motions }: Model): Generator<NamedFault> {
  const enables = new Set(controls.map(({ enable }) => enable));
  const brakes = new Set(motions.map(({ brake }) => brake));
  const inputs = new Set([
    ...drives.flatMap(({ enable, sto, power }) => [enable, power, ...sto]),
    ...controls.map(({ stop }) => stop),
  ]);
  const powers = new Set(drives.map(({ power }) => power));
  for (const [mover, { id, element, kind, does, dropOut }] of movers.entries()) {
    const stuck = (at: 0 | 1): readonly Fault[] => [{ kind: 'stuck', mover, at }];
    const named = (words: string, group: FaultGroup, says: string, at: 0 | 1): NamedFault => ({
      id: `${id} ${words}`,
      group,
      element,
      says,
      faults: stuck(at),
    });
    if (does) {
      if (does.role === 'program') continue;
      if (does.role === 'start' || does.role === 'stop' || does.role === 'other') {
        yield named('stuck pressed', 'mechanical', `Button ${id} stays pressed`, 1);
        yield named('cannot be pressed', 'mechanical', `Pressing ${id} does nothing`, 0);
        continue;
      }
      const dead: NamedFault = named(
        'does not act',
        'mechanical',
        `${sayDevice(does.role)} ${id} does nothing: its contacts are not moved`,
        does.normal,
      );
      yield does.direct ? { ...dead, mayExclude: EXCLUDED } : dead;
      if (does.role === 'emergency')
        yield {
          id: `${id} does not latch`,
          group: 'mechanical',
          element,
          says: `${id} does not stay in when pressed`,
          faults: [{ kind: 'no-latch', mover }],
        };
      continue;
    }
    if (brakes.has(mover)) {
      yield named('does not close', 'brake', `Brake ${id} does not close`, 1);
      yield named('does not open', 'brake', `Brake ${id} does not open`, 0);
    } else if (kind === 'coil') {
      yield named('coil dead', 'coil', `The coil of ${id} is dead`, 0);
      yield named('stays pulled in', 'coil', `${id} stays pulled in without current`, 1);
      if (dropOut >= 0.15)
        yield {
          id: `${id} no delay`,
          group: 'coil',
          element,
          says: `${id} lets go at once instead of late`,
          faults: [{ kind: 'no-delay', mover }],
        };
    } else if (enables.has(mover)) {
      yield named('stuck on', 'input', `The output of ${element} that enables the drives stays on`, 1);
      yield named('stuck off', 'input', `The output of ${element} that enables the drives stays off`, 0);
    } else if (inputs.has(mover) && !powers.has(mover)) {
      yield named('stuck on', 'input', `Input ${id} stays on whatever its wire says`, 1);
      yield named('stuck off', 'input', `Input ${id} stays off`, 0);
    } else if (kind === 'logic' && dropOut >= 0.15) {
      yield {
        id: `${id} no delay`,
        group: 'unit',
        element,
        says: `${id} lets go at once instead of late`,
        faults: [{ kind: 'no-delay', mover }],
      };
    }
  }
}

const sayDevice = (role: string): string =>
  role === 'emergency'
    ? 'Emergency stop'
    : role === 'door'
      ? 'Door switch'
      : role === 'limit'
        ? 'Limit switch'
        : 'Switch';

/** For each node, the supply it belongs to when every contact is closed; −1 for none. */
export function domains(model: Model): Int32Array {
  const { net, nets } = networkOf(model);
  const of = new Int32Array(nets).fill(-1);
  const edges: (readonly [number, number])[] = [
    ...model.contacts.map(({ a, b }) => [net[a]!, net[b]!] as const),
    ...model.movers.filter(({ a }) => a >= 0).map(({ a, b }) => [net[a]!, net[b]!] as const),
    ...model.safety.flatMap(({ fed, back, plus, loop }) => [
      ...fed.map((node) => [net[node]!, net[plus]!] as const),
      ...back.map((node) => [net[node]!, net[plus]!] as const),
      [net[loop]!, net[plus]!] as const,
    ]),
  ];
  // Minus sides that are both earthed are one net; nothing is followed through them.
  const minuses = new Set(model.sources.map(({ minus }) => net[minus]!));
  for (const [at, { plus }] of model.sources.entries()) of[net[plus]!] = at;
  for (let changed = true; changed; ) {
    changed = false;
    for (const [a, b] of edges)
      for (const [from, to] of [
        [a, b],
        [b, a],
      ] as const)
        if (of[from]! >= 0 && of[to]! < 0 && !minuses.has(to)) {
          of[to] = of[from]!;
          changed = true;
        }
  }
  for (const [at, { minus }] of model.sources.entries()) if (of[net[minus]!]! < 0) of[net[minus]!] = at;
  return Int32Array.from(model.nodes, (_, at) => of[net[at]!]!);
}

/** The plus a stray wire would touch: behind the first fuse where there is one. */
export function plusNode(model: Model, source: number): number {
  const { net } = networkOf(model);
  const plus = model.sources[source]!.plus;
  const fuse = model.contacts.find(
    ({ fuse, a, b }) => fuse && (net[a] === net[plus] || net[b] === net[plus]),
  );
  return fuse ? (net[fuse.a] === net[plus] ? fuse.b : fuse.a) : plus;
}

function* wireFaults(model: Model): Generator<NamedFault> {
  const of = domains(model);
  const { net } = networkOf(model);
  for (const [wire, { id, a, b }] of model.wires.entries()) {
    const path = `${model.nodes[a]}–${model.nodes[b]}`;
    yield {
      id: `${id} off`,
      group: 'wire',
      element: elementOf(model, a),
      says: `Wire ${id} (${path}) has come off`,
      faults: [{ kind: 'wire-off', wire }],
    };
    const source = of[a]!;
    if (source >= 0) {
      const plus = plusNode(model, source);
      if (net[plus] !== net[a] && net[model.sources[source]!.plus] !== net[a])
        yield {
          id: `${id} to plus`,
          group: 'wire',
          element: elementOf(model, a),
          says: `Wire ${id} (${path}) touches plus`,
          faults: [{ kind: 'touch', nodes: [a, plus] }],
        };
    }
    if (net[model.frame] !== net[a])
      yield {
        id: `${id} to frame`,
        group: 'wire',
        element: elementOf(model, a),
        says: `Wire ${id} (${path}) touches the frame`,
        faults: [{ kind: 'touch', nodes: [a, model.frame] }],
      };
  }
}

/** Wires that touch across one contact, and wires of one cable that touch or are crushed together. */
function* touchFaults(model: Model): Generator<NamedFault> {
  const { net } = networkOf(model);
  for (const { id, element, a, b, fuse, doubled } of model.contacts) {
    if (fuse || doubled || net[a] === net[b]) continue;
    yield {
      id: `${id} bridged`,
      group: 'wire',
      element,
      says: `The two wires at ${id} touch`,
      faults: [{ kind: 'touch', nodes: [a, b] }],
    };
  }
  const seen = new Set<string>();
  const once = (nodes: readonly number[]): boolean => {
    const key = [...new Set(nodes.map((node) => net[node]!))].sort((x, y) => x - y).join(',');
    if (!key.includes(',') || seen.has(key)) return false;
    seen.add(key);
    return true;
  };
  for (const { a, b, fuse } of model.contacts) if (!fuse) once([a, b]);
  const cables = new Map<string, { id: string; a: number }[]>();
  for (const { id, a, cable } of model.wires)
    if (cable !== '') cables.set(cable, [...(cables.get(cable) ?? []), { id, a }]);
  for (const [cable, wires] of cables) {
    for (const [n, one] of wires.entries())
      for (const two of wires.slice(n + 1, wires.length > MOST_PAIRED ? n + 2 : undefined))
        if (once([one.a, two.a]))
          yield {
            id: `${one.id} to ${two.id}`,
            group: 'wire',
            element: elementOf(model, one.a),
            says: `Wires ${one.id} and ${two.id} of cable ${cable} touch`,
            faults: [{ kind: 'touch', nodes: [one.a, two.a] }],
          };
    if (wires.length > 2 && once(wires.map(({ a }) => a)))
      yield {
        id: `cable ${cable} crushed`,
        group: 'wire',
        element: elementOf(model, wires[0]!.a),
        says: `Cable ${cable} is crushed: all its wires touch each other`,
        faults: [{ kind: 'touch', nodes: wires.map(({ a }) => a) }],
      };
  }
}

function* supplyFaults(model: Model): Generator<NamedFault> {
  for (const [source, { element }] of model.sources.entries())
    yield {
      id: `${element} lost`,
      group: 'supply',
      element,
      says: `Supply ${element} fails`,
      faults: [{ kind: 'supply-lost', source }],
    };
}

const elementOf = (model: Model, node: number): string => model.nodes[node]!.split('.')[0]!;
