/** What of a wiring under power depends on what is on: contacts, sources, outputs. Each element is made once. */
import type { Element } from '../network/index.ts';
import { nodesOf } from '../network/index.ts';
import { pairsOf } from '../power/conductors.ts';
import { NEUTRAL, phaseSign, type Source } from '../power/sources.ts';
import type { Contact, Output, ReadWiring, Terminal } from '../wiring/types.ts';
import { METAL, nodeIn, ohm } from './live-fixed.ts';
import type { Share, Situation } from './live-types.ts';

/** How far the mains may stray, and a supply that does not say: IEC 60038 (recalled); common practice. */
const MAINS_STRAY = 0.1;
const SUPPLY_STRAY = 0.05;
const ON_OHMS = 1;

interface ContactPart {
  readonly element: Element;
  readonly contact: Contact;
}

interface OutputPart {
  readonly id: string;
  /** Device that must have power for it to be driven. */
  readonly fedBy?: string;
  readonly on: Readonly<Record<Share, readonly Element[]>>;
  readonly off: readonly Element[];
}

export class SwitchedParts {
  /** Whatever is on. */
  readonly #always: readonly Element[];
  /** By the device that moves them. */
  readonly #contacts: ReadonlyMap<string, readonly ContactPart[]>;
  /** By source. */
  readonly #sources: ReadonlyMap<string, Readonly<Record<Share, readonly Element[]>>>;
  readonly #outputs: ReadonlyMap<string, OutputPart>;
  /** Outputs by the device that must have power. */
  readonly #fed: ReadonlyMap<string, readonly OutputPart[]>;

