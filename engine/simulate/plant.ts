/**
 * The moving part of one axis: motor, yielding screw, slide on its ways. It advances exactly from event to event.
 *
 * Over one whole sample with a held command a mode's answer is a fixed matrix, worked out once and kept (tick.ts, and
 * lifted.ts for several samples at once); where an event may fall inside, or where the control is analogue, the step goes
 * by series with the event located (by-series.ts), and turn.ts says what comes after the event.
 */
import { buildMode } from './build-mode.ts';
import { ENERGY } from './energy.ts';
import { type Kept, keepMode } from './kept.ts';
import * as modes from './modes.ts';
import { type Constants, DRIVES, type DriveKind, type Ending, type Expression, type Mode } from './modes.ts';
import type { Reference } from './reference.ts';
import { Slot } from './slot.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CURRENT, INPUTS, ONE, STATES, W1, W2, WIDTH, WIND } = modes;

/** What the plant has to tell besides its state. */
export type PlantLog = (ending: Ending | 'stuck', time: number) => void;

export class Plant {
  constants: Constants;
  readonly x = new Float64Array(STATES);
  readonly u = new Float64Array(INPUTS);
  readonly energy = new Float64Array(7);
  /** s; set by whoever drives the plant. */
  time = 0;
  drive: DriveKind;
  /** Steps by series so far, and events passed over. */
  seriesSteps = 0;
  passedOver = 0;
  /** Set when it gave up; the state then stands still. */
  exhausted = false;
  /** J given to the motor so far, where `tracks` or `books` says so, since it costs time. */
  drawn = 0;
  tracks = false;
  /** Whether energies are booked; a search or a band needs none, and each look is quicker without. */
  readonly books: boolean;
  /** s of the sample whose steps are kept. */
  readonly h: number;
  readonly reference: Reference | null;
  readonly log: PlantLog;
  readonly scratch = new Float64Array(WIDTH);
  slot: Slot;
  /** The mode's flags; see ModeFlags. */
  s1: -1 | 0 | 1 = 0;
  s2: -2 | -1 | 0 | 1 | 2 = 0;
  contact: -1 | 0 | 1 = 1;
  satI: -1 | 0 | 1 = 0;
  satV: -1 | 0 | 1 = 0;
  /** N·m of the stepper's field at its top; set by whoever drives the plant. */
  fieldTorque = 0;
  /** rad of one step of the stepper's command; 0 commands without steps. */
  pulse = 0;
  private kept: Kept;
  private readonly slots = new Map<number, Slot>();

  /** `h` is the sample whose steps are kept, in s; the reference is needed by an analogue control and by a stepper. */
  constructor(
    constants: Constants,
    drive: DriveKind,
    h: number,
    reference: Reference | null,
    log: PlantLog,
    books = true,
    kept: Kept = new Map(),
  ) {
    this.books = books;
    this.kept = kept;
    this.constants = constants;
    this.drive = drive;
    this.h = h;
    this.reference = reference;
    this.log = log;
    this.u[ONE] = 1;
    this.setFlags();
    this.slot = this.find();
  }

  get mode(): Mode {
    return this.slot.kept.mode;
  }

  get rigid(): boolean {
    return this.constants.stiffness === Number.POSITIVE_INFINITY;
  }

  /** Whether the command is held over a sample. */
  get sampled(): boolean {
    const { drive } = this;
    return drive === 'voltage' || drive === 'current' || drive === 'open' || drive === 'short';
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
    this.kept = new Map();
    this.slots.clear();
    this.settleModes();
  }

  /** Takes the directions of slip and the flank from the state as it stands. */
  settleModes(): void {
    this.setFlags();
    this.choose();
  }

  private setFlags(): void {
    const { x, constants: c, rigid } = this;
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
  }

  /** Books what lifted steps have gathered; before energies are read. */
  settleEnergy(): void {
    for (const slot of this.slots.values()) slot.settle(this.energy);
  }

  /** Takes the slot of the flags as they stand. */
  choose(): void {
    this.slot = this.find();
  }

  private find(): Slot {
    const { s1, s2, contact, satI, satV, drive } = this;
    const key =
      ((((DRIVES.indexOf(drive) * 3 + s1 + 1) * 5 + s2 + 2) * 3 + contact + 1) * 3 + satI + 1) * 3 + satV + 1;
    let slot = this.slots.get(key);
    if (!slot) {
      let kept = this.kept.get(key);
      if (!kept) {
        const { constants } = this;
        kept = keepMode(constants, buildMode(constants, { drive, s1, s2, contact, satI, satV }));
        this.kept.set(key, kept);
      }
      slot = new Slot(kept, this.books);
      this.slots.set(key, slot);
    }
    return slot;
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
    const { x, constants: c, rigid } = this;
    const kinetic = 0.5 * (c.J1 * x[W1]! ** 2 + c.J2 * (rigid ? x[W1]! : x[W2]!) ** 2);
    const magnetic = this.drive === 'voltage' || this.drive === 'analogue' || this.drive === 'short';
    return kinetic + this.spring() + (magnetic ? 0.5 * c.L * x[CURRENT]! ** 2 : 0);
  }

  /** J in the spring. */
  spring(): number {
    const { x, constants: c } = this;
    if (this.rigid || this.contact === 0) return 0;
    const stretch = c.gap > 0 ? x[WIND]! - this.contact * c.gap : x[WIND]!;
    return 0.5 * c.stiffness * stretch * stretch;
  }

  /** At which limit an analogue control stands: −1, 0 or 1. */
  get limits(): { readonly current: number; readonly voltage: number } {
    return { current: this.satI, voltage: this.satV };
  }

  /** rad of the screw's angle behind the motor's, the share of the wind-up that lies before it. */
  windBeforeScrew(share: number): number {
    const { constants: c, x } = this;
    if (share === 0 || this.rigid || this.contact === 0) return 0;
    return share * (c.gap > 0 ? x[WIND]! - this.contact * c.gap : x[WIND]!);
  }
}
