/**
 * Volts lost on the way to each load and back, kept as sums.
 *
 * What a wire loses counts for every load beyond it. When the current of a thick feeder changes, each of their sums is
 * mended by the difference, and only loads whose answer comes out otherwise are asked anew: volts are given in steps of a
 * thousandth of the supply, rounded up. Sums are whole nanovolts, so that they do not depend on the order of the edits.
 */
import { conductorDrop } from '../../handbook/conductor-drop.ts';
import { evaluate } from '../../sheet/index.ts';
import { COPPER, ohmsPerMetre } from '../../tables/conductor-resistance.ts';
import { lengthNeed } from '../wiring/inside-length.ts';
import type { Cells } from './cells.ts';
import type { PowerContext, Way } from './context.ts';

/** What one wire loses, in nV, and what would say it. */
export interface Lost {
  readonly nano: number;
  readonly needs: readonly string[];
}

const NANO = 1e9;
/** K. */
const HOT = 343.15;
/** Where the volts of the supply are not known: 1 mV. */
const STEP = 1e6;

export class Drops {
  readonly #cells: Cells;
  readonly #lost = new Map<string, Lost>();
  /** Loads by the wires on their way. */
  readonly #beyond = new Map<string, Set<string>>();
  readonly #ways = new Map<string, { way: Way; nano: number; step: number }>();
  readonly #context: () => PowerContext;

  constructor(cells: Cells, context: () => PowerContext) {
    this.#cells = cells;
    this.#context = context;
  }

  /** Volts lost, rounded up to a step; noted. */
  volts(load: string): number {
    this.#cells.note(`lost:${load}`);
    const held = this.#ways.get(load);
    return held ? (steps(held) * held.step) / NANO : 0;
  }

  /** What would say them; noted. */
  needs(load: string): readonly string[] {
    this.#cells.note(`lost:${load}`);
    const { wires } = this.#ways.get(load)?.way ?? { wires: [] };
    return [...new Set(wires.flatMap((wire) => this.#lost.get(wire)?.needs ?? []))].sort();
  }

  /** The wire on its way that loses most; noted. */
  worst(load: string): string | undefined {
    const { wires } = this.#ways.get(load)?.way ?? { wires: [] };
    this.#cells.note(`lost:${load}`);
    for (const wire of wires) this.#cells.note(`wire-drop:${wire}`);
    return [...wires].sort((a, b) => this.#nano(b) - this.#nano(a) || (a < b ? -1 : 1))[0];
  }

  /** Takes over the way of a load. */
  lay(load: string, way: Way | undefined, before: Way | undefined): void {
    for (const wire of before?.wires ?? []) {
      const set = this.#beyond.get(wire)!;
      set.delete(load);
      if (set.size > 0) continue;
      this.#beyond.delete(wire);
      this.#lost.delete(wire);
      this.#cells.drop(`wire-drop:${wire}`);
    }
    this.#cells.touch(`lost:${load}`);
    if (!way) {
      this.#ways.delete(load);
      return;
    }
    for (const wire of way.wires) {
      const set = this.#beyond.get(wire);
      if (set) set.add(load);
      else {
        this.#beyond.set(wire, new Set([load]));
        this.#cells.keep<Lost>(
          `wire-drop:${wire}`,
          () => lostIn(this.#context(), wire),
          (now) => this.#take(wire, now),
          { early: true },
        );
      }
    }
    const { volts } = way;
    this.#ways.set(load, {
      way,
      nano: way.wires.reduce((sum, wire) => sum + this.#nano(wire), 0),
      // A thousandth of the supply.
      step: volts === undefined || volts <= 0 ? STEP : (volts * NANO) / 1000,
    });
  }

  #nano(wire: string): number {
    return this.#lost.get(wire)?.nano ?? 0;
  }

  #take(wire: string, now: Lost | undefined): void {
    if (!now) return;
    const before = this.#lost.get(wire);
    this.#lost.set(wire, now);
    const more = now.nano - (before?.nano ?? 0);
    const asks = (before?.needs ?? []).join('\n') !== now.needs.join('\n');
    for (const load of this.#beyond.get(wire) ?? []) {
      const held = this.#ways.get(load);
      if (!held) continue;
      const said = steps(held);
      held.nano += more;
      if (asks || steps(held) !== said) this.#cells.touch(`lost:${load}`);
    }
  }
}

const steps = ({ nano, step }: { readonly nano: number; readonly step: number }): number =>
  Math.ceil(nano / step);

function lostIn({ wiring, currents }: PowerContext, id: string): Lost {
  const wire = wiring.wires.get(id);
  const current = currents.get(id);
  if (!wire || !current) return { nano: 0, needs: [] };
  const needs = [
    ...(wire.length === undefined ? [lengthNeed(wire)] : []),
    ...(wire.section === undefined ? [`${id}.section`] : []),
    ...current.needs,
  ];
  if (wire.length === undefined || wire.section === undefined || current.amps === 0)
    return { nano: 0, needs };
  const mm2 = wire.section * 1e6;
  // The sheet reckons there and back; each wire stands for one way.
  const { dV } = evaluate(conductorDrop, {
    l: wire.length,
    A: wire.section,
    I: current.amps,
    t: HOT,
    extra: (ohmsPerMetre(mm2) * mm2 * 1e-6) / COPPER.resistivity,
  });
  return { nano: dV.state === 'known' ? Math.round((dV.value / 2) * NANO) : 0, needs };
}
