/** The supply as a graph that follows edits: which loads are fed, and what every wire, fuse and source carries. */
import { andList } from '../../../quantity/words.ts';
import type { Trouble } from '../../network/index.ts';
import { Components } from '../../wiring/check/components.ts';
import { drop, enter } from '../../wiring/key-sets.ts';
import type { Device, Terminal, Wire } from '../../wiring/types.ts';
import { wireElement } from '../conductors.ts';
import type { Load } from '../loads.ts';
import { inSourceOrder, NEUTRAL, type Source, sourceElement } from '../sources.ts';
import { channelsOf, fromNano, nano, together } from './channels.ts';
import { conducting, partsAround } from './diodes.ts';
import { type Arrow, type Edge, Forest, type Link, type Strand } from './forest.ts';
import { type Solved, solvedOf } from './loops.ts';
import { type Pieces, piecesOf, wireLink } from './pieces.ts';
import { shortOf } from './short.ts';

/** The wiring as it stands now. */
export interface Drawing {
  readonly device: (id: string) => Device | undefined;
  readonly terminal: (id: string) => Terminal | undefined;
  readonly wire: (id: string) => Wire | undefined;
}

/** What one load takes. */
export interface Taken {
  readonly nano: number;
  readonly needs: readonly string[];
  /** Of its sources, along its way; what the wires lose is not taken off. */
  readonly volts: number;
  readonly fed: boolean;
}

interface Held {
  load: Load;
  taken: Taken;
  strand: Strand | undefined;
  way: readonly Edge[];
}

const UNFED: Taken = { nano: 0, needs: [], volts: 0, fed: false };
/** Volts below which nothing feeds a load. */
const NO_VOLTS = 1e-3;
/** Loads looked at in one go for each there is, before it is given up. */
const PATIENCE = 64;

export class Grid {
  readonly forest: Forest;
  /** What metal, contacts and fuses join. */
  readonly clusters: Components;
  readonly sources = new Map<string, Source>();
  readonly held = new Map<string, Held>();
  trouble: Trouble | undefined;
  readonly #islands: Components;
  readonly #touch: (atom: string) => void;
  readonly #flows = new Set<Edge>();
  readonly #pieces = new Map<string, Pieces>();
  readonly #terminals = new Map<string, readonly string[]>();
  readonly #wires = new Map<string, Wire>();
  /** Wires by the terminals they name, there or not. */
  readonly wiresAt = new Map<string, Set<string>>();
  readonly #sourceAt = new Map<string, Source>();
  readonly #loadsAt = new Map<string, Set<string>>();
  readonly #followers = new Map<string, Set<string>>();
  readonly #due = new Set<string>();
  /** Followed loads: the sources on their way. */
  readonly #through = new Map<string, readonly string[]>();
  readonly #diodes = new Map<string, Pieces['diodes'][number]>();
  #feedThemselves = new Set<string>();
  #leads = false;
  /** Terminals at which links, loads or diodes have come, gone or changed. */
  readonly #altered = new Set<string>();

  /** @param touch hears what has changed: 'i:wire w1' a current, 'l:K1.A1' a load, 'c:', 'live:', 'motor:', 'shape:', 'loop:', 'e:', 'w@', 'sources', 'trouble' */
  constructor(touch: (atom: string) => void) {
    this.#touch = touch;
    this.forest = new Forest({
      flow: (edge) => {
        this.#flows.add(edge);
        if (edge.link.source !== undefined)
          for (const id of this.#followers.get(edge.link.source) ?? []) this.#due.add(id);
      },
      cut: (strand) => {
        this.#lift(this.held.get(strand.load)!);
        this.#due.add(strand.load);
      },
      turned: (vertex) => touch(`shape:${this.clusters.find(vertex)!.number}`),
      looped: ({ link }) => {
        if (link.rank === 2) touch(`loop:${link.id}`);
      },
      links: (vertex) => {
        this.#altered.add(vertex);
        touch(`e:${vertex}`);
      },
    });
    const quiet = () => {};
    this.#islands = new Components({
      moved: (vertex) => {
        for (const id of this.#loadsAt.get(vertex) ?? []) this.#due.add(id);
      },
      changed: quiet,
      edges: quiet,
    });
    this.clusters = new Components({
      moved: (vertex) => touch(`c:${vertex}`),
      changed: ({ number }, kind) => {
        if (kind === 'live' || kind === 'motor') touch(`${kind}:${number}`);
      },
      edges: quiet,
    });
    this.#addVertex(NEUTRAL, '');
  }

