/** What a proposal gathers: devices and wires that are missing. What a person made stays as it is. */

import { chosenPart } from '../../../refit/place.ts';
import type { Refit, Wiring, WiringCable, WiringDevice, WiringWire } from '../../../refit/types.ts';
import type { Drawn } from '../../power/given.ts';
import { WIRING_KINDS } from '../kinds/index.ts';
import { partFacts } from '../part-facts.ts';
import { readDevice } from '../read-device.ts';
import type { Terminal } from '../types.ts';

type Settings = Readonly<Record<string, string | undefined>>;

interface Want {
  readonly from: string;
  readonly to: string;
  readonly cable: string | null;
  /** Of a wire that another document names: kept. */
  readonly id?: string;
}

export class Build {
  readonly refit: Refit;
  /** What has been worked out of the drives. */
  readonly drawn: Drawn;
  readonly devices: Map<string, WiringDevice>;
  readonly cables: Map<string, WiringCable>;
  readonly wires: Map<string, WiringWire>;
  readonly wants: Want[] = [];
  /** By wire that is new: why it has its section, or what that waits for. */
  readonly reasons = new Map<string, string>();
  /** The same of the section of a cable that is new. */
  readonly cableReasons = new Map<string, string>();
  private readonly read = new Map<string, readonly [WiringDevice, ReadonlyMap<string, Terminal>]>();

  constructor(refit: Refit, drawn: Drawn) {
    this.refit = refit;
    this.drawn = drawn;
    this.devices = new Map(Object.entries(refit.wiring.devices));
    this.cables = new Map(Object.entries(refit.wiring.cables));
    this.wires = new Map(Object.entries(refit.wiring.wires));
  }

  /** Whether the machine stands on three phases. */
  get threePhase(): boolean {
    const site = chosenPart(this.refit, null, 'site');
    const phases = site && partFacts(site).choice('phases');
    return phases === 'three' || phases === 'converter';
  }

  get wiring(): Wiring {
    return {
      devices: Object.fromEntries(this.devices),
      wires: Object.fromEntries(this.wires),
      cables: Object.fromEntries(this.cables),
      settings: this.refit.wiring.settings,
    };
  }

  /**
   * The device for a purpose: the one that already stands for the part, or the one of that id and kind; a new one where
   * there is none. Settings are added where nothing is typed, never replaced.
   */
  device(
    id: string,
    kind: string,
    name: string,
    {
      part = null,
      settings = {},
      where = 'cabinet',
    }: { part?: string | null; settings?: Settings; where?: string } = {},
  ): string {
    const known =
      (part === null
        ? undefined
        : [...this.devices.values()].find((each) => each.part === part && each.kind === kind)) ??
      (this.devices.get(id)?.kind === kind ? this.devices.get(id) : undefined);
    if (known) {
      this.settle(known.id, settings);
      const now = this.devices.get(known.id)!;
      if (part !== null && now.part === null) this.devices.set(known.id, { ...now, part });
      return known.id;
    }
    const own = this.freeId(id);
    this.devices.set(own, {
      id: own,
      kind,
      name: name.slice(0, 100),
      part,
      where,
      settings: typed(settings),
      terminals: {},
      pins: {},
    });
    return own;
  }

  /** The device of that kind and name; a new one under the next free id of that letter where there is none. */
  named(
    letter: string,
    kind: string,
    name: string,
    more: { part?: string | null; settings?: Settings; where?: string } = {},
  ): string {
    const short = name.slice(0, 100);
    const known = [...this.devices.values()].find((each) => each.kind === kind && each.name === short);
    return this.device(known?.id ?? this.freeId(letter), kind, short, more);
  }

  /** Whether a wire goes there, or is wanted there. */
  taken(terminal: string): boolean {
    for (const { from, to } of this.wires.values()) if (from === terminal || to === terminal) return true;
    return this.wants.some(({ from, to }) => from === terminal || to === terminal);
  }

  /** Adds settings that are not typed yet. */
  settle(id: string, settings: Settings): void {
    const device = this.devices.get(id)!;
    const missing = Object.entries(typed(settings)).filter(
      ([name]) =>
        Object.hasOwn(WIRING_KINDS[device.kind]?.settings ?? {}, name) &&
        !Object.hasOwn(device.settings, name),
    );
    if (missing.length > 0)
      this.devices.set(id, { ...device, settings: { ...device.settings, ...Object.fromEntries(missing) } });
  }

  /** Sets a count higher where it is too low for what is to be wired; a person's larger one stays. */
  atLeast(id: string, setting: string, count: number): void {
    const device = this.devices.get(id)!;
    const has = Number(device.settings[setting] ?? WIRING_KINDS[device.kind]!.settings[setting]!.usual);
    if (!(has >= count))
      this.devices.set(id, { ...device, settings: { ...device.settings, [setting]: String(count) } });
  }

  /** Adds a word to a list of names: 'X Z' and 'S'. */
  addName(id: string, setting: string, name: string): void {
    const device = this.devices.get(id)!;
    const names = (device.settings[setting] ?? '').split(/[\s,;]+/).filter((each) => each !== '');
    if (!names.includes(name))
      this.devices.set(id, {
        ...device,
        settings: { ...device.settings, [setting]: [...names, name].join(' ') },
      });
  }

  /** @param because why it has its section, or what that waits for, where that is not merely usual */
  cable(id: string, name: string, settings: Settings, because?: string): string {
    if (this.cables.has(id)) return id;
    this.cables.set(id, { id, name, settings: typed(settings) });
    this.cableReasons.set(
      id,
      because ??
        (settings.section === undefined
          ? `section waits for: that of its cable ${id}`
          : `section usual for such a cable, ${settings.section}`),
    );
    return id;
  }

  wire(from: string, to: string, cable: string | null = null, id?: string): void {
    this.wants.push({ from, to, cable, ...(id === undefined ? {} : { id }) });
  }

  terminals(id: string): ReadonlyMap<string, Terminal> {
    const device = this.devices.get(id);
    if (!device) return new Map();
    const known = this.read.get(id);
    if (known?.[0] === device) return known[1];
    const made = new Map(readDevice(device, this.refit).terminals.map((each) => [each.mark, each]));
    this.read.set(id, [device, made]);
    return made;
  }

  has(terminal: string): boolean {
    return this.terminal(terminal) !== undefined;
  }

  terminal(id: string): Terminal | undefined {
    const dot = id.indexOf('.');
    return this.terminals(id.slice(0, dot)).get(id.slice(dot + 1));
  }

  freeId(id: string): string {
    if (/\d/.test(id) && !this.devices.has(id)) return id;
    const letter = /^[A-Za-z]+/.exec(id)?.[0] ?? 'D';
    let n = 1;
    while (this.devices.has(`${letter}${n}`)) n++;
    return `${letter}${n}`;
  }
}

const typed = (settings: Settings): Record<string, string> =>
  Object.fromEntries(
    Object.entries(settings).filter(
      (each): each is [string, string] => each[1] !== undefined && each[1] !== '',
    ),
  );
