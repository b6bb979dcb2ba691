/**
 * The moving part of one axis: motor, yielding screw, slide on its ways. It advances exactly from event to event.
 *
 * Over one whole sample with a held command a mode's answer is a fixed matrix, worked out once and kept; where an event
 * may fall inside, or where the control is analogue, the step goes by series (see series.ts) with the event located.
 */

import { VOLTAGE, WANTED } from './io.ts';
import { Kept } from './kept.ts';
import { formValue, type InnerLoop, type Lift, makeLift, settle } from './lift.ts';
import {
  buildMode,
  CHARGE,
  type Constants,
  CURRENT,
  DRIVES,
  type DriveKind,
  type Ending,
  type Expression,
  HELD,
  INPUTS,
  LOAD,
  type Mode,
  ONE,
  PHI,
  REF,
  STATES,
  slideFriction,
  W1,
  W2,
  WIDTH,
  WIND,
} from './modes.ts';
import type { Reference } from './reference.ts';
import { Series } from './series.ts';

/** What the plant has to tell besides its state. */
export type PlantLog = (ending: Ending | 'stuck', time: number) => void;

/** J, by where it went; see `PlantEnergy`. */
export const ENERGY = {
  copper: 0,
  motorFriction: 1,
  slideFriction: 2,
  damping: 3,
  input: 4,
  load: 5,
  switching: 6,
} as const;

/** Rows of a kept step: what motor speed, slide speed, wind-up, current, angle and charge become. */
const ROWS = 6;
/** Columns: motor speed, slide speed, wind-up, current, held command, 1, load. */
const COLUMNS = 7;
const FAST_FROM = [W1, W2, WIND, CURRENT, STATES + HELD, STATES + ONE, STATES + LOAD] as const;
const FAST_TO = [W1, W2, WIND, CURRENT, PHI, CHARGE] as const;

/** A mode with its kept step. */
interface Slot {
  readonly key: number;
  readonly mode: Mode;
  /** ROWS × 5 weights of what varies, then ROWS constants for `load`. */
  matrix: Float64Array;
  load: number;
  ready: boolean;
  /** Several samples in one step, for this load. */
  lift: Lift | null;
  looks: number;
  /** Slide and motor speed must stay within, else the series looks closer. */
  readonly low1: number;
  readonly high1: number;
  readonly low2: number;
  readonly high2: number;
  /** Guards besides those on speed. */
  readonly others: boolean;
  readonly dry1: number;
  readonly slope1: number;
  readonly dry2: number;
  readonly slope2: number;
  readonly damping: number;
}

/** Nodes and weights of Gauss's rule on 0 … 1: three for a short step of a sampled control, six for an analogue one. */
const SHORT_AT = [0.1127016653792583, 0.5, 0.8872983346207417];
const SHORT_WEIGHT = [0.2777777777777778, 0.4444444444444444, 0.2777777777777778];
const GAUSS_AT = [
  0.033765242898423975, 0.16939530676686776, 0.38069040695840156, 0.6193095930415985, 0.8306046932331322,
  0.966234757101576,
];
const GAUSS_WEIGHT = [
  0.08566224618958516, 0.1803807865240693, 0.23395696728634552, 0.23395696728634552, 0.1803807865240693,
  0.08566224618958516,
];

/** Steps kept for the next run of a model, of either kind; a force that varies brings new ones. */
const MOST_KEPT = 64;
const NO_NUMBERS = new Float64Array(0);

/** A run that needs more steps by series than this has a loop that is far too fast for its inertia. */
const MOST_SERIES = 200_000;

/** More events than this within one step are no physics a person could see; they are then passed over, and counted. */
const MOST_EVENTS = 400;

