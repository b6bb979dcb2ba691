/** The wiring as the checker keeps it: what is read of each thing, and what hangs together. */
import type { Wiring, WiringDevice } from '../../../refit/types.ts';
import { deviceOf } from '../device-of.ts';
import { drop, enter } from '../key-sets.ts';
import { type Around, readDevice } from '../read-device.ts';
import { readCable, readWire } from '../read-wire.ts';
import type { Cable, Device, Terminal, Wire, WiringProblem } from '../types.ts';
import { type Component, Components } from './components.ts';

/** What happened, by the name under which rules read it; and which subjects came and went. */
export interface Listener {
  readonly touched: (atom: string) => void;
  readonly came: (what: 'terminal' | 'wire' | 'cable' | 'device', id: string) => void;
  readonly went: (what: 'terminal' | 'wire' | 'cable' | 'device', id: string) => void;
  readonly net: (component: Component) => void;
}

const NO_PARTS: Around = { parts: {}, places: {}, chains: [] };

export class WiringState {
  readonly devices = new Map<string, Device>();
  readonly terminals = new Map<string, Terminal>();
  readonly wires = new Map<string, Wire>();
  readonly cables = new Map<string, Cable>();
  readonly problems = new Map<string, readonly WiringProblem[]>();
  /** Wires by the terminal they name, whether it is there or not. */
  readonly wiresAt = new Map<string, Set<string>>();
  /** Wires by the device whose terminal they name, whether it is there or not. */
  readonly wiresOf = new Map<string, Set<string>>();
  /** Wires by the two terminals they join, in the order of their names. */
  readonly between = new Map<string, Set<string>>();
  readonly routes = new Map<string, Set<string>>();
  readonly devicesOfPart = new Map<string, Set<string>>();
  /** Joined for good; and, of the rails, through fuses and switches too. */
  readonly nets: Components;
  readonly rails: Components;
  private readonly cores = new Map<string, Set<string>>();
  private readonly listener: Listener;

  constructor(listener: Listener) {
    this.listener = listener;
    const watch = (prefix: string, own: boolean) => ({
      moved: (vertex: string) => listener.touched(`${prefix}:${vertex}`),
      changed: (component: Component, kind: string) =>
        listener.touched(`${prefix}${component.number}:${kind}`),
      edges: (component: Component) => {
        if (own) listener.net(component);
      },
    });
    this.nets = new Components(watch('n', true));
    this.rails = new Components(watch('r', false));
  }

  setDevice(id: string, typed: WiringDevice | undefined, around: Around | null): void {
    const before = this.devices.get(id);
    const read = typed && readDevice(typed, around ?? NO_PARTS);
    const now = new Map(read?.terminals.map((each) => [each.id, each]) ?? []);
    const old = before ? this.edgesOf(before, this.terminals) : new Map<string, Edge>();
    const next = read ? this.edgesOf(read.device, now) : new Map<string, Edge>();
    for (const [key, edge] of old) if (!next.has(key)) this.removeInner(key, edge);
    for (const each of before?.terminals ?? []) if (!now.has(each)) this.removeTerminal(each);
    for (const each of now.values()) this.setTerminal(each);
    for (const [key, edge] of next) if (!old.has(key)) this.addInner(key, edge);
    if (before?.part) drop(this.devicesOfPart, before.part, id);
    if (read) {
      this.devices.set(id, read.device);
      if (read.device.part !== null) enter(this.devicesOfPart, read.device.part, id);
      this.setProblems(`device:${id}`, read.problems);
      if (!before) this.listener.came('device', id);
    } else {
      this.devices.delete(id);
      this.setProblems(`device:${id}`, []);
      if (before) this.listener.went('device', id);
    }
    this.listener.touched(`d:${id}`);
  }

  /** What hangs together inside a device: metal, and the poles of fuses and switches. */
  private edgesOf(device: Device, terminals: ReadonlyMap<string, Terminal>): Map<string, Edge> {
    const edges = new Map<string, Edge>();
    for (const { a, b } of device.joins) edges.set(`${a}=${b}`, { a, b, metal: true });
    for (const id of device.terminals) {
      const { nature, with: other } = terminals.get(id)!;
      // The first end of a pole stands for it; closed for good in normal work.
      const passes = nature.kind === 'protection' || (nature.kind === 'mains' && nature.side === 'passes');
      if (passes && other !== null && id < other)
        edges.set(`${id}~${other}`, { a: id, b: other, metal: false });
    }
    return edges;
  }

  private addInner(key: string, { a, b, metal }: Edge): void {
    if (metal) this.nets.addEdge(key, a, b);
    this.rails.addEdge(key, a, b);
  }

  private removeInner(key: string, { metal }: Edge): void {
    if (metal) this.nets.removeEdge(key);
    this.rails.removeEdge(key);
  }