  /** Takes over what has changed, and works out anew what hangs on it. */
  update(devices: Iterable<string>, wires: Iterable<string>, drawing: Drawing): void {
    const dueWires = new Set(wires);
    const changed = [...devices];
    // What goes, before what comes.
    const fresh = new Map<string, Pieces | undefined>();
    for (const id of changed) {
      const device = drawing.device(id);
      const now = device && piecesOf(device, drawing.terminal);
      fresh.set(id, now);
      const old = this.#pieces.get(id);
      const next = new Map(now?.links.map((link) => [link.id, link]));
      for (const link of old?.links ?? []) if (!sameLink(link, next.get(link.id))) this.#removeLink(link.id);
      for (const diode of old?.diodes ?? []) {
        this.#removeLink(diode.id);
        this.#diodes.delete(diode.id);
        this.#altered.add(diode.a).add(diode.b);
      }
      for (const load of old?.loads ?? []) this.#dropLoad(load);
      for (const source of old?.sources ?? []) {
        this.sources.delete(source.id);
        for (const live of source.live) this.#sourceAt.delete(live);
        this.#touch(`source:${source.id}`);
      }
      const there = new Set(device?.terminals);
      for (const terminal of this.#terminals.get(id) ?? []) {
        if (there.has(terminal)) continue;
        for (const wire of this.wiresAt.get(terminal) ?? []) {
          this.#removeLink(wireElement(wire));
          dueWires.add(wire);
        }
        this.forest.removeVertex(terminal);
        this.#islands.removeVertex(terminal);
        this.clusters.removeVertex(terminal);
      }
    }
    for (const id of dueWires) this.#takeWire(id, drawing.wire(id));
    for (const id of changed) this.#takeDevice(id, drawing, fresh.get(id), dueWires);
    const has = (terminal: string): boolean => this.forest.vertices.has(terminal);
    for (const id of dueWires) {
      const wire = this.#wires.get(id);
      const link = wire && wireLink(wire, has);
      const there = this.forest.edges.get(wireElement(id));
      if (!link) continue;
      if (!there) this.#addLink(link);
      else if (there.link.ohms !== link.ohms) this.forest.replace(link);
    }
    if (changed.length > 0) this.#touch('sources');
    this.#standDiodes();
    this.#settle();
  }

  /** nA, effective. */
  nano(link: string): number {
    const edge = this.forest.edges.get(link);
    return edge ? together(this.#sumsOf(edge)) : 0;
  }

  /** Settings that would say the currents nobody has said that flow here. */
  needs(link: string): readonly string[] {
    const edge = this.forest.edges.get(link);
    if (!edge) return [];
    const parts = edge.looped ? this.forest.blockOf(edge).edges : [edge];
    const needs = new Set<string>();
    for (const part of parts)
      for (const strand of part.asking) for (const need of strand.needs) needs.add(need);
    return [...needs].sort();
  }

  /** The source a live terminal belongs to. */
  sourceAt(terminal: string): Source | undefined {
    return this.#sourceAt.get(terminal);
  }

  /** What a device is to the supply. */
  pieces(device: string): Pieces | undefined {
    return this.#pieces.get(device);
  }

  /** Links from where a source gives, in its order. */
  lives({ live }: Source): readonly string[] {
    return live.map(sourceElement);
  }

  #sumsOf(edge: Edge): ReadonlyMap<string, number> {
    if (!edge.looped) return edge.sums;
    return solvedOf(this.forest.blockOf(edge)).sums.get(edge) ?? new Map();
  }

