/** Every kind of device. Add a kind: its file and one line here. */
import type { WiringKind } from '../kind.ts';
import { control } from './control.ts';
import { drive, inverter } from './drive.ts';
import { encoder } from './encoder.ts';
import { handwheel } from './handwheel.ts';
import { connector, earthBar, metal, terminalStrip } from './joints.ts';
import { brake, fan, lamp, valve } from './loads.ts';
import { mainsFilter } from './mains-filter.ts';
import { mainsMotor, servoMotor, spindleMotor, stepper } from './motor.ts';
import { motorBreaker } from './motor-breaker.ts';
import { buffer, diode, dumpResistor, lineUnit, optoBoard, resistor } from './pieces.ts';
import { probe } from './probe.ts';
import { breaker, fuse, mainSwitch, residual } from './protection.ts';
import { sensor } from './sensor.ts';
import { bus, mainsInlet, supply, transformer } from './sources.ts';
import { halls, resolver, tacho } from './speed-and-angle.ts';
import {
  button,
  contactor,
  delayedRelay,
  door,
  home,
  key,
  limit,
  lockedDoor,
  mechanical,
  mushroom,
  relay,
  safetyRelay,
} from './switches.ts';

const ALL: readonly WiringKind[] = [
  control,
  drive,
  inverter,
  servoMotor,
  stepper,
  spindleMotor,
  mainsMotor,
  encoder,
  resolver,
  tacho,
  halls,
  sensor,
  probe,
  handwheel,
  mechanical,
  limit,
  home,
  button,
  mushroom,
  key,
  door,
  lockedDoor,
  relay,
  delayedRelay,
  safetyRelay,
  contactor,
  valve,
  brake,
  lamp,
  fan,
  supply,
  bus,
  transformer,
  mainsInlet,
  fuse,
  breaker,
  motorBreaker,
  residual,
  mainSwitch,
  mainsFilter,
  terminalStrip,
  connector,
  earthBar,
  metal,
  resistor,
  dumpResistor,
  diode,
  optoBoard,
  buffer,
  lineUnit,
];

/** Kinds by their id. */
export const WIRING_KINDS: Readonly<Record<string, WiringKind>> = Object.fromEntries(
  ALL.map((kind) => [kind.id, kind]),
);
