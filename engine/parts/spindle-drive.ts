import { money } from './money.ts';
import { torqueOff } from './torque-off.ts';
import { partKind } from './types.ts';

const LIVE =
  'Mains and the charged capacitors of a drive can kill, minutes after the plug is out. Off, wait as long as its manual says, and measure before you touch; fixed mains wiring is for a licensed electrician under your local code.';

export const spindleDrive = partKind({
  id: 'spindle-drive',
  name: 'spindle drive',
  about: 'What feeds the spindle motor: an inverter, a DC drive, a servo drive, or only a contactor.',
  facts: {
    type: {
      kind: 'choice',
      name: 'kind of drive',
      trouble: 1,
      options: {
        inverter: 'inverter (frequency converter)',
        dc: 'DC drive',
        servo: 'servo drive',
        line: 'none: the motor lies across the mains through a contactor',
      },
      findOut:
        'Terminals U V W and a frequency on its plate: inverter. Armature A+ A− and field F+ F−: DC drive. An encoder plug besides: servo or vector inverter. Only a contactor and an overload relay: across the mains.',
    },
    inputPhases: {
      kind: 'choice',
      name: 'phases it wants',
      trouble: 1,
      options: { single: 'one phase', three: 'three phases' },
      findOut:
        'Its plate, input: “1~” or “1PH”, “3~” or “3PH”. Many three-phase inverters run on one phase at half their current; then say one phase and give that current.',
    },
    inputVoltage: {
      kind: 'quantity',
      name: 'rated mains voltage',
      unit: 'V',
      domain: 'positive',
      plausible: ['100 V', '690 V'],
      trouble: 1,
      findOut:
        'Its plate, input: 200–240 V or 380–480 V. Write the middle with its width, as 220 ± 20 V, or the volts it is set for.',
    },
    outputVoltage: {
      kind: 'quantity',
      name: 'highest output voltage',
      unit: 'V',
      domain: 'positive',
      plausible: ['24 V', '690 V'],
      trouble: 1,
      findOut:
        'Inverters give at most what comes in, unless the plate says otherwise: 230 V between two leads on 230 V mains. DC drives: armature volts.',
    },
    continuousCurrent: {
      kind: 'quantity',
      name: 'output current for hours',
      unit: 'A',
      domain: 'positive',
      plausible: ['0.5 A', '200 A'],
      trouble: 1,
      findOut: 'Its plate, output. The amperes decide, not the kilowatts printed largest.',
    },
    peakCurrent: {
      kind: 'quantity',
      name: 'output current for a minute',
      unit: 'A',
      domain: 'positive',
      plausible: ['0.5 A', '400 A'],
      trouble: 2,
      findOut: 'Its manual: overload, mostly 150 % for 60 s of the current for hours.',
    },
    mode: {
      kind: 'choice',
      name: 'how it controls the motor',
      trouble: 2,
      options: {
        vf: 'volts in step with frequency (V/f)',
        sensorless: 'vector, without an encoder',
        closed: 'with an encoder on the motor',
      },
      findOut:
        'Its manual: control mode, and how it is set. A DC drive with a tacho or armature feedback counts as vector.',
    },
    highestFrequency: {
      kind: 'quantity',
      name: 'highest frequency, as set',
      unit: 'Hz',
      domain: 'positive',
      plausible: ['30 Hz', '1000 Hz'],
      chosen: true,
      trouble: 1,
      findOut:
        'Its setting “maximum frequency”. It is the plain electronic limit of the spindle’s speed: look it up on the drive itself.',
      caution: LIVE,
    },
    braking: {
      kind: 'choice',
      name: 'how it brakes',
      trouble: 2,
      options: {
        none: 'not: it runs down, or slows on a long ramp',
        resistor: 'with a braking switch and resistor',
        mains: 'gives the energy back to the mains',
      },
      findOut:
        'Terminals for a braking resistor with one on them: resistor. Terminals alone, with nothing on them, brake nothing.',
      caution: LIVE,
    },
    resistor: {
      kind: 'quantity',
      name: 'braking resistor',
      unit: 'Ω',
      domain: 'positive',
      plausible: ['5 Ω', '1000 Ω'],
      chosen: true,
      trouble: 1,
      findOut: 'Printed on it; check with a meter once it is unplugged.',
      caution: LIVE,
    },
    resistorPower: {
      kind: 'quantity',
      name: 'power of the braking resistor for hours',
      unit: 'W',
      domain: 'positive',
      plausible: ['20 W', '10000 W'],
      chosen: true,
      trouble: 1,
      findOut: 'Printed on it. For seconds it bears several times that; its sheet says how long.',
      caution: 'A braking resistor can get hot enough to set fire to swarf and oil: mount it clear of both.',
    },
    lowestResistance: {
      kind: 'quantity',
      name: 'least resistance the drive’s braking switch bears',
      unit: 'Ω',
      domain: 'positive',
      plausible: ['5 Ω', '500 Ω'],
      trouble: 2,
      findOut: 'Its manual: minimum braking resistance. Below it the switch burns out.',
    },
    brakeVoltage: {
      kind: 'quantity',
      name: 'voltage at which the braking switch closes',
      unit: 'V',
      domain: 'positive',
      plausible: ['150 V', '1100 V'],
      trouble: 2,
      findOut:
        'Its manual: braking level of the DC link. About 390 V for 230 V drives, about 780 V for 400 V drives.',
    },
    fieldGuard: {
      kind: 'choice',
      name: 'what happens when the field is lost (DC)',
      trouble: 2,
      options: {
        relay: 'a field-loss relay or the drive itself cuts the armature off',
        none: 'nothing watches the field',
        permanent: 'the motor has permanent magnets: no field to lose',
      },
      findOut:
        'A relay with its coil in the field circuit, or “field loss” in the drive’s manual. Inverters and servo drives: leave it.',
      caution:
        'A shunt motor that loses its field runs away until it flies apart. Never open the field circuit of a running motor.',
    },
    command: {
      kind: 'choice',
      name: 'command in use',
      trouble: 2,
      options: {
        volts: '0–10 V, with contacts for forward and reverse',
        'both-volts': '±10 V, the sign is the direction',
        pulses: 'pulses',
        serial: 'a serial line or a bus',
        contacts: 'contacts for fixed speeds',
        hand: 'by hand at the drive',
      },
      findOut: 'Its manual and settings: where the speed comes from.',
    },
    orderDelay: {
      kind: 'quantity',
      name: 'time from an order to stop or turn back until it acts',
      unit: 'ms',
      domain: 'not negative',
      plausible: ['1 ms', '500 ms'],
      trouble: 3,
      findOut:
        'Film the chuck and the lamp of the reversing relay together, at 120 pictures a second or more: count the pictures from the lamp to where the chuck begins to slow. The drive’s own trace of its speed shows it better. Its ramp does not count: set it to zero or to the shortest first.',
      caution: LIVE,
    },
    speedLoop: {
      kind: 'quantity',
      name: 'how quickly it mends an error of speed',
      unit: '1/s',
      domain: 'positive',
      plausible: ['1 1/s', '500 1/s'],
      trouble: 3,
      findOut:
        'One over the time in which two thirds of a sag are mended: on the drive’s trace of its speed as a cut begins, or as the order changes by a little. Mended within 50 ms: 20 1/s. Inverters without an encoder are slower.',
    },
    torqueOff,
    ...money,
  },
});
