/** The bus of the drives at the mains’ worst: high and empty, low and loaded, after braking, after switching off. */
import { brakingEnergy } from '../handbook/braking-energy.ts';
import { busBraking } from '../handbook/bus-braking.ts';
import { busCurrent } from '../handbook/bus-current.ts';
import { busExtremes } from '../handbook/bus-extremes.ts';
import { discharge } from '../handbook/discharge.ts';
import { mainsTap } from '../handbook/mains-tap.ts';
import { regulatedSupply } from '../handbook/regulated-supply.ts';
import { ripple } from '../handbook/ripple.ts';
import { stepperDraw } from '../handbook/stepper-draw.ts';
import { type Check, ifAbove, ifChoice, ifKnown } from './check.ts';
import { MOTOR_FRICTION, motorAtRapid, reflected, torque } from './motion.ts';
import { BRUSH_DROP, HOT_RESISTANCE, servo } from './motor-constants.ts';
import { fact, leastOfAxes, policy, type Ref, stated, sumOfAxes, when } from './refs.ts';
import { axisWorking, machineWorking } from './working.ts';

const LIVE =
  'A charged bus can kill minutes after the plug is out. Off, wait, and measure before you touch. Work on the fixed mains is for a licensed electrician under your local code.';

const tap = machineWorking('mains-tap', 'Secondary voltage on your mains', mainsTap, {
  V_plate: fact('supply', 'secondary'),
  V_mains: fact('site', 'mains'),
  V_rated: fact('site', 'transformerRated'),
});

const extremes = machineWorking('bus', 'Bus voltage, mains high and mains low', busExtremes, {
  Vsec: tap.get('Vsec'),
  reg: fact('supply', 'regulation'),
  up: policy('mains-high'),
  down: policy('mains-low'),
});

const regulated = machineWorking('regulated', 'Limits of the regulated supply', regulatedSupply, {
  V: fact('supply', 'ratedVoltage'),
  tol: fact('supply', 'ratedTolerance'),
});

/** Highest bus voltage before any braking. */
export const BUS_HIGH = when('supply', 'type', {
  transformer: extremes.get('V_no_load_high'),
  regulated: regulated.get('V_high'),
});

/** Low mains before ripple; what the current of an axis is reckoned with. */
const BUS_PEAK_LOW = when('supply', 'type', {
  transformer: extremes.get('V_loaded_low_peak'),
  regulated: regulated.get('V_low'),
});

const servoDraw = axisWorking('bus-current', 'Current this axis takes from the bus', busCurrent, {
  T: torque.get('T_acc_all'),
  w: motorAtRapid.get('n_m'),
  Kt: servo.get('Kt'),
  R: HOT_RESISTANCE,
  Vbr: BRUSH_DROP,
  Vb: BUS_PEAK_LOW,
  eta: policy('drive-efficiency'),
});

const stepDraw = axisWorking('stepper-current', 'Current this axis takes from the bus', stepperDraw, {
  T: torque.get('T_acc'),
  w: motorAtRapid.get('n_m'),
  I: fact('drive', 'peakCurrent'),
  R: fact('motor', 'resistance'),
  Vb: BUS_PEAK_LOW,
  eta: policy('drive-efficiency'),
});

/** All axes speeding up at full speed together: the most the bus is ever asked for. */
export const BUS_CURRENT = sumOfAxes(
  when('motor', 'type', {
    brushed: servoDraw.get('I_bus'),
    brushless: servoDraw.get('I_bus'),
    stepper: stepDraw.get('I_bus'),
  }),
);

const valley = machineWorking('valley', 'Bottom of the ripple, mains low', ripple, {
  f: fact('site', 'frequency'),
  C: fact('supply', 'capacitance'),
  I: BUS_CURRENT,
  Vp: extremes.get('V_loaded_low_peak'),
});

/** Lowest bus voltage under load. */
export const BUS_LOW = when('supply', 'type', {
  transformer: valley.get('V_valley'),
  regulated: regulated.get('V_low'),
});