export class Plant {
  constants: Constants;
  readonly x = new Float64Array(STATES);
  readonly u = new Float64Array(INPUTS);
  readonly energy = new Float64Array(7);
  /** s; set by whoever drives the plant. */
  time = 0;
  mode: Mode;
  drive: DriveKind;
  /** Steps by series so far, and events passed over. */
  seriesSteps = 0;
  passedOver = 0;
  /** Set when it gave up; the state then stands still. */
  exhausted = false;
  /** J given to the motor so far; lifted steps count where `tracks` says so, since it costs time. */
  drawn = 0;
  tracks = false;
  /** Whether energies are booked; a search or a band needs none, and each look is quicker without. */
  private readonly books: boolean;
  private kept: Kept;
  private readonly series = new Series();
  private readonly slots = new Map<number, Slot>();
  private slot: Slot;
  private readonly h: number;
  private readonly reference: Reference | null;
  private readonly log: PlantLog;
  private s1: -1 | 0 | 1 = 0;
  private s2: -2 | -1 | 0 | 1 | 2 = 0;
  private contact: -1 | 0 | 1 = 1;
  private satI: -1 | 0 | 1 = 0;
  private satV: -1 | 0 | 1 = 0;
  private readonly scratch = new Float64Array(WIDTH);
  /** N·m of the stepper's field at its top; set by whoever drives the plant. */
  fieldTorque = 0;
  /** rad of one step of the stepper's command; 0 commands without steps. */
  pulse = 0;

  /** `h` is the sample whose steps are kept, in s; the reference is needed by an analogue control and by a stepper. */
  constructor(
    constants: Constants,
    drive: DriveKind,
    h: number,
    reference: Reference | null,
    log: PlantLog,
    books = true,
    kept = new Kept(),
  ) {
    this.books = books;
    this.kept = kept;
    this.constants = constants;
    this.drive = drive;
    this.h = h;
    this.reference = reference;
    this.log = log;
    this.u[ONE] = 1;
    this.slot = this.find();
    this.mode = this.slot.mode;
    this.settleModes();
  }

  /** Another drive state (switched off, say): what the winding stored is gone when its circuit opens. */
  setDrive(drive: DriveKind): void {
    if (drive === this.drive) return;
    const { L } = this.constants;
    if (drive === 'open' && L > 0) {
      this.energy[ENERGY.switching]! += 0.5 * L * this.x[CURRENT]! ** 2;
      this.x[CURRENT] = 0;
    }
    this.drive = drive;
    this.satI = 0;
    this.satV = 0;
    this.choose();
  }

  /** Other constants: a brake that holds adds friction at the motor. */
  setConstants(constants: Constants): void {
    this.settleEnergy();
    this.constants = constants;
    this.kept = new Kept();
    this.slots.clear();
    this.settleModes();
  }

  /** Takes the directions of slip and the flank from the state as it stands. */
  settleModes(): void {
    const { x, constants: c } = this;
    const rigid = c.stiffness === Number.POSITIVE_INFINITY;
    if (rigid) {
      x[W2] = x[W1]!;
      x[WIND] = 0;
    }
    this.contact = c.gap > 0 && Math.abs(x[WIND]!) < c.gap ? 0 : x[WIND]! < 0 && c.gap > 0 ? -1 : 1;
    this.s1 = x[W1] === 0 && c.T1 > 0 && !rigid ? 0 : x[W1]! < 0 ? -1 : 1;
    const dry = c.Ts + c.Tc + (rigid ? c.T1 : 0);
    const far = c.fall > 0 && Math.abs(x[W2]!) < c.fall && c.smooth === 0 ? 1 : 2;
    if (dry === 0) this.s2 = 2;
    else if (x[W2] === 0 && c.smooth === 0) this.s2 = 0;
    else this.s2 = (x[W2]! < 0 ? -far : far) as -2 | -1 | 1 | 2;
    if (c.smooth > 0) this.s2 = 2;
    if (c.T1 === 0) this.s1 = 1;
    this.choose();
  }

  /** Books what lifted steps have gathered; before energies are read. */
  settleEnergy(): void {
    for (const { lift } of this.slots.values()) if (lift) settle(lift, this.energy);
  }

  private find(): Slot {
    const { s1, s2, contact, satI, satV, drive } = this;
    const key =
      ((((DRIVES.indexOf(drive) * 3 + s1 + 1) * 5 + s2 + 2) * 3 + contact + 1) * 3 + satI + 1) * 3 + satV + 1;
    let slot = this.slots.get(key);
    if (!slot) {
      let mode = this.kept.modes.get(key);
      if (!mode) {
        mode = buildMode(this.constants, { drive, s1, s2, contact, satI, satV });
        this.kept.modes.set(key, mode);
      }
      slot = makeSlot(this.constants, key, mode);
      this.slots.set(key, slot);
    }
    return slot;
  }

  private choose(): void {
    this.slot = this.find();
    this.mode = this.slot.mode;
  }

