/**
 * How thick a proposed wire is: by the fuse before it, or by what it carries. Where neither is known there is no number,
 * and what it waits for is named.
 */
import { andList } from '../../../quantity/words.ts';
import type { Refit } from '../../../refit/types.ts';
import { CONDUCTOR_CURRENT } from '../../../tables/conductor-current.ts';
import { capacityOf, type PowerContext } from '../../power/context.ts';
import type { Drawn } from '../../power/given.ts';
import { WIRING_KINDS } from '../kinds/index.ts';
import type { ReadWiring, Wire } from '../types.ts';
import { type Carries, type Circuits, isControl } from './colours.ts';
import { currentsOf } from './currents.ts';
import { type Design, Designs, isKnown } from './design.ts';
import type { Strand, Strands } from './strands.ts';

export interface Sized {
  /** mm², as it is sold; undefined where it waits for something. */
  readonly area?: number;
  /** Why, or what it waits for: a clause without a full stop. */
  readonly because: string;
}

/** The thinnest that is usually taken in a cabinet, in mm²: common practice, no source. */
const USUAL_CONTROL = 1;
const USUAL_POWER = 1.5;
/** Of a protective conductor that lies alone: IEC 60364-5-54, 543.1.3 (recalled, check the standard). */
const LEAST_EARTH = 4;

/** IEC 60204-1:2016, Table 6 is printed for 40 °C; taken where nobody has said how hot it is. */
const TABLE_KELVIN = 313.15;

export class Sections {
  readonly #read: ReadWiring;
  readonly #strands: Strands;
  readonly #circuits: Circuits;
  readonly #context: PowerContext;
  readonly #designs: Designs;
  readonly #inlets: readonly string[];
  readonly #known = new Map<string, Sized>();

  /** @param refit with the wiring that is read */
  constructor(refit: Refit, read: ReadWiring, strands: Strands, circuits: Circuits, drawn: Drawn) {
    this.#read = read;
    this.#strands = strands;
    this.#circuits = circuits;
    this.#context = currentsOf(refit, read, drawn);
    this.#designs = new Designs(read, strands, circuits, this.#context);
    this.#inlets = [...read.devices.values()].flatMap(({ id, kind }) => (kind === 'mains-inlet' ? [id] : []));
  }

  of(wire: Wire): Sized {
    const known = this.#known.get(wire.id);
    if (known) return known;
    const strand = this.#strands.of(wire);
    const made =
      wire.section !== undefined
        ? { area: wire.section * 1e6, because: 'section as it is written' }
        : strand === undefined
          ? { because: 'section waits for: a terminal that is not there' }
          : strand.protective
            ? this.#protective(wire)
            : this.#isBond(wire)
              ? this.#bond(wire, strand)
              : this.#live(wire, this.#circuits.carries(strand));
    this.#known.set(wire.id, made);
    return made;
  }

  /** A wire from a circuit to protective earth. */
  #isBond({ from, to }: Wire): boolean {
    return [from, to].some((end) => this.#strands.at(end)?.protective);
  }

