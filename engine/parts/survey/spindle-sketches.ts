/** Where to look on a spindle's chain, in strokes as those of the other sketches. */
import type { Sketch } from './types.ts';

export const SPINDLE_SKETCHES: Readonly<Record<string, Sketch>> = {
  'spindle-drive': {
    says: 'An inverter from the front: its plate on the side, mains in above, motor out below, terminals for a braking resistor.',
    strokes: [
      'M60 14h80v92h-80z',
      'M72 26h56v22h-56z',
      'M78 60h12M78 68h12M96 60h26v10h-26z',
      'M70 88h60M76 84v8M86 84v8M96 84v8M110 84v8M120 84v8',
      'M80 14v-10M90 14v-10M100 14v-10M76 106v10M86 106v10M96 106v10',
      'M110 106v6h30v-20h14M154 86h22v12h-22z',
    ],
    labels: [
      [106, 10, 'mains'],
      [20, 116, 'motor'],
      [146, 82, 'resistor'],
      [78, 42, 'settings'],
    ],
  },
  'spindle-motor': {
    says: 'A spindle motor from the side: its plate, the terminal box with the bridges of star or delta, the fan hood at the rear, the pulley.',
    strokes: [
      'M46 40h92v48h-92z',
      'M46 50h92M46 60h92M46 78h92',
      'M24 46h22v36h-22zM30 46v36M36 46v36',
      'M70 18h44v22h-44z',
      'M78 26h4v4h-4zM90 26h4v4h-4zM102 26h4v4h-4zM82 28h8M94 28h8',
      'M138 58h12v12h-12M150 44h12v40h-12z',
      'M56 88v10h18M128 88v10h-18',
    ],
    labels: [
      [120, 22, 'star or delta'],
      [4, 100, 'fan'],
      [78, 74, 'plate'],
      [140, 98, 'pulley'],
    ],
  },
  belts: {
    says: 'Step pulleys of motor and spindle with their belt: the diameters on which it runs in each range.',
    strokes: [
      'M30 20h16v24h-16zM46 14h16v36h-16zM62 8h16v48h-16z',
      'M30 68h16v48h-16zM46 74h16v36h-16zM62 80h16v24h-16z',
      'M12 32h18M78 32h14M12 92h18M78 92h14',
      'M50 14v96M58 14v96',
      'M100 8h10M100 56h10M105 8v48',
    ],
    labels: [
      [116, 36, 'motor side'],
      [116, 96, 'spindle side'],
      [112, 66, 'a step is a range'],
    ],
  },
  spindle: {
    says: 'A spindle in its housing: the front bearing, the bore, the nose that carries the chuck, the wheel at the rear.',
    strokes: [
      'M24 46h146v28h-146z',
      'M24 56h146M24 64h146',
      'M50 30h26v16h-26zM50 74h26v16h-26zM120 30h32v16h-32zM120 74h32v16h-32z',
      'M170 40h16v40h-16',
      'M10 34h14v52h-14z',
    ],
    labels: [
      [104, 24, 'front bearing'],
      [154, 106, 'nose'],
      [4, 102, 'wheel'],
      [80, 106, 'bore'],
    ],
  },
  chuck: {
    says: 'A chuck from the front: the mark of its highest speed, the jaws and how far out they sit, the key hole.',
    strokes: [
      'M52 60a46 46 0 1 0 92 0a46 46 0 1 0 -92 0',
      'M90 60a8 8 0 1 0 16 0a8 8 0 1 0 -16 0',
      'M92 18h12v34h-12z',
      'M105 62l28 17l-6 10l-28 -17z',
      'M91 62l-28 17l6 10l28 -17z',
      'M98 60v-46M150 60h10M150 22h10M155 22v38',
    ],
    labels: [
      [4, 16, 'max r/min'],
      [162, 44, 'radius'],
      [148, 100, 'jaw'],
    ],
  },
  'spindle-feedback': {
    says: 'An encoder beside the spindle, driven by a toothed belt: teeth on both wheels, its plate, its cable.',
    strokes: [
      'M20 60a26 26 0 1 0 52 0a26 26 0 1 0 -52 0',
      'M40 60a6 6 0 1 0 12 0a6 6 0 1 0 -12 0',
      'M106 60a26 26 0 1 0 52 0a26 26 0 1 0 -52 0',
      'M46 34h86M46 86h86',
      'M114 48h36v24h-36z',
      'M158 60h18v30h14',
    ],
    labels: [
      [24, 106, 'spindle'],
      [112, 106, 'encoder'],
      [116, 64, 'lines'],
      [60, 28, 'count the teeth'],
    ],
  },
};