  /** A linear expression of the mode at the present state. */
  read(form: Expression): number {
    let total = 0;
    for (let at = 0; at < STATES; at++) total += form[at]! * this.x[at]!;
    for (let at = 0; at < INPUTS; at++) total += form[STATES + at]! * this.u[at]!;
    return total;
  }

  /** J in motion, in the spring and in the winding. */
  stored(): number {
    const { x, constants: c } = this;
    const rigid = c.stiffness === Number.POSITIVE_INFINITY;
    const kinetic = 0.5 * (c.J1 * x[W1]! ** 2 + c.J2 * (rigid ? x[W1]! : x[W2]!) ** 2);
    const magnetic = this.drive === 'voltage' || this.drive === 'analogue' || this.drive === 'short';
    return kinetic + this.spring() + (magnetic ? 0.5 * c.L * x[CURRENT]! ** 2 : 0);
  }

  private spring(): number {
    const { x, constants: c } = this;
    if (c.stiffness === Number.POSITIVE_INFINITY || this.contact === 0) return 0;
    const stretch = c.gap > 0 ? x[WIND]! - this.contact * c.gap : x[WIND]!;
    return 0.5 * c.stiffness * stretch * stretch;
  }

  /** One kept sample with the held command and load in `u`; by series where an event may fall inside. */
  tick(): void {
    const slot = this.slot;
    if (slot.mode.curved !== 0) {
      this.advance(this.h);
      return;
    }
    if (!slot.ready || slot.load !== this.u[LOAD]!) this.prepare(slot);
    const { x, u, h, energy } = this;
    const P = slot.matrix;
    const w1 = x[W1]!;
    const w2 = x[W2]!;
    const wind = x[WIND]!;
    const i = x[CURRENT]!;
    const held = u[HELD]!;
    const nw1 = P[0]! * w1 + P[1]! * w2 + P[2]! * wind + P[3]! * i + (P[4]! * held + P[30]!);
    const nw2 = P[5]! * w1 + P[6]! * w2 + P[7]! * wind + P[8]! * i + (P[9]! * held + P[31]!);
    const nwind = P[10]! * w1 + P[11]! * w2 + P[12]! * wind + P[13]! * i + (P[14]! * held + P[32]!);
    const ni = P[15]! * w1 + P[16]! * w2 + P[17]! * wind + P[18]! * i + (P[19]! * held + P[33]!);
    const turn = P[20]! * w1 + P[21]! * w2 + P[22]! * wind + P[23]! * i + (P[24]! * held + P[34]!);
    const charge = P[25]! * w1 + P[26]! * w2 + P[27]! * wind + P[28]! * i + (P[29]! * held + P[35]!);
    const slid = turn - (nwind - wind);
    // How far a speed may bend below both its ends within the sample.
    const sag1 = 1.5 * Math.abs((w1 + nw1) / 2 - turn / h);
    const sag2 = 1.5 * Math.abs((w2 + nw2) / 2 - slid / h);
    // Said so that a mode that runs away within one sample, whose matrix holds no numbers, is not taken either.
    const within =
      Math.min(w1, nw1) - sag1 >= slot.low1 &&
      Math.max(w1, nw1) + sag1 <= slot.high1 &&
      Math.min(w2, nw2) - sag2 >= slot.low2 &&
      Math.max(w2, nw2) + sag2 <= slot.high2;
    if (!within || (slot.others && this.near(slot, nw1, nw2, nwind, ni))) {
      this.advance(h);
      return;
    }
    if (this.books) {
      energy[0]! += h * meanSquare(i, ni, charge / h);
      energy[1]! += slot.dry1 * turn + slot.slope1 * h * meanSquare(w1, nw1, turn / h);
      energy[2]! += slot.dry2 * slid + slot.slope2 * h * meanSquare(w2, nw2, slid / h);
      if (slot.damping !== 0)
        energy[3]! += slot.damping * h * meanSquare(w1 - w2, nw1 - nw2, (nwind - wind) / h);
    }
    let given = 0;
    if (this.drive === 'voltage') given = held * charge;
    else if (this.drive === 'current') given = held * (this.constants.R * held * h + this.constants.K * turn);
    energy[4]! += given;
    this.drawn += given;
    energy[5]! += u[LOAD]! * slid;
    x[W1] = nw1;
    x[W2] = nw2;
    x[WIND] = nwind;
    x[CURRENT] = ni;
    x[PHI] = x[PHI]! + turn;
    x[CHARGE] = x[CHARGE]! + charge;
    this.time += h;
  }

