/** What the cutting sheets share, so that the law of the cutting force stands once. */
import { constant, formula, input } from '../sheet/index.ts';

export const kienzle = 'Kienzle (1952): cutting force over chip thickness';
export const definition = 'definition of power, torque and speed';

/** Material and tool; needs a symbol `h`, the chip thickness. */
export const specificForce = {
  kc11: input('cutting force of a chip 1 mm thick and 1 mm wide', 'N/mm²', {
    domain: 'positive',
    tex: 'k_{c1.1}',
    note: 'From the table of materials.',
  }),
  mc: input('exponent of the material', '1', {
    domain: 'not negative',
    tex: 'm_c',
    note: 'From the table of materials; thin chips need more force for their area.',
  }),
  k_w: input('factor for a worn or blunt tool', '1', {
    domain: 'positive',
    tex: 'k_w',
    note: '1 sharp, 1.3 to 1.5 at the end of its life, up to 2 for a blunt high-speed steel tool: from memory.',
  }),
  h1: constant('one millimetre of chip', 'mm', '1 mm', 'definition', { tex: 'h_1' }),
  kc: formula('cutting force per area', 'N/mm²', 'k_w * kc11 * (h / h1)^(-mc)', kienzle, {
    tex: 'k_c',
    says: 'Holds for chips of 0.05 to 2.5 mm; thinner ones need more than it says.',
  }),
} as const;

export const efficiency = input('share of the motor’s power that reaches the cut', '%', {
  domain: 'fraction',
  tex: '\\eta',
  note: '70 to 85 % through belts and gears.',
});

export const motorPower = formula('power asked of the motor', 'kW', 'Pc / eta', definition, { tex: 'P_m' });

/** Forces across the cut as shares of the cutting force. */
export const shares = {
  k_f: input('feed force as a share of the cutting force', '1', {
    domain: 'positive',
    tex: 'k_f',
    note: '0.3 to 0.5 sharp, up to 1 worn: from memory.',
  }),
  k_p: input('force pushing the tool away, as a share', '1', {
    domain: 'positive',
    tex: 'k_p',
    note: '0.2 to 0.4 sharp, up to 1 worn: from memory.',
  }),
  Ff: formula('feed force', 'N', 'k_f * Fc', 'common practice: a share of the cutting force', {
    tex: 'F_f',
    says: 'What the axis that feeds has to push.',
  }),
  Fp: formula(
    'force pushing the tool away',
    'N',
    'k_p * Fc',
    'common practice: a share of the cutting force',
    {
      tex: 'F_p',
      says: 'What the cross slide has to hold.',
    },
  ),
} as const;

/** The chip of a turning tool; needs f, ap and kappa. */
export const turningChip = {
  f: input('feed per turn', 'mm', { domain: 'positive' }),
  ap: input('depth of cut', 'mm', {
    domain: 'positive',
    tex: 'a_p',
    note: 'On the radius: half of what the diameter loses.',
  }),
  kappa: input('angle of the cutting edge to the feed', '°', {
    domain: 'positive',
    tex: '\\kappa',
    note: '95° and 93° are usual for turning tools, 45° for a chamfering tool.',
  }),
  h: formula('thickness of the chip', 'mm', 'f * sin(kappa)', kienzle),
  b: formula('width of the chip', 'mm', 'ap / sin(kappa)', kienzle),
  Fc: formula('cutting force', 'N', 'kc * b * h', kienzle, { tex: 'F_c', says: 'Downwards on the tool.' }),
} as const;
