/** The rules of the supply over a wiring, asked again only as far as an edit reaches. */
import { own } from '../../quantity/own.ts';
import type { Refit } from '../../refit/types.ts';
import type { Nature, Terminal, WiringFinding, WiringProblem } from '../wiring/types.ts';
import { saidOf, sharesOf } from './bus-share.ts';
import { busSizes, fuseSizes, type Size, supplySizes } from './buying.ts';
import { Cells } from './cells.ts';
import type { PowerContext, Role, Way } from './context.ts';
import { Drops } from './drops.ts';
import { type Drawn, powerFacts } from './given.ts';
import { Grid } from './grid/grid.ts';
import type { Pieces } from './grid/pieces.ts';
import { RULES } from './rules/index.ts';
import type { Judged, SubjectKind } from './rules/rule.ts';
import { readPowerSettings } from './settings.ts';
import { byName, Sorted } from './sorted.ts';
import { troubleFinding } from './trouble-finding.ts';
import { type Standing, viewOf } from './view.ts';

/** What stands drawn: a wiring as it is read. */
export type Drawing = Pick<Standing, 'devices' | 'terminals' | 'wires' | 'cables'>;

/** Ids of what is other than before. */
export interface Changed {
  readonly devices: Iterable<string>;
  readonly wires: Iterable<string>;
  readonly cables: Iterable<string>;
}

const WHOLE = 'all';