  /**
   * All samples of the inner loop up to the next run of the speed loop, in one step. `inner` holds the loop's integrator
   * and the command under way. False, with nothing done, where that would not be exact.
   */
  lift(loop: InnerLoop, inner: Float64Array, io: Float64Array): boolean {
    const wanted = io[WANTED]!;
    const limit = io[VOLTAGE]!;
    const slot = this.slot;
    if (!slot.ready || slot.load !== this.u[LOAD]!) this.prepare(slot);
    let lift = slot.lift;
    if (lift === null) {
      lift = this.liftFor(slot, loop);
      if (lift === null) return false;
      slot.lift = lift;
    }
    const { x } = this;
    const M = lift.rows;
    const B = lift.bound;
    const a = x[W1]!;
    const b = x[W2]!;
    const c = x[WIND]!;
    const d = wanted - x[CURRENT]!;
    const e = inner[0]!;
    const f = inner[1]!;
    const g = wanted;
    const bound =
      B[0]! * Math.abs(a) +
      B[1]! * Math.abs(b) +
      B[2]! * Math.abs(c) +
      B[3]! * Math.abs(d) +
      B[4]! * Math.abs(e) +
      B[5]! * Math.abs(f) +
      B[6]! * Math.abs(g) +
      B[7]!;
    if (!(bound < limit)) {
      const V = lift.voltages;
      for (let at = 0; at < V.length; at += 8) {
        const v =
          V[at]! * a +
          V[at + 1]! * b +
          V[at + 2]! * c +
          V[at + 3]! * d +
          (V[at + 4]! * e + V[at + 5]! * f + V[at + 6]! * g + V[at + 7]!);
        if (!(v <= limit && v >= -limit)) return false;
      }
    }
    const n1 = M[0]! * a + M[1]! * b + M[2]! * c + M[3]! * d + (M[4]! * e + M[5]! * f + M[6]! * g + M[7]!);
    const n2 =
      M[8]! * a + M[9]! * b + M[10]! * c + M[11]! * d + (M[12]! * e + M[13]! * f + M[14]! * g + M[15]!);
    const nw =
      M[16]! * a + M[17]! * b + M[18]! * c + M[19]! * d + (M[20]! * e + M[21]! * f + M[22]! * g + M[23]!);
    const ni =
      M[24]! * a + M[25]! * b + M[26]! * c + M[27]! * d + (M[28]! * e + M[29]! * f + M[30]! * g + M[31]!);
    const nz =
      M[32]! * a + M[33]! * b + M[34]! * c + M[35]! * d + (M[36]! * e + M[37]! * f + M[38]! * g + M[39]!);
    const nq =
      M[40]! * a + M[41]! * b + M[42]! * c + M[43]! * d + (M[44]! * e + M[45]! * f + M[46]! * g + M[47]!);
    const turn =
      M[48]! * a + M[49]! * b + M[50]! * c + M[51]! * d + (M[52]! * e + M[53]! * f + M[54]! * g + M[55]!);
    const span = loop.T * loop.samples;
    const slid = turn - (nw - c);
    const sag1 = 1.5 * Math.abs((a + n1) / 2 - turn / span);
    const sag2 = 1.5 * Math.abs((b + n2) / 2 - slid / span);
    const within =
      Math.min(a, n1) - sag1 >= slot.low1 &&
      Math.max(a, n1) + sag1 <= slot.high1 &&
      Math.min(b, n2) - sag2 >= slot.low2 &&
      Math.max(b, n2) + sag2 <= slot.high2;
    if (!within || (slot.others && this.near(slot, n1, n2, nw, ni))) return false;
    if (this.books) gather(lift, a, b, c, d, e, f, g);
    if (this.tracks) this.drawn += formValue(lift.forms[ENERGY.input]!, a, b, c, d, e, f, g);
    x[W1] = n1;
    x[W2] = n2;
    x[WIND] = nw;
    x[CURRENT] = ni;
    x[PHI] = x[PHI]! + turn;
    inner[0] = nz;
    inner[1] = nq;
    return true;
  }

