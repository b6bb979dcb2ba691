/** What the supply is asked about as a whole; it stands in the settings of the wiring, as typed. */
import { LAYINGS, type Laying } from '../../tables/conductor-current.ts';
import { LEAKAGE_SHARE, type ResidualType } from '../../tables/residual-types.ts';
import { CABINET_WIRE, CABINET_WIRE_LENGTH } from '../wiring/inside-length.ts';
import {
  amount,
  choice,
  count,
  level,
  mostly,
  readSettings,
  type SettingSpecs,
  text,
} from '../wiring/setting.ts';
import type { WiringProblem } from '../wiring/types.ts';

const layings = Object.keys(LAYINGS);

/** By setting of the wiring. What is laid how follows IEC 60204-1: B1, B2, C, E, in words in `LAYINGS`. */
export const POWER_SETTINGS = {
  country: text('country the machine stands in'),
  connection: choice('how it is connected to the mains', ['plug and socket', 'fixed']),
  'socket-amps': mostly(amount('fuse or breaker before the socket', 'A'), '6 A', '125 A'),
  'socket-curve': choice('its letter, where it is a breaker', ['B', 'C', 'D', 'fuse']),
  'short-circuit': {
    ...amount('largest short-circuit current of the mains at the machine', 'A'),
    help: 'An electrician measures it, or the supplier of the mains states it.',
  },
  'residual-type': choice('type of the residual current device before the machine', [
    'AC',
    'A',
    'F',
    'B',
    'none',
  ]),
  'residual-amps': mostly(amount('difference at which it trips', 'mA'), '5 mA', '500 mA'),
  leakage: level('leakage to earth of all filters and drives together, as measured', 'mA'),
  // Habit: leaves room for what leaks besides at switching on; IEC 60364-5-53, 531.3.2 (recalled, check the standard).
  'leakage-share': amount(
    'share of the difference at which it trips that may leak all the time',
    '%',
    `${LEAKAGE_SHARE * 100} %`,
  ),
  // Common practice, no source.
  'motor-cable-leakage': level(
    'leakage to earth of a metre of screened motor cable behind an inverter',
    'mA/m',
    '0.2 mA/m',
  ),
  // Core to screen, and core to whatever earthed metal the cable lies on: common practice, no source.
  'screened-cable-capacitance': amount(
    'usual capacitance of a metre of screened motor cable',
    'pF/m',
    '200 pF/m',
  ),
  'open-cable-capacitance': amount(
    'usual capacitance to earth of a metre of motor cable without a screen',
    'pF/m',
    '50 pF/m',
  ),
  // Reference impedance of public mains for one phase, its resistance: IEC 60725 (from memory).
  'mains-resistance': amount('resistance of the mains up to the socket, there and back', 'Ω', '0.4 Ω'),
  'cabinet-temperature': mostly(level('temperature in the cabinet', '°C', '', 173), '-20 °C', '80 °C'),
  'outside-temperature': mostly(
    level('temperature around the wires outside', '°C', '', 173),
    '-20 °C',
    '60 °C',
  ),
  'laid-inside': choice('how wires lie in the cabinet', layings, 'B1'),
  'laid-outside': choice('how cables lie outside', layings, 'B2'),
  together: count('loaded circuits that lie together, at most', '', 200, 1),
  [CABINET_WIRE]: CABINET_WIRE_LENGTH,
  'cabinet-height': mostly(amount('height of the cabinet', 'mm'), '100 mm', '2.5 m'),
  'cabinet-width': mostly(amount('width of the cabinet', 'mm'), '100 mm', '3 m'),
  'cabinet-depth': mostly(amount('depth of the cabinet', 'mm'), '80 mm', '1 m'),
  'cabinet-material': choice('what the cabinet is made of', ['painted steel', 'plastic']),
  'cabinet-stands': choice('how it stands', ['free on all sides', 'back against a wall']),
  'cabinet-heat': mostly(level('heat given off inside', 'W'), '0 W', '5000 W'),
  'cabinet-fan': mostly(level('air the fan moves through its filter', 'm³/h'), '0 m³/h', '2000 m³/h'),
  'room-temperature': mostly(level('highest temperature of the room', '°C', '', 173), '-20 °C', '60 °C'),
  'cabinet-limit': mostly(
    level('highest temperature the parts inside stand', '°C', '', 173),
    '30 °C',
    '90 °C',
  ),
} as const satisfies SettingSpecs;

