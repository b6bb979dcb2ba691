/** A measurement as changes of a refit: the evidence itself, and the facts it settles. */
import { PLACES, type PlaceId } from '../parts/index.ts';
import { ok, type Result, refuse } from '../quantity/index.ts';
import { findPlace } from '../refit/place.ts';
import { set, target } from '../refit/set.ts';
import type { Change, Evidence, Refit } from '../refit/types.ts';
import { runMethod } from './run.ts';
import type { EvidenceResult, Method, Outcome, Taken } from './types.ts';

export interface Measurement extends Taken {
  readonly method: Method;
  /** An axis ('X'), a place ('X.motor', 'site') or an option of one ('X.motor@x-motor-2'); '' where the facts name the place. */
  readonly where: string;
  readonly note: string;
  /** ISO 8601: the engine has no clock. */
  readonly when: string;
  readonly photos?: readonly string[];
}

export interface Recorded {
  readonly changes: readonly Change[];
  readonly outcome: Outcome;
  readonly evidence: Evidence;
  /** Facts that were set, as paths. */
  readonly paths: readonly string[];
  /** What looks odd about a fact that was set. */
  readonly questions: readonly string[];
  /** What looks like a slip, fact by fact: to be asked before it is recorded. */
  readonly askBack: readonly string[];
}

/** Runs the method and gives the changes of one edit; refused with the sentence of whatever makes no sense. */
export function recordEvidence(refit: Refit, measured: Measurement): Result<Recorded> {
  const { method, given, readings, aside } = measured;
  const ran = runMethod(method, { given, readings, aside });
  if (!ran.ok) return ran;
  const facts = ran.value.results.flatMap((result) => (result.fact ? [{ result, ...result.fact }] : []));
  const where = placeOf(
    refit,
    measured.where,
    facts.map(({ place }) => place),
    method,
  );
  if (!where.ok) return where;
  const { base, part: before } = where.value;

  const id = freeId(refit);
  const changes: Change[] = [];
  const settled: Change[] = [];
  const paths: string[] = [];
  const questions: string[] = [];
  const askBack: string[] = [];
  let part = before;
  for (const { result, fact } of facts) {
    const path = `${base}.${fact}`;
    const setting = set(refit, path, textOf(result), {
      basis: 'measured',
      note: `${method.title}: ${sayRows(method, measured)}`,
    });
    if (!setting.ok) return refuse({ ...setting.problem, message: `${path}: ${setting.problem.message}` });
    paths.push(path);
    questions.push(...setting.value.questions);
    if (setting.value.askBack !== undefined) askBack.push(setting.value.askBack);
    for (const change of setting.value.changes) {
      if (change.do === 'fact') {
        part = change.part;
        settled.push(change.new ? { ...change, new: { ...change.new, evidence: id } } : change);
      } else if (!changes.some((other) => JSON.stringify(other) === JSON.stringify(change)))
        changes.push(change);
    }
  }
  const evidence: Evidence = {
    id,
    method: method.id,
    part,
    given: kept(given),
    readings,
    aside: [...aside],
    note: measured.note,
    when: measured.when,
    photos: [...(measured.photos ?? [])],
  };
  return ok({
    changes: [...changes, { do: 'evidence', id, old: null, new: evidence }, ...settled],
    outcome: ran.value,
    evidence,
    paths,
    questions,
    askBack,
  });
}

const textOf = (result: EvidenceResult): string => (result.kind === 'choice' ? result.option : result.text);

/** Entries that were left empty are not kept. */
const kept = (given: Taken['given']): Taken['given'] =>
  Object.fromEntries(Object.entries(given).filter(([, text]) => text.trim() !== ''));

function sayRows({ columns }: Method, { readings, aside }: Measurement): string {
  const rows = Math.max(0, ...columns.map(({ key }) => readings[key]?.length ?? 0)) - aside.length;
  return rows <= 0 ? 'no readings' : `${rows} ${rows === 1 ? 'row' : 'rows'} of readings`;
}

function freeId(refit: Refit): string {
  for (let n = Object.keys(refit.evidence).length + 1; ; n++)
    if (!Object.hasOwn(refit.evidence, `e-${n}`)) return `e-${n}`;
}

interface Where {
  /** Path of the place, 'X.motor@x-motor-2'. */
  readonly base: string;
  readonly part: string | null;
}

/** Which place it was taken on: as named, else as the facts say where the machine has only one such place. */
function placeOf(refit: Refit, named: string, wanted: readonly string[], method: Method): Result<Where> {
  const typed = named.trim();
  const place = wanted[0] ?? method.settles[0]?.place;
  const chain = refit.chains.find(({ id }) => id.toLowerCase() === typed.toLowerCase());
  const path =
    typed === '' ? (place ?? '') : chain ? (place === undefined ? '' : `${chain.id}.${place}`) : typed;
  if (path === '' || (typed === '' && place !== undefined && !Object.hasOwn(refit.places, place))) {
    if (wanted.length === 0) return ok({ base: '', part: null });
    const axes = refit.chains.map(({ id }) => `${id}.${place}`);
    return refuse({
      code: 'unknown-name',
      where: 'for',
      message: `Say on which one it was measured${axes.length > 0 ? `: ${axes.join(', ')}` : ''}.`,
    });
  }
  const found = target(refit, path);
  if (!found.ok) return found;
  const { value } = found;
  if (value.fact !== undefined)
    return refuse({
      code: 'malformed',
      where: 'for',
      message: `“${typed.slice(0, 60)}” names a fact; name only the place, such as ${path.split('.').slice(0, -1).join('.')}.`,
    });
  const other = wanted.find((each) => each !== value.place);
  if (other !== undefined)
    return refuse({
      code: 'unknown-name',
      where: 'for',
      message: `${method.title} tells something of the ${PLACES[other as PlaceId].name}, not of the ${PLACES[value.place].name}.`,
    });
  const chosen = findPlace(refit, value.chain, value.place)?.chosen;
  return ok({ base: path, part: value.part ?? (chosen === undefined || chosen === 'none' ? null : chosen) });
}
