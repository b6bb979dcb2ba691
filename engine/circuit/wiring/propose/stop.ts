/** The stop circuit taken over: the same elements, the same terminals, the same wires. */
import type { StopCircuit, StopElement } from '../../../refit/types.ts';
import { WIRING_KINDS } from '../kinds/index.ts';
import type { Build } from './build.ts';
import { mainsMarks } from './mains.ts';

/** Where elements of a stop circuit usually are. */
const WHERE: Readonly<Record<string, string>> = {
  mushroom: 'panel',
  button: 'panel',
  key: 'panel',
  door: 'door',
  'locked-door': 'door',
  limit: 'machine',
  home: 'machine',
  brake: 'machine',
};

/** Settings that the wiring has from elsewhere: how a supply is earthed from its wires, phases from the plate of the drive. */
const OTHERWISE = new Set(['earthed', 'phases']);

/** The stop circuit calls what a drive is fed by L and N, whatever it is fed with. */
const FED: Readonly<Record<string, readonly string[]>> = { L: ['DC+', 'L1'], N: ['DC-', 'L2'] };

const feedMark = (has: (mark: string) => boolean, mark: string): string =>
  has(mark) ? mark : (FED[mark]?.find(has) ?? mark);

/** Whether an element is the mains, which have an inlet of their own in the wiring. */
export const isMains = (element: StopElement | undefined): boolean =>
  element?.kind === 'supply' && (element.settings.gives ?? '').includes('mains');

export interface TakenOver {
  /** Device of each element, by the element's id. */
  readonly device: (element: string) => string | undefined;
  /** Spindle drives that take mains, whether the circuit draws them so or on the d.c. of the axes. */
  readonly mainsFed: readonly { readonly drive: string; readonly contactors: readonly string[] }[];
}

export function takeOver(
  build: Build,
  stop: StopCircuit,
  parts: ReadonlyMap<
    string,
    { part: string | null; kind?: string; settings?: Record<string, string | undefined> }
  >,
): TakenOver {
  const ids = new Map<string, string>();
  for (const element of Object.values(stop.elements)) {
    const given = parts.get(element.id);
    const kind = given?.kind ?? element.kind;
    if (!Object.hasOwn(WIRING_KINDS, kind) || isMains(element)) continue;
    const known = WIRING_KINDS[kind]!.settings;
    const settings = Object.fromEntries(
      Object.entries(element.settings).filter(([name]) => Object.hasOwn(known, name) && !OTHERWISE.has(name)),
    );
    ids.set(
      element.id,
      build.device(element.id, kind, element.name, {
        part: given?.part ?? null,
        settings: { ...settings, ...given?.settings },
        where: WHERE[element.kind] ?? 'cabinet',
      }),
    );
  }
  const device = (element: string) => ids.get(element);
  const mainsFed = spindleFeeds(build, stop, device);
  const skipped = new Set(mainsFed.flatMap(({ wires }) => wires));
  for (const wire of Object.values(stop.wires)) {
    if (skipped.has(wire.id)) continue;
    const [from, to] = [wire.from, wire.to].map((end) => {
      const dot = end.indexOf('.');
      const own = device(end.slice(0, dot));
      if (own === undefined) return undefined;
      const mark = end.slice(dot + 1);
      return `${own}.${feedMark((each) => build.has(`${own}.${each}`), mark)}`;
    });
    if (from === undefined || to === undefined || !build.has(from) || !build.has(to)) continue;
    if (wire.cable !== '') build.cable(wire.cable, 'Stop circuit', { shield: 'none' });
    build.wire(from, to, wire.cable === '' ? null : wire.cable, wire.id);
  }
  return { device, mainsFed };
}

/** Drives fed with mains, by poles of their own or on the contacts of the d.c. of the axes, and the contactors on their way. */
function spindleFeeds(build: Build, stop: StopCircuit, device: (element: string) => string | undefined) {
  const made: { drive: string; contactors: string[]; wires: string[] }[] = [];
  for (const element of Object.values(stop.elements)) {
    const id = device(element.id);
    if (id === undefined || element.kind !== 'inverter' || mainsMarks(build, id).length === 0) continue;
    const wires: string[] = [];
    const contactors: string[] = [];
    const seen = new Set<string>();
    let ends = ['L', 'N', 'L1', 'L2', 'L3'].map((mark) => `${element.id}.${mark}`);
    let onMains = false;
    while (ends.length > 0) {
      const next: string[] = [];
      for (const end of ends)
        for (const wire of Object.values(stop.wires)) {
          if ((wire.from !== end && wire.to !== end) || seen.has(wire.id)) continue;
          seen.add(wire.id);
          const far = wire.from === end ? wire.to : wire.from;
          const [other = '', mark = ''] = far.split('.');
          const kind = stop.elements[other]?.kind;
          if (end.startsWith(`${element.id}.`)) wires.push(wire.id);
          if (isMains(stop.elements[other])) onMains = true;
          if (kind !== 'contactor' || !/^([1-9]|10)$/.test(mark)) continue;
          if (!contactors.includes(other)) contactors.unshift(other);
          next.push(`${other}.${Number(mark) % 2 === 0 ? Number(mark) - 1 : Number(mark) + 1}`);
        }
      ends = next;
    }
    // Poles of its own are laid with the mains, all of them.
    const all = onMains ? [...seen] : wires;
    made.push({ drive: id, contactors: contactors.map((each) => device(each)!), wires: all });
  }
  return made;
}
