/** What is asked of an axis or spindle to work out how far it runs on. */
import { amount, choice, mostly, type SettingSpecs } from '../../quantity/settings.ts';

/** Positions among the answers of `vertical`. */
export const DROPS = { no: 0, yes: 1, friction: 2 } as const;
const vertical = choice('it drops when nothing holds it', ['no', 'yes', 'friction just holds it'], 'no');
const common = {
  inertia: mostly(amount('inertia of all that moves, at the shaft', 'kg·m²'), '1e-6 kg·m²', '20 kg·m²'),
  friction: mostly(amount('steady friction torque, at the shaft', 'N·m'), '0.001 N·m', '100 N·m'),
  viscous: amount('friction that grows with speed, at the shaft', 'N·m·s/rad'),
  drag: amount(
    'braking that grows with speed once the drive has let go (motor shorted through a resistor)',
    'N·m·s/rad',
  ),
  'brake-torque': mostly(amount('torque of the brake, at the shaft', 'N·m'), '0.05 N·m', '1000 N·m'),
  // Positions are channels.
  'torque-off': choice('input for safe torque off at its drive', ['none', 'one channel', 'two channels']),
};

export const MOTION_SETTINGS: Readonly<Record<'axis' | 'spindle', SettingSpecs>> = {
  axis: {
    speed: mostly(amount('highest speed', 'm/min'), '0.1 m/min', '120 m/min'),
    lead: mostly(amount('travel in one turn of the shaft', 'mm'), '0.5 mm', '80 mm'),
    deceleration: mostly(amount('slowing when the drive brakes', 'm/s²'), '0.05 m/s²', '20 m/s²'),
    ...common,
    vertical,
    weight: mostly(amount('torque by which the load turns its own screw', 'N·m'), '0.01 N·m', '200 N·m'),
    'brake-margin': mostly(
      amount('brake torque that is asked for, over the load it holds', '1', '1.5'),
      '1',
      '4',
    ),
    travel: mostly(amount('from one hard stop to the other', 'mm'), '10 mm', '6 m'),
    'limit-low': mostly(
      amount('from the lower hard stop to where the lower limit switch acts', 'mm'),
      '0.5 mm',
      '6 m',
    ),
    'soft-low': mostly(amount('from the lower hard stop to the lower software limit', 'mm'), '0.5 mm', '6 m'),
    home: mostly(amount('from the lower hard stop to where the home switch acts', 'mm'), '0.5 mm', '6 m'),
    'home-speed': mostly(amount('speed of looking for home', 'm/min'), '0.02 m/min', '30 m/min'),
    'soft-high': mostly(amount('from the lower hard stop to the upper software limit', 'mm'), '10 mm', '6 m'),
    'limit-high': mostly(
      amount('from the lower hard stop to where the upper limit switch acts', 'mm'),
      '10 mm',
      '6 m',
    ),
  },
  spindle: {
    speed: mostly(amount('highest speed', 'r/min'), '50 r/min', '30000 r/min'),
    deceleration: mostly(
      amount('time to stand still when the drive brakes from the highest speed', 's'),
      '0.05 s',
      '120 s',
    ),
    ...common,
    vertical,
    guard: mostly(amount('from the opening of the guard to the nearest moving part', 'mm'), '10 mm', '3 m'),
  },
};
