/** One device read: its settings, its terminals, what is joined inside. */
import { nearest } from '../../quantity/nearest.ts';
import type { Refit, WiringDevice } from '../../refit/types.ts';
import type { Draft, WiringKind } from './kind.ts';
import { WIRING_KINDS } from './kinds/index.ts';
import { NATURES, natureSettings, stateNature } from './natures.ts';
import { NO_FACTS, partFacts } from './part-facts.ts';
import { readSettings, type Settings } from './setting.ts';
import type { Device, Join, Terminal, WiringProblem } from './types.ts';

/** What the wiring is read against: the parts that devices stand for. */
export type Around = Pick<Refit, 'parts' | 'places' | 'chains'>;

export interface DeviceRead {
  readonly device: Device;
  readonly terminals: readonly Terminal[];
  readonly problems: readonly WiringProblem[];
}

const UNKNOWN: Pick<WiringKind, 'name' | 'settings' | 'terminals'> = {
  name: 'of a kind not known',
  settings: {},
  terminals: () => [],
};

/** Whether the part fills a place of the machine. */
export function fillsPlace(around: Around, part: string): boolean {
  if (!Object.hasOwn(around.parts, part)) return false;
  for (const { chosen } of Object.values(around.places)) if (chosen === part) return true;
  for (const { places } of around.chains)
    for (const { chosen } of Object.values(places)) if (chosen === part) return true;
  return false;
}

/** Never refuses: what cannot be read is a problem beside the device, which is kept. */
export function readDevice(typed: WiringDevice, around: Around | null): DeviceRead {
  const problems: WiringProblem[] = [];
  const where = `wiring.devices.${typed.id}`;
  const kind = Object.hasOwn(WIRING_KINDS, typed.kind) ? WIRING_KINDS[typed.kind]! : undefined;
  if (!kind) {
    const near = nearest(typed.kind, Object.keys(WIRING_KINDS));
    problems.push({
      code: 'unknown-name',
      message: `There is no kind of device “${typed.kind.slice(0, 40)}”; ${near ? `did you mean “${near}”?` : `there are: ${Object.keys(WIRING_KINDS).join(', ')}.`}`,
      where: `${where}.kind`,
    });
  }
  const part =
    typed.part !== null && around && Object.hasOwn(around.parts, typed.part)
      ? around.parts[typed.part]
      : undefined;
  const facts = part ? partFacts(part) : NO_FACTS;
  const settings = kind
    ? readSettings(kind.settings, typed.settings, `${where}.settings`, problems, kind.fromPart?.(facts))
    : {};
  const drafts = new Map<string, Draft>(
    (kind ?? UNKNOWN).terminals(settings, facts).map((draft) => [draft.mark, draft]),
  );
  for (const [mark, own] of Object.entries(typed.terminals))
    stateTerminal(drafts, mark, own, `${where}.terminals.${mark}`, problems);
  const id = (mark: string) => `${typed.id}.${mark}`;
  const ref = (mark: string | undefined) => (mark !== undefined && drafts.has(mark) ? id(mark) : null);
  const terminals = [...drafts.values()].map(
    (draft): Terminal => ({
      id: id(draft.mark),
      device: typed.id,
      mark: draft.mark,
      name: draft.name,
      nature: draft.nature,
      group: draft.group ?? '',
      common: ref(draft.common),
      with: ref(draft.with),
      holds: draft.holds ?? 2,
      signal: draft.signal ?? '',
      needed: draft.needed ?? false,
    }),
  );
  const joins = (kind?.joins?.(settings) ?? [])
    .filter(([a, b]) => drafts.has(a) && drafts.has(b))
    .map(([a, b]): Join => ({ a: id(a), b: id(b) }));
  return {
    device: {
      id: typed.id,
      kind: kind?.id ?? 'unknown',
      kindName: kind?.name ?? UNKNOWN.name,
      name: typed.name,
      part: typed.part,
      partThere: typed.part === null || !around ? null : fillsPlace(around, typed.part),
      where: typed.where,
      settings,
      terminals: terminals.map((each) => each.id),
      joins,
      exposed: kind?.exposed ?? false,
    },
    terminals,
    problems,
  };
}

function stateTerminal(
  drafts: Map<string, Draft>,
  mark: string,
  typed: WiringDevice['terminals'][string],
  where: string,
  problems: WiringProblem[],
): void {
  const own = drafts.get(mark);
  const kind = Object.hasOwn(NATURES, typed.kind) ? typed.kind : undefined;
  if (!kind) {
    const near = nearest(typed.kind, Object.keys(NATURES));
    problems.push({
      code: 'unknown-name',
      message: `There is no kind of terminal “${typed.kind.slice(0, 40)}”; ${near ? `did you mean “${near}”?` : `there are: ${Object.keys(NATURES).join(', ')}.`}`,
      where: `${where}.kind`,
    });
  }
  const settings: Settings = kind
    ? readSettings(natureSettings(kind), typed.settings, `${where}.settings`, problems)
    : {};
  const stated = (name: string) =>
    typeof settings[name] === 'string' && settings[name] !== '' ? settings[name] : undefined;
  drafts.set(mark, {
    ...own,
    mark,
    name: typed.name.trim() === '' ? (own?.name ?? mark) : typed.name,
    nature: kind ? stateNature(kind, own?.nature, settings) : (own?.nature ?? { kind: 'unclear' }),
    ...(stated('group') === undefined ? {} : { group: stated('group') as string }),
    ...(stated('common') === undefined ? {} : { common: stated('common') as string }),
    ...(stated('other-end') === undefined ? {} : { with: stated('other-end') as string }),
    ...(stated('signal') === undefined ? {} : { signal: stated('signal') as string }),
    ...(typeof settings.holds === 'number' ? { holds: settings.holds } : {}),
  });
}
