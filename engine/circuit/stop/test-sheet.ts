/** The test sheet: one action a line, what must happen, and room to sign. */
import { formatQuantity } from '../../quantity/index.ts';
import { andList } from '../../quantity/words.ts';
import type { StopCircuit } from '../../refit/types.ts';
import type { StopAnalysis } from './analyse.ts';
import type { Doing, Model } from './model.ts';
import { blockLines, runLines, SLOW } from './test-runs.ts';

export interface TestLine {
  readonly number: number;
  readonly part: string;
  readonly act: string;
  readonly expected: string;
  /** What to check before touching anything, where it can hurt. */
  readonly caution?: string;
  /** Not to be done, and so nothing to sign: it would fail. `act` says what to mend first. */
  readonly barred?: true;
}

export type Draft = Omit<TestLine, 'number'>;

export interface TestSheet {
  readonly machine: string;
  readonly made: string;
  /** The day by which it is due again; also after every change. */
  readonly due: string;
  readonly months: number;
  readonly before: readonly string[];
  readonly lines: readonly TestLine[];
}

/** What the wiring adds to the drawing of the stop circuit. */
export interface Built {
  /** The wire by which one leaves a terminal for another, past strips; undefined where the wiring has no such way. */
  readonly wireAt: (terminal: string, towards: string) => BuiltWire | undefined;
  readonly buses: readonly BuiltBus[];
}

export interface BuiltWire {
  /** As printed on it: '3'. */
  readonly number: string;
  /** 'X3.2' */
  readonly from: string;
  readonly to: string;
}

/** A d.c. bus that stays charged after switching off. */
export interface BuiltBus {
  readonly name: string;
  /** Seconds to 60 V; undefined while that is not known. */
  readonly falls: number | undefined;
  /** Seconds to wait, as on the plate where there has to be one. */
  readonly wait: number | undefined;
  readonly plate: boolean;
}

/** `today` is an ISO date, given by the caller. */
export function testSheet(
  name: string,
  circuit: StopCircuit,
  looked: StopAnalysis,
  today: string,
  built?: Built,
): TestSheet {
  const months = Number(circuit.settings['test-months'] ?? '12') || 12;
  const { base } = looked;
  const wait = longestWait(built);
  const lines: Draft[] = [
    ...blockLines(looked),
    ...runLines(looked),
    ...base.barred.map(({ act }) => ({
      part: 'Locked door',
      act: `Everything runs slowly. Try to ${act.says}.`,
      expected: 'It does not open until all stands.',
      caution: SLOW,
    })),
    ...channelLines(looked, built),
    ...proofLines(base.model),
    ...brakeLines(looked),
    ...storedLines(built),
    ...ELECTRICAL,
  ];
  return {
    machine: name,
    made: today,
    due: addMonths(today, months),
    months,
    before: [
      'To be done after every change of the stop circuit, and by the date given. Whoever tests must know the machine. Mains wiring and its tests are for a licensed electrician; local rules come first.',
      'This sheet shows what was drawn. It makes the machine neither safe nor certified.',
      'A, slowly: no tool, no work, nobody in reach of what moves, one hand on the main switch.',
      `B, locked: power off, main switch locked, ${wait === undefined ? 'wait until the drives have discharged' : `wait ${wait} s`}, measure less than 60 V and that nothing else is live.`,
    ],
    lines: lines.map((line, at) => ({ number: at + 1, ...line })),
  };
}

const LOCKED = 'B. Power off, locked, waited, measured.';
const STOPS = new Set<Doing['role']>(['stop', 'emergency', 'door', 'limit', 'key']);

/** What opens two channels at once is tried one channel at a time. */
function* channelLines(
  { base: { model }, faults }: StopAnalysis,
  built: Built | undefined,
): Generator<Draft> {
  const shows = new Set(
    faults
      .filter(({ judged }) => judged.verdict === 'noticed' || judged.verdict === 'stops')
      .map(({ fault }) => fault.id),
  );
  for (const [at, { does }] of model.movers.entries()) {
    if (!does || !STOPS.has(does.role)) continue;
    const own = model.contacts.filter(({ mover }) => mover === at);
    if (own.length < 2) continue;
    for (const { a, b } of own) {
      const wire = model.wires.find(
        (each) => shows.has(`${each.id} off`) && [each.a, each.b].some((end) => end === a || end === b),
      );
      if (!wire) continue;
      const here = [a, b].includes(wire.a) ? wire.a : wire.b;
      const there = here === wire.a ? wire.b : wire.a;
      yield {
        part: 'Each channel by itself',
        act: `${takeOff(model.nodes[here]!, model.nodes[there]!, built)} Power on, try to start. Then lock again and put it back.`,
        expected: 'It does not start.',
        caution: LOCKED,
      };
    }
  }
}

