/** Wanted wires laid: strips where a terminal would hold too many, numbers, colours, sections. */
import type { WiringWire } from '../../../refit/types.ts';
import { readWiring } from '../read.ts';
import type { Net, ReadWiring } from '../types.ts';
import type { Build } from './build.ts';

class Sets {
  private readonly parent = new Map<string, string>();

  find(id: string): string {
    let at = id;
    for (let up = this.parent.get(at); up !== undefined; up = this.parent.get(at)) at = up;
    return at;
  }

  join(a: string, b: string): void {
    const [one, other] = [this.find(a), this.find(b)];
    if (one !== other) this.parent.set(one, other);
  }
}

export function lay(build: Build): void {
  const before = readWiring(build.wiring, build.refit);
  const sets = new Sets();
  for (const net of before.nets) for (const each of net.terminals) sets.join(each, net.id);
  const wired = new Set([...build.wires.values()].flatMap(({ from, to }) => [from, to]));
  const wants = build.wants.filter(({ from, to, id }) => {
    if (!build.has(from) || !build.has(to) || from === to) return false;
    if (id !== undefined && build.wires.has(id)) return false;
    if (sets.find(from) === sets.find(to)) return false;
    // A terminal for one purpose that somebody has wired stays as it is.
    if ([from, to].some((end) => wired.has(end) && !shared(build, end))) return false;
    sets.join(from, to);
    return true;
  });
  const load = new Map<string, number>();
  const count = (end: string, by: number) => load.set(end, (load.get(end) ?? 0) + by);
  for (const { from, to } of build.wires.values()) {
    count(from, 1);
    count(to, 1);
  }
  const crowded = crowdedOf(build, wants, load);
  let number = 1;
  const freeId = () => {
    while (build.wires.has(`w${number}`) || reserved.has(`w${number}`)) number++;
    return `w${number}`;
  };
  const reserved = new Set(wants.flatMap(({ id }) => (id === undefined ? [] : [id])));
  const put = (wire: Omit<WiringWire, 'settings'>) => build.wires.set(wire.id, { ...wire, settings: {} });
  const strips = new Map<string, StripWays>();
  for (const end of crowded.keys()) {
    const strip = stripFor(build, before, end, crowded.get(end)!);
    strips.set(end, strip);
    if (strip.fresh) put({ id: freeId(), from: end, to: `${strip.device}.1`, cable: null });
  }
  for (const { from, to, cable, id } of wants) {
    const [one, other] = [from, to].map((end) => strips.get(end)?.next() ?? end);
    put({ id: id ?? freeId(), from: one!, to: other!, cable });
  }
  dress(build);
}

/** Whether a terminal may take a further wire though it has one. */
function shared(build: Build, id: string): boolean {
  const terminal = build.terminal(id);
  const kind = terminal?.nature.kind;
  return (
    kind === 'supply' ||
    kind === 'joint' ||
    kind === 'feed' ||
    kind === 'common' ||
    kind === 'protection' ||
    kind === 'contact' ||
    kind === 'earth' ||
    kind === 'mains' ||
    kind === 'output' ||
    kind === 'load'
  );
}

/** Terminals that would get more conductors than they hold, with how many are wanted there. */
function crowdedOf(
  build: Build,
  wants: Build['wants'],
  load: ReadonlyMap<string, number>,
): Map<string, number> {
  const wanted = new Map<string, number>();
  for (const { from, to } of wants) for (const end of [from, to]) wanted.set(end, (wanted.get(end) ?? 0) + 1);
  return new Map(
    [...wanted].filter(
      ([end, more]) =>
        more + (load.get(end) ?? 0) > build.terminal(end)!.holds &&
        build.terminal(end)!.nature.kind !== 'earth',
    ),
  );
}

interface StripWays {
  readonly device: string;
  readonly fresh: boolean;
  readonly next: () => string;
}

/** A bridged strip on that terminal: the one that hangs there already, made longer, or a new one. */
function stripFor(build: Build, before: ReadWiring, end: string, wanted: number): StripWays {
  const there = before.netOf
    .get(end)
    ?.terminals.map((id) => id.slice(0, id.indexOf('.')))
    .find(
      (id) =>
        build.devices.get(id)?.kind === 'strip' &&
        (build.devices.get(id)!.settings.bridges ?? '').startsWith('1-'),
    );
  const used =
    there === undefined
      ? 1
      : Math.max(
          ...[...build.wires.values()]
            .flatMap(({ from, to }) => [from, to])
            .map((each) => (each.startsWith(`${there}.`) ? Number(each.slice(there.length + 1)) || 0 : 0)),
        );
  const ways = used + Math.ceil(wanted / 2) + 1;
  let device = there;
  if (device === undefined)
    device = build.device(build.freeId('X2'), 'strip', `Distribution of ${end}`, {
      settings: { ways: String(ways), bridges: `1-${ways}` },
    });
  else if (Number(build.devices.get(device)!.settings.ways ?? '10') < ways) {
    const own = build.devices.get(device)!;
    build.devices.set(device, {
      ...own,
      settings: { ...own.settings, ways: String(ways), bridges: `1-${ways}` },
    });
  }
  let at = 2 * used;
  return { device, fresh: there === undefined, next: () => `${device}.${Math.floor(at++ / 2) + 1}` };
}

