/** Steady states that differ in some resistors and sources from one that is solved, each for the work of the change. */
import { type Junction, junction, limited, through } from './junction.ts';
import { Levels } from './levels.ts';
import type { MeshOrder } from './mesh-order.ts';
import type { Volts } from './operate.ts';
import { type Branch, StarMesh } from './star-mesh.ts';
import type { Element } from './types.ts';

interface Bent {
  readonly p: number;
  readonly n: number;
  readonly junction: Junction;
}

const MOST_STEPS = 60;
const MOST_MENDINGS = 12;
/** Share by which a junction's slope may stray before it is worked in anew, instead of only its current mended. */
const STRAY = 0.02;
/** Volts by which a junction may be off its law in the end. */
const EXACT = 1e-11;

const isNear = (next: number, last: number): boolean =>
  Math.abs(next - last) <= 1e-9 + 1e-8 * Math.max(Math.abs(next), Math.abs(last));
const isHeld = (next: number, wanted: number): boolean =>
  Math.abs(next - wanted) > 1e-9 + 1e-6 * Math.abs(wanted);

/** A junction as a straight line that touches its law at a voltage. */
function tangent({ p, n, junction: j }: Bent, bias: number): Branch {
  const [current, slope] = through(j, bias);
  return { a: p, b: n, siemens: slope, amps: slope * bias - current };
}

export class SteadyMesh {
  /** Of the base. */
  readonly levels: Levels;
  readonly #order: MeshOrder;
  readonly #mesh: StarMesh;
  readonly #bent: readonly Bent[];
  readonly #bias: Float64Array;
  readonly #tangents: readonly Branch[];
  readonly #branches = new Map<Element, Branch>();
  readonly #now: Levels;
  /** Amperes into nodes, and by junction those put right. */
  readonly #mending: Float64Array;
  readonly #mended: Float64Array;

  private constructor(
    order: MeshOrder,
    mesh: StarMesh,
    bent: readonly Bent[],
    bias: Float64Array,
    references: readonly number[],
  ) {
    this.#order = order;
    this.#mesh = mesh;
    this.#bent = bent;
    this.#bias = bias;
    this.#tangents = bent.map((each, k) => tangent(each, bias[k]!));
    this.levels = new Levels(order.size, references);
    this.levels.take(mesh);
    this.#now = new Levels(order.size, references);
    this.#mending = new Float64Array(order.size);
    this.#mended = new Float64Array(bent.length);
  }

  /**
   * @param point a steady state of these elements, solved
   * @param references by which pieces apart are compared, in the order in which they count
   * @returns undefined where there is more than resistors, ideal diodes and steady sources with inner resistance,
   *   where the order does not foresee one, or where it does not settle
   */
  static at(
    order: MeshOrder,
    elements: Iterable<Element>,
    references: readonly string[],
    point: Pick<Volts, 'volts'>,
  ): SteadyMesh | undefined {
    const plain: Branch[] = [];
    const bent: Bent[] = [];
    const start: number[] = [];
    for (const e of elements) {
      if (e.kind === 'diode' && e.ohms === 0) {
        const [p, n] = [order.node(e.anode), order.node(e.cathode)];
        if (p < 0 || n < 0) return undefined;
        bent.push({ p, n, junction: junction(e.saturation, e.emission, e.breakdown) });
        start.push(point.volts(e.anode, e.cathode) ?? 0);
        continue;
      }
      const branch = branchOf(order, e);
      if (!branch) return undefined;
      plain.push(branch);
    }
    const bias = Float64Array.from(start);
    const mesh = new StarMesh(order, []);
    for (let step = 0; step < MOST_STEPS; step++) {
      mesh.reset([...plain, ...bent.map((each, k) => tangent(each, bias[k]!))]);
      let rests = true;
      bent.forEach(({ p, n, junction: j }, k) => {
        const wanted = mesh.volts(p) - mesh.volts(n);
        const next = limited(j, wanted, bias[k]!);
        if (!isNear(next, bias[k]!) || isHeld(next, wanted)) rests = false;
        if (!rests) bias[k] = next;
      });
      if (rests)
        return new SteadyMesh(
          order,
          mesh,
          bent,
          bias,
          references.map((each) => order.node(each)).filter((at) => at >= 0),
        );
    }
    return undefined;
  }