  /** The lifted step of a mode for its load; null while the mode has not lasted. */
  private liftFor(slot: Slot, loop: InnerLoop): Lift | null {
    // A mode that lasts a few looks only is not worth the matrix; waiting also for a known one keeps every run alike.
    if (slot.looks++ < 16) return null;
    const forms = this.books ? 'all' : this.tracks ? 'input' : 'none';
    const name = `${slot.key} ${slot.load} ${forms}`;
    let known = this.kept.lifts.get(name);
    if (!known) {
      known = makeLift(slot, loop, forms);
      if (this.kept.lifts.size < MOST_KEPT) this.kept.lifts.set(name, known);
    }
    return {
      ...known,
      moments: this.books ? new Float64Array(known.moments.length) : NO_NUMBERS,
      used: false,
    };
  }

  /** Whether a guard on a torque comes near its end within the sample. */
  private near(slot: Slot, w1: number, w2: number, wind: number, i: number): boolean {
    const { scratch: z, x, u } = this;
    const { guardStart, guardColumn, guardWeight, guards } = slot.mode;
    z[W1] = w1;
    z[W2] = w2;
    z[WIND] = wind;
    z[CURRENT] = i;
    for (let at = 0; at < INPUTS; at++) z[STATES + at] = u[at]!;
    for (let g = 0; g < guards.length; g++) {
      let before = 0;
      let after = 0;
      const end = guardStart[g + 1]!;
      for (let p = guardStart[g]!; p < end; p++) {
        const column = guardColumn[p]!;
        const weight = guardWeight[p]!;
        after += weight * z[column]!;
        before += weight * (column < STATES ? x[column]! : z[column]!);
      }
      if (!(Math.min(before, after) >= 0.5 * Math.abs(after - before))) return true;
    }
    return false;
  }

  /** The kept step of a mode for the load that acts now. */
  private prepare(slot: Slot): void {
    const { kept } = this;
    const load = this.u[LOAD]!;
    const name = `${slot.key} ${load}`;
    let matrix = kept.loaded.get(name);
    if (!matrix) {
      let all = kept.steps.get(slot.key);
      if (!all) {
        all = this.stepOf(slot.mode);
        kept.steps.set(slot.key, all);
      }
      matrix = new Float64Array(ROWS * 6);
      for (let row = 0; row < ROWS; row++) {
        for (let column = 0; column < 5; column++) matrix[row * 5 + column] = all[row * COLUMNS + column]!;
        matrix[ROWS * 5 + row] = all[row * COLUMNS + 5]! + load * all[row * COLUMNS + 6]!;
      }
      if (kept.loaded.size < MOST_KEPT) kept.loaded.set(name, matrix);
    }
    if (slot.lift) settle(slot.lift, this.energy);
    slot.lift = null;
    slot.matrix = matrix;
    slot.load = load;
    slot.ready = true;
  }

  /** What the rows of a kept step become of each of its columns, by series from each unit state. */
  private stepOf(mode: Mode): Float64Array {
    const all = new Float64Array(ROWS * COLUMNS);
    const E = this.oneSample(mode);
    for (let column = 0; column < COLUMNS; column++) {
      const from = FAST_FROM[column]!;
      for (let row = 0; row < ROWS; row++) all[row * COLUMNS + column] = E[FAST_TO[row]! * WIDTH + from]!;
      if (mode.current[CURRENT] === 1) continue;
      // The current follows from the rest, at the end of the sample.
      let i = 0;
      for (let at = 0; at < WIDTH; at++) i += mode.current[at]! * E[at * WIDTH + from]!;
      all[3 * COLUMNS + column] = i;
    }
    return all;
  }

  /**
   * What every state and input becomes over one sample: by series over a fraction of it that is short enough for the
   * fastest motion, then squared as often as the sample was halved.
   */
  private oneSample(mode: Mode): Float64Array {
    const { series } = this;
    clearReference(series);
    const y = new Float64Array(STATES);
    const u = new Float64Array(INPUTS);
    let shortest = this.h;
    const start = (column: number, span: number): void => {
      y.fill(0);
      u.fill(0);
      if (column < STATES) y[column] = 1;
      else u[column - STATES] = 1;
      series.expand(mode, y, u, false, 1, 0, span);
    };
    const columns = [...FAST_FROM, PHI];
    for (const column of columns) {
      start(column, this.h);
      shortest = Math.min(shortest, series.reach(this.h));
    }
    const halvings = Math.max(0, Math.ceil(Math.log2(this.h / shortest) - 1e-9));
    const s = this.h / 2 ** halvings;
    let E: Float64Array = new Float64Array(WIDTH * WIDTH);
    for (let at = STATES; at < WIDTH; at++) E[at * WIDTH + at] = 1;
    for (const column of columns) {
      start(column, s);
      for (let row = 0; row < STATES; row++) E[row * WIDTH + column] = series.value(row, s);
    }
    E[CHARGE * WIDTH + CHARGE] = 1;
    for (let turn = 0; turn < halvings; turn++) E = squared(E);
    return E;
  }

