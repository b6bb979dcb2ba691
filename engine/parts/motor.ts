import { money } from './money.ts';
import { partKind } from './types.ts';

const SPIN =
  'The shaft and whatever is on it can catch: clamp the motor, no gloves, no loose sleeves. A spun motor makes voltage on its leads; insulate them.';

export const motor = partKind({
  id: 'motor',
  name: 'motor',
  about: 'The motor that turns the screw.',
  facts: {
    type: {
      kind: 'choice',
      name: 'kind of motor',
      trouble: 2,
      options: {
        brushed: 'DC motor with brushes',
        brushless: 'brushless servo motor, three leads',
        stepper: 'stepping motor',
      },
      findOut:
        'Two power leads and brush caps: brushed. Three power leads of equal ohms and a feedback plug: brushless. Four, six or eight leads, and the shaft cogs in many small steps by hand: stepper.',
    },
    emf: {
      kind: 'quantity',
      name: 'back-EMF constant',
      unit: 'V/krpm',
      domain: 'positive',
      plausible: ['1 V/krpm', '400 V/krpm'],
      trouble: 3,
      findOut:
        'Plate, or spin the shaft with a drill at a measured speed and read the open-circuit volts: volts ÷ thousands of turns a minute.',
      caution: SPIN,
    },
    emfAs: {
      kind: 'choice',
      given: true,
      name: 'how the back-EMF is stated',
      trouble: 2,
      options: {
        dc: 'DC volts at the brushes',
        'line-peak': 'peak between two leads',
        'line-rms': 'r.m.s. between two leads (a meter on a.c.)',
      },
      findOut:
        'Brushed: DC volts. Brushless: a meter on a.c. between two leads reads r.m.s.; an oscilloscope shows the peak.',
    },
    resistance: {
      kind: 'quantity',
      name: 'winding resistance between two leads',
      unit: 'Ω',
      domain: 'positive',
      plausible: ['0.02 Ω', '100 Ω'],
      trouble: 2,
      findOut:
        'Meter on ohms between two power leads, motor unplugged; short the probes first and take that off. Brushed: turn the shaft to several places and take the mean. Stepper: one phase.',
      caution:
        'Unplug the motor from its drive and wait until the drive’s capacitors are down before you touch the leads.',
    },
    inductance: {
      kind: 'quantity',
      name: 'winding inductance between two leads',
      unit: 'mH',
      domain: 'positive',
      plausible: ['0.05 mH', '200 mH'],
      trouble: 2,
      findOut:
        'Plate, maker’s sheet or an LCR meter at 120 Hz or 1 kHz. Stepper: one phase as the drive connects it.',
    },
    brushDrop: {
      kind: 'quantity',
      name: 'voltage lost in the brushes',
      unit: 'V',
      domain: 'not negative',
      plausible: ['0 V', '4 V'],
      trouble: 3,
      findOut:
        'About 2 V for a pair of carbon brushes; measure volts at standstill against current and find where the line meets zero current.',
    },
    inertia: {
      kind: 'quantity',
      name: 'rotor inertia',
      unit: 'kg·m²',
      domain: 'positive',
      plausible: ['1e-7 kg·m²', '0.5 kg·m²'],
      trouble: 2,
      findOut:
        'Plate or maker’s sheet (often oz-in-s² or kgf·cm·s²); else a coast-down with and without a known disc.',
    },
    continuousTorque: {
      kind: 'quantity',
      name: 'continuous torque at standstill',
      unit: 'N·m',
      domain: 'positive',
      plausible: ['0.02 N·m', '200 N·m'],
      trouble: 1,
      findOut:
        'Plate: “stall torque”, “cont. torque”. Brushed without it: continuous current × torque constant.',
    },
    peakTorque: {
      kind: 'quantity',
      name: 'peak torque',
      unit: 'N·m',
      domain: 'positive',
      plausible: ['0.05 N·m', '800 N·m'],
      trouble: 2,
      findOut: 'Plate or maker’s sheet. Leave it unknown if only currents are known.',
    },
    continuousCurrent: {
      kind: 'quantity',
      name: 'continuous current',
      unit: 'A',
      domain: 'positive',
      plausible: ['0.2 A', '150 A'],
      trouble: 1,
      findOut: 'Plate. Stepper: rated current of one phase.',
    },
    peakCurrent: {
      kind: 'quantity',
      name: 'largest current it may see (magnets)',
      unit: 'A',
      domain: 'positive',
      plausible: ['0.5 A', '800 A'],
      trouble: 2,
      findOut: 'Plate: “peak current” or “demag. current”. Above it the magnets are weakened for good.',
    },
    currentAs: {
      kind: 'choice',
      given: true,
      name: 'how its currents are stated',
      trouble: 2,
      options: {
        dc: 'DC amperes (brushed)',
        'phase-peak': 'peak of the phase current',
        'phase-rms': 'r.m.s. of the phase current',
      },
      findOut:
        'Brushed: DC. Brushless: plates mostly state r.m.s. amperes (“A rms”, “A eff.”); some makers state the peak.',
    },
    topSpeed: {
      kind: 'quantity',
      name: 'highest speed allowed',
      unit: 'r/min',
      domain: 'positive',
      plausible: ['200 r/min', '12000 r/min'],
      trouble: 1,
      findOut: 'Plate: “max r/min”.',
    },
    friction: {
      kind: 'quantity',
      name: 'friction torque of the motor',
      unit: 'N·m',
      domain: 'not negative',
      plausible: ['0 N·m', '3 N·m'],
      trouble: 3,
      findOut: 'No-load current × torque constant, motor alone and turning slowly.',
      caution: SPIN,
    },
    holdingTorque: {
      kind: 'quantity',
      name: 'holding torque (stepper)',
      unit: 'N·m',
      domain: 'positive',
      plausible: ['0.05 N·m', '50 N·m'],
      trouble: 1,
      findOut: 'Plate or maker’s sheet: both phases on at rated current.',
    },
    stepAngle: {
      kind: 'quantity',
      name: 'full step angle (stepper)',
      unit: '°',
      domain: 'positive',
      plausible: ['0.36 °', '15 °'],
      trouble: 1,
      findOut: 'Plate: nearly always 1.8°. Else count the steps of one turn.',
    },
    pullOut: {
      kind: 'curve',
      name: 'pull-out torque (stepper)',
      unit: 'N·m',
      xUnit: 'r/min',
      xName: 'speed',
      trouble: 2,
      findOut:
        'Maker’s curve at your voltage: type it as “1.1 N·m at 300 r/min; 0.8 N·m at 600 r/min”. Without it Fettle works an optimistic estimate.',
    },
    emfPlate: {
      kind: 'quantity',
      name: 'back-EMF constant on the plate, where the one above was measured',
      unit: 'V/krpm',
      domain: 'positive',
      plausible: ['1 V/krpm', '400 V/krpm'],
      trouble: 1,
      findOut: 'Plate. A motor that makes less than its plate says has weak magnets.',
    },
    resistanceSpread: {
      kind: 'quantity',
      name: 'spread of the winding resistance over one turn',
      unit: '%',
      domain: 'fraction',
      plausible: ['0 %', '40 %'],
      trouble: 3,
      findOut:
        'Brushed: measure at twelve shaft positions; highest less lowest, divided by the mean. Leave it where the motor has no brushes.',
      caution: 'The motor may jump when current is sent through it: clamp it and limit the current.',
    },
    insulation: {
      kind: 'quantity',
      name: 'insulation resistance, winding to frame',
      unit: 'MΩ',
      domain: 'not negative',
      plausible: ['0 MΩ', '100000 MΩ'],
      trouble: 3,
      findOut:
        'Insulation tester at 500 V d.c. (250 V first where the class is not known), one lead to the winding, the other to bare metal of the frame; read after one minute.',
      caution:
        'The tester puts 500 V on the leads, and they stay charged: touch nothing, and short them to the frame for a minute afterwards. Unplug encoder and tacho first.',
    },
    brushLength: {
      kind: 'quantity',
      name: 'length of the shortest brush',
      unit: 'mm',
      domain: 'not negative',
      plausible: ['3 mm', '50 mm'],
      trouble: 2,
      findOut:
        'Unscrew the brush caps one at a time, draw each brush out by its spring and measure the carbon. Mark which way round it sat.',
      caution: 'Drive locked off and its capacitors down before a cap comes off.',
    },
    brushNew: {
      kind: 'quantity',
      name: 'length of a new brush',
      unit: 'mm',
      domain: 'positive',
      plausible: ['5 mm', '60 mm'],
      trouble: 2,
      findOut:
        'Maker’s sheet, or the longest of them where one was changed lately. A wear mark on the side says how far it may go.',
    },
    ...money,
  },
});
