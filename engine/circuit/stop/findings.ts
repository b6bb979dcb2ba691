/** What the looking through comes to: one answer for each stop, for restarting, for faults, for places. */
import { formatQuantity } from '../../quantity/index.ts';
import type { StopCircuit } from '../../refit/types.ts';
import type { StopAnalysis } from './analyse.ts';
import { SAY_CATEGORY, type Stopping } from './stops.ts';

export interface StopFinding {
  readonly id: string;
  readonly title: string;
  readonly verdict: 'fits' | 'tight' | 'fails' | 'unknown';
  readonly sentence: string;
  /** What would make it fit, where it does not. */
  readonly remedy?: string;
}

type Looked = Omit<StopAnalysis, 'findings' | 'estimate' | 'notExamined'>;

const length = (metres: number): string =>
  Math.abs(metres) < 1
    ? formatQuantity(metres, 'mm', { digits: 3 })
    : formatQuantity(metres, 'm', { digits: 3 });
const seconds = (time: number): string => formatQuantity(time, 's', { digits: 3 });

/** 'X: stop category 0: …, stands after 0.52 s and 24.2 mm' */
export function sayStopping(stop: Stopping, spindle: boolean): string {
  const how = `${stop.motion}: ${SAY_CATEGORY[stop.category]}`;
  if (stop.category === 'none') return how;
  if (stop.time === undefined || stop.distance === undefined)
    return `${how}; how long it takes is not known (${stop.needs.join(', ')})`;
  if (!Number.isFinite(stop.time)) return `${how}; it never stands: nothing brakes it`;
  const far = spindle ? formatQuantity(stop.distance, 'rev', { digits: 3 }) : length(stop.distance);
  const falls =
    stop.drop !== undefined && stop.drop > 0 ? `, and drops ${length(stop.drop)} before the brake holds` : '';
  return `${how}; stands after ${seconds(stop.time)} and ${far}${falls}`;
}

export function findingsOf(looked: Looked, circuit: StopCircuit): readonly StopFinding[] {
  const { base } = looked;
  if (Object.keys(circuit.motions).length === 0)
    return [
      {
        id: 'runs',
        title: 'Can the machine be started?',
        verdict: 'unknown',
        sentence: 'The circuit does not say what it stops: name an axis or a spindle.',
      },
    ];
  const missing = base.model.motions.filter((_, at) => !base.runs.includes(at)).map(({ id }) => id);
  if (base.runs.length === 0)
    return [
      {
        id: 'runs',
        title: 'Can the machine be started?',
        verdict: 'fails',
        sentence:
          'As drawn, nothing runs after the power is on and every start has been pressed. Nothing more can be examined.',
        remedy: 'Look in the picture where the current ends.',
      },
    ];
  return [
    {
      id: 'runs',
      title: 'Can the machine be started?',
      verdict: missing.length === 0 ? 'fits' : 'fails',
      sentence:
        missing.length === 0
          ? 'Everything runs after a start.'
          : `${missing.join(', ')} cannot be started as drawn.`,
    },
    ...stopFindings(looked, circuit),
    ...brakeFindings(looked),
    restart(looked),
    ...rest(looked),
    faultFinding(looked),
    unnoticedFinding(looked),
    ...placeFindings(looked),
    ...guardFindings(looked),
  ];
}

