/** What ends it before money is counted. Common practice, no source. */
import { formatQuantity } from '../quantity/index.ts';
import type { MachineState } from './machine-state.ts';

export interface Stopper {
  /** `stops`: not as it stands. `close`: it goes, with little to spare. `unknown`: has to be known before it is bought. */
  readonly level: 'stops' | 'close' | 'unknown';
  readonly title: string;
  readonly sentence: string;
  /** Facts to set. */
  readonly paths: readonly string[];
}

/** Share of what floor, gear or door bears above which it is called close. */
const CLOSE = 0.8;

export function showstoppers(state: MachineState): Stopper[] {
  const found: Stopper[] = [];
  const limit = (
    title: string,
    asked: number | undefined,
    there: number | undefined,
    unit: string,
    paths: readonly [asked: string, there: string],
    stops: string,
  ): void => {
    if (asked === undefined || there === undefined) {
      const missing = [asked === undefined ? paths[0] : '', there === undefined ? paths[1] : ''].filter(
        Boolean,
      );
      found.push({
        level: 'unknown',
        title,
        paths: missing,
        sentence: 'Not known yet, and it can end the matter: find it out before you pay.',
      });
      return;
    }
    const words = `${formatQuantity(asked, unit)} against ${formatQuantity(there, unit)}`;
    if (asked > there) found.push({ level: 'stops', title, paths, sentence: `${words}: ${stops}` });
    else if (asked > CLOSE * there)
      found.push({
        level: 'close',
        title,
        paths,
        sentence: `${words}: it goes, with little to spare. Measure again, and ask those who do it for their trade.`,
      });
  };
  limit(
    'Weight on the floor',
    state.weight,
    state.floor,
    'kg',
    ['job.weight', 'site.floor'],
    'the floor does not bear it. Spread the load, prop the floor from below by somebody who can reckon it, or stand it elsewhere.',
  );
  limit(
    'Weight on the lifting gear',
    state.weight,
    state.lift,
    'kg',
    ['job.weight', 'site.lift'],
    'your gear does not bear it. Hire what does, with its driver, or take the machine apart.',
  );
  limit(
    'Way in',
    state.width,
    state.door,
    'mm',
    ['job.width', 'site.door'],
    'it does not pass. Take it further apart, or open the wall.',
  );
  limit(
    'Power from the mains',
    state.power,
    state.available,
    'kW',
    ['job.power', 'site.available'],
    'the mains there do not give that. A smaller spindle drive or a stronger connection, by an electrician.',
  );
  if (state.needs === undefined || state.mains === undefined) {
    if (state.needs !== 'single')
      found.push({
        level: 'unknown',
        title: 'Phases',
        paths: [
          state.needs === undefined ? 'job.phases' : '',
          state.mains === undefined ? 'site.phases' : '',
        ].filter(Boolean),
        sentence: 'Whether it needs three phases, and whether they are there, is not known.',
      });
  } else if (state.needs === 'three' && state.mains === 'single')
    found.push({
      level: 'stops',
      title: 'Phases',
      paths: ['job.phases', 'site.phases'],
      sentence:
        'It needs three phases and there is one. A converter, drives that take one phase, or a new connection: price it as mains and electrician, and then say here that there is a converter.',
    });
  if (state.ways === 'beyond')
    found.push({
      level: 'stops',
      title: 'Ways',
      paths: ['job.ways'],
      sentence:
        'The ways are worn or broken beyond scraping: no control makes such a machine turn true. Its parts may be worth more than the whole.',
    });
  if (state.ways === undefined)
    found.push({
      level: 'unknown',
      title: 'Ways',
      paths: ['job.ways'],
      sentence: 'Nobody has looked at the ways, and they are what no money puts right cheaply.',
    });
  if (state.spindle === 'beyond')
    found.push({
      level: 'stops',
      title: 'Spindle',
      paths: ['job.spindle'],
      sentence: 'Spindle or housing are damaged: ask what another one costs before anything else.',
    });
  if (state.spindle === undefined)
    found.push({
      level: 'unknown',
      title: 'Spindle',
      paths: ['job.spindle'],
      sentence: 'Nobody has looked at the spindle bearings.',
    });
  const order = { stops: 0, unknown: 1, close: 2 };
  return found.sort((a, b) => order[a.level] - order[b.level]);
}
