/** Volts to expect on each net of a wiring in a state, or on those that change from another. */
import type { MeshOrder } from '../network/mesh-order.ts';
import { NEUTRAL } from '../power/sources.ts';
import type { Net, ReadWiring } from '../wiring/types.ts';
import type { Commons } from './commons.ts';
import { nodeIn } from './live-fixed.ts';
import type { LiveState, Reading } from './live-types.ts';
import { sayVolts } from './say.ts';
import { touched } from './touched.ts';
import type { Band, RingRow } from './types.ts';

/** A hand meter's own error: 1 % and a tenth of a volt; common practice, no source. */
const METER = { share: 0.01, volts: 0.1 };
/** A reading that changes by less says nothing about a step. */
const CHANGE = 0.5;

const widened = (low: number, high: number): Band => {
  const [a, b] = [Math.min(low, high), Math.max(low, high)];
  return {
    low: a - METER.share * Math.abs(a) - METER.volts,
    high: b + METER.share * Math.abs(b) + METER.volts,
  };
};

interface Watched {
  readonly net: Net;
  /** Numbers of its node and of that it is measured against. */
  readonly at: number;
  readonly against: number;
  readonly black: string;
  readonly isAlternating: boolean;
}

interface Bounds {
  readonly low: number | undefined;
  readonly high: number | undefined;
}

export class VoltRows {
  readonly #wiring: ReadWiring;
  readonly #watched: readonly Watched[];
  readonly #neutral: number;
  /** What was read of the state asked about last; of the one that all are compared with. */
  #before: { readonly state: LiveState; readonly bounds: readonly Bounds[] } | undefined;

  constructor(wiring: ReadWiring, commons: Commons, order: MeshOrder) {
    const node = nodeIn(wiring);
    this.#wiring = wiring;
    this.#neutral = order.node(NEUTRAL);
    this.#watched = wiring.nets.flatMap((net): readonly Watched[] => {
      const black = commons.of.get(net.id);
      if (net.wires.length === 0 || black === undefined || node(black) === net.id) return [];
      const isAlternating = commons.alternating.has(net.id);
      return [{ net, at: order.node(net.id), against: order.node(node(black)), black, isAlternating }];
    });
  }

  /** Every net on a wire. */
  all(step: string, state: LiveState): readonly RingRow[] {
    return this.#watched.flatMap((each): readonly RingRow[] => {
      const { low, high } = bounds(each, state);
      if (low !== undefined && high !== undefined) return [this.#fed(step, each, low, high)];
      const { terminals } = each.net;
      const mains =
        state.high.together(each.at, this.#neutral) ||
        terminals.some((id) => this.#wiring.terminals.get(id)?.nature.kind === 'mains');
      if (mains || onlyEarth(this.#wiring, terminals)) return [];
      return [{ ...this.#row(step, each), says: unjudged(this.#wiring, terminals), otherwise: '' }];
    });
  }

  /** Only nets that read other than before. */
  changed(step: string, state: LiveState, before: LiveState): readonly RingRow[] {
    if (this.#before?.state !== before)
      this.#before = { state: before, bounds: this.#watched.map((each) => bounds(each, before)) };
    const known = this.#before.bounds;
    const rows: RingRow[] = [];
    this.#watched.forEach((each, k) => {
      const was = known[k]!;
      const low = level(each, state.low);
      const high = level(each, state.high);
      if (low === undefined || high === undefined) {
        if (was.low !== undefined)
          rows.push({
            ...this.#row(step, each),
            says: 'cut off: it floats, the meter shows anything small',
            otherwise: 'The full voltage: something still feeds it.',
          });
        return;
      }
      const changes =
        was.low === undefined ||
        was.high === undefined ||
        Math.abs(low - was.low) >= CHANGE ||
        Math.abs(high - was.high) >= CHANGE;
      if (changes) rows.push(this.#fed(step, each, low, high));
    });
    return rows;
  }

  #fed(step: string, each: Watched, low: number, high: number): RingRow {
    const expect = widened(low, high);
    return {
      ...this.#row(step, each),
      expect,
      says: `${sayVolts(expect)}${each.isAlternating ? ' a.c.' : ''}`,
      otherwise: meaning((low + high) / 2),
    };
  }

  #row(step: string, { net, black }: Watched): Pick<RingRow, 'id' | 'measured' | 'at' | 'against'> {
    return { id: `${step}:${net.id}`, measured: 'volts', at: touched(this.#wiring, net), against: black };
  }
}

function level({ at, against, isAlternating }: Watched, reading: Reading): number | undefined {
  const there = reading.level(at, against);
  // A meter on a.c. knows no sign.
  return there !== undefined && isAlternating ? Math.abs(there) : there;
}

const bounds = (each: Watched, { low, high }: LiveState): Bounds => ({
  low: level(each, low),
  high: level(each, high),
});

const onlyEarth = (wiring: ReadWiring, ids: readonly string[]): boolean =>
  ids.every((id) => {
    const kind = wiring.terminals.get(id)?.nature.kind;
    return kind === 'earth' || kind === 'shield' || kind === 'joint';
  });

function unjudged(wiring: ReadWiring, ids: readonly string[]): string {
  const kinds = new Set(ids.map((id) => wiring.terminals.get(id)?.nature.kind));
  if (kinds.has('motor-phase'))
    return 'nothing steady while the drive is off; once it is on, pulses of the full bus that a hand meter misreads';
  if (kinds.has('differential-output') || kinds.has('differential-input'))
    return 'moves with the signal: against its partner 2 V or more either way round, at rest';
  if (kinds.has('sensor')) return 'signals of the unit’s own: nothing a hand meter can judge';
  if (kinds.has('analogue-output') || kinds.has('analogue-input'))
    return 'about nothing until a command is given';
  return 'floats: nothing drives it in this step, the meter shows anything small';
}

function meaning(volts: number): string {
  if (Math.abs(volts) < 1)
    return 'The full voltage: something feeds it that should not (an output stuck on, a wire on the wrong terminal, a contact the wrong kind).';
  return 'Nothing: a fuse, a contact or a wire before it is open. Less: a bad joint, or too much hangs on it. More: fed from the wrong supply. The sign reversed: leads or poles swapped.';
}
