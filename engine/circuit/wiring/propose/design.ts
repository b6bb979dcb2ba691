/** The current a wire is chosen for: load ≤ fuse ≤ wire. */
import { andList } from '../../../quantity/words.ts';
import { RATINGS } from '../../../tables/breakers.ts';
import type { PowerContext } from '../../power/context.ts';
import type { ReadWiring, Wire } from '../types.ts';
import { type Circuits, isControl, passesPower } from './colours.ts';
import type { Strands } from './strands.ts';

/** Current a wire is chosen for, and whose it is; or the settings that are missing. */
export type Design =
  | { readonly amps: number; readonly of: string }
  | { readonly needs: readonly string[] }
  | { readonly trouble: string };

export const isKnown = (design: Design): design is { readonly amps: number; readonly of: string } =>
  'amps' in design;

export class Designs {
  readonly #read: ReadWiring;
  readonly #strands: Strands;
  readonly #circuits: Circuits;
  readonly #context: PowerContext;
  readonly #taking: ReadonlyMap<string, readonly string[]>;

  constructor(read: ReadWiring, strands: Strands, circuits: Circuits, context: PowerContext) {
    this.#read = read;
    this.#strands = strands;
    this.#circuits = circuits;
    this.#context = context;
    this.#taking = takingOf(read, strands, circuits);
  }

  /** Load ≤ fuse ≤ wire: the fuse decides where it is known. */
  of(wire: Wire): Design {
    const { flow, guards, currents } = this.#context;
    if (flow.trouble)
      return { trouble: 'currents that can be worked out; something is joined that must not be' };
    const own = guards.wires.get(wire.id);
    const guarded = own
      ? [this.#rating(own.passed.at(-1), own.source) ?? this.#behind(wire)]
      : this.#ratingsOfReturn(wire);
    const load = currents.get(wire.id) ?? { amps: 0, needs: [] };
    const ratings = guarded.filter((each) => each !== undefined);
    const largest = ratings.filter(isKnown).sort((a, b) => b.amps - a.amps)[0];
    const open = ratings.filter((each) => !isKnown(each));
    if (largest && open.length === 0) return largest;
    if (load.needs.length > 0) return { needs: load.needs };
    // Nothing limits it yet: what is bought will be the next one with a quarter in hand.
    const size = RATINGS.find((each) => each >= load.amps * 1.25);
    const bought = Math.max(largest?.amps ?? 0, open.length > 0 && size !== undefined ? size : load.amps);
    return load.amps === 0 && open.length > 0
      ? { needs: open.flatMap((each) => ('needs' in each ? each.needs : [])) }
      : { amps: bought, of: open.length > 0 ? 'of the fuse that suits its load' : 'that it carries' };
  }

  /** Of the fuse nearest before a wire, or of the source where none is passed; undefined where nothing limits it. */
  #rating(guard: string | undefined, source: string): Design | undefined {
    if (guard !== undefined) {
      const { nature, device } = this.#read.terminals.get(guard)!;
      const amps = nature.kind === 'protection' ? nature.amps : undefined;
      return amps === undefined ? { needs: [`${device}.amps`] } : { amps, of: `of ${device}` };
    }
    const gives = this.#context.flow.source.get(source);
    if (gives?.kind === 'mains')
      return gives.amps === undefined
        ? { needs: [`${gives.device}.current`] }
        : { amps: gives.amps, of: `of the fuse before ${gives.device}` };
    if (gives?.limits)
      return gives.amps === undefined
        ? { needs: [`${gives.device}.current`] }
        : { amps: gives.amps, of: `of ${gives.device}` };
    return undefined;
  }