function* stopFindings({ base, stops }: Looked, circuit: StopCircuit): Generator<StopFinding> {
  if (!base.demands.some(({ role }) => role === 'emergency'))
    yield {
      id: 'stop.none',
      title: 'Is there an emergency stop?',
      verdict: 'fails',
      sentence: 'There is no emergency stop button in the circuit.',
      remedy: 'Add one where the operator stands, and one that is reached from the chuck side.',
    };
  const spindles = Object.values(circuit.motions).some(({ kind }) => kind === 'spindle');
  if (spindles && base.demands.filter(({ role }) => role === 'emergency').length === 1)
    yield {
      id: 'stop.reach',
      title: 'Is an emergency stop in reach from everywhere?',
      verdict: 'tight',
      sentence:
        'There is one. It is common practice (no source) to have one where the operator stands and one that is reached from the side of the chuck or cutter.',
    };
  for (const { act, role, stops: own, doesNotStop } of stops) {
    const spindle = (stop: Stopping) => circuit.motions[stop.motion]?.kind === 'spindle';
    const said = own.map((stop) => sayStopping(stop, spindle(stop))).join('. ');
    const limit = role === 'limit';
    const left = limit
      ? doesNotStop.filter((id) => circuit.motions[id]?.kind === 'axis' && own.length === 0)
      : doesNotStop;
    const onlyTold = role === 'emergency' && own.some(({ category }) => category === '2');
    const unknown = own.some(({ time }) => time === undefined);
    const endless = own.some(({ time }) => time === Number.POSITIVE_INFINITY);
    const drops = own.some(({ drop }) => drop !== undefined && drop > 0.001);
    const fails = left.length > 0 || onlyTold || endless;
    yield {
      id: `stop.${act.mover < 0 ? 'power' : base.model.movers[act.mover]!.id}`,
      title: `Does it stop: ${act.says}?`,
      verdict: fails ? 'fails' : drops ? 'tight' : unknown ? 'unknown' : 'fits',
      sentence: `${left.length > 0 ? `${left.join(', ')} does not stop. ` : ''}${said}${said ? '.' : ''}`,
      ...(onlyTold
        ? {
            remedy:
              'An emergency stop takes the power away (stop category 0 or 1, IEC 60204-1, 9.2.3.4.2; from memory): contactors or safe torque off.',
          }
        : {}),
    };
  }
}

/** A millimetre is what a tool can be forgiven. */
const SMALL_DROP = 0.001;

function* brakeFindings({ base, stops }: Looked): Generator<StopFinding> {
  for (const { id, vertical, brake } of base.model.motions) {
    if (!vertical) continue;
    const title = `Does the brake of ${id} hold before the drive lets go?`;
    const own = stops.flatMap(({ act, stops: list }) =>
      list.filter(({ motion }) => motion === id).map((stop) => ({ stop, says: act.says })),
    );
    const late = own.find(
      ({ stop }) => stop.drop !== 0 && (stop.drop ?? Number.POSITIVE_INFINITY) > SMALL_DROP,
    );
    const remedy =
      'Let the brake lose its current first, and take the drive’s power away only once it has closed. Nobody under it; block it before motor or brake is taken off.';
    if (brake < 0)
      yield {
        id: `${id}.brake`,
        title,
        verdict: 'fails',
        sentence: `${id} drops when nothing holds it, and has no brake.`,
        remedy,
      };
    else if (late)
      yield {
        id: `${id}.brake`,
        title,
        verdict: 'fails',
        sentence: `After “${late.says}” the brake closes ${seconds(late.stop.brakeOn)} after the act; the drive has let go before${late.stop.drop === undefined ? '. How far it drops is not known' : `, and it drops ${length(late.stop.drop)}`}.`,
        remedy,
      };
    else
      yield {
        id: `${id}.brake`,
        title,
        verdict: 'fits',
        sentence: 'After every stop the brake closes first. It holds; it is not there to stop motion.',
      };
  }
}

function restart({ truth, base }: Looked): StopFinding {
  const unasked = truth.rows.find((row) => row.unasked);
  return {
    id: 'restart',
    title: 'Does nothing start without a start?',
    verdict: unasked ? 'fails' : 'fits',
    sentence: unasked
      ? `In the state “${unasked.from}”, “${unasked.act}” starts ${unasked.starts.join(', ')}.`
      : `Nothing starts by pulling a button out, closing a door or the power coming back, in ${truth.states} states${truth.complete ? '' : ' (there are more)'}.${base.barred.length > 0 ? ` ${base.barred.map(({ act }) => `“${act.says}”`).join(', ')} is barred while it runs.` : ''}`,
    ...(unasked
      ? {
          remedy:
            'A start relay or contactor that holds itself and has to be started by a button of its own.',
        }
      : {}),
  };
}

