/** What is asked of an axis or spindle to work out how far it runs on. */
import { amount, choice, type SettingSpecs } from '../../quantity/settings.ts';

/** Positions among the answers of `vertical`. */
export const DROPS = { no: 0, yes: 1, friction: 2 } as const;
const vertical = choice('it drops when nothing holds it', ['no', 'yes', 'friction just holds it'], 'no');
const common = {
  inertia: amount('inertia of all that moves, at the shaft', 'kg·m²'),
  friction: amount('steady friction torque, at the shaft', 'N·m'),
  viscous: amount('friction that grows with speed, at the shaft', 'N·m·s/rad'),
  drag: amount(
    'braking that grows with speed once the drive has let go (motor shorted through a resistor)',
    'N·m·s/rad',
  ),
  'brake-torque': amount('torque of the brake, at the shaft', 'N·m'),
  // Positions are channels.
  'torque-off': choice('input for safe torque off at its drive', ['none', 'one channel', 'two channels']),
};

export const MOTION_SETTINGS: Readonly<Record<'axis' | 'spindle', SettingSpecs>> = {
  axis: {
    speed: amount('highest speed', 'm/min'),
    lead: amount('travel in one turn of the shaft', 'mm'),
    deceleration: amount('slowing when the drive brakes', 'm/s²'),
    ...common,
    vertical,
    weight: amount('torque by which the load turns its own screw', 'N·m'),
    travel: amount('from one hard stop to the other', 'mm'),
    'limit-low': amount('from the lower hard stop to where the lower limit switch acts', 'mm'),
    'soft-low': amount('from the lower hard stop to the lower software limit', 'mm'),
    home: amount('from the lower hard stop to where the home switch acts', 'mm'),
    'home-speed': amount('speed of looking for home', 'm/min'),
    'soft-high': amount('from the lower hard stop to the upper software limit', 'mm'),
    'limit-high': amount('from the lower hard stop to where the upper limit switch acts', 'mm'),
  },
  spindle: {
    speed: amount('highest speed', 'r/min'),
    deceleration: amount('time to stand still when the drive brakes from the highest speed', 's'),
    ...common,
    vertical,
    guard: amount('from the opening of the guard to the nearest moving part', 'mm'),
  },
};