  /**
   * The levels with some elements put in and others of the base taken out; good until it is asked again.
   *
   * @returns undefined where an element is no resistor and no source with inner resistance, or where it does not
   *   settle: then the whole is to be solved
   */
  near(added: readonly Element[], removed: readonly Element[]): Levels | undefined {
    const [put, take] = [this.#asBranches(added), this.#asBranches(removed)];
    if (!put || !take) return undefined;
    const mesh = this.#mesh;
    const active = new Map<number, number>();
    for (let step = 0; step < MOST_STEPS; step++) {
      mesh.change(
        [...put, ...Array.from(active, ([k, bias]) => tangent(this.#bent[k]!, bias))],
        [...take, ...Array.from(active.keys(), (k) => this.#tangents[k]!)],
      );
      let rests = true;
      for (const [k, bias] of active) {
        const { p, n, junction: j } = this.#bent[k]!;
        const wanted = mesh.volts(p) - mesh.volts(n);
        if (!Number.isFinite(wanted)) return undefined;
        const next = limited(j, wanted, bias);
        if (!isNear(next, bias) || isHeld(next, wanted)) rests = false;
        active.set(k, next);
      }
      if (!rests) continue;
      this.#now.take(mesh);
      if (this.#mend(active)) return this.#now;
    }
    return undefined;
  }

  /**
   * Mends the levels for the bend of junctions that have moved a little, with the slopes as they are.
   *
   * @returns false where slopes are to be taken anew: those junctions are among the active ones then
   */
  #mend(active: Map<number, number>): boolean {
    const { volts } = this.#now;
    const mending = this.#mending;
    const mended = this.#mended.fill(0);
    const before = active.size;
    for (let n = 0; n < MOST_MENDINGS; n++) {
      let off = 0;
      this.#bent.forEach((each, k) => {
        const bias = active.get(k) ?? this.#bias[k]!;
        const there = volts[each.p]! - volts[each.n]!;
        const moved = there - bias;
        // So little bends by less than can be told.
        if (Math.abs(moved) < 1e-7) return;
        const next = limited(each.junction, there, bias);
        const line = active.has(k) ? tangent(each, bias) : this.#tangents[k]!;
        const [current, slope] = through(each.junction, next);
        if (next !== there || Math.abs(slope - line.siemens) > STRAY * Math.max(slope, line.siemens)) {
          active.set(k, next);
          off = Number.POSITIVE_INFINITY;
          return;
        }
        const wrong = current - (line.siemens * there - line.amps) - mended[k]!;
        mended[k]! += wrong;
        mending[each.p]! -= wrong;
        mending[each.n]! += wrong;
        off = Math.max(off, Math.abs(wrong) / line.siemens);
      });
      if (!(off < Number.POSITIVE_INFINITY) || active.size > before) {
        mending.fill(0);
        return false;
      }
      if (off <= EXACT) {
        mending.fill(0);
        return true;
      }
      this.#mesh.respond(mending, volts);
    }
    return false;
  }

  #asBranches(elements: readonly Element[]): readonly Branch[] | undefined {
    const branches: Branch[] = [];
    for (const e of elements) {
      const branch = this.#branches.get(e) ?? branchOf(this.#order, e);
      if (!branch) return undefined;
      this.#branches.set(e, branch);
      branches.push(branch);
    }
    return branches;
  }
}

/** As a conductance with a current beside it (Norton). */
function branchOf(order: MeshOrder, e: Element): Branch | undefined {
  if (e.kind === 'resistor') return branch(order.node(e.a), order.node(e.b), e.ohms, 0);
  if (e.kind === 'voltage' && typeof e.volts === 'number')
    return branch(order.node(e.plus), order.node(e.minus), e.ohms, e.volts);
  return undefined;
}

const branch = (a: number, b: number, ohms: number, volts: number): Branch | undefined =>
  a >= 0 && b >= 0 && ohms > 0 && Number.isFinite(1 / ohms) && Number.isFinite(volts)
    ? { a, b, siemens: 1 / ohms, amps: volts / ohms }
    : undefined;