  /** Any stretch of time, with every event on the way located. The held command and load stay. */
  advance(h: number): void {
    const { series, x, u } = this;
    let left = h;
    let events = 0;
    while (left > 0) {
      if (this.seriesSteps >= MOST_SERIES) {
        this.exhausted = true;
        return;
      }
      const moving = this.moves();
      const { mode } = this;
      if (moving) series.setReference(this.reference!, this.time, this.pulse);
      else clearReference(series);
      const [scale, size] = this.bend(mode);
      series.expand(mode, x, u, moving, scale, size, left);
      let s = series.reach(left);
      let ended = -1;
      if (events < MOST_EVENTS) {
        for (let g = 0; g < mode.guards.length; g++) {
          const at = series.firstEnd(mode, g, s, size);
          if (at >= 0 && (at < s || ended < 0)) {
            s = at;
            ended = g;
          }
        }
      }
      this.seriesSteps++;
      this.take(mode, s, scale, size);
      left = left - s <= 1e-14 * h ? 0 : left - s;
      if (ended >= 0) {
        events++;
        if (events === MOST_EVENTS) this.passedOver++;
        this.turn(mode.guards[ended]!.ending);
      }
    }
  }

  private get sampled(): boolean {
    return (
      this.drive === 'voltage' || this.drive === 'current' || this.drive === 'open' || this.drive === 'short'
    );
  }

  private moves(): boolean {
    return (
      this.reference !== null &&
      (this.drive === 'analogue' || this.drive === 'analogue-ideal' || this.drive === 'stepper')
    );
  }

  private bend(mode: Mode): readonly [number, number] {
    if (mode.curved === 1) return [this.constants.smooth, 1];
    if (mode.curved === 2) return [this.constants.rotorTeeth, this.fieldTorque];
    return [1, 0];
  }

  /** Books the energies of a series step of `s`, and moves the state to its end. */
  private take(mode: Mode, s: number, scale: number, size: number): void {
    const { series, x, u, energy, constants: c } = this;
    const rigid = c.stiffness === Number.POSITIVE_INFINITY;
    const phi = x[PHI]!;
    const slide = phi - x[WIND]!;
    const z = this.scratch;
    let given = 0;
    const short = this.sampled && mode.curved === 0;
    const ats = short ? SHORT_AT : GAUSS_AT;
    const weights = short ? SHORT_WEIGHT : GAUSS_WEIGHT;
    // Motor and slide speed, wind-up and current are all that a sampled drive's energies need.
    const used = short ? CURRENT : WIDTH - 1;
    for (let at = 0; at < INPUTS; at++) z[STATES + at] = u[at]!;
    const nodes = this.books || this.tracks ? ats.length : 0;
    for (let node = 0; node < nodes; node++) {
      const t = ats[node]! * s;
      const weight = weights[node]! * s;
      for (let at = short ? W1 : PHI; at <= used; at++) z[at] = series.value(at, t);
      const i = dot(mode.current, z);
      const w1 = z[W1]!;
      const w2 = z[W2]!;
      energy[0]! += weight * i * i;
      energy[1]! += weight * dot(mode.friction1, z) * w1;
      energy[2]! +=
        weight * (dot(mode.friction2, z) + (mode.curved === 1 ? c.Tc * Math.tanh(w2 / scale) : 0)) * w2;
      if (!rigid && this.contact !== 0) energy[3]! += weight * c.damping * (w1 - w2) ** 2;
      if (mode.curved === 2) {
        const field = z[STATES + REF + 1]!;
        const torque = size * Math.sin(scale * (z[STATES + REF]! - z[PHI]!)) + c.fieldDamping * (field - w1);
        given += weight * torque * w1;
      } else given += weight * dot(mode.voltage, z) * i;
    }
    energy[4]! += given;
    this.drawn += given;
    for (let at = 0; at < STATES; at++) x[at] = series.value(at, s);
    if (mode.current[CURRENT] !== 1) {
      for (let at = 0; at < WIDTH; at++) z[at] = at < STATES ? x[at]! : series.value(at, s);
      x[CURRENT] = dot(mode.current, z);
    }
    if (!this.sampled) for (let at = REF; at < REF + 3; at++) u[at] = series.value(STATES + at, s);
    energy[5]! += u[LOAD]! * (x[PHI]! - x[WIND]! - slide);
    this.time += s;
  }

