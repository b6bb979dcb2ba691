/** Writes a mode's equations and its guards from the constants of an axis. */
import { doubles } from './doubles.ts';
import { electrics, watchLimits } from './electrics.ts';
import {
  clearForms,
  constant,
  type Form,
  input,
  kept,
  less,
  scaled,
  sparse,
  state,
  sum,
  zero,
} from './forms.ts';
import * as modes from './modes.ts';
import {
  type Constants,
  type Ending,
  type Guard,
  type Mode,
  type ModeFlags,
  slideFriction,
} from './modes.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CHARGE, CURRENT, LOAD, PHI, REF1, STATES, W1, W2, WIND, ZC, ZV } = modes;

const TINY = 1e-13;

type Watch = (form: Form, ending: Ending, scale: number, curved?: number) => void;

/** What both bodies have in common while a mode is put together. */
interface Making {
  readonly c: Constants;
  readonly flags: ModeFlags;
  readonly rows: Form[];
  readonly watch: Watch;
  /** Torque of the motor, linear part. */
  readonly drive: Form;
  readonly stepping: boolean;
  readonly smoothed: boolean;
  readonly friction2: Form;
  /** N·m that friction from rest can hold at the slide. */
  readonly hold2: number;
  /** N·m beside which rounding is judged. */
  readonly scale: number;
  readonly curvedOn: number[];
}

export function buildMode(c: Constants, flags: ModeFlags): Mode {
  clearForms();
  const nothing = zero();
  const rigid = c.stiffness === Number.POSITIVE_INFINITY;
  const e = electrics(c, flags);
  const rows: Form[] = [];
  for (let at = 0; at < STATES; at++) rows.push(nothing);
  const guards: Guard[] = [];
  const guardForms: Form[] = [];
  const watch: Watch = (form, ending, scale, curved = 0) => {
    guards.push({ ending, tolerance: scale * TINY, curved });
    guardForms.push(form);
  };
  const smoothed = c.smooth > 0;
  const stepping = flags.drive === 'stepper';
  const { dry, slope } = slideFriction(c, flags.s2);
  const friction2 = smoothed
    ? scaled(state(W2), c.b2)
    : flags.s2 === 0
      ? nothing
      : sum(constant(dry), scaled(state(W2), slope));
  const curvedOn = doubles(STATES);
  const making: Making = {
    c,
    flags,
    rows,
    watch,
    drive: stepping ? scaled(less(input(REF1), state(W1)), c.fieldDamping) : scaled(e.current, c.K),
    stepping,
    smoothed,
    friction2,
    hold2: flags.s2 !== 0 || smoothed ? 0 : Math.max(c.Ts, c.Tc),
    scale: Math.max(c.T1 + c.Ts, 1e-6),
    curvedOn,
  };

  rows[PHI] = state(W1);
  rows[CHARGE] = e.current;
  if (e.carries)
    rows[CURRENT] = scaled(less(less(e.voltage, scaled(e.current, c.R)), scaled(state(W1), c.K)), 1 / c.L);
  if (e.loop) {
    rows[ZV] = e.loop.zv;
    if (e.loop.zc !== null) rows[ZC] = e.loop.zc;
  }
  const contactTorque = rigid || flags.contact === 0 ? nothing : spring(c, c.gap > 0 ? flags.contact : 0);
  const friction1 = rigid ? oneBody(making) : twoBodies(making, contactTorque);
  watchSlide(making, rigid);
  if (e.loop) watchLimits(c, flags, e.current, e.loop, watch);

  const guardRows = sparse(guardForms);
  return {
    flags,
    ...sparse(rows),
    guards,
    guardStart: guardRows.start,
    guardColumn: guardRows.column,
    guardWeight: guardRows.weight,
    current: kept(e.current),
    contactTorque: kept(contactTorque),
    voltage: kept(e.voltage),
    friction1: kept(friction1),
    friction2: kept(friction2),
    curved: smoothed ? 1 : stepping ? 2 : 0,
    curvedOn,
  };
}