  #addVertex(id: string, kind: string): void {
    this.forest.addVertex(id);
    this.#islands.addVertex(id, '');
    this.clusters.addVertex(id, kind);
  }

  #addLink(link: Parameters<Forest['add']>[0]): void {
    this.forest.add(link);
    this.#islands.addEdge(link.id, link.a, link.b);
    if (link.rank < 3) this.clusters.addEdge(link.id, link.a, link.b);
  }

  #removeLink(id: string): void {
    const edge = this.forest.edges.get(id);
    if (!edge) return;
    this.forest.remove(id);
    this.#islands.removeEdge(id);
    if (edge.link.rank < 3) this.clusters.removeEdge(id);
  }

  #takeWire(id: string, wire: Wire | undefined): void {
    const old = this.#wires.get(id);
    if (old && (!wire || wire.from !== old.from || wire.to !== old.to)) {
      this.#removeLink(wireElement(id));
      for (const end of [old.from, old.to]) {
        drop(this.wiresAt, end, id);
        this.#touch(`w@${end}`);
      }
    }
    if (!wire) {
      this.#wires.delete(id);
      return;
    }
    this.#wires.set(id, wire);
    for (const end of [wire.from, wire.to]) {
      if (this.wiresAt.get(end)?.has(id)) continue;
      enter(this.wiresAt, end, id);
      this.#touch(`w@${end}`);
    }
  }

  #takeDevice(id: string, drawing: Drawing, now: Pieces | undefined, dueWires: Set<string>): void {
    const device = drawing.device(id);
    if (!device || !now) {
      this.#pieces.delete(id);
      this.#terminals.delete(id);
      return;
    }
    const live = new Set(now.sources.flatMap((source) => source.live));
    for (const terminal of device.terminals) {
      const kind = live.has(terminal)
        ? 'live'
        : drawing.terminal(terminal)!.nature.kind === 'motor-phase'
          ? 'motor'
          : '';
      if (this.forest.vertices.has(terminal)) {
        this.clusters.setKind(terminal, kind);
        continue;
      }
      this.#addVertex(terminal, kind);
      for (const wire of this.wiresAt.get(terminal) ?? []) dueWires.add(wire);
    }
    this.#terminals.set(id, device.terminals);
    this.#pieces.set(id, now);
    for (const diode of now.diodes) this.#diodes.set(diode.id, diode);
    for (const { a, b } of now.diodes) this.#altered.add(a).add(b);
    for (const source of now.sources) {
      this.sources.set(source.id, source);
      for (const live of source.live) this.#sourceAt.set(live, source);
      this.#touch(`source:${source.id}`);
    }
    for (const link of now.links) if (!this.forest.edges.has(link.id)) this.#addLink(link);
    for (const load of now.loads) {
      this.held.set(load.id, { load, taken: UNFED, strand: undefined, way: [] });
      for (const end of [load.from, load.to]) {
        enter(this.#loadsAt, end, load.id);
        this.#altered.add(end);
      }
      if (load.follows) {
        enter(this.#followers, load.follows.source.id, load.id);
        this.#leads = true;
      }
      this.#due.add(load.id);
      this.#touch(`load:${load.id}`);
    }
  }

  #dropLoad(load: Load): void {
    const held = this.held.get(load.id)!;
    this.#lift(held);
    this.held.delete(load.id);
    this.#due.delete(load.id);
    for (const end of [load.from, load.to]) {
      drop(this.#loadsAt, end, load.id);
      this.#altered.add(end);
    }
    if (load.follows) {
      drop(this.#followers, load.follows.source.id, load.id);
      this.#through.delete(load.id);
      this.#leads = true;
    }
    this.#touch(`l:${load.id}`);
    this.#touch(`load:${load.id}`);
  }

  #lift(held: Held): void {
    if (held.strand) this.forest.lay(held.strand, held.way, held.load.from, -1);
    held.strand = undefined;
    held.way = [];
  }

  #settle(): void {
    let patience = PATIENCE * (this.held.size + 1);
    do {
      for (const id of this.#due) {
        this.#due.delete(id);
        if (patience-- > 0) this.#weigh(id);
      }
      if (this.#leads) this.#findCircles();
    } while (this.#due.size > 0);
    for (const edge of this.#flows) this.#touch(`i:${edge.link.id}`);
    this.#flows.clear();
    const trouble = this.#findTrouble();
    if (JSON.stringify(trouble) !== JSON.stringify(this.trouble)) this.#touch('trouble');
    this.trouble = trouble;
  }

  /** What one load takes, laid along its way. */
  #weigh(id: string): void {
    const held = this.held.get(id);
    if (!held) return;
    const { load } = held;
    const way = load.from === load.to ? undefined : this.forest.way(load.from, load.to);
    if (load.follows) {
      const through = way?.flatMap(({ link }) => link.source ?? []) ?? [];
      if (through.join('\n') !== (this.#through.get(id) ?? []).join('\n')) {
        this.#through.set(id, through);
        this.#leads = true;
      }
    }
    const over = way ? liftAlong(way, load.from) : { re: 0, im: 0 };
    const volts = Math.hypot(over.re, over.im) / 1e6;
    const fed = volts > NO_VOLTS;
    const [amps, needs] = fed ? this.#drawn(load, volts) : [0, []];
    const taken: Taken = { nano: nano(amps), needs, volts, fed };
    const strand: Strand = {
      load: id,
      amps: channelsOf(amps, over, load.shape),
      needs,
    };
    const same =
      way !== undefined &&
      held.strand !== undefined &&
      JSON.stringify(held.strand) === JSON.stringify(strand) &&
      sameWay(way, held.way);
    if (!same) {
      this.#lift(held);
      if (way && way.length > 0) {
        held.strand = strand;
        held.way = way;
        this.forest.lay(strand, way, load.from);
      }
    }
    if (JSON.stringify(held.taken) !== JSON.stringify(taken)) {
      held.taken = taken;
      this.#touch(`l:${id}`);
    }
  }

  /** A, and what would say it. */
  #drawn(load: Load, volts: number): readonly [number, readonly string[]] {
    if (load.amps !== undefined) return [Math.max(0, load.amps), []];
    if (!load.follows) return [0, [load.needs]];
    if (this.#feedThemselves.has(load.id)) return [0, []];
    const { source, factor } = load.follows;
    const lives = this.lives(source);
    const given = lives.reduce((sum, live) => sum + this.nano(live), 0);
    const amps = fromNano(given) * factor(Math.max(NO_VOLTS, volts));
    const needs = [...new Set(lives.flatMap((live) => this.needs(live)))].sort();
    return [Number.isFinite(amps) ? amps : 0, needs];
  }

  /** Loads that follow a source which they feed themselves, by way of others or not. */
  #findCircles(): void {
    this.#leads = false;
    const circles = new Set<string>();
    for (const start of this.#through.keys()) {
      const seen = new Set<string>();
      const queue = [start];
      for (let at = 0; at < queue.length; at++)
        for (const source of this.#through.get(queue[at]!) ?? [])
          for (const next of this.#followers.get(source) ?? [])
            if (!seen.has(next)) {
              seen.add(next);
              queue.push(next);
            }
      if (seen.has(start)) circles.add(start);
    }
    const before = this.#feedThemselves;
    this.#feedThemselves = circles;
    for (const id of [...before, ...circles]) if (before.has(id) !== circles.has(id)) this.#due.add(id);
  }

  #findTrouble(): Trouble | undefined {
    if (this.#feedThemselves.size > 0) {
      const devices = [
        ...new Set([...this.#feedThemselves].flatMap((id) => this.held.get(id)?.load.device ?? [])),
      ].sort();
      return {
        kind: 'singular',
        nodes: [],
        elements: devices,
        sentence: `What ${andList(devices)} ${devices.length === 1 ? 'gives is led back to what it takes: it' : 'give is led back to what they take: they'} would have to feed ${devices.length === 1 ? 'itself' : 'themselves'}.`,
      };
    }
    const solved = new Set<Solved>();
    for (const extra of this.forest.extras) {
      const block = this.forest.blockOf(extra);
      if (block.lifted) solved.add(solvedOf(block));
    }
    return solved.size === 0 ? undefined : shortOf([...this.sources.values()].sort(inSourceOrder), solved);
  }

  /** Diodes anew in the parts that an edit has altered; each is then a piece of metal, or is not there. */
  #standDiodes(): void {
    const altered = [...this.#altered];
    this.#altered.clear();
    if (this.#diodes.size === 0) return;
    const at = new Map<string, Link[]>();
    for (const diode of this.#diodes.values())
      for (const end of [diode.a, diode.b]) at.set(end, [...(at.get(end) ?? []), diode]);
    const parts = partsAround(altered, (terminal) => {
      const vertex = this.forest.vertices.get(terminal);
      return (
        vertex && {
          links: [...vertex.edges].map(({ link }) => link).filter(({ id }) => !this.#diodes.has(id)),
          loads: [...(this.#loadsAt.get(terminal) ?? [])].map((id) => this.held.get(id)!.load),
          diodes: (at.get(terminal) ?? []).filter(
            ({ a, b }) => this.forest.vertices.has(a) && this.forest.vertices.has(b),
          ),
        }
      );
    });
    const backs = [...this.sources.values()].sort(inSourceOrder).flatMap(({ back }) => back);
    for (const part of parts) {
      const open = conducting(part, backs);
      for (const diode of [...part.diodes].sort((a, b) => (a.id < b.id ? -1 : 1))) {
        const is = this.forest.edges.has(diode.id);
        if (open.has(diode) && !is) this.#addLink(diode);
        else if (!open.has(diode) && is) this.#removeLink(diode.id);
      }
    }
    // How they stand now is what was just worked out.
    this.#altered.clear();
  }
}

/** How far the first end of a way stands above its last. */
function liftAlong(way: readonly Edge[], from: string): Arrow {
  let [re, im, at] = [0, 0, from];
  for (const { link } of way) {
    const down = link.a === at;
    if (link.lifts) {
      re += down ? link.lifts.re : -link.lifts.re;
      im += down ? link.lifts.im : -link.lifts.im;
    }
    at = down ? link.b : link.a;
  }
  return { re, im };
}

const sameWay = (a: readonly Edge[], b: readonly Edge[]): boolean =>
  a.length === b.length && a.every((edge, n) => edge === b[n]);

const sameLink = (a: Parameters<Forest['add']>[0], b: Parameters<Forest['add']>[0] | undefined): boolean =>
  b !== undefined && JSON.stringify(a) === JSON.stringify(b);
