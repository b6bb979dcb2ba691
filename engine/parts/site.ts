import { partKind } from './types.ts';

export const site = partKind({
  id: 'site',
  name: 'workshop',
  about: 'The mains the machine will stand on.',
  facts: {
    mains: {
      kind: 'quantity',
      name: 'mains voltage',
      unit: 'V',
      domain: 'positive',
      plausible: ['90 V', '690 V'],
      trouble: 1,
      findOut:
        'What the transformer’s primary is connected to: 230 V or 400 V in most of Europe, 120 V or 240 V in North America.',
      caution:
        'Only measure mains with a meter and leads rated for it; if you are not sure, ask an electrician to read it for you.',
    },
    frequency: {
      kind: 'quantity',
      name: 'mains frequency',
      unit: 'Hz',
      domain: 'positive',
      plausible: ['50 Hz', '60 Hz'],
      trouble: 1,
      findOut: '50 Hz in most of the world, 60 Hz in North America and parts of Asia.',
    },
    transformerRated: {
      kind: 'quantity',
      name: 'mains voltage the transformer is made for',
      unit: 'V',
      domain: 'positive',
      plausible: ['90 V', '690 V'],
      trouble: 1,
      findOut: 'Transformer plate: primary volts of the tap in use.',
    },
  },
});