  #live(wire: Wire, carries: Carries): Sized {
    const isSmall = isControl(carries);
    const least = isSmall ? USUAL_CONTROL : USUAL_POWER;
    const design = this.#designs.of(wire);
    if (!isKnown(design)) {
      const missing = this.#missing(design);
      if (isSmall)
        return {
          area: least,
          because: `section usual for control circuits; whether it is enough ${missing}`,
        };
      return { because: `section ${missing}` };
    }
    if (design.amps === 0)
      return isSmall
        ? { area: least, because: 'section usual for control circuits' }
        : { because: 'section waits for: what hangs on it' };
    const enough = this.#enough(wire, design.amps);
    const amperes = `${Number(design.amps.toPrecision(3))} A ${design.of}`;
    if (enough === undefined)
      return {
        because: `section waits for: somebody who can reckon it, for ${amperes} are beyond the tables`,
      };
    const where = this.#assumed(wire);
    return enough < least
      ? { area: least, because: `section usual; for ${amperes} ${enough} mm² would do${where}` }
      : { area: enough, because: `section for ${amperes}${where}` };
  }

  /** What is taken of how a wire lies where nobody has said it. */
  #assumed(wire: Wire): string {
    return capacityOf(this.#context, { ...wire, section: 1e-6 }).needs.length > 0
      ? ', at 40 °C and alone while nobody has said how it lies'
      : '';
  }

  #enough(wire: Wire, amps: number): number | undefined {
    const { settings, wiring, currents } = this.#context;
    const lies = {
      ...settings,
      cabinetTemperature: settings.cabinetTemperature ?? TABLE_KELVIN,
      outsideTemperature: settings.outsideTemperature ?? TABLE_KELVIN,
      together: settings.together ?? 1,
    };
    return CONDUCTOR_CURRENT.find(({ area }) => {
      const { worst } = capacityOf({ settings: lies, wiring, currents }, { ...wire, section: area * 1e-6 });
      return worst !== undefined && worst >= amps;
    })?.area;
  }

  /** As thick as the thickest that feeds the device, the least of one that lies alone at any rate: IEC 60204-1, Table 1. */
  #protective(wire: Wire): Sized {
    const own = [wire.from, wire.to].map((end) => this.#read.terminals.get(end)?.device);
    // Metal that a fault may put on the mains counts as if it were fed with them.
    const isMetal = own.some((id) => this.#read.devices.get(id ?? '')?.kind === 'metal');
    const devices = new Set(isMetal ? this.#inlets : own);
    const feeds = [...this.#read.wires.values()].filter((each) => {
      const strand = this.#strands.of(each);
      return (
        strand !== undefined &&
        !strand.protective &&
        !this.#isBond(each) &&
        ['mains', 'power', 'neutral'].includes(this.#circuits.carries(strand)) &&
        [each.from, each.to].some((end) => devices.has(this.#read.terminals.get(end)?.device))
      );
    });
    const sizes = feeds.map((each) => this.of(each).area);
    if (sizes.length === 0 || sizes.includes(undefined))
      return {
        area: LEAST_EARTH,
        because: `section usual of a protective conductor; never thinner than the wires that feed ${isMetal ? 'the machine' : 'the device'}`,
      };
    const thickest = Math.max(...sizes.map((each) => each!));
    return thickest > LEAST_EARTH
      ? {
          area: thickest,
          because: `section as the thickest wire that feeds ${isMetal ? 'the machine' : 'the device'}`,
        }
      : { area: LEAST_EARTH, because: 'section the least of a protective conductor that lies alone' };
  }

  /** What joins a circuit to earth carries what its fuse lets pass, when something else touches earth. */
  #bond(wire: Wire, strand: Strand): Sized {
    const sizes = [...this.#read.wires.values()]
      .filter((each) => each !== wire && this.#strands.of(each) === strand && !this.#isBond(each))
      .map((each) => this.of(each).area);
    return sizes.length === 0 || sizes.includes(undefined)
      ? { because: `section waits for: that of the other wires of ${strand.id}` }
      : {
          area: Math.max(...sizes.map((each) => each!)),
          because: 'section as the thickest wire of the circuit it joins to earth',
        };
  }

  #missing(design: Design): string {
    if ('trouble' in design) return `waits for: ${design.trouble}`;
    const names = [...new Set('needs' in design ? design.needs.map((each) => this.#name(each)) : [])];
    return `waits for: ${names.length > 3 ? `${names.slice(0, 3).join(', ')} and ${names.length - 3} more` : andList(names)}`;
  }

  /** 'M4.current' → 'the current of M4 (Coolant: pump)' */
  #name(need: string): string {
    const dot = need.lastIndexOf('.');
    const [thing, setting] = [need.slice(0, dot), need.slice(dot + 1)];
    const device = this.#read.devices.get(thing) ?? this.#read.devices.get(thing.split('.')[0]!);
    const called = device?.name ? `${thing} (${device.name})` : thing;
    if (/current$/.test(setting)) return `the current of ${called}`;
    if (setting === 'amps') return `the rated current of ${called}`;
    const spec = WIRING_KINDS[device?.kind ?? '']?.settings[setting];
    return `${called}, ${spec?.name ?? setting}`;
  }
}
