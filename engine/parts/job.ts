/** The refit as an undertaking: what the machine weighs, how worn it is, what it may cost, what it is worth. */
import { ABILITIES, ABILITY_IDS, COUNT_IDS, countFacts } from './control-abilities.ts';
import { partKind, type TextFact } from './types.ts';

const abilities = Object.fromEntries(ABILITY_IDS.map((id) => [id, ABILITIES[id].name]));
const counts = Object.fromEntries(COUNT_IDS.map((id) => [id, countFacts[id].name]));

const cost = (name: string, findOut: string): TextFact => ({
  kind: 'text',
  of: 'money',
  name,
  trouble: 2,
  findOut: `${findOut} Write a range, lowest–likely–highest, as 150–250–400 EUR; 0 for nothing.`,
});

export const job = partKind({
  id: 'job',
  name: 'job as a whole',
  about:
    'What the machine weighs and needs, how worn it is, what it may cost to get it going, and what it is worth to you.',
  facts: {
    weight: {
      kind: 'quantity',
      name: 'weight of the machine',
      unit: 'kg',
      domain: 'positive',
      plausible: ['30 kg', '20000 kg'],
      trouble: 1,
      findOut: 'Plate or manual; else ask those who will move it. Write what is lifted in one piece.',
      caution: 'A machine that tips cannot be held. Ask those who move machines for their trade.',
    },
    width: {
      kind: 'quantity',
      name: 'width it can be made to pass through',
      unit: 'mm',
      domain: 'positive',
      plausible: ['300 mm', '4000 mm'],
      trouble: 1,
      findOut: 'Its narrowest way through a door, with chip tray, cabinet and motor taken off.',
    },
    phases: {
      kind: 'choice',
      name: 'mains it needs',
      trouble: 1,
      options: { single: 'one phase', three: 'three phases' },
      findOut:
        'Plate of the main switch: “3~” is three phases. New drives of one phase may change that: say what it needs once it is done.',
    },
    power: {
      kind: 'quantity',
      name: 'power it takes from the mains',
      unit: 'kW',
      domain: 'positive',
      plausible: ['0.2 kW', '60 kW'],
      trouble: 1,
      findOut: 'Plate of the main switch, or all motor plates added.',
    },
    ways: {
      kind: 'choice',
      name: 'state of the ways',
      trouble: 2,
      options: {
        good: 'scraping or grinding still shows',
        worn: 'worn, can be scraped or lined',
        beyond: 'worn or broken beyond scraping',
      },
      findOut:
        'Wipe them; look at scraping marks near the ends and in the middle, feel for a step with a fingernail.',
    },
    spindle: {
      kind: 'choice',
      name: 'state of the spindle bearings',
      trouble: 2,
      options: {
        good: 'quiet, no play',
        worn: 'noisy or with play: new bearings',
        beyond: 'spindle or housing damaged',
      },
      findOut:
        'Dial gauge on the nose, lift with a bar; turn it by hand and feel; listen where it still runs.',
      caution: 'Lock off before you touch the spindle.',
    },
    missing: {
      kind: 'text',
      name: 'parts that are missing',
      trouble: 1,
      findOut:
        'Covers, chuck, tailstock, turret, tool holders, keys: look at the drawings or a sister machine. Write “nothing” where all is there.',
    },
    materials: {
      kind: 'choices',
      name: 'materials it shall cut',
      trouble: 1,
      options: {
        plastics: 'plastics',
        wood: 'wood',
        aluminium: 'aluminium',
        brass: 'brass and bronze',
        copper: 'copper',
        'cast-iron': 'cast iron',
        'mild-steel': 'mild steel',
        'tool-steel': 'alloy and tool steel',
        stainless: 'stainless steel',
        titanium: 'titanium',
        hardened: 'hardened steel',
      },
      findOut: 'Think of what you made in the last year, and of what you would like to.',
    },
    threads: {
      kind: 'text',
      name: 'threads it shall cut',
      trouble: 1,
      findOut:
        'The finest and the coarsest, and those in between you need often: M6 to M30, 1/2 in 13 TPI, G 1/4.',
    },
    'control-wanted': {
      kind: 'choices',
      name: 'what else the control must do',
      trouble: 1,
      options: abilities,
      findOut:
        'Only what you would miss. What your threads, taps and auxiliaries ask for is worked out by itself.',
    },
    'control-waived': {
      kind: 'choices',
      name: 'what you can do without though it was worked out',
      trouble: 1,
      options: {
        ...abilities,
        ...counts,
        'turret-codes': 'reads the turret',
        pulses: 'gives pulses fast enough',
        edges: 'follows the encoders',
      },
      findOut: 'What you will do another way: a floating tap holder, a switch turned by hand.',
    },
    'inputs-besides': {
      kind: 'quantity',
      name: 'inputs wanted besides those worked out',
      unit: '1',
      domain: 'not negative',
      plausible: ['0', '64'],
      chosen: true,
      trouble: 1,
      findOut: 'Buttons of your own, a bar feeder, a lamp’s switch.',
    },
    'outputs-besides': {
      kind: 'quantity',
      name: 'outputs wanted besides those worked out',
      unit: '1',
      domain: 'not negative',
      plausible: ['0', '64'],
      chosen: true,
      trouble: 1,
      findOut: 'Lamps, a chip conveyor, an air blast.',
    },
    'outputs-must': {
      kind: 'choice',
      name: 'what the outputs of the control must do',
      trouble: 2,
      options: {
        plus: 'give plus: valves and relays share a wire to minus',
        minus: 'pull to minus: valves and relays share a wire to plus',
      },
      findOut:
        'Only where old valves, relays or lamps keep their common wire: follow it from one to the next, with the power off, to minus or to plus of the 24 V supply. Leave it open where each has two wires of its own: then either will do.',
      caution: 'Lock the main switch off before you follow wires.',
    },
    'output-load': {
      kind: 'quantity',
      name: 'largest current one output of the control must switch',
      unit: 'A',
      domain: 'positive',
      plausible: ['5 mA', '10 A'],
      trouble: 2,
      findOut:
        'The plate of the largest valve or contactor that hangs straight on an output: its watts over 24 V. With a small relay between, the relay’s coil counts, some 20 to 40 mA.',
    },
    'longest-program': {
      kind: 'quantity',
      name: 'longest program you will run, in lines',
      unit: '1',
      domain: 'not negative',
      plausible: ['10', '100000000'],
      chosen: true,
      trouble: 1,
      findOut: 'Turned parts: some hundreds. Shapes from a drawing program on a mill: hundreds of thousands.',
    },
    worth: cost(
      'what a working one is worth to you',
      'What you would pay for such a machine that works, or what its work brings you.',
    ),
    asked: cost('price asked for the machine', 'What the seller wants. 0 where it is yours already.'),
    transport: cost('carriage', 'A quote of those who move machines.'),
    lifting: cost('lifting and setting down', 'Crane, fork lift, skates, or friends and bars.'),
    hookup: cost(
      'electrician and mains',
      'The connection, and a converter where it wants three phases and you have one.',
    ),
    control: cost('control and computer', 'The control, its screen and its boards.'),
    drives: cost('drives', 'All axes, with their braking resistors.'),
    motors: cost('motors', 'Those that are replaced, with adapters and couplings.'),
    feedback: cost('encoders and scales', 'With couplings, cables and converters.'),
    supply: cost('power supplies', 'Transformers, capacitors, 24 V.'),
    wiring: cost('wiring and cabinet', 'Cables, plugs, terminals, ducts, contactors, fuses.'),
    safety: cost('stop circuit and guards', 'Safety relays, switches, buttons, polycarbonate.'),
    waysCost: cost('ways', 'Scraping, lining, wipers.'),
    spindleCost: cost('spindle bearings', 'Bearings, seals, and somebody who fits them.'),
    screwsCost: cost('screws and nuts', 'New balls, a regrind, or new ones with bearings.'),
    missingCost: cost('missing parts', 'Chuck, tailstock, covers, tool holders.'),
    small: cost('oil, paint, small parts', 'Lubrication lines, hoses, filters, screws.'),
    tooling: cost('tooling to make a first part', 'Holders, inserts, vice or jaws.'),
  },
});
