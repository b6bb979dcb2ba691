/** How good the machine itself is: what no plate tells. Common practice, no source. */
import type { SurveyItemSpec } from './types.ts';

const mark = (item: Omit<SurveyItemSpec, 'group'>): SurveyItemSpec => ({ ...item, group: 'mark' });

export const MARKS: readonly SurveyItemSpec[] = [
  mark({
    id: 'ways',
    name: 'ways',
    look: 'Wipe them and look along them: scraping or grinding marks still there near the ends, gone where it worked most; scores, a step you can feel with a fingernail, oil at every wiper.',
    sketch: 'slide',
    questions: {
      step: { kind: 'quantity', name: 'step where it worked most', unit: 'mm', plausible: ['0 mm', '5 mm'] },
      scores: { kind: 'text', name: 'scores and where', like: 'one, front way, 200 mm from the chuck' },
    },
  }),
  mark({
    id: 'spindle-bearings',
    name: 'spindle bearings',
    caution: 'Lock off before you touch the spindle. Turn it by hand only, without a tool in it.',
    look: 'A dial gauge on the nose: lift with a bar under the spindle and read how far it goes; turn it by hand and feel for roughness; listen at a few speeds while the machine still runs.',
    questions: {
      play: { kind: 'quantity', name: 'play when lifted', unit: 'µm', plausible: ['0 µm', '2000 µm'] },
      runout: {
        kind: 'quantity',
        name: 'run-out of the taper or nose',
        unit: 'µm',
        plausible: ['0 µm', '500 µm'],
      },
      sound: { kind: 'text', name: 'sound and feel', like: 'even, a little warm after ten minutes' },
    },
  }),
  mark({
    id: 'belts',
    name: 'belts and pulleys',
    caution: 'Lock off before the guard comes off; a pulley takes fingers in.',
    look: 'Cracks, glaze, missing teeth, and the size that stands on the belt’s back.',
    sketch: 'reduction',
    questions: { size: { kind: 'text', name: 'size on the belt’s back', like: '8M-1200-30' } },
  }),
  mark({
    id: 'cables',
    name: 'cables and plugs',
    caution: 'Locked off, and the meter shows that it is dead, before anything is bent or pulled.',
    look: 'Bend them gently where they move: insulation that cracks, goes green or sticks is finished. Look into each plug for pushed-back pins.',
    questions: { worst: { kind: 'text', name: 'the worst ones', like: 'X motor cable, last half metre' } },
  }),
  mark({
    id: 'cabinet',
    name: 'electrical cabinet',
    caution:
      'Mains inside, and capacitors that stay charged: locked off, ten minutes, and the meter shows that it is dead.',
    look: 'Dust, oil, rust, burnt smell, fans that turn, room for new parts, and whether the inside drawing agrees with what is there.',
    sketch: 'site',
    questions: {
      width: {
        kind: 'quantity',
        name: 'free width on the plate',
        unit: 'mm',
        plausible: ['50 mm', '3000 mm'],
      },
      height: {
        kind: 'quantity',
        name: 'free height on the plate',
        unit: 'mm',
        plausible: ['50 mm', '3000 mm'],
      },
      depth: { kind: 'quantity', name: 'free depth', unit: 'mm', plausible: ['30 mm', '2000 mm'] },
    },
  }),
  mark({
    id: 'covers',
    name: 'way covers and wipers',
    look: 'Telescopic covers that still run free, bellows without holes, wipers that touch.',
    questions: {
      missing: { kind: 'text', name: 'missing or torn', like: 'left bellows, wiper of the cross slide' },
    },
  }),
  mark({
    id: 'access',
    name: 'way in and place to stand',
    caution: 'A machine that tips cannot be held. Ask those who move machines for their trade.',
    look: 'Doors, floor, height under the beam, and from which side it must be reached for service.',
    questions: {
      weight: { kind: 'quantity', name: 'weight on the plate', unit: 'kg', plausible: ['50 kg', '50000 kg'] },
      door: { kind: 'quantity', name: 'narrowest way in', unit: 'mm', plausible: ['500 mm', '6000 mm'] },
      lift: { kind: 'text', name: 'how it is lifted', like: 'two bars through the bed' },
    },
  }),
];
