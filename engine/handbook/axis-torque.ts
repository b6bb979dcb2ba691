import { defineSheet, formula, input } from '../sheet/index.ts';

const ENERGY = 'derivation: energy balance of one screw turn, then of the reduction';
const NEWTON = 'derivation: Newton’s second law for turning';

const atScrew = (force: string) =>
  `(${force} >= 0 ? ${force} * Ph / (2 * pi * eta) : ${force} * Ph * eta_b / (2 * pi)) + T_d`;
const atMotor = (torque: string) => `${torque} >= 0 ? ${torque} / (i * eta_g) : ${torque} * eta_g / i`;

/** Screw torque and motor torque of one case of force. */
const pair = (key: string, force: string, words: string) =>
  ({
    [`S_${key}`]: formula(`torque at the screw, ${words}`, 'N·m', atScrew(force), ENERGY, {
      says: 'Force times lead is the work of one turn; losses add to it when the motor drives and help it when the load does. The drag of nut and bearings comes on top.',
    }),
    [`T_${key}`]: formula(`torque at the motor, ${words}`, 'N·m', atMotor(`S_${key}`), ENERGY, {
      says: 'The reduction divides the torque; its losses add when the motor drives and help when the load does.',
    }),
  }) as const;

type Pair<K extends string> = Record<`S_${K}` | `T_${K}`, ReturnType<typeof formula>>;

export const axisTorque = defineSheet({
  id: 'axis-torque',
  title: 'Torque the motor must give in each phase of a move',
  about:
    'From the forces on the slide through screw and reduction to the motor shaft: running, cutting, gaining speed, slowing down and standing. Below zero the motor brakes and the axis gives power back. The motor’s own friction is kept apart.',
  symbols: {
    F_up_run: input('force running upwards', 'N'),
    F_dn_run: input('force running downwards', 'N'),
    F_up_cut: input('force cutting upwards', 'N'),
    F_dn_cut: input('force cutting downwards', 'N'),
    F_hold: input('force to hold at rest', 'N', { domain: 'not negative' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    eta: input('efficiency of the screw, turning moves the load', '%', { domain: 'positive', tex: '\\eta' }),
    eta_b: input('efficiency of the screw, the load turns it', '%', { tex: '\\eta_b' }),
    T_d: input('drag of nut, seals and bearings', 'N·m', { domain: 'not negative' }),
    i: input('reduction, motor turns for one screw turn', '1', { domain: 'positive' }),
    eta_g: input('efficiency of the reduction', '%', { domain: 'positive', tex: '\\eta_g' }),
    J: input('whole inertia at the motor', 'kg·m²', { domain: 'positive' }),
    a: input('acceleration of the slide', 'm/s²', { domain: 'not negative' }),
    T_f: input('friction torque of the motor itself', 'N·m', { domain: 'not negative' }),
    ...(pair('up', 'F_up_run', 'running upwards') as Pair<'up'>),
    ...(pair('dn', 'F_dn_run', 'running downwards') as Pair<'dn'>),
    ...(pair('cut_up', 'F_up_cut', 'cutting upwards') as Pair<'cut_up'>),
    ...(pair('cut_dn', 'F_dn_cut', 'cutting downwards') as Pair<'cut_dn'>),
    alpha: formula(
      'angular acceleration of the motor',
      'rad/s²',
      '2 * pi * i * a / Ph',
      'derivation: one screw turn moves one lead',
      { tex: '\\alpha' },
    ),
    T_J: formula('torque to change speed', 'N·m', 'J * alpha', NEWTON, {
      says: 'What it takes to speed up everything that moves, seen from the motor.',
    }),
    T_run: formula(
      'largest torque while running',
      'N·m',
      'max(abs(T_up), abs(T_dn))',
      'derivation: the larger direction',
    ),
    T_cut: formula(
      'largest torque while cutting',
      'N·m',
      'max(abs(T_cut_up), abs(T_cut_dn))',
      'derivation: the larger direction',
    ),
    T_acc_up: formula('torque gaining speed upwards', 'N·m', 'T_up + T_J', NEWTON),
    T_acc_dn: formula('torque gaining speed downwards', 'N·m', 'T_dn + T_J', NEWTON),
    T_dec_up: formula('torque slowing down upwards', 'N·m', 'T_up - T_J', NEWTON),
    T_dec_dn: formula('torque slowing down downwards', 'N·m', 'T_dn - T_J', NEWTON),
    T_acc: formula(
      'largest torque while gaining speed',
      'N·m',
      'max(T_acc_up, T_acc_dn)',
      'derivation: the larger direction',
    ),
    T_dec: formula(
      'strongest braking torque',
      'N·m',
      'max(0, -T_dec_up, -T_dec_dn)',
      'derivation: the larger direction',
      {
        says: 'What flows back to the bus comes from this.',
      },
    ),
    T_acc_all: formula(
      'largest torque made in the motor while gaining speed',
      'N·m',
      'T_acc + T_f',
      'derivation: its own friction comes on top',
    ),
    T_peak: formula(
      'largest torque of all',
      'N·m',
      'max(T_acc, T_dec, T_cut)',
      'derivation: the largest of the cases',
    ),
    T_back: formula(
      'torque the weight puts on the screw',
      'N·m',
      'max(0, F_hold * Ph * eta_b / (2 * pi))',
      ENERGY,
      {
        says: 'The weight turns the screw backwards with this, friction of the thread taken off, that of the ways not.',
      },
    ),
    T_still: formula(
      'torque the motor holds at rest',
      'N·m',
      'F_hold * Ph / (2 * pi) / i',
      'derivation: statics; friction taken as nothing',
      {
        says: 'Friction may help, but must not be counted on.',
      },
    ),
  },
});
