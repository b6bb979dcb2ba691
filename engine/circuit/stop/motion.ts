/** What is asked of an axis or spindle to work out how far it runs on. */
import type { SettingSpec } from './kinds.ts';

const number = (name: string, unit: string, usual = ''): SettingSpec => ({
  kind: 'number',
  name,
  usual,
  unit,
});
const vertical: SettingSpec = {
  kind: 'choice',
  name: 'it drops when nothing holds it',
  usual: 'no',
  options: ['no', 'yes'],
};
const common = {
  inertia: number('inertia of all that moves, at the shaft', 'kg·m²'),
  friction: number('steady friction torque, at the shaft', 'N·m'),
  viscous: number('friction that grows with speed, at the shaft', 'N·m·s/rad'),
  drag: number(
    'braking that grows with speed once the drive has let go (motor shorted through a resistor)',
    'N·m·s/rad',
  ),
  'brake-torque': number('torque of the brake, at the shaft', 'N·m'),
};

export const MOTION_SETTINGS: Readonly<Record<'axis' | 'spindle', Readonly<Record<string, SettingSpec>>>> = {
  axis: {
    speed: number('highest speed', 'm/min'),
    lead: number('travel in one turn of the shaft', 'mm'),
    deceleration: number('slowing when the drive brakes', 'm/s²'),
    ...common,
    vertical,
    weight: number('torque by which the load turns its own screw', 'N·m'),
    travel: number('from one hard stop to the other', 'mm'),
    'limit-low': number('from the lower hard stop to where the lower limit switch acts', 'mm'),
    'soft-low': number('from the lower hard stop to the lower software limit', 'mm'),
    home: number('from the lower hard stop to where the home switch acts', 'mm'),
    'home-speed': number('speed of looking for home', 'm/min'),
    'soft-high': number('from the lower hard stop to the upper software limit', 'mm'),
    'limit-high': number('from the lower hard stop to where the upper limit switch acts', 'mm'),
  },
  spindle: {
    speed: number('highest speed', 'r/min'),
    deceleration: number('time to stand still when the drive brakes from the highest speed', 's'),
    ...common,
    vertical: { ...vertical },
    guard: number('from the opening of the guard to the nearest moving part', 'mm'),
  },
};