const braking = axisWorking('braking', 'Energy that braking sends back', brakingEnergy, {
  J: reflected.get('J_tot'),
  w1: motorAtRapid.get('n_m'),
  alpha: torque.get('alpha'),
  T_dn: torque.get('T_dn'),
  T_f: MOTOR_FRICTION,
  eta: policy('regeneration'),
});

const brakesAlone = axisWorking('bus-after-axis', 'Bus after this axis brakes', busBraking, {
  E: braking.get('E_back'),
  C: fact('supply', 'capacitance'),
  V1: BUS_HIGH,
});

/** A stop of the machine brakes every axis in the same moment; none of them draws meanwhile. */
const brakeTogether = machineWorking('bus-after-all', 'Bus after all axes brake at once', busBraking, {
  E: sumOfAxes(braking.get('E_back')),
  C: fact('supply', 'capacitance'),
  V1: BUS_HIGH,
  V_on: fact('supply', 'dumpVoltage'),
  R: fact('supply', 'dumpResistor'),
});

/** A stop that has just braked all axes leaves the bus higher than the mains did; a dump, where that switches in. */
const LEFT_AT = when('supply', 'dumpFitted', {
  yes: fact('supply', 'dumpVoltage'),
  no: brakeTogether.get('V2'),
});

const emptied = (id: string, title: string, V0: Ref) =>
  machineWorking(id, title, discharge, {
    V0,
    C: fact('supply', 'capacitance'),
    R: fact('supply', 'bleeder'),
  });
const emptying = emptied('discharge', 'Discharge of the bus', BUS_HIGH);
const emptyingAfterStop = emptied('discharge-stop', 'Discharge of the bus after a stop', LEFT_AT);

const ALLOWED = stated('5 s', 's', 'IEC 60204-1:2016, 6.2.4: down to 60 V within 5 s');