  /** Of a fuse right behind, where none stands before. */
  #behind({ from, to }: Wire): Design | undefined {
    const fuse = [from, to].find((end) => {
      const { nature } = this.#read.terminals.get(end)!;
      return nature.kind === 'protection' && nature.form !== 'switch';
    });
    return fuse === undefined ? undefined : this.#rating(fuse, '');
  }

  /**
   * The current back has passed the fuses of all that hang on this way back: together they let no more pass than their
   * sum, nor more than what stands before all of them.
   */
  #ratingsOfReturn(wire: Wire): readonly (Design | undefined)[] {
    const { guards } = this.#context;
    const alone = [wire.from, wire.to].filter(
      (end) => this.#takes(end) && this.#context.wiresAt(end).length === 1,
    );
    const strand = this.#strands.of(wire)!;
    const all = this.#taking.get(this.#circuits.circuit(strand)) ?? [];
    const ends =
      alone.length > 0 ? alone : isControl(this.#circuits.carries(strand)) ? all : this.#beyond(wire, all);
    const guarded = ends
      .flatMap((end) => this.#partners(end))
      .flatMap((partner) => guards.terminals.get(partner) ?? []);
    const each = new Map<string, Design | undefined>();
    for (const { passed, source } of guarded)
      each.set(passed.at(-1) ?? source, this.#rating(passed.at(-1), source));
    const ratings = [...each.values()].filter((one) => one !== undefined);
    const known = ratings.filter(isKnown);
    if (known.length < ratings.length || known.length < 2) return ratings;
    const sum = known.reduce((all, { amps }) => all + amps, 0);
    const [source] = new Set(guarded.map((one) => one.source));
    const before = guarded.every((one) => one.source === source)
      ? this.#rating(undefined, source!)
      : undefined;
    return before && isKnown(before) && before.amps < sum
      ? [before]
      : [{ amps: sum, of: `of ${andList(known.map(({ of }) => of.replace(/^of /, '')))} together` }];
  }

  /** Of those that take, the ones that hang on the source by this wire alone; all of them where there is a ring. */
  #beyond(wire: Wire, all: readonly string[]): readonly string[] {
    for (const end of [wire.from, wire.to]) {
      const reached = this.#side(end, wire);
      const gives = [...reached].some((id) => {
        const { nature } = this.#read.terminals.get(id)!;
        return (
          nature.kind === 'supply' ||
          nature.kind === 'rectifier' ||
          (nature.kind === 'mains' && nature.side === 'gives')
        );
      });
      if (!gives && !(reached.has(wire.from) && reached.has(wire.to)))
        return all.filter((id) => reached.has(id));
    }
    return all;
  }

  /** What can be reached from one end of a wire without it, by copper, fuses and main contacts. */
  #side(from: string, without: Wire): ReadonlySet<string> {
    const reached = new Set([from]);
    const queue = [from];
    const go = (id: string | null) => {
      if (id === null || reached.has(id) || !this.#read.terminals.has(id)) return;
      reached.add(id);
      queue.push(id);
    };
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      const terminal = this.#read.terminals.get(at)!;
      if (terminal.nature.kind === 'earth') continue;
      if (passesPower(terminal)) go(terminal.with);
      for (const id of this.#context.wiresAt(at)) {
        if (id === without.id) continue;
        const { from: one, to: other } = this.#read.wires.get(id)!;
        go(one === at ? other : one);
      }
      for (const { a, b } of this.#read.devices.get(terminal.device)!.joins) {
        if (a === at) go(b);
        if (b === at) go(a);
      }
    }
    return reached;
  }

  #takes(id: string): boolean {
    return takes(this.#read, id);
  }

  #partners(id: string): readonly string[] {
    const { device, group } = this.#read.terminals.get(id)!;
    return this.#read.devices
      .get(device)!
      .terminals.filter((each) => each !== id && this.#read.terminals.get(each)!.group === group);
  }
}

/** Whether current for a device goes in or out there. */
function takes(read: ReadWiring, id: string): boolean {
  const nature = read.terminals.get(id)?.nature;
  return (
    nature !== undefined &&
    (nature.kind === 'feed' ||
      nature.kind === 'load' ||
      (nature.kind === 'mains' && nature.side === 'takes') ||
      (nature.kind === 'winding' && nature.side === 'primary'))
  );
}

/** Terminals that take, by the circuit they hang on. */
function takingOf(
  read: ReadWiring,
  strands: Strands,
  circuits: Circuits,
): ReadonlyMap<string, readonly string[]> {
  const made = new Map<string, string[]>();
  for (const id of read.terminals.keys()) {
    if (!takes(read, id)) continue;
    const circuit = circuits.circuit(strands.at(id)!);
    const list = made.get(circuit);
    if (list) list.push(id);
    else made.set(circuit, [id]);
  }
  return made;
}
