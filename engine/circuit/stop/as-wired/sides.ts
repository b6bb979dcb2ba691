/** Stop circuit and wiring as conductors between the same terminals. */
import type { StopCircuit } from '../../../refit/types.ts';
import type { ReadWiring, Terminal } from '../../wiring/index.ts';
import type { Contact, Model } from '../model.ts';
import { Groups } from './union.ts';

/** The stop circuit calls what a drive is fed by L and N, whatever it is fed with. */
const FED: Readonly<Record<string, readonly string[]>> = { L: ['DC+', 'L1'], N: ['DC-'] };
/** Earth and everything joined to it. */
export const FRAME = ' frame';

/** A contact of the wiring, by its two terminals. */
export interface WiredContact {
  readonly device: string;
  readonly a: string;
  readonly b: string;
  readonly main: boolean;
}

export class Sides {
  readonly circuit: StopCircuit;
  readonly model: Model;
  readonly read: ReadWiring;
  /** Names of terminals of the stop circuit that a wire of it goes to. */
  readonly used: ReadonlySet<string>;
  /** Contacts of the wiring that the stop circuit has not, or does not use. */
  readonly extra: readonly WiredContact[];
  readonly contacts: readonly WiredContact[];
  /** Terminals of the wiring that a wire goes to. */
  readonly wired: ReadonlySet<string>;
  readonly #drawn = new Groups();
  readonly #laid = new Groups();
  readonly #own = new Map<string, string>();

  constructor(circuit: StopCircuit, model: Model, read: ReadWiring) {
    this.circuit = circuit;
    this.model = model;
    this.read = read;
    this.used = new Set(Object.values(circuit.wires).flatMap(({ from, to }) => [from, to]));
    this.wired = new Set([...read.wires.values()].flatMap(({ from, to }) => [from, to]));
    for (const name of model.nodes) {
      const own = this.#terminalOf(name);
      if (own !== undefined) this.#own.set(name, own);
    }
    for (const { from, to } of Object.values(circuit.wires)) this.#drawn.join(from, to);
    // Neutral is earthed at the transformer of the street, and in the wiring nowhere.
    for (const { minus, earthed } of model.sources) {
      const name = model.nodes[minus]!;
      if (earthed && !name.endsWith('.N')) this.#drawn.join(name, FRAME);
    }
    // A fuse opens nothing that is asked to stop; one that only one side has is no difference between conductors.
    for (const { fuse, element, a, b } of model.contacts)
      if (fuse && !read.devices.has(element)) this.#drawn.join(model.nodes[a]!, model.nodes[b]!);
    for (const [id, net] of read.netOf) this.#laid.join(id, net.id);
    for (const terminal of read.terminals.values()) this.#through(terminal);
    this.contacts = [...contactsOf(read)];
    const both = (contact: Contact) => [contact.a, contact.b].map((node) => model.nodes[node]!);
    const known = new Set(
      model.contacts
        .filter((each) => both(each).every((name) => this.used.has(name)))
        .flatMap((each) => both(each).map((name) => this.#own.get(name) ?? '')),
    );
    this.extra = this.contacts.filter(({ a, b }) => !known.has(a) || !known.has(b));
  }

  /** Terminal of the wiring for one of the stop circuit; undefined where there is none. */
  own(name: string): string | undefined {
    return this.#own.get(name);
  }

  /** The conductor of the stop circuit at one of its terminals. */
  drawn(name: string): string {
    return this.#drawn.of(name);
  }

  /** The conductor of the wiring at one of its terminals: over wires, strips, filters, fuses and switches that only it has. */
  laid(terminal: string): string {
    return this.#laid.of(terminal);
  }

  #terminalOf(name: string): string | undefined {
    const dot = name.indexOf('.');
    const [device, mark] = [name.slice(0, dot), name.slice(dot + 1)];
    if (!this.read.devices.has(device)) return undefined;
    if (this.read.terminals.has(name)) return name;
    return FED[mark]?.map((each) => `${device}.${each}`).find((id) => this.read.terminals.has(id));
  }

  #through({ id, device, nature, with: other }: Terminal): void {
    if (nature.kind === 'earth' && nature.role !== 'metal') this.#laid.join(id, FRAME);
    if (other === null) return;
    const passes = nature.kind === 'mains' && nature.side === 'passes';
    const guards = nature.kind === 'protection' && !Object.hasOwn(this.circuit.elements, device);
    if (passes || guards) this.#laid.join(id, other);
  }
}

function* contactsOf(read: ReadWiring): Generator<WiredContact> {
  for (const { id, device, nature, with: other } of read.terminals.values())
    if (nature.kind === 'contact' && other !== null && id < other)
      yield { device, a: id, b: other, main: nature.role === 'main' };
}