/** By its number and its real ends where it is wired; else by the terminals that are drawn. */
function takeOff(here: string, there: string, built: Built | undefined): string {
  const wire = built?.wireAt(here, there);
  if (!wire) return `Take the wire off ${here} that leads to ${there}.`;
  return `Take wire ${wire.number} (${wire.from}–${wire.to}) off ${here}.`;
}

function* proofLines({ contacts }: Model): Generator<Draft> {
  const linked = contacts.filter((each) => each.linked && each.closedAt === 0 && !each.main);
  for (const element of new Set(linked.map((each) => each.element)))
    yield {
      part: 'Contacts that tell the truth',
      act: `Push the armature of ${element} in by hand; measure its contacts that open.`,
      expected: 'They open before the others close.',
      caution: LOCKED,
    };
}

function* brakeLines({ base, findings }: StopAnalysis): Generator<Draft> {
  for (const { id, vertical, brake } of base.model.motions) {
    if (!vertical || brake < 0) continue;
    const part = `Brake of ${id}`;
    const finding = findings.find((each) => each.id === `stop.${id}.brake`);
    if (finding?.verdict === 'fails')
      yield {
        part,
        act: `Do not do this test until this is mended: ${finding.title} (${finding.id})`,
        expected: [finding.sentence, finding.remedy].filter((each) => each !== undefined).join(' '),
        barred: true,
      };
    else
      yield {
        part,
        act: `Raise ${id}, put a prop 20 mm below it, press the emergency stop, read the sag on an indicator.`,
        expected: 'It stays where it is; sag: ______ mm',
        caution: 'Nobody under it or reaching under it. Block it before motor or brake is taken off.',
      };
  }
}

const longestWait = (built: Built | undefined): number | undefined => {
  const waits = (built?.buses ?? []).map(({ wait }) => wait);
  return waits.length === 0 || waits.includes(undefined)
    ? undefined
    : Math.max(...waits.map((each) => each!));
};

/** IEC 60204-1:2016, 6.2.4; limits as quoted in testers' manuals. */
function* storedLines(built: Built | undefined): Generator<Draft> {
  const common = {
    part: 'Stored charge',
    caution: 'A meter fit for the voltage, covers on until then, one hand, not alone.',
  };
  const known = (built?.buses ?? []).filter(({ wait }) => wait !== undefined);
  for (const { name, falls, wait, plate } of known)
    yield {
      ...common,
      act: `Switch off, wait ${wait} s${plate ? ', as the plate on the door has to say' : ''}, measure ${name} from plus to minus.`,
      expected: `At most 60 V${falls === undefined ? '' : `; worked out: 60 V after ${formatQuantity(falls, 's', { digits: 2 })}`} (IEC 60204-1:2016, 6.2.4).`,
    };
  const open = (built?.buses ?? []).filter(({ wait }) => wait === undefined).map(({ name }) => name);
  if (built === undefined || open.length > 0)
    yield {
      ...common,
      act: `Switch off and measure ${open.length > 0 ? andList(open) : 'every d.c. bus'} from plus to minus until it has fallen to 60 V.`,
      expected:
        'Time to 60 V: ______ s. Above 5 s a plate on the door says how long to wait (IEC 60204-1:2016, 6.2.4).',
    };
}

/** IEC 60204-1:2016, clause 18; limits as quoted in testers' manuals, the rest recalled. */
const ELECTRICAL: readonly Draft[] = [
  {
    part: 'Earth and insulation, by a licensed electrician',
    act: 'Measure the protective conductor from the supply to every part that can be touched.',
    expected: 'As its length and cross-section let expect (18.2): ______ ohm',
  },
  {
    part: 'Earth and insulation, by a licensed electrician',
    act: 'Measure the insulation of the power circuits against the protective conductor at 500 V d.c., electronics taken off.',
    expected: 'At least 1 megohm (18.3): ______ megohm',
  },
];

/** The same day some months later, or the last of that month. */
export function addMonths(day: string, months: number): string {
  const [year = 2000, month = 1, date = 1] = day.slice(0, 10).split('-').map(Number);
  const first = new Date(Date.UTC(year, month - 1 + months, 1));
  const last = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
  first.setUTCDate(Math.min(date, last));
  return first.toISOString().slice(0, 10);
}
