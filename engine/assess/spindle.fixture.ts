/** A lathe spindle of our own for the tests, of which everything is known. */

import { blankRefit } from '../refit/blank.ts';
import { applyEdit, type Refit } from '../refit/index.ts';
import { setPath } from './set-policy.ts';

/** An empty lathe with a spindle, or `from`, with these facts set as a person types them. */
export function refitWith(facts: Readonly<Record<string, string>>, from?: Refit): Refit {
  let refit = from;
  if (!refit) {
    const made = blankRefit({
      id: 'bench',
      name: 'Bench lathe',
      machine: 'lathe',
      axes: ['X', 'Z'],
      spindle: true,
    });
    if (!made.ok) throw new Error(made.problem.message);
    refit = made.value;
  }
  for (const [path, text] of Object.entries(facts)) {
    const setting = setPath(refit, path, text, { basis: 'plate' });
    if (!setting.ok) throw new Error(`${path}: ${setting.problem.message}`);
    const applied = applyEdit(refit, { changes: setting.value.changes });
    if (!applied.ok) throw new Error(applied.problem.message);
    refit = applied.value;
  }
  return refit;
}

/** A 2.2 kW motor in delta on a 230 V inverter, 2 : 1 and 1 : 2 belts, a 160 mm chuck, an encoder one to one. */
export const FACTS: Readonly<Record<string, string>> = {
  'site.mains': '230 V',
  'site.phases': 'single',
  'site.breaker': '16 A',
  'S.spindle-duty.topSpeed': '2500 r/min',
  'S.spindle-duty.lowestSpeed': '150 r/min',
  'S.spindle-duty.runUp': '4 s',
  'S.spindle-duty.stopTime': '4 s',
  'S.spindle-duty.stopsPerMinute': '0.5 1/min',
  'S.spindle-duty.cutPower': '1.2 kW',
  'S.spindle-duty.cutSpeed': '500 r/min',
  'S.spindle-duty.gripDiameter': '60 mm',
  'S.spindle-duty.workInertia': '0.01 kg·m²',
  'S.spindle-duty.threading': 'passes',
  'S.spindle-duty.threadPitch': '2 mm',
  'S.spindle-drive.type': 'inverter',
  'S.spindle-drive.inputPhases': 'single',
  'S.spindle-drive.inputVoltage': '230 V',
  'S.spindle-drive.outputVoltage': '230 V',
  'S.spindle-drive.continuousCurrent': '10 A',
  'S.spindle-drive.peakCurrent': '15 A',
  'S.spindle-drive.mode': 'sensorless',
  'S.spindle-drive.highestFrequency': '70 Hz',
  'S.spindle-drive.braking': 'resistor',
  'S.spindle-drive.resistor': '60 Ω',
  'S.spindle-drive.resistorPower': '200 W',
  'S.spindle-drive.lowestResistance': '40 Ω',
  'S.spindle-drive.brakeVoltage': '390 V',
  'S.spindle-motor.type': 'induction',
  'S.spindle-motor.power': '2.2 kW',
  'S.spindle-motor.speed': '1430 r/min',
  'S.spindle-motor.frequency': '50 Hz',
  'S.spindle-motor.poles': '4',
  'S.spindle-motor.starVoltage': '400 V',
  'S.spindle-motor.deltaVoltage': '230 V',
  'S.spindle-motor.deltaCurrent': '8.6 A',
  'S.spindle-motor.starCurrent': '5.0 A',
  'S.spindle-motor.connection': 'delta',
  'S.spindle-motor.powerFactor': '0.81',
  'S.spindle-motor.efficiency': '82 %',
  'S.spindle-motor.topSpeed': '3000 r/min',
  'S.spindle-motor.pullOut': '2.5',
  'S.spindle-motor.cooling': 'own',
  'S.spindle-motor.inertia': '0.006 kg·m²',
  'S.belts.type': 'v-belt',
  'S.belts.ranges': 'two',
  'S.belts.motorWheel1': '75 mm',
  'S.belts.spindleWheel1': '150 mm',
  'S.belts.ratio2': '0.75',
  'S.belts.efficiency': '94 %',
  'S.belts.pulleySpeed': '4500 r/min',
  'S.belts.motorSideInertia': '0.002 kg·m²',
  'S.belts.spindleSideInertia': '0.01 kg·m²',
  'S.spindle.topSpeed': '3000 r/min',
  'S.spindle.inertia': '0.02 kg·m²',
  'S.spindle.drag': '1 N·m',
  'S.chuck.type': 'manual',
  'S.chuck.topSpeed': '3500 r/min',
  'S.chuck.grip': '30 kN',
  'S.chuck.jaws': '3',
  'S.chuck.jawMass': '0.45 kg',
  'S.chuck.jawRadius': '55 mm',
  'S.chuck.jawSurface': 'serrated',
  'S.chuck.inertia': '0.03 kg·m²',
  'S.spindle-feedback.type': 'encoder',
  'S.spindle-feedback.lines': '1024 lines',
  'S.spindle-feedback.driven': 'toothed',
  'S.spindle-feedback.spindleTeeth': '36 teeth',
  'S.spindle-feedback.encoderTeeth': '36 teeth',
  'S.spindle-feedback.index': 'yes',
  'S.spindle-feedback.highestRate': '100 kHz',
  'control.highestEdgeRate': '1000 kHz',
};