export interface PowerSettings {
  readonly country: string;
  readonly connection?: 'plug and socket' | 'fixed';
  readonly socketAmps?: number;
  readonly socketCurve?: 'B' | 'C' | 'D' | 'fuse';
  readonly shortCircuit?: number;
  readonly residualType?: ResidualType | 'none';
  readonly residualAmps?: number;
  readonly leakage?: number;
  /** Undefined where what was typed cannot be read. */
  readonly leakageShare?: number;
  /** A/m. */
  readonly cableLeakage?: number;
  /** Whether somebody has said it, or it is only what is usual. */
  readonly cableLeakageSaid: boolean;
  /** F/m. */
  readonly screenedCapacitance?: number;
  readonly openCapacitance?: number;
  readonly mainsResistance?: number;
  /** Kelvin. */
  readonly cabinetTemperature?: number;
  readonly outsideTemperature?: number;
  readonly laidInside: Laying;
  readonly laidOutside: Laying;
  readonly together?: number;
  readonly height?: number;
  readonly width?: number;
  readonly depth?: number;
  readonly material?: 'painted steel' | 'plastic';
  readonly stands?: 'free on all sides' | 'back against a wall';
  readonly heat?: number;
  readonly fan?: number;
  readonly roomTemperature?: number;
  readonly limit?: number;
}

/** Reads those of the wiring's settings that are about the supply; others are left to who they belong to. */
export function readPowerSettings(
  typed: Readonly<Record<string, string>>,
  problems: WiringProblem[],
): PowerSettings {
  const own = Object.fromEntries(
    Object.entries(typed).filter(([name]) => Object.hasOwn(POWER_SETTINGS, name)),
  );
  const read = readSettings(POWER_SETTINGS, own, 'settings', problems);
  const fields: Readonly<Record<string, keyof typeof POWER_SETTINGS>> = {
    connection: 'connection',
    socketAmps: 'socket-amps',
    socketCurve: 'socket-curve',
    shortCircuit: 'short-circuit',
    residualType: 'residual-type',
    residualAmps: 'residual-amps',
    leakage: 'leakage',
    leakageShare: 'leakage-share',
    cableLeakage: 'motor-cable-leakage',
    screenedCapacitance: 'screened-cable-capacitance',
    openCapacitance: 'open-cable-capacitance',
    mainsResistance: 'mains-resistance',
    cabinetTemperature: 'cabinet-temperature',
    outsideTemperature: 'outside-temperature',
    together: 'together',
    height: 'cabinet-height',
    width: 'cabinet-width',
    depth: 'cabinet-depth',
    material: 'cabinet-material',
    stands: 'cabinet-stands',
    heat: 'cabinet-heat',
    fan: 'cabinet-fan',
    roomTemperature: 'room-temperature',
    limit: 'cabinet-limit',
  };
  const known = Object.entries(fields)
    .map(([field, setting]) => [field, read[setting]] as const)
    .filter(([, value]) => value !== undefined);
  return {
    country: typeof read.country === 'string' ? read.country : '',
    cableLeakageSaid: (own['motor-cable-leakage'] ?? '').trim() !== '',
    laidInside: (read['laid-inside'] ?? 'B1') as Laying,
    laidOutside: (read['laid-outside'] ?? 'B2') as Laying,
    ...Object.fromEntries(known),
  };
}