  /** Goes over into the mode that follows an ending. */
  private turn(ending: Ending): void {
    const { x, constants: c } = this;
    const before = this.spring();
    switch (ending) {
      case 'slide-still':
        this.slideStill();
        break;
      case 'slide-breaks+':
        this.s2 = c.fall > 0 ? 1 : 2;
        break;
      case 'slide-breaks-':
        this.s2 = c.fall > 0 ? -1 : -2;
        break;
      case 'slide-fast':
        this.s2 = this.s2 > 0 ? 2 : -2;
        break;
      case 'slide-slow':
        this.s2 = this.s2 > 0 ? 1 : -1;
        break;
      case 'motor-still': {
        x[W1] = 0;
        this.s1 = 0;
        this.choose();
        const net = this.netOn1();
        if (Math.abs(net) > c.T1) this.s1 = net > 0 ? 1 : -1;
        break;
      }
      case 'motor-breaks+':
        this.s1 = 1;
        break;
      case 'motor-breaks-':
        this.s1 = -1;
        break;
      case 'touch+':
        this.contact = 1;
        break;
      case 'touch-':
        this.contact = -1;
        break;
      case 'leave':
        this.contact = 0;
        break;
      case 'current+':
        this.satI = 1;
        break;
      case 'current-':
        this.satI = -1;
        break;
      case 'current-free':
        this.satI = 0;
        break;
      case 'voltage+':
        this.satV = 1;
        break;
      case 'voltage-':
        this.satV = -1;
        break;
      case 'voltage-free':
        this.satV = 0;
        break;
    }
    this.choose();
    this.energy[ENERGY.switching]! += before - this.spring();
    this.log(ending === 'slide-still' && this.s2 === 0 ? 'stuck' : ending, this.time);
  }

  private slideStill(): void {
    const { x, constants: c } = this;
    const rigid = c.stiffness === Number.POSITIVE_INFINITY;
    x[W2] = 0;
    if (rigid) x[W1] = 0;
    this.s2 = 0;
    this.choose();
    const net = rigid
      ? this.driveTorque() - this.u[LOAD]!
      : this.read(this.mode.contactTorque) - this.u[LOAD]!;
    const hold = Math.max(c.Ts, c.Tc) + (rigid ? c.T1 : 0);
    if (Math.abs(net) <= hold) return;
    const far = c.fall > 0 ? 1 : 2;
    this.s2 = (net > 0 ? far : -far) as -2 | -1 | 1 | 2;
  }

  private driveTorque(): number {
    const { constants: c, x, u } = this;
    if (this.drive === 'stepper')
      return (
        this.fieldTorque * Math.sin(c.rotorTeeth * (u[REF]! - x[PHI]!)) +
        c.fieldDamping * (u[REF + 1]! - x[W1]!)
      );
    return c.K * this.read(this.mode.current);
  }

  private netOn1(): number {
    return this.driveTorque() - this.read(this.mode.contactTorque);
  }

  /** At which limit an analogue control stands: −1, 0 or 1. */
  get limits(): { readonly current: number; readonly voltage: number } {
    return { current: this.satI, voltage: this.satV };
  }

  /** rad of the screw's angle behind the motor's, the share of the wind-up that lies before it. */
  windBeforeScrew(share: number): number {
    const { constants: c, x } = this;
    if (share === 0 || c.stiffness === Number.POSITIVE_INFINITY || this.contact === 0) return 0;
    return share * (c.gap > 0 ? x[WIND]! - this.contact * c.gap : x[WIND]!);
  }
}

function clearReference(series: Series): void {
  const { terms } = series;
  for (let at = STATES + REF; at < terms.length; at += WIDTH) {
    terms[at] = 0;
    terms[at + 1] = 0;
    terms[at + 2] = 0;
  }
}