export class SupplyChecker {
  readonly context: PowerContext;
  readonly #cells = new Cells();
  readonly #grid = new Grid((name) => this.#cells.touch(name));
  readonly #drops: Drops;
  readonly #roles = new Map<Role, Set<string>>();
  readonly #roleOf = new Map<string, readonly Role[]>();
  readonly #terminalsOf = new Map<string, readonly string[]>();
  readonly #subjects = new Map<SubjectKind, Sorted<string>>();
  readonly #open = RULES.map(({ gather }) =>
    gather ? new Sorted<unknown>(gather.order as Order) : undefined,
  );
  readonly #found = RULES.map(() => new Map<string, readonly WiringFinding[]>());
  readonly #gathered: (readonly WiringFinding[])[] = RULES.map(() => []);
  readonly #sizes = new Map<string, readonly Size[]>();
  readonly #problems: WiringProblem[] = [];
  #shares: ReadonlyMap<string, number> = new Map();
  #drawing: Drawing = { devices: new Map(), terminals: new Map(), wires: new Map(), cables: new Map() };
  #refit: Refit;
  #drawn: Drawn;
  #standing: Standing;
  #trouble: readonly WiringFinding[] = [];

  constructor(refit: Refit, drawn: Drawn = {}) {
    this.#refit = refit;
    this.#drawn = drawn;
    this.#standing = this.#stand();
    this.context = viewOf(this.#cells, this.#grid, () => this.#standing);
    this.#drops = new Drops(this.#cells, () => this.context);
    this.#enter('whole', WHOLE);
    this.#cells.keep(
      `size:bus`,
      () => busSizes(this.context),
      (now) => this.#takeSizes('bus', now),
    );
    this.#cells.keep(
      `trouble-finding`,
      () => troubleFinding(this.context),
      (now) => {
        this.#trouble = now ?? [];
      },
    );
    RULES.forEach((rule, n) => {
      const { gather } = rule;
      if (!gather) return;
      this.#cells.keep<readonly WiringFinding[]>(
        `gather:${n}`,
        () => {
          this.#cells.note(`open:${n}`);
          return (
            gather.judge as (context: PowerContext, open: readonly unknown[]) => readonly WiringFinding[]
          )(this.context, this.#open[n]!.list);
        },
        (now) => {
          this.#gathered[n] = now ?? [];
        },
        // Long, and nobody looks at it.
        { compared: false },
      );
    });
  }

  /** Takes over what has changed; costs what it reaches. */
  update(refit: Refit, drawing: Drawing, changed: Changed, drawn: Drawn = this.#drawn): void {
    const before = this.#refit;
    const typed = refit.wiring.settings !== before.wiring.settings;
    const facts =
      refit.parts !== before.parts ||
      refit.places !== before.places ||
      refit.chains !== before.chains ||
      JSON.stringify(drawn) !== JSON.stringify(this.#drawn);
    this.#refit = refit;
    this.#drawn = drawn;
    const { devices: all, terminals, wires: runs, cables } = drawing;
    this.#drawing = { devices: all, terminals, wires: runs, cables };
    if (typed || facts) this.#standing = this.#stand();
    else this.#standing = { ...this.#standing, ...this.#drawing };
    if (typed) this.#cells.touch('settings');
    if (facts) this.#cells.touch('facts');
    const devices = [...changed.devices];
    const wires = [...changed.wires];
    for (const id of wires) this.#cells.touch(`w:${id}`);
    for (const id of changed.cables) this.#cells.touch(`cable:${id}`);
    for (const id of devices) this.#takeDevice(id);
    const fed = devices.length > 0 || facts ? this.#takeShares() : [];
    const touched = [...new Set([...devices, ...fed])];
    const old = new Map(touched.map((id) => [id, this.#grid.pieces(id)]));
    this.#grid.update(touched, wires, {
      device: (id) => drawing.devices.get(id),
      terminal: (id) => this.#shared(id),
      wire: (id) => drawing.wires.get(id),
    });
    for (const id of touched) this.#takePieces(old.get(id), this.#grid.pieces(id));
    for (const id of wires) this.#has('wire', id, drawing.wires.has(id));
    this.#cells.settle();
  }

  /** In the order of the rules, then of what they are about. */
  findings(): readonly WiringFinding[] {
    if (this.#drawing.devices.size === 0) return [];
    const { trouble } = this.#grid;
    const all: WiringFinding[] = [...this.#trouble];
    RULES.forEach((rule, n) => {
      if (trouble && rule.needs === 'currents') return;
      const found = this.#found[n]!;
      if (found.size > 0)
        for (const subject of this.#subjects.get(rule.of)!.list) {
          const each = found.get(subject);
          if (each) for (const one of each) all.push(one);
        }
      for (const one of this.#gathered[n]!) all.push(one);
    });
    return all;
  }

  /** What to buy; of a device with several poles, one. */
  sizes(): readonly Size[] {
    const all = [...(this.#sizes.get('bus') ?? [])];
    if (this.#grid.trouble) return all;
    for (const kind of ['fuse', 'source'] as const) {
      const seen = new Set<string | null>();
      for (const subject of this.#subjects.get(kind)?.list ?? [])
        for (const size of this.#sizes.get(`${kind}:${subject}`) ?? []) {
          if (kind === 'fuse' && seen.has(size.device)) continue;
          seen.add(size.device);
          all.push(size);
        }
    }
    return all;
  }

  /** What could not be read of the settings. */
  get problems(): readonly WiringProblem[] {
    return this.#problems;
  }

  /** How much is kept, for the tests of its bounds; and how many answers were ever asked. */
  get kept(): { readonly answers: number; readonly looks: number; readonly asked: number } {
    return { ...this.#cells.kept, asked: this.#cells.asked };
  }

  #stand(): Standing {
    this.#problems.length = 0;
    return {
      ...this.#drawing,
      settings: readPowerSettings(this.#refit.wiring.settings, this.#problems),
      problems: this.#problems,
      facts: powerFacts(this.#refit, this.#drawn),
      roles: this.#roles,
      capacitanceSaid: (cable) =>
        (own(own(this.#refit.wiring.cables, cable)?.settings ?? {}, 'capacitance') ?? '').trim() !== '',
    };
  }

  #takeDevice(id: string): void {
    const device = this.#drawing.devices.get(id);
    this.#cells.touch(`d:${id}`);
    const was = this.#terminalsOf.get(id) ?? [];
    const now = device?.terminals ?? [];
    for (const terminal of new Set([...was, ...now])) {
      this.#cells.touch(`t:${terminal}`);
      const nature = now.includes(terminal) ? this.#drawing.terminals.get(terminal)?.nature : undefined;
      this.#takeRoles(terminal, nature ? rolesOf(nature) : []);
      const other = nature && this.#drawing.terminals.get(terminal)!.with;
      this.#has('fuse', terminal, nature?.kind === 'protection' && !!other && terminal < other);
    }
    if (device) this.#terminalsOf.set(id, now);
    else this.#terminalsOf.delete(id);
    if (this.#has('device', id, device !== undefined)) this.#cells.touch('devices');
  }

  /** Devices whose share of the bus is another than before. */
  #takeShares(): readonly string[] {
    const { devices, terminals } = this.#drawing;
    const feeds = [...(this.#roles.get('power-feed') ?? [])].sort(byName).map((id) => terminals.get(id)!);
    const now = sharesOf(
      saidOf(feeds, (device) => devices.get(device)?.kind),
      this.#drawn.busSteadyAmps,
    );
    const was = this.#shares;
    this.#shares = now;
    return [...new Set([...was.keys(), ...now.keys()])]
      .filter((id) => was.get(id) !== now.get(id) && terminals.has(id))
      .map((id) => terminals.get(id)!.device);
  }

  /** A terminal as the currents have it. */
  #shared(id: string): Terminal | undefined {
    const terminal = this.#drawing.terminals.get(id);
    const amps = this.#shares.get(id);
    return terminal?.nature.kind === 'feed' && amps !== undefined
      ? { ...terminal, nature: { ...terminal.nature, amps } }
      : terminal;
  }

  #takeRoles(terminal: string, now: readonly Role[]): void {
    const was = this.#roleOf.get(terminal) ?? [];
    for (const role of was)
      if (!now.includes(role)) {
        this.#roles.get(role)!.delete(terminal);
        this.#cells.touch(`role:${role}`);
      }
    for (const role of now)
      if (!was.includes(role)) {
        const set = this.#roles.get(role);
        if (set) set.add(terminal);
        else this.#roles.set(role, new Set([terminal]));
        this.#cells.touch(`role:${role}`);
      }
    if (now.length > 0) this.#roleOf.set(terminal, now);
    else this.#roleOf.delete(terminal);
    this.#has('primary', terminal, now.includes('primary'));
  }

  #takePieces(was: Pieces | undefined, now: Pieces | undefined): void {
    for (const kind of ['sources', 'loads'] as const) {
      const subject = kind === 'sources' ? 'source' : 'load';
      const there = new Set(now?.[kind].map(({ id }) => id));
      for (const { id } of was?.[kind] ?? []) if (!there.has(id)) this.#has(subject, id, false);
      for (const id of there) this.#has(subject, id, true);
    }
  }

  /** True where it came or went. */
  #has(kind: SubjectKind, id: string, now: boolean): boolean {
    const was = this.#cells.has(`has:${kind}:${id}`);
    if (was === now) return false;
    if (now) this.#enter(kind, id);
    else this.#leave(kind, id);
    return true;
  }

  #enter(kind: SubjectKind, id: string): void {
    const list = this.#subjects.get(kind) ?? new Sorted<string>(byName);
    this.#subjects.set(kind, list);
    list.add(id);
    this.#cells.keep(`has:${kind}:${id}`, () => true);
    RULES.forEach((rule, n) => {
      if (rule.of !== kind) return;
      this.#cells.keep<Judged<unknown>>(
        `rule:${n}:${id}`,
        () => rule.judge(this.context, id, this.#drops),
        (now, before) => this.#takeJudged(n, id, now, before),
      );
    });
    if (kind === 'load')
      this.#cells.keep<Way | undefined>(
        `laid:${id}`,
        () => this.context.ways.get(id),
        (now, before) => this.#drops.lay(id, now, before),
        { early: true },
      );
    if (kind === 'fuse' || kind === 'source')
      this.#cells.keep<readonly Size[]>(
        `size:${kind}:${id}`,
        () => (kind === 'fuse' ? fuseSizes : supplySizes)(this.context, id),
        (now) => this.#takeSizes(`${kind}:${id}`, now),
      );
  }

  #leave(kind: SubjectKind, id: string): void {
    this.#subjects.get(kind)!.remove(id);
    this.#cells.drop(`has:${kind}:${id}`);
    RULES.forEach((rule, n) => {
      if (rule.of === kind) this.#cells.drop(`rule:${n}:${id}`);
    });
    this.#cells.drop(`laid:${id}`);
    this.#cells.drop(`size:${kind}:${id}`);
  }

  #takeJudged(
    n: number,
    subject: string,
    now: Judged<unknown> | undefined,
    before: Judged<unknown> | undefined,
  ): void {
    if (now && now.findings.length > 0) this.#found[n]!.set(subject, now.findings);
    else this.#found[n]!.delete(subject);
    const open = this.#open[n];
    if (!open || (before?.open === undefined && now?.open === undefined)) return;
    if (before?.open !== undefined) open.remove(before.open);
    if (now?.open !== undefined) open.add(now.open);
    this.#cells.touch(`open:${n}`);
  }

  #takeSizes(of: string, now: readonly Size[] | undefined): void {
    if (now && now.length > 0) this.#sizes.set(of, now);
    else this.#sizes.delete(of);
  }
}

type Order = (a: unknown, b: unknown) => number;

function rolesOf(nature: Nature): readonly Role[] {
  switch (nature.kind) {
    case 'mains':
      return nature.side === 'gives'
        ? []
        : nature.side === 'takes'
          ? ['takes', 'charges', 'leaks']
          : ['leaks'];
    case 'protection':
      return nature.form === 'residual' ? ['residual'] : [];
    case 'winding':
      return nature.side === 'primary' ? ['primary'] : [];
    case 'earth':
      return nature.role === 'source' ? ['inlet'] : [];
    case 'rectifier':
      return nature.leg === 'ac' ? ['charges'] : [];
    case 'feed':
      return nature.role === 'power' ? ['power-feed'] : [];
    default:
      return [];
  }
}