function* rest({ base, truth, races }: Looked): Generator<StopFinding> {
  const restless = [...new Set([...base.restless, ...truth.rows.flatMap((row) => row.restless)])];
  if (restless.length > 0)
    yield {
      id: 'rest',
      title: 'Does it come to rest?',
      verdict: 'fails',
      sentence: `${restless.join(', ')} chatters: a contact breaks its own coil.`,
    };
  if (races.length > 0)
    yield {
      id: 'races',
      title: 'Does it depend on which relay is quicker?',
      verdict: 'fails',
      sentence: races
        .map(({ mover, how, after }) => `If ${mover} is ${how} than written, ${after} ends otherwise.`)
        .join(' '),
      remedy: 'Let one contact wait for the other, or take a relay that lets go late.',
    };
  if (truth.neverOn.length > 0 || truth.neverMoves.length > 0)
    yield {
      id: 'idle',
      title: 'Is everything in it of use?',
      verdict: 'tight',
      sentence: `${[...truth.neverOn.map((id) => `${id} never pulls in`), ...truth.neverMoves.map((id) => `contact ${id} never changes`)].join('; ')}.`,
    };
}

function faultFinding({ faults }: Looked): StopFinding {
  const dangerous = faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && !fault.mayExclude);
  const excluded = faults.filter(({ judged, fault }) => judged.verdict === 'dangerous' && fault.mayExclude);
  return {
    id: 'faults',
    title: 'Does it still stop with any one fault?',
    verdict: dangerous.length > 0 ? 'fails' : 'fits',
    sentence:
      dangerous.length > 0
        ? `${dangerous.length} of ${faults.length} single faults ${dangerous.length === 1 ? 'is' : 'are'} dangerous. ${dangerous[0]!.says}`
        : `None of ${faults.length - excluded.length} single faults that were tried keeps it from stopping.${excluded.length > 0 ? ` ${excluded.length} more rest on the devices: ${excluded.map(({ fault }) => fault.id).join(', ')}.` : ''}`,
    ...(dangerous[0] ? { remedy: dangerous[0].catches } : {}),
  };
}

function unnoticedFinding({ faults }: Looked): StopFinding {
  const unnoticed = faults.filter(({ judged }) => judged.verdict === 'unnoticed');
  return {
    id: 'unnoticed',
    title: 'Is a fault noticed before the next start?',
    verdict: unnoticed.length > 0 ? 'tight' : 'fits',
    sentence:
      unnoticed.length > 0
        ? `${unnoticed.length} single faults are not noticed. ${unnoticed[0]!.says}`
        : 'Every single fault that was tried keeps it from starting again after some stop.',
    ...(unnoticed[0] ? { remedy: unnoticed[0].catches } : {}),
  };
}

function* placeFindings({ axes }: Looked): Generator<StopFinding> {
  for (const { motion, runOn, marks, needs, because } of axes) {
    const short = marks.filter(({ reserve }) => reserve !== undefined && reserve < 0);
    const known = marks.filter(({ reserve }) => reserve !== undefined);
    yield {
      id: `${motion}.switches`,
      title: `Do the switches of ${motion} stand far enough from the ends?`,
      verdict: short.length > 0 ? 'fails' : runOn === undefined || known.length === 0 ? 'unknown' : 'fits',
      sentence:
        short.length > 0
          ? short.map(({ name, reserve }) => `The ${name} stands ${length(-reserve!)} too far out.`).join(' ')
          : runOn === undefined
            ? `How far ${motion} runs on is not known: ${needs.join(', ')}.`
            : known.length === 0
              ? `${motion} runs on ${length(runOn)} (${because}); where its switches stand is not known.`
              : `${motion} runs on ${length(runOn)} (${because}); least reserve ${length(Math.min(...known.map(({ reserve }) => reserve!)))}.`,
    };
  }
}

function* guardFindings({ guards, base }: Looked): Generator<StopFinding> {
  const locked = base.model.locks.length > 0;
  for (const { motion, needed, time, reserve, says } of guards) {
    if (needed === undefined || time === undefined) {
      yield {
        id: `${motion}.guard`,
        title: `Is the guard of ${motion} far enough away?`,
        verdict: 'unknown',
        sentence: says,
      };
      continue;
    }
    yield {
      id: `${motion}.guard`,
      title: `Is the guard of ${motion} far enough away?`,
      verdict: locked ? 'fits' : reserve === undefined ? 'unknown' : reserve < 0 ? 'fails' : 'fits',
      sentence: `${motion} stands after ${seconds(time)}; without a lock the guard would have to be ${length(needed)} away (ISO 13855). ${locked ? 'It is locked.' : says}`,
    };
  }
}
