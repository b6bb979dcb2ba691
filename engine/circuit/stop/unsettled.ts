/**
 * What takes the ground from under the other answers: a coil that never comes to rest, relays that race each other, contacts
 * that never move. While one of these is so, nothing that rests on it is answered with yes.
 */
import { andList } from '../../quantity/words.ts';
import type { Looked, StopFinding } from './findings.ts';

/** Findings that rest on the drawing alone, and not on how it moves. */
const DRAWN = new Set(['stop.as-wired', 'stop.emergency', 'stop.reach', 'stop.torque-off']);
/** What trying faults comes to. */
const TRIED = new Set(['stop.faults', 'stop.unnoticed']);

export interface Ground {
  readonly finding: StopFinding;
  /** 'K3 never comes to rest' */
  readonly because: string;
  /** Whether a finding of this id rests on it. */
  readonly carries: (id: string) => boolean;
}

/** Worst first; empty where the circuit settles, always the same way, and everything in it moves. */
export function groundsOf({ base, truth, races }: Looked): readonly Ground[] {
  const grounds: Ground[] = [];
  const restless = [...new Set([...base.restless, ...truth.rows.flatMap((row) => row.restless)])];
  if (restless.length > 0) {
    const all = andList(restless);
    const one = restless.length === 1;
    grounds.push({
      finding: {
        id: 'stop.rest',
        title: 'Does it come to rest?',
        verdict: 'fails',
        sentence: `${all} ${one ? 'chatters' : 'chatter'}: pulling in takes the current of ${one ? 'its' : 'their'} own coil away, letting go gives it back, and so on without end. As long as that is so, no other answer counts.`,
        remedy: `Follow what feeds the coil of ${all} to the contact that opens when it pulls in, and take that contact out of its way.`,
      },
      because: `${all} never ${one ? 'comes' : 'come'} to rest`,
      carries: (id) => !DRAWN.has(id),
    });
  }
  if (races.length > 0) {
    const acts = new Set(races.map(({ after }) => after));
    const movers = andList([...new Set(races.map(({ mover }) => mover))]);
    grounds.push({
      finding: {
        id: 'stop.races',
        title: 'Does it depend on which relay is quicker?',
        verdict: 'fails',
        sentence: races
          .map(({ mover, how, after }) => `If ${mover} is ${how} than written, ${after} ends otherwise.`)
          .join(' '),
        remedy: 'Let one contact wait for the other, or take a relay that lets go late.',
      },
      because: `how it ends depends on how quick ${movers} ${movers.includes(' ') ? 'are' : 'is'}`,
      // One act that ends now so, now otherwise says nothing of the other acts, but of all that is taken over all acts.
      carries: (id) =>
        !DRAWN.has(id) &&
        (acts.has('starting') || !/^stop\.(act\.|power$|runs$)/.test(id) || namedBy(base, acts).has(id)),
    });
  }
  // Where nothing starts nothing moves; that is said already.
  if (base.runs.length > 0 && truth.neverOn.length + truth.neverMoves.length > 0) {
    const idle = [
      ...truth.neverOn.map((id) => `${id} never pulls in`),
      ...truth.neverMoves.map((id) => `contact ${id} never changes`),
    ];
    grounds.push({
      finding: {
        id: 'stop.idle',
        title: 'Is everything in it of use?',
        verdict: truth.complete ? 'fails' : 'unknown',
        sentence: `${idle.join('; ')}, whatever is done${truth.complete ? '' : ' in the states that were gone through; there are more'}. It is there to do something, and no fault of it can be seen.`,
        remedy: 'Look what should move it and where its current ends; take it out if nothing needs it.',
      },
      because: idle.join('; '),
      carries: (id) => TRIED.has(id),
    });
  }
  return grounds;
}

/** Ids of the findings of these acts. */
const namedBy = ({ demands, model }: Looked['base'], acts: ReadonlySet<string>): ReadonlySet<string> =>
  new Set(
    demands
      .filter(({ act }) => acts.has(act.says))
      .map(({ act }) => (act.mover < 0 ? 'stop.power' : `stop.act.${model.movers[act.mover]!.id}`)),
  );

/** The grounds first; what rests on one of them and was answered with yes is not known. */
export function groundedFindings(
  grounds: readonly Ground[],
  findings: readonly StopFinding[],
): readonly StopFinding[] {
  return [
    ...grounds.map(({ finding }) => finding),
    ...findings.map((finding) => {
      if (finding.verdict !== 'fits' && finding.verdict !== 'tight') return finding;
      const ground = grounds.find(({ carries }) => carries(finding.id));
      if (!ground) return finding;
      const { id, title, caution } = finding;
      return {
        id,
        title,
        verdict: 'unknown' as const,
        sentence: `This cannot be answered: ${ground.because}.`,
        ...(caution === undefined ? {} : { caution }),
      };
    }),
  ];
}
