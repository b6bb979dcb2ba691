import { known, numberOf, textOf, type WiringKind, wiringKind } from '../kind.ts';
import { amount, choice, mostly } from '../setting.ts';
import type { Mains } from '../types.ts';
import { SHAPES } from './mains-side.ts';
import { type MOTORS, phaseMarks } from './motor-leads.ts';

const motor = (
  id: string,
  name: string,
  says: string,
  types: readonly (typeof MOTORS)[number][],
  usual = '',
): WiringKind =>
  wiringKind({
    id,
    name,
    says,
    letter: 'M',
    exposed: true,
    settings: {
      type: choice('kind of motor', types, usual),
      current: mostly(amount('continuous current', 'A'), '0.1 A', '200 A'),
      volts: mostly(amount('rated voltage', 'V'), '5 V', '690 V'),
    },
    fromPart: (part) => {
      const type = part.choice('type');
      const current = part.value('continuousCurrent') ?? part.value('current');
      return {
        type: type === 'dc' ? 'brushed' : type === 'servo' ? 'brushless' : type,
        current: current === undefined ? undefined : `${current} A`,
      };
    },
    terminals: (s) => {
      const of = types.find((each) => each === s.type);
      return [
        ...(of ? phaseMarks(of) : []).map((mark) => ({
          mark,
          name: `winding, ${mark}`,
          nature: {
            kind: 'motor-phase' as const,
            side: 'takes' as const,
            of: of!,
            ...known({ amps: numberOf(s, 'current'), volts: numberOf(s, 'volts') }),
          },
          group: 'winding',
          signal: `motor-${mark}`,
          needed: true,
        })),
        {
          mark: 'PE',
          name: 'frame',
          nature: { kind: 'earth' as const, role: 'metal' as const },
          needed: true,
          signal: 'motor-PE',
        },
        {
          mark: 'SH',
          name: 'motor cable, shield',
          nature: { kind: 'shield' as const, earthed: true },
          signal: 'motor-shield',
        },
      ];
    },
  });

export const servoMotor = motor(
  'servo-motor',
  'servo motor',
  'Turns a screw: brushed with two leads, brushless with three.',
  ['brushed', 'brushless'],
);
export const stepper = motor(
  'stepper',
  'stepping motor',
  'Turns a screw in small steps; two windings.',
  ['stepper'],
  'stepper',
);
export const spindleMotor = motor(
  'spindle-motor',
  'spindle motor',
  'Turns the spindle.',
  ['induction', 'brushless', 'brushed'],
  'induction',
);

/** A pump, a turret, a conveyor: an induction motor that a contactor puts on the mains. */
export const mainsMotor: WiringKind = wiringKind({
  id: 'mains-motor',
  name: 'motor on the mains',
  says: 'A pump, a turret, a conveyor: a contactor puts it straight on the mains.',
  letter: 'M',
  exposed: true,
  settings: {
    phases: choice('phases of its mains', ['one', 'three'], 'three'),
    volts: mostly(amount('mains voltage it is made for, as connected', 'V'), '5 V', '690 V'),
    current: mostly(amount('current on its plate', 'A'), '0.1 A', '200 A'),
    ...SHAPES,
  },
  terminals: (s) => {
    const takes = (mark: string, pole: Mains['pole']) => ({
      mark,
      name: `winding, ${mark}`,
      nature: {
        kind: 'mains' as const,
        side: 'takes' as const,
        pole,
        ...known({ volts: numberOf(s, 'volts'), amps: numberOf(s, 'current') }),
      },
      group: 'winding',
      needed: true,
    });
    return [
      ...(textOf(s, 'phases') === 'one'
        ? [takes('L', 'L1'), takes('N', 'N')]
        : [takes('U', 'L1'), takes('V', 'L2'), takes('W', 'L3')]),
      { mark: 'PE', name: 'frame', nature: { kind: 'earth' as const, role: 'metal' as const }, needed: true },
    ];
  },
});