/** Number, colour, section and ferrule of wires that have none yet. */
function dress(build: Build): void {
  const read = readWiring(build.wiring, build.refit);
  const numbers = new Map<Net, string>();
  const taken = new Set<string>();
  for (const wire of read.wires.values()) {
    const net = read.netOf.get(wire.from);
    if (wire.number === '') continue;
    taken.add(wire.number);
    if (net && !numbers.has(net)) numbers.set(net, wire.number);
  }
  const carries = carriesOf(read);
  let next = 1;
  for (const wire of [...read.wires.values()].sort((a, b) => order(a.id) - order(b.id))) {
    if (build.refit.wiring.wires[wire.id] !== undefined) continue;
    const net = read.netOf.get(wire.from)!;
    let number = numbers.get(net);
    const earth =
      net.terminals.some((id) => isBar(read, id)) &&
      [wire.from, wire.to].some((id) => read.terminals.get(id)?.nature.kind === 'earth');
    if (number === undefined) {
      while (taken.has(String(next))) next++;
      number = earth ? 'PE' : String(next);
      taken.add(number);
      numbers.set(net, number);
    }
    const typed = build.wires.get(wire.id)!;
    build.wires.set(wire.id, {
      ...typed,
      settings: {
        number: earth ? 'PE' : number,
        ...look(read, net, carries.get(net)!, wire.cable !== null, earth),
        ...typed.settings,
      },
    });
  }
}

const isBar = (read: ReadWiring, id: string): boolean => {
  const nature = read.terminals.get(id)?.nature;
  return nature?.kind === 'earth' && nature.role === 'bar';
};

const order = (id: string): number => Number(/\d+$/.exec(id)?.[0] ?? 0);

/** What flows in a net, through fuses and main contacts. */
type Carries = 'mains' | 'neutral' | 'power' | 'control';

function carriesOf(read: ReadWiring): ReadonlyMap<Net, Carries> {
  const sets = new Sets();
  for (const { id, nature, with: other } of read.terminals.values()) {
    const passes =
      nature.kind === 'protection' ||
      (nature.kind === 'mains' && nature.side === 'passes') ||
      (nature.kind === 'contact' && nature.role === 'main');
    if (passes && other !== null) sets.join(read.netOf.get(id)!.id, read.netOf.get(other)!.id);
  }
  const found = new Map<string, Carries>();
  const note = (net: Net, what: Carries) => {
    const root = sets.find(net.id);
    if (found.get(root) !== 'neutral') found.set(root, what);
  };
  for (const { id, nature } of read.terminals.values()) {
    const net = read.netOf.get(id)!;
    if (nature.kind === 'mains')
      note(net, nature.pole === 'N' && nature.side === 'gives' ? 'neutral' : 'mains');
    else if (nature.kind === 'winding') note(net, nature.side === 'primary' ? 'mains' : 'power');
    else if (nature.kind === 'rectifier' || (nature.kind === 'feed' && nature.role === 'power'))
      note(net, 'power');
  }
  return new Map(read.nets.map((net) => [net, found.get(sets.find(net.id)) ?? 'control']));
}

/** IEC 60204-1, 13.2: colours where colour is used; sections are a suggestion that the power rules look over. */
function look(
  read: ReadWiring,
  net: Net,
  carries: Carries,
  core: boolean,
  earth: boolean,
): Record<string, string> {
  if (core) return earth ? { colour: 'green-yellow' } : {};
  const ferrule = { ferrule: 'insulated' };
  if (earth) return { colour: 'green-yellow', section: '4 mm²', ...ferrule };
  // Before the breakers of its branches a wire carries all of them.
  const main = net.terminals.some((id) => {
    const { kind } = read.devices.get(read.terminals.get(id)!.device)!;
    return kind === 'mains-inlet' || kind === 'main-switch';
  });
  switch (carries) {
    case 'neutral':
      return { colour: 'light blue', section: main ? '4 mm²' : '2.5 mm²', ...ferrule };
    case 'mains':
      return { colour: 'black', section: main ? '4 mm²' : '2.5 mm²', ...ferrule };
    case 'power':
      return { colour: 'black', section: '4 mm²', ...ferrule };
    case 'control':
      return { colour: 'blue', section: '1 mm²', ...ferrule };
  }
}
