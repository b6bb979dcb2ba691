/**
 * The rules asked of a wiring, and asked anew only where an edit touched what they saw.
 *
 * Every answer remembers what its rule looked at; what nobody looks at any more is forgotten, so that the memory is
 * that of the wiring as it stands, however many edits there were.
 */
import { own } from '../../../quantity/own.ts';
import type { Change, Wiring } from '../../../refit/types.ts';
import { CABINET_WIRE } from '../inside-length.ts';
import { putTogether } from '../read.ts';
import type { Around } from '../read-device.ts';
import { RULES } from '../rules/index.ts';
import type { ReadWiring, WiringFinding, WiringProblem } from '../types.ts';
import type { Component } from './components.ts';
import { joiningWire, wiresOfWay } from './joining.ts';
import type { Rule, SubjectOf } from './rule.ts';
import { WiringState } from './state.ts';
import { type Gift, NOTHING, type Total, View } from './view.ts';

interface Answer {
  readonly rule: Rule;
  readonly subject: string;
  /** The net it is about, where it is about one. */
  readonly net?: Component;
  atoms: ReadonlySet<string>;
  findings: readonly WiringFinding[];
  gifts: readonly Gift[];
}

/** Sums are kept in whole nanoamperes: exact, in whatever order they came. */
const NANO = 1e9;
interface Sum {
  nano: number;
  count: number;
  unknown: number;
}

/** What one edit did to the findings. */
export interface Rejudged {
  /** New, or other than before. */
  readonly changed: readonly WiringFinding[];
  /** Ids of those that are no more. */
  readonly gone: readonly string[];
  /** How many rules were asked. */
  readonly asked: number;
}

const BY_NATURE = new Map<string, Rule[]>();
const OF: Readonly<Record<SubjectOf, Rule[]>> = {
  terminal: [],
  wire: [],
  cable: [],
  device: [],
  net: [],
};
for (const rule of RULES) {
  if (typeof rule.of === 'string') OF[rule.of].push(rule);
  else for (const kind of rule.of) BY_NATURE.set(kind, [...(BY_NATURE.get(kind) ?? []), rule]);
}

export class WiringChecker {
  private readonly state: WiringState;
  private readonly view: View;
  private readonly answers = new Map<string, Answer>();
  private readonly watchers = new Map<string, Set<Answer>>();
  private readonly ofSubject = new Map<string, Answer[]>();
  private readonly sums = new Map<string, Sum>();
  private readonly ofNet = new Map<number, Answer[]>();
  private readonly found = new Map<string, WiringFinding>();
  private readonly due: [Set<Answer>, Set<Answer>] = [new Set(), new Set()];
  private before = new Map<string, WiringFinding | undefined>();
  private fresh = nothingNew();
  private wiring: Wiring;
  private around: Around | null;

  constructor(wiring: Wiring, around: Around | null = null) {
    this.wiring = { devices: {}, wires: {}, cables: {}, settings: {} };
    this.around = around;
    this.state = new WiringState({
      touched: (atom) => this.touch(atom),
      came: (what, id) => this.came(what, id),
      went: (what, id) => this.went(`${what}:${id}`),
      net: (component) => this.netChanged(component),
    });
    this.view = new View(this.state, (to) => {
      const sum = this.sums.get(to);
      return sum
        ? ({ sum: sum.nano / NANO, count: sum.count, unknown: sum.unknown } satisfies Total)
        : NOTHING;
    });
    this.update(wiring, around);
  }

