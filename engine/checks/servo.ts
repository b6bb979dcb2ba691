/** Volts, amperes and torque of a servo axis. */
import { dcMotor } from '../handbook/dc-motor.ts';
import { standstill } from '../handbook/standstill.ts';
import { torqueCurrent } from '../handbook/torque-current.ts';
import { BUS_LOW } from './bus.ts';
import { type Check, ifAbove } from './check.ts';
import { cycle, forces, MOTOR_FRICTION, motorAtFeed, motorAtRapid, reflected, torque } from './motion.ts';
import {
  BRUSH_DROP,
  CONTINUOUS_TORQUE,
  HOT_RESISTANCE,
  PEAK_TORQUE,
  SERVO,
  servo,
} from './motor-constants.ts';
import { fact, policy, type Ref, stated } from './refs.ts';
import { axisWorking } from './working.ts';

const electrics = {
  Vb: BUS_LOW,
  duty: fact('drive', 'fullDuty'),
  Vbr: BRUSH_DROP,
  R: HOT_RESISTANCE,
  Kt: servo.get('Kt'),
  Tf: MOTOR_FRICTION,
  b: stated(
    '0 N·m·s/rad',
    'N·m·s/rad',
    'drag that grows with speed is left out; on small motors it is little',
  ),
  Ilim: servo.get('I_drive_peak'),
} satisfies Record<string, Ref>;

const atRapid = axisWorking('servo-rapid', 'Motor running at rapid', dcMotor, {
  ...electrics,
  TL: torque.get('T_run'),
  w_req: motorAtRapid.get('n_m'),
});
const speedingUp = axisWorking('servo-acceleration', 'Motor gaining speed, at the top', dcMotor, {
  ...electrics,
  TL: torque.get('T_acc'),
  w_req: motorAtRapid.get('n_m'),
});
const cutting = axisWorking('servo-cut', 'Motor while cutting', dcMotor, {
  ...electrics,
  TL: torque.get('T_cut'),
  w_req: motorAtFeed.get('n_m'),
});
const hardest = axisWorking('servo-peak', 'Motor at its largest torque', dcMotor, {
  ...electrics,
  TL: torque.get('T_peak'),
  w_req: motorAtRapid.get('n_m'),
});
const heating = axisWorking('servo-heat', 'Current as the motor’s heating feels it', torqueCurrent, {
  T: cycle.get('T_rms'),
  Kt: servo.get('Kt'),
});

const atRest = axisWorking('servo-rest', 'Torque the motor may hold at rest', standstill, {
  T: CONTINUOUS_TORQUE,
  k: policy('standstill'),
});

const onlyIf = [SERVO];

