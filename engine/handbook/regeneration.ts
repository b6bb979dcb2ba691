import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { type Braking, energyReturned, highestPowerReturned } from './braking-power.ts';

const ENERGY = 'derived: energy balance of rotor, winding and capacitor';
const BUS = 'derived: bus power of a motor that slows at a constant rate';
const reads = ['J', 'alpha', 'Tc', 'b', 'Kt', 'R', 'w1'];
const split = (x: readonly unknown[]): [Braking, number] => [
  x.slice(0, 6) as unknown as Braking,
  x[6] as number,
];

/** Energy that braking sends back to the bus, and the resistor that burns it. */
export const regeneration = defineSheet({
  id: 'regeneration',
  title: 'Energy sent back while braking',
  about:
    'A slowing axis is a generator: what was in its motion goes back into the bus and lifts its voltage. A diode supply cannot pass it to the mains, a switched-mode supply switches off. A large capacitor or a resistor has to take it.',
  symbols: {
    J: input('inertia at the motor', 'kg·m²', { domain: 'positive', note: 'With screw and slide.' }),
    w1: input('speed at which braking starts', 'r/min', { tex: '\\omega_1', domain: 'not negative' }),
    alpha: input('deceleration at the motor', 'rad/s²', { domain: 'positive' }),
    Tc: input('friction torque', 'N·m', { tex: 'T_c', domain: 'not negative' }),
    b: input('drag that grows with speed', 'N·m·s/rad', { domain: 'not negative' }),
    Kt: input('torque constant', 'N·m/A', { tex: 'K_t', domain: 'positive' }),
    R: input('winding resistance', 'Ω', { domain: 'positive' }),
    C: input('bus capacitance', 'µF', {
      domain: 'positive',
      note: 'Large capacitors are seldom closer than ± 20 % to what is printed on them. The low end is the worst here.',
    }),
    V1: input('bus voltage before', 'V', {
      tex: 'V_1',
      domain: 'positive',
      note: 'Use the highest: mains high, nothing moving.',
    }),
    eta: input('share of the motion’s energy that comes back', '%', { tex: '\\eta', domain: 'fraction' }),
    V_on: input('voltage at which the brake resistor switches in', 'V', {
      tex: 'V_{on}',
      domain: 'positive',
    }),
    I_switch_max: input('most current its switch stands', 'A', { tex: 'I_{sw}', domain: 'positive' }),
    R_brake: input('brake resistor', 'Ω', { tex: 'R_B', domain: 'positive' }),
    t_cycle: input('time from one braking to the next', 's', { tex: 't_{cycle}', domain: 'positive' }),
    E_kin: formula('energy of the motion', 'J', 'J * w1^2 / 2', 'definition of kinetic energy', {
      tex: 'E',
      says: 'Half inertia times speed squared: double the speed, four times the energy.',
    }),
    V2: formula('bus voltage after, by the given share', 'V', 'sqrt(V1^2 + 2*eta*E_kin/C)', ENERGY, {
      tex: 'V_2',
      says: 'As if that share of the energy all went into the capacitor.',
    }),
    T_m: formula('motor torque as braking starts', 'N·m', 'J*alpha - Tc - b*w1', BUS, {
      tex: 'T_m',
      says: 'Friction helps to brake; the motor does the rest. Negative: friction alone stops quicker than asked, and the motor must push.',
    }),
    I_m: formula('motor current as braking starts', 'A', 'T_m / Kt', BUS, {
      tex: 'I_m',
      says: 'Torque divided by the torque each ampere makes.',
    }),
    P_bus: formula('power into the bus as braking starts', 'W', 'T_m*w1 - I_m^2*R', BUS, {
      tex: 'P_{bus}',
      says: 'What the shaft gives less what heats the winding. Negative: nothing comes back.',
    }),
    P_bus_peak: procedure('highest power into the bus', 'W', {
      tex: 'P_{bus,pk}',
      reads,
      run: (...x) => highestPowerReturned(...split(x)),
      says: 'Highest at any moment of the braking; usually at its start.',
      source: BUS,
    }),
    E_ret: procedure('energy that really comes back', 'J', {
      tex: 'E_{ret}',
      reads,
      run: (...x) => energyReturned(...split(x)),
      says: 'Added up over the whole braking, leaving out the end in which the winding eats more than the shaft gives.',
      source: BUS,
    }),
    V2_exact: formula(
      'bus voltage after, by the energy that really comes back',
      'V',
      'sqrt(V1^2 + 2*E_ret/C)',
      ENERGY,
      {
        tex: "V_2'",
        says: 'If the drive loses nothing and nothing else takes from the bus.',
      },
    ),
    t_dec: formula('time to stop', 's', 'w1 / alpha', 'definition of deceleration', {
      tex: 't_{dec}',
      says: 'Speed divided by deceleration.',
    }),
    R_brake_max: procedure('largest brake resistor', 'Ω', {
      tex: 'R_{B,max}',
      reads: ['V_on', 'P_bus_peak'],
      run: (V_on, P) => (V_on as number) ** 2 / (P as number),
      refuses: (_, P) =>
        (P as number) > 0 ? undefined : 'nothing comes back, so no brake resistor is needed',
      says: 'Larger, and it cannot burn the power as fast as it comes.',
      source: BUS,
    }),
    R_brake_min: formula('smallest brake resistor', 'Ω', 'V_on / I_switch_max', 'Ohm’s law', {
      tex: 'R_{B,min}',
      says: 'Smaller, and its switch burns out.',
    }),
    P_brake: formula('power of the brake resistor while it is on', 'W', 'V_on^2 / R_brake', 'Ohm’s law', {
      tex: 'P_B',
      says: 'For moments only.',
    }),
    P_average: formula('mean power of the brake resistor, at most', 'W', 'eta * E_kin / t_cycle', ENERGY, {
      tex: 'P_{mean}',
      says: 'What its continuous rating must exceed.',
    }),
  },
});