function squared(E: Float64Array): Float64Array {
  const out = new Float64Array(WIDTH * WIDTH);
  for (let row = 0; row < WIDTH; row++)
    for (let middle = 0; middle < WIDTH; middle++) {
      const weight = E[row * WIDTH + middle]!;
      if (weight === 0) continue;
      for (let column = 0; column < WIDTH; column++)
        out[row * WIDTH + column] = out[row * WIDTH + column]! + weight * E[middle * WIDTH + column]!;
    }
  return out;
}

function dot(form: Expression, z: Float64Array): number {
  let total = 0;
  for (let at = 0; at < WIDTH; at++) total += form[at]! * z[at]!;
  return total;
}

/** Mean square over a sample of what starts at `a`, ends at `b` and has this mean: exact for a parabola. */
function meanSquare(a: number, b: number, mean: number): number {
  const half = (b - a) / 2;
  const bend = (b + a) / 2 - mean;
  return mean * mean + (half * half) / 3 + (bend * bend) / 5;
}

function makeSlot(c: Constants, key: number, mode: Mode): Slot {
  const { flags } = mode;
  const rigid = c.stiffness === Number.POSITIVE_INFINITY;
  const has = (ending: Ending): boolean => mode.guards.some((guard) => guard.ending === ending);
  const { s1, s2 } = flags;
  const still1 = has('motor-still');
  const sign2 = Math.sign(s2);
  const edge = has('slide-slow') ? c.fall : has('slide-still') ? 0 : Number.NEGATIVE_INFINITY;
  const far = has('slide-fast') ? c.fall : Number.POSITIVE_INFINITY;
  const { dry, slope } = slideFriction(c, s2);
  const slips1 = rigid ? sign2 : s1;
  return {
    key,
    mode,
    matrix: NO_NUMBERS,
    load: 0,
    ready: false,
    lift: null,
    looks: 0,
    low1: still1 && s1 > 0 ? 0 : Number.NEGATIVE_INFINITY,
    high1: still1 && s1 < 0 ? 0 : Number.POSITIVE_INFINITY,
    low2: sign2 > 0 ? edge : sign2 < 0 ? -far : Number.NEGATIVE_INFINITY,
    high2: sign2 > 0 ? far : sign2 < 0 ? -edge : Number.POSITIVE_INFINITY,
    others: mode.guards.some(({ ending }) => !ending.endsWith('-still') && !/-(slow|fast)$/.test(ending)),
    dry1: slips1 * c.T1,
    slope1: slips1 === 0 ? 0 : c.b1,
    dry2: s2 === 0 ? 0 : dry,
    slope2: s2 === 0 ? 0 : slope,
    damping: rigid || flags.contact === 0 ? 0 : c.damping,
  };
}

/** Gathers the products of what a lifted step begins with; its energies are linear in them. */
function gather(
  lift: Lift,
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  g: number,
): void {
  const S = lift.moments;
  S[0] = S[0]! + a * a;
  S[1] = S[1]! + a * b;
  S[2] = S[2]! + a * c;
  S[3] = S[3]! + a * d;
  S[4] = S[4]! + a * e;
  S[5] = S[5]! + a * f;
  S[6] = S[6]! + a * g;
  S[7] = S[7]! + a;
  S[8] = S[8]! + b * b;
  S[9] = S[9]! + b * c;
  S[10] = S[10]! + b * d;
  S[11] = S[11]! + b * e;
  S[12] = S[12]! + b * f;
  S[13] = S[13]! + b * g;
  S[14] = S[14]! + b;
  S[15] = S[15]! + c * c;
  S[16] = S[16]! + c * d;
  S[17] = S[17]! + c * e;
  S[18] = S[18]! + c * f;
  S[19] = S[19]! + c * g;
  S[20] = S[20]! + c;
  S[21] = S[21]! + d * d;
  S[22] = S[22]! + d * e;
  S[23] = S[23]! + d * f;
  S[24] = S[24]! + d * g;
  S[25] = S[25]! + d;
  S[26] = S[26]! + e * e;
  S[27] = S[27]! + e * f;
  S[28] = S[28]! + e * g;
  S[29] = S[29]! + e;
  S[30] = S[30]! + f * f;
  S[31] = S[31]! + f * g;
  S[32] = S[32]! + f;
  S[33] = S[33]! + g * g;
  S[34] = S[34]! + g;
  S[35] = S[35]! + 1;
  lift.used = true;
}