const checks: readonly Check[] = [
  {
    form: 'ratio',
    id: 'speed',
    scope: 'axis',
    title: 'Speed at low mains',
    place: 'motor',
    onlyIf,
    demand: motorAtRapid.get('n_m'),
    capacity: atRapid.get('w'),
    unit: 'r/min',
    tight: 'margin-volts',
    why: 'A motor that turns makes a voltage of its own. When that voltage comes close to what the supply can give, no current flows and no torque is left.',
    says: {
      fits: 'Rapid needs {asked} of the motor; with the mains low it still reaches {there}.',
      tight: 'Rapid needs {asked} of the motor; with the mains low it reaches {there}, and no more.',
      fails:
        'The motor runs out of volts: rapid needs {asked}, but with the mains low it reaches only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'volts',
    scope: 'axis',
    title: 'Volts while gaining speed',
    place: 'motor',
    onlyIf,
    demand: speedingUp.get('V_need'),
    capacity: speedingUp.get('V_av'),
    unit: 'V',
    tight: 'margin-volts',
    why: 'The last moment before full speed needs both at once: volts for the speed and volts to push the accelerating current through the winding.',
    says: {
      fits: 'At the end of the acceleration the motor needs {asked}; with the mains low there are {there}.',
      tight:
        'At the end of the acceleration the motor needs {asked}; with the mains low there are just {there}.',
      fails:
        'At the end of the acceleration the motor needs {asked}, but with the mains low there are only {there}: it falls behind before it reaches full speed.',
    },
  },
  {
    form: 'ratio',
    id: 'drive-peak',
    scope: 'axis',
    title: 'Peak current of the drive',
    place: 'drive',
    onlyIf,
    demand: hardest.get('I_need'),
    capacity: servo.get('I_drive_peak'),
    unit: 'A',
    tight: 'margin',
    why: 'Current is torque. If the drive cannot give the current that speeding up or the heaviest cut asks for, the axis lags and trips.',
    says: {
      fits: 'The hardest moment takes {asked}; the drive gives {there}.',
      tight: 'The hardest moment takes {asked}; the drive gives {there}.',
      fails: 'The hardest moment takes {asked}, but the drive gives only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'magnets',
    scope: 'axis',
    title: 'Drive’s peak against the motor’s magnets',
    place: 'motor',
    onlyIf,
    demand: servo.get('I_drive_peak'),
    capacity: servo.get('I_motor_peak'),
    unit: 'A',
    tight: 'exact',
    why: 'Above a certain current the winding’s own field weakens the magnets for good. The drive’s limit is what protects them, whatever the move asks for.',
    says: {
      fits: 'The drive’s limit is {asked}; the motor’s magnets stand {there}.',
      tight: 'The drive’s limit is {asked}, just what the motor’s magnets stand.',
      fails:
        'The drive can send {asked}, but above {there} the motor’s magnets are weakened for good: set the limit lower.',
    },
  },
  {
    form: 'ratio',
    id: 'peak-torque',
    scope: 'axis',
    title: 'Peak torque of the motor',
    place: 'motor',
    onlyIf,
    demand: torque.get('T_peak'),
    capacity: PEAK_TORQUE,
    unit: 'N·m',
    tight: 'margin',
    why: 'Speeding up takes far more torque than running. If the motor has not got it, the move takes longer than asked, or the drive trips.',
    says: {
      fits: 'The hardest moment takes {asked}; the motor can give {there}.',
      tight: 'The hardest moment takes {asked}; the motor can give {there}.',
      fails: 'The hardest moment takes {asked}, but the motor can give only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'heat',
    scope: 'axis',
    title: 'Heat in the motor over a working day',
    place: 'motor',
    onlyIf,
    demand: cycle.get('T_rms'),
    capacity: CONTINUOUS_TORQUE,
    unit: 'N·m',
    tight: 'margin',
    why: 'A motor bears short bursts, but over the minutes its heat follows the mean square of the torque. Too much cooks the winding.',
    says: {
      fits: 'Over the working minute the motor feels {asked}; it may do {there} for hours.',
      tight: 'Over the working minute the motor feels {asked}; it may do {there} for hours.',
      fails:
        'Over the working minute the motor feels {asked}, more than the {there} it may do for hours: it cooks.',
    },
  },
  {
    form: 'ratio',
    id: 'drive-heat',
    scope: 'axis',
    title: 'Continuous current of the drive',
    place: 'drive',
    onlyIf,
    demand: heating.get('I'),
    capacity: servo.get('I_drive'),
    unit: 'A',
    tight: 'margin',
    why: 'The drive too is heated by the mean square of the current; it protects itself by switching off.',
    says: {
      fits: 'Over the working minute the drive gives {asked}; it may give {there} for hours.',
      tight: 'Over the working minute the drive gives {asked}; it may give {there} for hours.',
      fails:
        'Over the working minute the drive would give {asked}, more than the {there} it may give for hours.',
    },
  },
  {
    form: 'ratio',
    id: 'cut',
    scope: 'axis',
    title: 'Torque while cutting',
    place: 'motor',
    onlyIf,
    demand: torque.get('T_cut'),
    capacity: CONTINUOUS_TORQUE,
    unit: 'N·m',
    tight: 'margin',
    why: 'A long cut is no burst: the motor has to push against the tool for minutes.',
    says: {
      fits: 'The cut takes {asked} at the motor; it may do {there} for hours.',
      tight: 'The cut takes {asked} at the motor; it may do {there} for hours.',
      fails: 'The cut takes {asked} at the motor, more than the {there} it may do for hours.',
    },
  },
  {
    form: 'ratio',
    id: 'cut-volts',
    scope: 'axis',
    title: 'Volts while cutting',
    place: 'motor',
    onlyIf,
    demand: cutting.get('V_need'),
    capacity: cutting.get('V_av'),
    unit: 'V',
    tight: 'margin-volts',
    why: 'Fast threads and heavy feeds need speed and current together; if the volts run out, the thread goes wrong.',
    says: {
      fits: 'At the fastest feed with the heaviest cut the motor needs {asked}; with the mains low there are {there}.',
      tight:
        'At the fastest feed with the heaviest cut the motor needs {asked}; with the mains low there are {there}.',
      fails:
        'At the fastest feed with the heaviest cut the motor needs {asked}, but with the mains low there are only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'holding',
    scope: 'axis',
    title: 'Holding the weight',
    place: 'motor',
    onlyIf: [SERVO, ifAbove(forces.get('F_hold'), 'The weight does not pull along this axis.')],
    demand: torque.get('T_still'),
    capacity: atRest.get('T_0'),
    unit: 'N·m',
    tight: 'margin',
    caution:
      'When the drive lets go, this weight is free: fit and test a brake, and prop the axis before you work on it.',
    why: 'A vertical or sloping axis pulls on its motor even at rest, all day long, and at rest the same coils carry the current all the time: they get hotter than in a motor that turns.',
    says: {
      fits: 'At rest the weight asks {asked} of the motor; it may hold {there} for hours.',
      tight: 'At rest the weight asks {asked} of the motor; it may hold {there} for hours.',
      fails:
        'At rest the weight asks {asked} of the motor, more than the {there} it may hold for hours without turning.',
    },
  },
  {
    form: 'ratio',
    id: 'top-speed',
    scope: 'axis',
    title: 'Top speed of the motor',
    place: 'motor',
    onlyIf,
    demand: motorAtRapid.get('n_m'),
    capacity: fact('motor', 'topSpeed'),
    unit: 'r/min',
    tight: 'exact',
    why: 'Above its plate speed brushes flash over, bearings overheat and windings can burst.',
    says: {
      fits: 'Rapid turns the motor at {asked}; its plate allows {there}.',
      tight: 'Rapid turns the motor at {asked}; its plate allows just {there}.',
      fails: 'Rapid would turn the motor at {asked}; its plate allows only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'inertia',
    scope: 'axis',
    title: 'Load inertia against the rotor',
    place: 'reduction',
    onlyIf,
    demand: reflected.get('ratio'),
    capacity: policy('inertia-ratio'),
    unit: '1',
    tight: 'exact',
    why: 'A small rotor that must swing a heavy load is like a short lever on a heavy door: it overshoots and rings, and has to be tuned soft.',
    says: {
      fits: 'The load is {asked} times the rotor; up to {there} is usual.',
      tight: 'The load is {asked} times the rotor; up to {there} is usual.',
      fails:
        'The load is {asked} times the rotor, more than the {there} with which a servo can be tuned well.',
    },
  },
];

export const servoAxis = { workings: [atRapid, speedingUp, cutting, hardest, heating, atRest], checks };