const checks: readonly Check[] = [
  {
    form: 'ratio',
    id: 'bus-high',
    scope: 'axis',
    title: 'Bus at high mains',
    place: 'drive',
    caution: LIVE,
    demand: BUS_HIGH,
    capacity: fact('drive', 'highestVoltage'),
    unit: 'V',
    tight: 'margin-volts',
    why: 'With the mains high and nothing moving, an unregulated bus stands far above its working voltage. A drive dies the moment its absolute limit is passed.',
    says: {
      fits: 'The bus rises to {asked} with the mains high and nothing moving; the drive stands {there}.',
      tight:
        'The bus rises to {asked} with the mains high and nothing moving, close to the {there} that destroy the drive.',
      fails:
        'The bus rises to {asked} with the mains high and nothing moving; above {there} the drive is destroyed.',
    },
  },
  {
    form: 'ratio',
    id: 'bus-low',
    scope: 'axis',
    title: 'Bus at low mains',
    place: 'drive',
    demand: fact('drive', 'lowestVoltage'),
    capacity: BUS_LOW,
    unit: 'V',
    tight: 'margin-volts',
    why: 'Below its lowest voltage a drive switches off in the middle of a move, and the axis coasts.',
    says: {
      fits: 'The bus falls to {there} at worst; the drive works down to {asked}.',
      tight: 'The bus falls to {there} at worst, close to the {asked} at which the drive switches off.',
      fails: 'The bus falls to {there} at worst; below {asked} the drive switches off.',
    },
  },
  {
    form: 'ratio',
    id: 'regeneration',
    scope: 'axis',
    title: 'Bus after braking',
    place: 'drive',
    caution: LIVE,
    onlyIf: [ifChoice('supply', 'dumpFitted', 'no')],
    demand: brakesAlone.get('V2'),
    capacity: fact('drive', 'highestVoltage'),
    unit: 'V',
    tight: 'margin-volts',
    why: 'An axis that slows down is a generator. A diode supply cannot send its power back to the mains; the capacitors must take it, and their voltage rises.',
    says: {
      fits: 'Braking from rapid lifts the bus to {asked}; the drive stands {there}. Alone, this axis needs no dump resistor.',
      tight: 'Braking from rapid lifts the bus to {asked}, close to the {there} the drive stands.',
      fails:
        'Braking from rapid lifts the bus to {asked}, but the drive stands only {there}: more capacitance or a dump resistor is needed.',
    },
  },
  {
    form: 'band',
    id: 'dump',
    scope: 'axis',
    title: 'Voltage of the dump resistor',
    place: 'drive',
    caution: LIVE,
    onlyIf: [ifChoice('supply', 'dumpFitted', 'yes')],
    value: fact('supply', 'dumpVoltage'),
    low: BUS_HIGH,
    high: fact('drive', 'highestVoltage'),
    unit: 'V',
    tight: 'exact',
    why: 'A dump resistor must switch in before the drive’s limit, and never while the bus is only high because the mains are: then it glows all day.',
    saysLow: {
      fits: 'The dump switches in at {there}, above the {asked} of high mains.',
      tight: 'The dump switches in at {there}, just above the {asked} of high mains.',
      fails:
        'The dump switches in at {there}, but high mains alone bring the bus to {asked}: it would never switch off.',
    },
    saysHigh: {
      fits: 'The dump switches in at {asked}, below the drive’s {there}.',
      tight: 'The dump switches in at {asked}, just below the drive’s {there}.',
      fails: 'The dump switches in at {asked}, but the drive is destroyed above {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'braking-all',
    scope: 'machine',
    title: 'Bus after all axes brake at once',
    place: 'supply',
    caution: LIVE,
    onlyIf: [ifChoice('supply', 'dumpFitted', 'no')],
    demand: brakeTogether.get('V2'),
    capacity: leastOfAxes(fact('drive', 'highestVoltage')),
    unit: 'V',
    tight: 'margin-volts',
    why: 'A stop that brakes, and a rapid across two axes, slow everything on this supply in the same moment, and what each axis sends back adds up. The capacitors must take it all; the drive with the lowest limit dies first. A spindle drive with a rectifier of its own is not on this bus and is not counted.',
    says: {
      fits: 'All axes braking from rapid at once lift the bus to {asked}; every drive stands {there} or more.',
      tight:
        'All axes braking from rapid at once lift the bus to {asked}, close to the {there} that the weakest drive stands. More capacitance, a dump resistor or slower rapids give room.',
      fails:
        'All axes braking from rapid at once lift the bus to {asked}, but the weakest drive stands only {there}: more capacitance, a dump resistor or slower rapids are needed. Slowing down more gently helps a little, for friction takes a larger part then.',
    },
  },
  {
    form: 'ratio',
    id: 'dump-power',
    scope: 'machine',
    title: 'Dump resistor against all axes braking',
    place: 'supply',
    caution: LIVE,
    onlyIf: [ifChoice('supply', 'dumpFitted', 'yes')],
    demand: sumOfAxes(braking.get('P_back')),
    capacity: brakeTogether.get('P_dump'),
    unit: 'W',
    tight: 'margin',
    why: 'The resistor must burn as fast as all axes together send back. One of too many ohms cannot: the bus rises on though the dump is on, and a drive dies.',
    says: {
      fits: 'All axes braking from rapid at once send back {asked}; the dump burns {there}.',
      tight: 'All axes braking from rapid at once send back {asked}; the dump burns {there}, not much more.',
      fails:
        'All axes braking from rapid at once send back {asked}, but the dump burns only {there}: it needs fewer ohms (as few as its switch bears), or the axes slower rapids or gentler slowing down.',
    },
  },
  {
    form: 'ratio',
    id: 'dump-energy',
    scope: 'machine',
    title: 'Heat of one stop in the dump resistor',
    place: 'supply',
    caution: LIVE,
    onlyIf: [ifChoice('supply', 'dumpFitted', 'yes')],
    demand: brakeTogether.get('E_dump'),
    capacity: fact('supply', 'dumpEnergy'),
    unit: 'J',
    tight: 'margin',
    why: 'A stop lasts a fraction of a second: all its heat stays in the wire of the resistor. Too much melts it, and the next stop has none.',
    says: {
      fits: 'One stop of all axes puts {asked} into the dump resistor; it takes {there} in one go.',
      tight:
        'One stop of all axes puts {asked} into the dump resistor; it takes {there} in one go, not much more.',
      fails:
        'One stop of all axes puts {asked} into the dump resistor, but it takes only {there} in one go: a heavier resistor, more capacitance or slower rapids are needed.',
      nothing: 'The capacitors take all of it before the dump even switches in.',
    },
  },
  {
    form: 'ratio',
    id: 'capacitor-volts',
    scope: 'machine',
    title: 'Voltage of the capacitors',
    place: 'supply',
    caution: LIVE,
    onlyIf: [
      ifKnown(
        'supply',
        'capacitorVoltage',
        'The voltage printed on the capacitors has not been read. Read it before new or used ones are fitted: too low, and they burst.',
      ),
    ],
    demand: BUS_HIGH,
    capacity: fact('supply', 'capacitorVoltage'),
    unit: 'V',
    tight: 'margin-volts',
    why: 'Above the voltage printed on it a large capacitor leaks, boils and bursts. It stands at high mains for hours, since the bus is highest when nothing moves; braking lifts it further for moments.',
    says: {
      fits: 'The bus stands at {asked} with the mains high and nothing moving; the capacitors are made for {there}.',
      tight:
        'The bus stands at {asked} with the mains high and nothing moving, close to the {there} the capacitors are made for.',
      fails:
        'The bus stands at {asked} with the mains high and nothing moving, but the capacitors are made for only {there}: they burst sooner or later. Do not switch it on.',
    },
  },
  {
    form: 'ratio',
    id: 'discharge',
    scope: 'machine',
    title: 'Discharge of the bus',
    place: 'supply',
    caution: LIVE,
    onlyIf: [ifAbove(emptying.get('above'), 'The bus never exceeds 60 V.')],
    demand: emptying.get('t_60'),
    capacity: ALLOWED,
    unit: 's',
    tight: 'exact',
    why: 'People open the cabinet soon after switching off. A bus above 60 V can hurt or kill.',
    says: {
      fits: 'After switching off, the bus is down to 60 V in {asked}. Measure all the same before you touch.',
      tight: 'After switching off, the bus is down to 60 V in {asked}; {there} are allowed.',
      fails:
        'After switching off, the bus takes {asked} to come down to 60 V; {there} are allowed. Fit a smaller bleeder resistor, or a warning with the waiting time.',
    },
  },
  {
    form: 'ratio',
    id: 'discharge-stop',
    scope: 'machine',
    title: 'Discharge of the bus right after a stop',
    place: 'supply',
    caution: LIVE,
    onlyIf: [ifAbove(emptyingAfterStop.get('above'), 'Even after a stop the bus never exceeds 60 V.')],
    demand: emptyingAfterStop.get('t_60'),
    capacity: ALLOWED,
    unit: 's',
    tight: 'exact',
    why: 'An emergency stop brakes the axes and then takes the power away: what braking sent back is still in the capacitors when people open the cabinet.',
    says: {
      fits: 'Right after all axes have braked, the bus is down to 60 V in {asked}. Measure all the same before you touch.',
      tight: 'Right after all axes have braked, the bus is down to 60 V in {asked}; {there} are allowed.',
      fails:
        'Right after all axes have braked, the bus takes {asked} to come down to 60 V; {there} are allowed. Fit a smaller bleeder resistor, or a warning with the waiting time.',
    },
  },
  {
    form: 'ratio',
    id: 'supply-current',
    scope: 'machine',
    title: 'Current of the supply',
    place: 'supply',
    demand: BUS_CURRENT,
    capacity: fact('supply', 'ratedCurrent'),
    unit: 'A',
    tight: 'exact',
    why: 'This takes all axes speeding up at full speed in the same moment. A transformer forgives that for seconds; a switched-mode supply cuts out at once.',
    says: {
      fits: 'All axes speeding up together take {asked}; the supply gives {there} for hours.',
      tight: 'All axes speeding up together take {asked}; the supply gives {there}.',
      fails: 'All axes speeding up together take {asked}, more than the {there} the supply gives for hours.',
    },
  },
];

export const bus = {
  workings: [
    tap,
    extremes,
    regulated,
    servoDraw,
    stepDraw,
    valley,
    braking,
    brakesAlone,
    brakeTogether,
    emptying,
    emptyingAfterStop,
  ],
  checks,
};
