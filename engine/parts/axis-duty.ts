import { partKind } from './types.ts';

/** What one axis must do. These are wishes: a person chooses them and remedies may change them. */
export const axisDuty = partKind({
  id: 'axis-duty',
  name: 'duty of the axis',
  about: 'What you want this axis to do: how fast, against what force, how exactly and for how long.',
  facts: {
    rapid: {
      kind: 'quantity',
      name: 'rapid speed wanted',
      unit: 'm/min',
      domain: 'positive',
      plausible: ['0.5 m/min', '40 m/min'],
      chosen: true,
      trouble: 1,
      findOut:
        'Choose it. Small lathes and mills live happily with 3 to 8 m/min; the old machine’s plate or manual names what it had.',
    },
    acceleration: {
      kind: 'quantity',
      name: 'acceleration wanted',
      unit: 'm/s²',
      domain: 'positive',
      plausible: ['0.1 m/s²', '10 m/s²'],
      chosen: true,
      trouble: 1,
      findOut:
        'Choose it. 0.5 to 2 m/s² suits old slides; threading needs enough to reach its feed within the run-in.',
    },
    feed: {
      kind: 'quantity',
      name: 'fastest cutting feed',
      unit: 'mm/min',
      domain: 'positive',
      plausible: ['10 mm/min', '5 m/min'],
      chosen: true,
      trouble: 1,
      findOut:
        'Choose it: feed per turn times spindle speed of your fastest cut; for threads, pitch times spindle speed.',
    },
    cutForce: {
      kind: 'quantity',
      name: 'cutting force along the axis',
      unit: 'N',
      domain: 'not negative',
      plausible: ['20 N', '20 kN'],
      chosen: true,
      trouble: 2,
      findOut:
        'Work it from the heaviest cut: specific cutting force × depth × feed gives the main force; along the feed reckon 0.3 to 0.5 of it with a sharp tool.',
    },
    cutShare: {
      kind: 'quantity',
      name: 'share of the time spent cutting',
      unit: '%',
      domain: 'fraction',
      plausible: ['5 %', '90 %'],
      chosen: true,
      trouble: 1,
      findOut:
        'Estimate it over a working day: of each minute of program, how much is the tool in the metal?',
    },
    moveLength: {
      kind: 'quantity',
      name: 'length of a usual rapid move',
      unit: 'mm',
      domain: 'positive',
      plausible: ['2 mm', '2 m'],
      chosen: true,
      trouble: 1,
      findOut: 'Think of a usual part: how far does this axis move between cuts?',
    },
    movesPerMinute: {
      kind: 'quantity',
      name: 'rapid moves a minute',
      unit: '1/min',
      domain: 'positive',
      plausible: ['0.5 1/min', '60 1/min'],
      chosen: true,
      trouble: 1,
      findOut: 'Count the rapid moves of a usual program and divide by its minutes.',
    },
    tolerance: {
      kind: 'quantity',
      name: 'tolerance wanted on the part',
      unit: 'mm',
      domain: 'positive',
      plausible: ['0.002 mm', '1 mm'],
      chosen: true,
      trouble: 1,
      findOut:
        'From your drawings: the whole width of the tightest tolerance this axis makes (0.02 mm for ±0.01).',
    },
    toleranceOn: {
      kind: 'choice',
      given: true,
      name: 'what the tolerance is measured on',
      trouble: 1,
      options: { length: 'a length along the axis', diameter: 'a diameter (the slide moves half of it)' },
      findOut: 'On a lathe’s cross slide it is the diameter; on other axes a length.',
    },
    hoursWanted: {
      kind: 'quantity',
      name: 'running hours wanted',
      unit: 'h',
      domain: 'positive',
      plausible: ['200 h', '40000 h'],
      chosen: true,
      trouble: 1,
      findOut: 'Hours a year times years. A hobby machine sees 200 to 500 hours a year, a small shop 1500.',
    },
  },
});