  private setTerminal(now: Terminal): void {
    const before = this.terminals.get(now.id);
    this.terminals.set(now.id, now);
    if (!before) {
      this.nets.addVertex(now.id, now.nature.kind);
      this.rails.addVertex(now.id, now.nature.kind);
      for (const wire of this.wiresAt.get(now.id) ?? []) this.connect(wire);
      this.listener.came('terminal', now.id);
    } else {
      if (same(before, now)) return;
      this.nets.setKind(now.id, now.nature.kind);
      this.rails.setKind(now.id, now.nature.kind);
      if (before.nature.kind !== now.nature.kind) {
        this.listener.went('terminal', now.id);
        this.listener.came('terminal', now.id);
      }
    }
    this.listener.touched(`t:${now.id}`);
  }

  private removeTerminal(id: string): void {
    for (const wire of this.wiresAt.get(id) ?? []) this.disconnect(wire);
    this.nets.removeVertex(id);
    this.rails.removeVertex(id);
    this.terminals.delete(id);
    this.listener.touched(`t:${id}`);
    this.listener.went('terminal', id);
  }

  setWire(id: string, wiring: Wiring): void {
    const typed = Object.hasOwn(wiring.wires, id) ? wiring.wires[id] : undefined;
    const before = this.wires.get(id);
    const problems: WiringProblem[] = [];
    if (before && (!typed || typed.from !== before.from || typed.to !== before.to)) {
      this.disconnect(id);
      for (const end of new Set([before.from, before.to])) {
        drop(this.wiresAt, end, id);
        drop(this.wiresOf, deviceOf(end), id);
        this.listener.touched(`w@${end}`);
      }
      drop(this.between, pairOf(before), id);
      this.listener.touched(`w=${pairOf(before)}`);
      this.wires.delete(id);
    }
    if (before?.cable && before.cable !== typed?.cable) {
      drop(this.cores, before.cable, id);
      this.setCable(before.cable, wiring);
    }
    if (!typed) {
      if (before) this.listener.went('wire', id);
      this.setProblems(`wire:${id}`, []);
      this.listener.touched(`w:${id}`);
      return;
    }
    if (typed.cable !== null && before?.cable !== typed.cable) {
      enter(this.cores, typed.cable, id);
      this.setCable(typed.cable, wiring);
    }
    const cable = typed.cable === null ? undefined : this.cables.get(typed.cable);
    this.wires.set(id, readWire(typed, cable, wiring, problems));
    if (!before || before.from !== typed.from || before.to !== typed.to) {
      for (const end of new Set([typed.from, typed.to])) {
        enter(this.wiresAt, end, id);
        enter(this.wiresOf, deviceOf(end), id);
        this.listener.touched(`w@${end}`);
      }
      enter(this.between, pairOf(typed), id);
      this.listener.touched(`w=${pairOf(typed)}`);
      this.connect(id);
    }
    if (!before) this.listener.came('wire', id);
    this.setProblems(`wire:${id}`, problems);
    this.listener.touched(`w:${id}`);
  }

  setCable(id: string, wiring: Wiring): void {
    const typed = Object.hasOwn(wiring.cables, id) ? wiring.cables[id] : undefined;
    const before = this.cables.get(id);
    const problems: WiringProblem[] = [];
    const wires = [...(this.cores.get(id) ?? [])].sort();
    if (before) drop(this.routes, before.route, id);
    if (before) this.listener.touched(`route:${before.route}`);
    if (typed) {
      const now = readCable(typed, wires, problems);
      this.cables.set(id, now);
      enter(this.routes, now.route, id);
      this.listener.touched(`route:${now.route}`);
      if (!before) this.listener.came('cable', id);
    } else {
      this.cables.delete(id);
      if (before) this.listener.went('cable', id);
    }
    this.setProblems(`cable:${id}`, problems);
    this.listener.touched(`c:${id}`);
    // Length and section of a core are those of its cable where it has none of its own.
    const now = this.cables.get(id);
    if (before?.length !== now?.length || before?.section !== now?.section)
      for (const wire of wires)
        if (this.wires.has(wire) && Object.hasOwn(wiring.wires, wire)) {
          this.wires.set(wire, readWire(wiring.wires[wire]!, now, wiring, []));
          this.listener.touched(`w:${wire}`);
        }
  }

  private connect(id: string): void {
    const { from, to } = this.wires.get(id)!;
    if (!this.terminals.has(from) || !this.terminals.has(to)) return;
    this.nets.addEdge(`wire:${id}`, from, to);
    this.rails.addEdge(`wire:${id}`, from, to);
  }

  private disconnect(id: string): void {
    this.nets.removeEdge(`wire:${id}`);
    this.rails.removeEdge(`wire:${id}`);
  }

  private setProblems(of: string, problems: readonly WiringProblem[]): void {
    if (problems.length > 0) this.problems.set(of, problems);
    else this.problems.delete(of);
  }
}

interface Edge {
  readonly a: string;
  readonly b: string;
  readonly metal: boolean;
}

/** The two ends of a wire as one name, whichever way it was written. */
export const pairOf = ({ from, to }: { readonly from: string; readonly to: string }): string =>
  from < to ? `${from}\n${to}` : `${to}\n${from}`;

const same = (a: Terminal, b: Terminal): boolean => JSON.stringify(a) === JSON.stringify(b);