  /** All findings, in the order of their ids. */
  findings(): readonly WiringFinding[] {
    return [...this.found.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  }

  /** The wire that most likely joins two terminals that must not be joined; undefined where no wire does. */
  joining([here, there]: readonly [string, string]): string | undefined {
    return joiningWire(this.state, here, there);
  }

  /** All wires of the shortest way between them, contacts closed. */
  wiresOfWay([here, there]: readonly [string, string]): readonly string[] {
    return wiresOfWay(this.state, here, there);
  }

  /** What could not be read. */
  problems(): readonly WiringProblem[] {
    return [...this.state.problems.keys()].sort().flatMap((of) => this.state.problems.get(of)!);
  }

  /** Everything read, as the plain reading has it and in the order of the wiring. */
  read(): ReadWiring {
    const { state } = this;
    const said = (of: string, problems: WiringProblem[]) => problems.push(...(state.problems.get(of) ?? []));
    return putTogether(this.wiring, {
      device: (id) => {
        const device = state.devices.get(id)!;
        return {
          device,
          terminals: device.terminals.map((each) => state.terminals.get(each)!),
          problems: state.problems.get(`device:${id}`) ?? [],
        };
      },
      cable: (id, wires, problems) => {
        said(`cable:${id}`, problems);
        return { ...state.cables.get(id)!, wires };
      },
      wire: (id, _, problems) => {
        said(`wire:${id}`, problems);
        return state.wires.get(id)!;
      },
    });
  }

  /** Everything read, as it is kept: it goes on changing with the wiring. */
  get drawing(): Pick<ReadWiring, 'devices' | 'terminals' | 'wires' | 'cables'> {
    return this.state;
  }

  /** Ids of what is other than when this was last asked. */
  news(): { readonly devices: Set<string>; readonly wires: Set<string>; readonly cables: Set<string> } {
    const { fresh } = this;
    this.fresh = nothingNew();
    return fresh;
  }

  /** How much is kept, for the tests of its bounds. */
  get kept(): { readonly answers: number; readonly watched: number; readonly sums: number } {
    let watched = 0;
    for (const set of this.watchers.values()) watched += set.size;
    return { answers: this.answers.size, watched, sums: this.sums.size };
  }

  /** Takes over what the changes of an edit name; costs what they touch. */
  apply(changes: readonly Change[], wiring: Wiring, around: Around | null = this.around): Rejudged {
    const devices = new Set<string>();
    const partChanged = around !== this.around;
    for (const change of changes) {
      if (change.do === 'device') devices.add(change.id);
      else if (change.do === 'fact' || change.do === 'part') {
        const part = change.do === 'fact' ? change.part : change.id;
        for (const id of this.state.devicesOfPart.get(part) ?? []) devices.add(id);
      } else if ((change.do === 'place' || change.do === 'chain') && partChanged)
        for (const set of this.state.devicesOfPart.values()) for (const id of set) devices.add(id);
    }
    const old = this.wiring;
    this.wiring = wiring;
    this.around = around;
    for (const id of devices) this.state.setDevice(id, own(wiring.devices, id), around);
    for (const change of changes) if (change.do === 'cable') this.state.setCable(change.id, wiring);
    const wires = new Set(changes.flatMap((change) => (change.do === 'wire' ? [change.id] : [])));
    for (const id of [...wires, ...this.lyingOtherwise(old, devices)]) this.state.setWire(id, wiring);
    return this.settle();
  }

  /** Takes over whatever is not the same object as before; looks at every thing once. */
  update(wiring: Wiring, around: Around | null = this.around): Rejudged {
    const old = this.wiring;
    const parts = around !== this.around;
    this.wiring = wiring;
    this.around = around;
    const devices = [...differing(old.devices, wiring.devices, parts)];
    for (const id of devices) this.state.setDevice(id, own(wiring.devices, id), around);
    for (const id of differing(old.cables, wiring.cables)) this.state.setCable(id, wiring);
    const wires = new Set(differing(old.wires, wiring.wires));
    for (const id of [...wires, ...this.lyingOtherwise(old, devices)]) this.state.setWire(id, wiring);
    return this.settle();
  }

  /** Wires that may have another length though nobody touched them: their ends moved, or all wires in the cabinet did. */
  private lyingOtherwise(old: Wiring, devices: Iterable<string>): readonly string[] {
    const { wiring } = this;
    if (own(old.settings, CABINET_WIRE) !== own(wiring.settings, CABINET_WIRE))
      return Object.keys(wiring.wires);
    const moved = [...devices].filter((id) => own(old.devices, id)?.where !== own(wiring.devices, id)?.where);
    return moved
      .flatMap((id) => [...(this.state.wiresOf.get(id) ?? [])])
      .filter((id) => Object.hasOwn(wiring.wires, id));
  }

  private touch(atom: string): void {
    if (atom[1] === ':') {
      const id = atom.slice(2);
      if (atom[0] === 'd') this.fresh.devices.add(id);
      else if (atom[0] === 'w') this.fresh.wires.add(id);
      else if (atom[0] === 'c') this.fresh.cables.add(id);
    }
    for (const answer of this.watchers.get(atom) ?? []) this.due[answer.rule.sums ? 1 : 0].add(answer);
    const member = /^n(\d+):/.exec(atom);
    if (member) {
      for (const answer of this.watchers.get(`all${member[1]}`) ?? []) this.due[0].add(answer);
      for (const answer of this.watchers.get(`loops${member[1]}`) ?? []) this.due[0].add(answer);
    }
  }

  private came(what: 'terminal' | 'wire' | 'cable' | 'device', id: string): void {
    const rules =
      what === 'terminal'
        ? [...OF.terminal, ...(BY_NATURE.get(this.state.terminals.get(id)!.nature.kind) ?? [])]
        : OF[what];
    for (const rule of rules) this.enter(rule, id, `${what}:${id}`);
  }

  private enter(rule: Rule, subject: string, of: string, net?: Component): Answer {
    const answer: Answer = {
      rule,
      subject,
      ...(net ? { net } : {}),
      atoms: new Set(),
      findings: [],
      gifts: [],
    };
    this.answers.set(`${rule.id}\n${of}`, answer);
    const list = this.ofSubject.get(of);
    if (list) list.push(answer);
    else this.ofSubject.set(of, [answer]);
    this.due[rule.sums ? 1 : 0].add(answer);
    return answer;
  }

  private went(of: string): void {
    for (const answer of this.ofSubject.get(of) ?? []) {
      this.take(answer, new Set(), [], []);
      this.answers.delete(`${answer.rule.id}\n${of}`);
      this.due[0].delete(answer);
      this.due[1].delete(answer);
    }
    this.ofSubject.delete(of);
  }

  /** Nets are asked about only while they have more wires than they need. */
  private netChanged(net: Component): void {
    const loops = net.size > 0 && net.edges > net.size - 1;
    const there = this.ofNet.get(net.number);
    if (loops && !there)
      this.ofNet.set(
        net.number,
        OF.net.map((rule) => this.enter(rule, String(net.number), `net:${net.number}`, net)),
      );
    else if (!loops && there) {
      this.ofNet.delete(net.number);
      this.went(`net:${net.number}`);
    } else if (there) for (const answer of there) this.due[0].add(answer);
  }

  private settle(): Rejudged {
    let asked = 0;
    for (const round of [0, 1] as const) {
      const due = this.due[round];
      for (const answer of due) {
        due.delete(answer);
        asked++;
        this.view.begin();
        const subject = answer.net ? this.firstOf(answer.net) : answer.subject;
        const findings = subject === undefined ? [] : answer.rule.judge(this.view, subject);
        this.take(answer, this.view.atoms, findings, this.view.gifts);
      }
    }
    const changed: WiringFinding[] = [];
    const gone: string[] = [];
    const { before } = this;
    this.before = new Map();
    for (const [id, was] of before) {
      const now = this.found.get(id);
      if (now === undefined) {
        if (was !== undefined) gone.push(id);
      } else if (was === undefined || JSON.stringify(was) !== JSON.stringify(now)) changed.push(now);
    }
    return { changed, gone, asked };
  }

  /** A net that has been emptied has no terminal, and nothing to be asked. */
  private firstOf(net: Component): string | undefined {
    return this.view.all(net)[0];
  }

  private take(
    answer: Answer,
    atoms: ReadonlySet<string>,
    findings: readonly WiringFinding[],
    gifts: readonly Gift[],
  ): void {
    for (const atom of answer.atoms) {
      if (atoms.has(atom)) continue;
      const set = this.watchers.get(atom)!;
      set.delete(answer);
      if (set.size === 0) this.watchers.delete(atom);
    }
    for (const atom of atoms) {
      if (answer.atoms.has(atom)) continue;
      const set = this.watchers.get(atom);
      if (set) set.add(answer);
      else this.watchers.set(atom, new Set([answer]));
    }
    answer.atoms = atoms;
    for (const each of answer.findings) {
      if (!this.before.has(each.id)) this.before.set(each.id, this.found.get(each.id));
      if (this.found.get(each.id) === each) this.found.delete(each.id);
    }
    for (const each of findings) {
      if (!this.before.has(each.id)) this.before.set(each.id, undefined);
      this.found.set(each.id, each);
    }
    answer.findings = findings;
    if (answer.gifts.length === 0 && gifts.length === 0) return;
    const was = new Map<string, string>();
    for (const { to } of [...answer.gifts, ...gifts]) if (!was.has(to)) was.set(to, this.sayTotal(to));
    for (const gift of answer.gifts) this.add(gift, -1);
    for (const gift of gifts) this.add(gift, 1);
    answer.gifts = gifts;
    for (const [to, before] of was) if (this.sayTotal(to) !== before) this.touch(`sum:${to}`);
  }

  private sayTotal(to: string): string {
    const sum = this.sums.get(to);
    return sum ? `${sum.nano} ${sum.count} ${sum.unknown}` : '';
  }

  private add({ to, amps }: Gift, sign: 1 | -1): void {
    const sum = this.sums.get(to) ?? { nano: 0, count: 0, unknown: 0 };
    if (amps === undefined) sum.unknown += sign;
    else sum.nano += sign * Math.round(amps * NANO);
    sum.count += sign;
    if (sum.count === 0) this.sums.delete(to);
    else this.sums.set(to, sum);
  }
}

const nothingNew = () => ({
  devices: new Set<string>(),
  wires: new Set<string>(),
  cables: new Set<string>(),
});

/** Ids of what is not the same object in both. */
function differing<T>(
  old: Readonly<Record<string, T>>,
  now: Readonly<Record<string, T>>,
  every = false,
): readonly string[] {
  const ids = new Set<string>();
  for (const id of Object.keys(now)) if (every || !Object.hasOwn(old, id) || old[id] !== now[id]) ids.add(id);
  for (const id of Object.keys(old)) if (!Object.hasOwn(now, id)) ids.add(id);
  return [...ids];
}

/** All findings of a wiring, asked from the start. */
export const checkWiring = (wiring: Wiring, around: Around | null = null): readonly WiringFinding[] =>
  new WiringChecker(wiring, around).findings();