/** Torque of the spring with the flank on this side in contact. */
function spring(c: Constants, side: number): Form {
  const stretch = sum(scaled(state(WIND), c.stiffness), constant(-side * c.gap * c.stiffness));
  return sum(stretch, scaled(less(state(W1), state(W2)), c.damping));
}

/** A rigid axis: the dry frictions of motor and slide act together, in the slide's state. Returns the motor's friction. */
function oneBody({
  c,
  flags,
  rows,
  watch,
  drive,
  stepping,
  smoothed,
  friction2,
  hold2,
  scale,
  curvedOn,
}: Making): Form {
  const friction1 = sum(constant(Math.sign(flags.s2) * c.T1), scaled(state(W1), c.b1));
  const net = less(drive, input(LOAD));
  if (flags.s2 === 0 && !smoothed) {
    watch(less(constant(c.T1 + hold2), net), 'slide-breaks+', scale, stepping ? -1 : 0);
    watch(sum(constant(c.T1 + hold2), net), 'slide-breaks-', scale, stepping ? 1 : 0);
    rows[PHI] = zero();
    return friction1;
  }
  const all = scaled(less(net, sum(friction1, friction2)), 1 / (c.J1 + c.J2));
  rows[W1] = all;
  rows[W2] = all;
  const share = (stepping ? 1 : -c.Tc) / (c.J1 + c.J2);
  curvedOn[W1] = share;
  curvedOn[W2] = share;
  return friction1;
}

/** Motor and slide with the yielding parts between. Returns the motor's friction. */
function twoBodies(making: Making, contactTorque: Form): Form {
  const { c, flags, rows, watch, drive, stepping, smoothed, friction2, hold2, scale, curvedOn } = making;
  const { s1, s2, contact } = flags;
  const friction1 = s1 === 0 ? zero() : sum(constant(s1 * c.T1), scaled(state(W1), c.b1));
  const net1 = less(drive, contactTorque);
  if (s1 === 0) {
    watch(less(constant(c.T1), net1), 'motor-breaks+', scale, stepping ? -1 : 0);
    watch(sum(constant(c.T1), net1), 'motor-breaks-', scale, stepping ? 1 : 0);
    rows[PHI] = zero();
  } else {
    rows[W1] = scaled(less(net1, friction1), 1 / c.J1);
    if (stepping) curvedOn[W1] = 1 / c.J1;
    if (c.T1 > 0) watch(scaled(state(W1), s1), 'motor-still', 1);
  }
  const net2 = less(contactTorque, input(LOAD));
  if (s2 === 0 && !smoothed) {
    watch(less(constant(hold2), net2), 'slide-breaks+', scale);
    watch(sum(constant(hold2), net2), 'slide-breaks-', scale);
  } else {
    rows[W2] = scaled(less(net2, friction2), 1 / c.J2);
    if (smoothed) curvedOn[W2] = -c.Tc / c.J2;
  }
  rows[WIND] = less(s1 === 0 ? zero() : state(W1), s2 === 0 && !smoothed ? zero() : state(W2));
  if (c.gap > 0) {
    const most = Math.max(scale, c.stiffness * c.gap);
    if (contact === 0) {
      watch(scaled(spring(c, 1), -1), 'touch+', most);
      watch(spring(c, -1), 'touch-', most);
    } else watch(scaled(spring(c, contact), contact), 'leave', most);
  }
  return friction1;
}

/** Guards on the slide's own speed: it comes to rest, or its friction has fallen. */
function watchSlide({ c, flags: { s2 }, watch, smoothed }: Making, rigid: boolean): void {
  if (smoothed || s2 === 0) return;
  const dries = rigid ? c.T1 + c.Ts + c.Tc : c.Ts + c.Tc;
  const sign = Math.sign(s2);
  if (dries > 0 && (Math.abs(s2) === 1 || c.fall === 0)) watch(scaled(state(W2), sign), 'slide-still', 1);
  if (c.fall === 0) return;
  const over = sum(scaled(state(W2), sign), constant(-c.fall));
  if (Math.abs(s2) === 1) watch(scaled(over, -1), 'slide-fast', c.fall);
  else watch(over, 'slide-slow', c.fall);
}