  constructor(wiring: ReadWiring, sources: readonly Source[], fixed: readonly Element[]) {
    const outputs = [...wiring.terminals.values()];
    this.#always = [...neutrals(wiring, sources), ...outputs.flatMap((each) => analogue(wiring, each))];
    this.#contacts = contactParts(wiring, fixed);
    this.#sources = new Map(
      sources.map((each) => [
        each.id,
        { [-1]: sourceElements(wiring, each, -1), 1: sourceElements(wiring, each, 1) },
      ]),
    );
    this.#outputs = new Map(
      outputs.flatMap((each) => {
        const part = outputPart(wiring, each);
        return part ? [[part.id, part] as const] : [];
      }),
    );
    const fed = new Map<string, OutputPart[]>();
    for (const part of this.#outputs.values())
      if (part.fedBy !== undefined) fed.set(part.fedBy, [...(fed.get(part.fedBy) ?? []), part]);
    this.#fed = fed;
  }

  /** Devices that must have power to drive their outputs. */
  get fed(): Iterable<string> {
    return this.#fed.keys();
  }

  /** Every element that may ever stand, in whichever situation. */
  *all(): Iterable<Element> {
    yield* this.#always;
    for (const parts of this.#contacts.values()) for (const { element } of parts) yield element;
    for (const shares of this.#sources.values()) yield* [...shares[-1], ...shares[1]];
    for (const { on, off } of this.#outputs.values()) yield* [...on[-1], ...on[1], ...off];
  }

  elements(situation: Situation, share: Share): readonly Element[] {
    return [
      ...[...this.#contacts.keys()].flatMap((device) => this.#closed(device, situation)),
      ...this.#always,
      ...[...this.#sources.keys()].flatMap((id) => this.#given(id, situation, share)),
      ...[...this.#outputs.values()].flatMap((part) => driven(part, situation, share)),
    ];
  }

  /** What is to be put in and taken out to come from one situation to another, sources at the same share. */
  difference(from: Situation, to: Situation, share: Share): { added: Element[]; removed: Element[] } {
    const added: Element[] = [];
    const removed: Element[] = [];
    const compare = (before: readonly Element[], after: readonly Element[]): void => {
      if (before === after) return;
      added.push(...after.filter((each) => !before.includes(each)));
      removed.push(...before.filter((each) => !after.includes(each)));
    };
    for (const device of new Set([...unlike(from.pulled, to.pulled), ...unlike(from.logic, to.logic)]))
      compare(this.#closed(device, from), this.#closed(device, to));
    for (const id of unlike(from.giving, to.giving))
      compare(this.#given(id, from, share), this.#given(id, to, share));
    const touched = new Set<OutputPart>();
    for (const id of unlike(from.outputs, to.outputs)) {
      const part = this.#outputs.get(id);
      if (part) touched.add(part);
    }
    for (const device of unlike(from.unfed, to.unfed))
      for (const part of this.#fed.get(device) ?? []) touched.add(part);
    for (const part of touched) compare(driven(part, from, share), driven(part, to, share));
    return { added, removed };
  }

  #closed(device: string, { pulled, logic }: Situation): readonly Element[] {
    return (this.#contacts.get(device) ?? []).flatMap(({ element, contact: { moved, closes } }) => {
      const isMoved = moved === 'coil' ? pulled.has(device) : moved === 'logic' ? logic.has(device) : false;
      return isMoved === (closes === 'when-on') ? [element] : [];
    });
  }

  #given(id: string, { giving }: Situation, share: Share): readonly Element[] {
    return giving.has(id) ? this.#sources.get(id)![share] : [];
  }
}

function* unlike(a: ReadonlySet<string>, b: ReadonlySet<string>): Iterable<string> {
  if (a === b) return;
  for (const each of a) if (!b.has(each)) yield each;
  for (const each of b) if (!a.has(each)) yield each;
}

const driven = (
  { id, fedBy, on, off }: OutputPart,
  situation: Situation,
  share: Share,
): readonly Element[] => {
  if (fedBy !== undefined && situation.unfed.has(fedBy)) return [];
  return situation.outputs.has(id) ? on[share] : off;
};

/** Contacts but those that end on a spare terminal: nothing flows there, and no lead goes there. */
function contactParts(
  wiring: ReadWiring,
  fixed: readonly Element[],
): ReadonlyMap<string, readonly ContactPart[]> {
  const node = nodeIn(wiring);
  const pairs = pairsOf(wiring, ({ nature }) => nature.kind === 'contact');
  const times = new Map<string, number>();
  for (const at of [...fixed.flatMap(nodesOf), ...pairs.flatMap((pair) => pair.map(({ id }) => node(id)))])
    times.set(at, (times.get(at) ?? 0) + 1);
  const spare = ({ id }: Terminal): boolean => {
    const net = wiring.netOf.get(id);
    return (
      times.get(node(id)) === 1 &&
      (net === undefined ||
        (net.wires.length === 0 &&
          net.terminals.every((each) => wiring.terminals.get(each)?.nature.kind === 'contact')))
    );
  };
  const parts = new Map<string, ContactPart[]>();
  for (const [one, other] of pairs) {
    const [a, b] = [node(one.id), node(other.id)];
    if (a === b || spare(one) || spare(other)) continue;
    const own = parts.get(one.device) ?? [];
    parts.set(one.device, own);
    own.push({ element: ohm(`contact ${one.id}`, a, b, METAL), contact: one.nature as Contact });
  }
  return parts;
}

function neutrals(wiring: ReadWiring, sources: readonly Source[]): readonly Element[] {
  const node = nodeIn(wiring);
  return sources
    .filter(({ kind }) => kind === 'mains')
    .flatMap(({ back }) => back)
    .filter((back) => node(back) !== NEUTRAL)
    .map((back) => ohm(`neutral ${back}`, node(back), NEUTRAL, METAL));
}

function sourceElements(wiring: ReadWiring, source: Source, share: Share): readonly Element[] {
  const node = nodeIn(wiring);
  const { volts } = source;
  if (volts === undefined) return [];
  const nature = wiring.terminals.get(source.live[0]!)?.nature;
  const tolerance = nature?.kind === 'supply' ? nature.tolerance : undefined;
  // What is made from the mains without regulation strays with them.
  const stray = tolerance ?? (source.ac || !source.limits ? MAINS_STRAY : SUPPLY_STRAY);
  const minus = source.kind === 'mains' ? NEUTRAL : node(source.back[0] ?? '');
  if (minus === '') return [];
  return source.live
    .filter((live) => node(live) !== minus)
    .map((live) => ({
      kind: 'voltage',
      id: `gives ${live}`,
      plus: node(live),
      minus,
      volts: volts * (1 + share * stray) * phaseSign(source, live),
      ohms: 0.02,
    }));
}

/** An analogue output at rest gives nothing. */
function analogue(wiring: ReadWiring, { id, nature, common }: Terminal): readonly Element[] {
  const node = nodeIn(wiring);
  if (nature.kind !== 'analogue-output' || common === null || node(common) === node(id)) return [];
  return [{ kind: 'voltage', id: `analogue ${id}`, plus: node(id), minus: node(common), volts: 0, ohms: 50 }];
}

function outputPart(wiring: ReadWiring, terminal: Terminal): OutputPart | undefined {
  const node = nodeIn(wiring);
  const { id, nature } = terminal;
  if (nature.kind !== 'output') return undefined;
  const end = endOf(wiring, terminal, nature);
  if (!end || node(end) === node(id)) return undefined;
  const [a, b] = [node(id), node(end)];
  if (nature.stage === 'push-pull') {
    const drives = (volts: number | undefined): readonly Element[] =>
      volts === undefined
        ? []
        : [{ kind: 'voltage', id: `drives ${id}`, plus: a, minus: b, volts, ohms: 50 }];
    // Driven either way from inside, between what is promised and what it can reach.
    return {
      id,
      fedBy: terminal.device,
      on: { [-1]: drives(nature.high ?? nature.top), 1: drives(nature.top ?? nature.high) },
      off: drives(0),
    };
  }
  const on = [ohm(`on ${id}`, a, b, ON_OHMS)];
  const leaks = nature.leaks !== undefined && nature.leaks > 0;
  return { id, on: { [-1]: on, 1: on }, off: leaks ? [ohm(`leaks ${id}`, a, b, 24 / nature.leaks!)] : [] };
}

/** Where an output switches to: plus, minus, or the common it is driven against. */
function endOf(wiring: ReadWiring, terminal: Terminal, output: Output): string | undefined {
  const pole = (which: 'plus' | 'minus'): string | undefined => {
    const own = (wiring.devices.get(terminal.device)?.terminals ?? []).filter((id) => {
      const { nature } = wiring.terminals.get(id)!;
      return (nature.kind === 'feed' || nature.kind === 'supply') && nature.pole === which;
    });
    return own.find((id) => wiring.terminals.get(id)!.group === terminal.group) ?? own[0];
  };
  return output.stage === 'sourcing' ? pole('plus') : (terminal.common ?? pole('minus'));
}
