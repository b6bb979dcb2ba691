/** Where to look, in a few strokes of our own: strokes and words in a box of 200 × 120. */
import { SPINDLE_SKETCHES } from './spindle-sketches.ts';
import type { Sketch } from './types.ts';

const box = (x: number, y: number, w: number, h: number): string => `M${x} ${y}h${w}v${h}h${-w}z`;
const ring = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;

export const SKETCHES: Readonly<Record<string, Sketch>> = {
  ...SPINDLE_SKETCHES,
  motor: {
    says: 'A motor from the side: its plate, the box with its leads, the feedback at the rear.',
    strokes: [
      box(50, 35, 90, 50),
      'M140 54h26v12h-26',
      box(28, 44, 22, 32),
      box(78, 20, 30, 15),
      box(70, 48, 46, 22),
      'M84 20v-10M93 20v-12M102 20v-10',
    ],
    labels: [
      [74, 63, 'plate'],
      [112, 18, 'leads'],
      [8, 94, 'feedback'],
      [152, 84, 'shaft'],
    ],
  },
  screw: {
    says: 'A screw with its nut: the thread, the diameter at its root, the free length between bearings, the bearings at its ends.',
    strokes: [
      box(10, 40, 18, 40),
      box(172, 40, 18, 40),
      'M28 54h144M28 66h144',
      'M36 54l6 12M48 54l6 12M60 54l6 12M116 54l6 12M128 54l6 12M140 54l6 12M152 54l6 12',
      box(76, 44, 34, 32),
      'M28 96h144M28 90v12M172 90v12',
      'M128 32h12M128 28v8M140 28v8',
    ],
    labels: [
      [84, 40, 'nut'],
      [70, 112, 'free length'],
      [118, 24, 'pitch'],
      [2, 34, 'bearing'],
      [160, 34, 'bearing'],
    ],
  },
  slide: {
    says: 'A slide on its ways: where it worked most, its gib, its wipers, its travel.',
    strokes: [
      box(10, 70, 180, 18),
      box(66, 44, 62, 26),
      'M62 44v26M132 44v26',
      'M78 88v14M116 88v14',
      'M10 30h180M10 24v12M190 24v12',
    ],
    labels: [
      [78, 22, 'travel'],
      [72, 114, 'worn most here'],
      [134, 58, 'wiper'],
      [80, 60, 'gib'],
    ],
  },
  drive: {
    says: 'A drive from the front: its plate, mains or bus terminals, motor terminals, the signal plug.',
    strokes: [
      box(60, 8, 80, 104),
      box(70, 18, 34, 20),
      box(112, 18, 20, 44),
      'M68 96h64M72 90v12M84 90v12M96 90v12M108 90v12M120 90v12',
      box(70, 52, 30, 10),
    ],
    labels: [
      [74, 32, 'plate'],
      [144, 42, 'signals'],
      [8, 62, 'potentiometers'],
      [144, 100, 'power, motor'],
    ],
  },
  feedback: {
    says: 'An encoder or resolver at the rear of the motor: its label, its plug and pin letters.',
    strokes: [
      ring(70, 60, 34),
      ring(70, 60, 8),
      box(104, 50, 30, 20),
      'M134 54h20M134 60h20M134 66h20',
      box(52, 74, 36, 12),
    ],
    labels: [
      [54, 110, 'label: lines, volts'],
      [112, 44, 'plug'],
      [158, 63, 'pins'],
    ],
  },
  supply: {
    says: 'A transformer: the taps it is connected to, the secondary, the capacitors behind it.',
    strokes: [
      box(14, 30, 70, 60),
      'M26 30v-10M40 30v-10M54 30v-10M68 30v-10M34 90v12M64 90v12',
      box(26, 46, 46, 26),
      ring(130, 60, 20),
      'M130 34v10M126 30h8',
      ring(174, 60, 14),
    ],
    labels: [
      [32, 62, 'plate'],
      [16, 14, 'mains taps'],
      [14, 114, 'secondary'],
      [108, 98, 'capacitors'],
    ],
  },
  control: {
    says: 'The old control: the label, the battery, the plugs at its rear, the serial port.',
    strokes: [
      box(20, 14, 160, 92),
      box(30, 24, 40, 22),
      box(82, 24, 30, 14),
      'M30 84h18v12h-18zM56 84h18v12h-18zM82 84h18v12h-18zM108 84h18v12h-18z',
      box(136, 84, 32, 12),
    ],
    labels: [
      [38, 38, 'label'],
      [84, 50, 'battery'],
      [52, 78, 'axis plugs'],
      [136, 78, 'serial port'],
    ],
  },
  reduction: {
    says: 'Two pulleys and a belt: the teeth of each, the size on the belt’s back.',
    strokes: [
      ring(60, 62, 18),
      ring(142, 62, 32),
      'M58 44L136 30M58 80L136 94',
      ring(60, 62, 4),
      ring(142, 62, 6),
    ],
    labels: [
      [30, 108, 'teeth: motor'],
      [112, 114, 'teeth: screw'],
      [70, 28, 'size of the belt'],
    ],
  },
  brake: {
    says: 'A brake behind the motor or on the screw: its plate and its two leads.',
    strokes: [
      box(40, 34, 40, 52),
      box(80, 44, 60, 32),
      'M140 54h24M140 66h24',
      'M54 34v-18M66 34v-18',
      box(46, 50, 28, 18),
    ],
    labels: [
      [49, 62, 'plate'],
      [72, 18, 'two leads: volts'],
      [96, 63, 'motor'],
    ],
  },
  site: {
    says: 'The cabinet: mains switch, fuses, terminal strips and the drawing in the door.',
    strokes: [
      box(30, 8, 80, 104),
      'M110 8l50 14v90l-50 0',
      box(38, 16, 18, 18),
      box(62, 16, 40, 18),
      'M38 92h64M38 100h64M46 88v16M58 88v16M70 88v16M82 88v16M94 88v16',
      box(122, 60, 28, 36),
    ],
    labels: [
      [38, 46, 'switch'],
      [74, 46, 'fuses'],
      [42, 84, 'terminals'],
      [124, 54, 'drawing'],
    ],
  },
  pump: {
    says: 'A pump on its tank: the plate, the gauge, the level switch.',
    strokes: [
      box(20, 66, 140, 44),
      box(50, 20, 36, 46),
      ring(122, 48, 14),
      'M122 62v4M122 48l6-8',
      box(56, 34, 24, 14),
      'M168 66v30h-8',
    ],
    labels: [
      [57, 45, 'plate'],
      [140, 44, 'gauge'],
      [150, 62, 'level'],
      [70, 94, 'tank'],
    ],
  },
  valve: {
    says: 'A valve and its cylinder: the volts stand on the coil; two switches tell where the piston is.',
    strokes: [
      box(20, 30, 70, 26),
      box(4, 36, 16, 14),
      box(90, 36, 16, 14),
      'M40 56v18M70 56v18',
      box(26, 74, 90, 24),
      'M116 86h50',
      'M58 74v24',
      box(30, 100, 12, 8),
      box(98, 100, 12, 8),
    ],
    labels: [
      [110, 46, 'coil: volts'],
      [36, 46, 'valve'],
      [124, 78, 'cylinder'],
      [118, 110, 'switches'],
    ],
  },
  switch: {
    says: 'A switch and the cam that works it: count its wires, open or closed when nothing touches it.',
    strokes: [
      box(60, 50, 70, 50),
      'M95 50v-14',
      ring(95, 28, 8),
      'M20 20l40 0l14 -8M72 100v14M88 100v14M104 100v14M120 100v14',
    ],
    labels: [
      [108, 30, 'roller'],
      [22, 16, 'cam'],
      [68, 78, 'wires: how many?'],
    ],
  },
};
