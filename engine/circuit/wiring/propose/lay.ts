/** Wanted wires laid, with strips where a terminal would hold too many. */
import type { WiringWire } from '../../../refit/types.ts';
import { Union } from '../../network/union.ts';
import { readWiring } from '../read.ts';
import type { ReadWiring } from '../types.ts';
import type { Build } from './build.ts';
import { dress } from './dress.ts';

export function lay(build: Build): void {
  const before = readWiring(build.wiring, build.refit);
  const sets = new Union();
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
  clothe(build);
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

/** Wires that are new get what they usually bear; what is typed stays. */
function clothe(build: Build): void {
  const fresh = new Set([...build.wires.keys()].filter((id) => build.refit.wiring.wires[id] === undefined));
  const { settings, reasons } = dress(
    { ...build.refit, wiring: build.wiring },
    fresh,
    build.cableReasons,
    build.drawn,
  );
  for (const id of fresh) {
    const typed = build.wires.get(id)!;
    build.wires.set(id, { ...typed, settings: { ...settings.get(id), ...typed.settings } });
    build.reasons.set(id, reasons.get(id)!);
  }
}
