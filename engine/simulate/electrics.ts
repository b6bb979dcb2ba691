/** What motor and drive make of a mode: voltage, current, the integrators of an analogue control, and its limits. */
import { constant, type Form, input, less, scaled, state, sum, zero } from './forms.ts';
import type { Constants, Ending, ModeFlags } from './modes.ts';
import * as modes from './modes.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CURRENT, HELD, LIMIT, PHI, REF, REF1, REF2, W1, WIND, ZC, ZV } = modes;

export interface Electrics {
  readonly voltage: Form;
  readonly current: Form;
  /** Whether the current is a state of its own. */
  readonly carries: boolean;
  /** Of an analogue control; null for the others. */
  readonly loop: AnalogueLoop | null;
}

interface AnalogueLoop {
  readonly wanted: Form;
  readonly allowed: Form;
  /** Rates of the two integrators. */
  readonly zv: Form;
  readonly zc: Form | null;
  /** What the current loop asks for, before the bus cuts it. */
  readonly wantedVoltage: Form;
}

/** Voltage and current of the motor as the drive makes them. */
export function electrics(c: Constants, flags: ModeFlags): Electrics {
  const i = state(CURRENT);
  const emf = scaled(state(W1), c.K);
  const carries = c.L > 0;
  const follows = (voltage: Form): Form => (carries ? i : scaled(less(voltage, emf), 1 / c.R));
  const ohmic = (current: Form): Form => sum(scaled(current, c.R), emf);
  switch (flags.drive) {
    case 'voltage':
      return { voltage: input(HELD), current: follows(input(HELD)), carries, loop: null };
    case 'short':
      return { voltage: zero(), current: follows(zero()), carries, loop: null };
    case 'open':
    case 'stepper':
      return { voltage: zero(), current: zero(), carries: false, loop: null };
    case 'current':
      return { voltage: ohmic(input(HELD)), current: input(HELD), carries: false, loop: null };
  }
  const positionError = less(input(REF), less(state(PHI), scaled(state(WIND), c.seesWind)));
  const speedError = less(sum(scaled(positionError, c.Kp), scaled(input(REF1), c.kff)), state(W1));
  const wanted = sum(
    sum(scaled(speedError, c.Kvp), scaled(state(ZV), c.Kvi)),
    scaled(input(REF2), (c.kaff * (c.J1 + c.J2)) / c.K),
  );
  const allowed = flags.satI === 0 ? wanted : constant(flags.satI * c.currentLimit);
  const limit = scaled(input(LIMIT), flags.satV);
  if (flags.drive === 'analogue-ideal') {
    const current = flags.satV === 0 ? allowed : scaled(less(limit, emf), 1 / c.R);
    const zv = sum(speedError, antiWindup(wanted, current, c.Kvp));
    const voltage = ohmic(current);
    return {
      voltage,
      current,
      carries: false,
      loop: { wanted, allowed, zv, zc: null, wantedVoltage: voltage },
    };
  }
  const zv = sum(speedError, antiWindup(wanted, allowed, c.Kvp));
  const integral = scaled(state(ZC), c.Kci);
  // Without inductance the current loop is an algebraic one: v = Kcp (i* − (v − emf)/R) + Kci zc.
  const wantedVoltage = carries
    ? sum(scaled(less(allowed, i), c.Kcp), integral)
    : scaled(sum(sum(scaled(allowed, c.Kcp), integral), scaled(emf, c.Kcp / c.R)), 1 / (1 + c.Kcp / c.R));
  const voltage = flags.satV === 0 ? wantedVoltage : limit;
  const current = follows(voltage);
  const demand =
    carries || flags.satV === 0 ? wantedVoltage : sum(scaled(less(allowed, current), c.Kcp), integral);
  const zc = sum(less(allowed, current), antiWindup(demand, voltage, c.Kcp));
  return { voltage, current, carries, loop: { wanted, allowed, zv, zc, wantedVoltage: demand } };
}

/** −(wanted − had)/gain: the integrator follows what the limit let through. */
function antiWindup(wanted: Form, had: Form, gain: number): Form {
  return gain > 0 ? scaled(less(wanted, had), -1 / gain) : zero();
}

/** Guards of an analogue control's limits. */
export function watchLimits(
  c: Constants,
  { drive, satI, satV }: ModeFlags,
  current: Form,
  { wanted, allowed, wantedVoltage }: AnalogueLoop,
  watch: (form: Form, ending: Ending, scale: number) => void,
): void {
  if (Number.isFinite(c.currentLimit)) {
    const limit = constant(c.currentLimit);
    if (satI === 0) {
      watch(less(limit, wanted), 'current+', c.currentLimit);
      watch(sum(limit, wanted), 'current-', c.currentLimit);
    } else watch(less(scaled(wanted, satI), limit), 'current-free', c.currentLimit);
  }
  const limit = input(LIMIT);
  if (satV === 0) {
    watch(less(limit, wantedVoltage), 'voltage+', 1);
    watch(sum(limit, wantedVoltage), 'voltage-', 1);
  } else if (drive === 'analogue') watch(less(scaled(wantedVoltage, satV), limit), 'voltage-free', 1);
  else watch(scaled(less(allowed, current), satV), 'voltage-free', 1);
}
